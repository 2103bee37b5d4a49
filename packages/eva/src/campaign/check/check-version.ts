/** The first node of every file says which version of the format it is written in. */
import { FORMAT_VERSION } from '../format-version.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { ParsedFile } from '../text/parse-file.ts';

/** Whether this program can read the file's version. */
export function checkVersion(file: ParsedFile, problems: ProblemList): boolean {
  const written = file.nodes.filter((node) => node.name === 'handrail');
  const [first] = written;
  const expected = `handrail ${FORMAT_VERSION} as the first node`;
  if (first === undefined) {
    problems.add('missing-version', file.source.span(0, 0), 'this file does not say its version', { expected });
    return true;
  }
  if (file.nodes[0] !== first) {
    problems.add('misplaced-node', first.nameSpan, 'the version does not stand first', { expected });
  }
  for (const again of written.slice(1)) {
    problems.add('node-twice', again.nameSpan, '"handrail" stands here a second time', {
      expected: 'one in each file',
    });
  }
  const version = first.entries[0]?.value;
  const span = first.entries[0]?.valueSpan ?? first.nameSpan;
  if (
    first.entries.length !== 1 ||
    first.children.length > 0 ||
    typeof version !== 'number' ||
    !Number.isInteger(version) ||
    version < 0
  ) {
    problems.add('bad-version', span, 'the version is not a whole number alone', { expected });
    return true;
  }
  if (version > FORMAT_VERSION) {
    problems.add(
      'newer-version',
      span,
      `this file is written in version ${version}, which is newer than this program`,
      {
        expected: `version ${FORMAT_VERSION}, or a newer Handrail`,
      },
    );
    return false;
  }
  if (version < FORMAT_VERSION) {
    problems.add('older-version', span, `this file is written in version ${version}, which is older`, {
      expected: `version ${FORMAT_VERSION}: bring the file up to date first`,
    });
    return false;
  }
  return true;
}
