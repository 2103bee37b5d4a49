/** The comments in a stretch of white space, each with its signs, without the space around it. */
export function commentsIn(space: string): readonly string[] {
  const found: string[] = [];
  let at = 0;
  while (at < space.length) {
    if (space.startsWith('//', at)) {
      const end = space.indexOf('\n', at);
      found.push(space.slice(at, end < 0 ? space.length : end).trimEnd());
      at = end < 0 ? space.length : end;
    } else if (space.startsWith('/*', at)) {
      let depth = 0;
      let end = at;
      do {
        if (space.startsWith('/*', end)) {
          depth++;
          end += 2;
        } else if (space.startsWith('*/', end)) {
          depth--;
          end += 2;
        } else end++;
      } while (depth > 0 && end < space.length);
      found.push(space.slice(at, end));
      at = end;
    } else if (space.startsWith('/-', at)) {
      // What is commented out may be a whole node with braces; it runs to the end of the stretch.
      found.push(space.slice(at).trim());
      at = space.length;
    } else at++;
  }
  return found;
}
