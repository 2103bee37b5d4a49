/** A problem in words, the same in terminal, app and print. */
import { formatSpan } from '../span.ts';
import type { Problem } from './problem.ts';

const CODE_COLUMN = 70;

/**
 * ```
 * error  there is no hardware "b9"                                      campaign/unknown-id
 *   at    campaign.kdl:14:9
 *   mend  did you mean "b4"?
 *   more  handrail explain campaign/unknown-id
 * ```
 */
export function formatProblem(problem: Problem): string {
  const head = `${problem.severity.padEnd(6)} ${problem.what}`;
  const lines = [`${head.padEnd(CODE_COLUMN - 1)} ${problem.code}`, `  at    ${formatSpan(problem.span)}`];
  if (problem.expected !== null) lines.push(`  why   expected ${problem.expected}`);
  if (problem.nearest !== null) lines.push(`  mend  did you mean "${problem.nearest}"?`);
  lines.push(`  more  handrail explain ${problem.code}`);
  return lines.join('\n');
}

/** One line: place, code, what, expected, nearest. */
export function formatProblemLine(problem: Problem): string {
  const nearest = problem.nearest === null ? '' : `; did you mean "${problem.nearest}"?`;
  const expected = problem.expected === null ? '' : `; expected ${problem.expected}`;
  const warning = problem.severity === 'warning' ? 'warning ' : '';
  return `${problem.span.line}:${problem.span.column} ${warning}${problem.code}: ${problem.what}${expected}${nearest}`;
}
