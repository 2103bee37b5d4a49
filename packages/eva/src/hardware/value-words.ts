/**
 * A value of a state as it is said: "with EV1", "in bag-one", "at spine-3"; an aspect's value is a word already.
 *
 * @param bodies who fills the roles of the stint, for values that name a role
 */
export function valueWords(value: string, bodies: readonly string[] = []): string {
  const [kind = '', id = ''] = value.split(':');
  if (kind === 'role') return `with ${bodies[Number(id)] ?? 'whoever does it'}`;
  if (kind === 'person' || kind === 'arm') return `with ${id}`;
  if (kind === 'hardware') return `in ${id}`;
  return kind === 'place' ? `at ${id}` : value;
}
