/** A figure with the band in which it is believed, and its source. */
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { type CheckedNode, flag, number, text } from '../check/checked-node.ts';
import type { ReadContext } from './read-context.ts';

/**
 * The band of a node that says low= and high=, or exact=#true. A figure without either is refused: no spread is assumed.
 * @param likely null: its own value was refused already
 */
export function readBand(
  node: CheckedNode,
  what: string,
  likely: number | null,
  low: number | null,
  high: number | null,
  context: ReadContext,
): SourcedValue | null {
  const source = text(node, 'source');
  const exact = flag(node, 'exact') === true;
  const written = (name: string): boolean => node.source.entries.some((entry) => entry.name === name);
  if (exact && (written('low') || written('high'))) {
    context.problems.add('two-ends', node.span, `${what} is exact and has a band`, { expected: 'one of the two' });
    return null;
  }
  if (!exact && !(written('low') && written('high'))) {
    context.problems.add('missing-property', node.nameSpan, `${what} says no band`, {
      expected: 'low= and high=, or exact=#true',
    });
    return null;
  }
  if (likely === null || source === null || (!exact && (low === null || high === null))) return null;
  const band = exact
    ? { low: likely, likely, high: likely, source }
    : { low: low as number, likely, high: high as number, source };
  return inOrder(band, node, what, context) ? band : null;
}

/**
 * The band of a property `name` with `name-low` and `name-high`: both or neither. Neither: the figure stands without a spread.
 */
export function readPropertyBand(
  node: CheckedNode,
  name: string,
  source: string,
  context: ReadContext,
): SourcedValue | null {
  const likely = number(node, name);
  const low = number(node, `${name}-low`);
  const high = number(node, `${name}-high`);
  if (likely === null) return null;
  if ((low === null) !== (high === null)) {
    context.problems.add('missing-property', node.nameSpan, `${name} has one end of its band`, {
      expected: `${name}-low= and ${name}-high=, or neither`,
    });
    return null;
  }
  const band = { low: low ?? likely, likely, high: high ?? likely, source };
  return inOrder(band, node, name, context) ? band : null;
}

function inOrder(band: SourcedValue, node: CheckedNode, what: string, context: ReadContext): boolean {
  if (band.low <= band.likely && band.likely <= band.high) return true;
  context.problems.add('range-backwards', node.span, `${what} is not in order`, { expected: 'low ≤ likely ≤ high' });
  return false;
}
