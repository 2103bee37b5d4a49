/** What a glove may touch, and how hot and cold the surfaces are. */
import { Fault } from '@handrail/quantity/fault';
import { type TouchLimit, touchVerdicts } from '../../thermal/touch-temperature.ts';
import type { SurfaceTemperature } from '../campaign.ts';
import { type CheckedNode, flag, number, text, wordsFrom } from '../check/checked-node.ts';
import type { ReadContext } from './read-context.ts';

/** The ladder of limits; those that are refused are left out. */
export function readTouchLimits(nodes: readonly CheckedNode[], context: ReadContext): readonly TouchLimit[] {
  const limits = nodes.flatMap((node) => readTouchLimit(node, context) ?? []);
  const [first] = nodes;
  if (first === undefined || limits.length < nodes.length) return limits;
  try {
    touchVerdicts(limits, []);
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    context.problems.add('range-backwards', first.span, fault.message, {
      expected: 'the longer the touch, the narrower the band',
    });
  }
  return limits;
}

function readTouchLimit(node: CheckedNode, context: ReadContext): TouchLimit | null {
  const contactS = number(node, 'longest');
  const anyTime = flag(node, 'any-time') === true;
  const lowestK = number(node, 'lowest');
  const highestK = number(node, 'highest');
  const source = text(node, 'source');
  const saysLongest = node.source.entries.some((entry) => entry.name === 'longest');
  if (saysLongest === anyTime) {
    context.problems.add(
      anyTime ? 'two-ends' : 'missing-property',
      anyTime ? node.span : node.nameSpan,
      anyTime
        ? 'this limit has a longest touch and allows any time'
        : 'this limit does not say how long a touch it allows',
      { expected: 'longest=, or any-time=#true' },
    );
    return null;
  }
  if (lowestK === null || highestK === null || source === null || (contactS === null && !anyTime)) return null;
  if (!inOrder(node, lowestK, highestK, context)) return null;
  return { contactS: anyTime ? null : contactS, lowestK, highestK, source };
}

export function readSurfaceTemperatures(
  nodes: readonly CheckedNode[],
  context: ReadContext,
): readonly SurfaceTemperature[] {
  const found = new Map<string, SurfaceTemperature>();
  for (const one of nodes.flatMap((node) => readSurfaceTemperature(node, context))) {
    const before = found.get(one.hardware);
    if (before === undefined) found.set(one.hardware, one);
    else {
      const what = `the surface of "${one.hardware}" is already stated in line ${before.span.line}`;
      context.problems.add('node-twice', one.span, what, { expected: 'one of the two' });
    }
  }
  return [...found.values()];
}

function readSurfaceTemperature(node: CheckedNode, context: ReadContext): readonly SurfaceTemperature[] {
  const leastK = number(node, 'least');
  const mostK = number(node, 'most');
  const source = text(node, 'source');
  if (leastK === null || mostK === null || source === null || !inOrder(node, leastK, mostK, context)) return [];
  return wordsFrom(node, 0).map((word) => ({ hardware: word.text, leastK, mostK, source, span: word.span }));
}

function inOrder(node: CheckedNode, low: number, high: number, context: ReadContext): boolean {
  if (low <= high) return true;
  context.problems.add('range-backwards', node.span, 'the band ends below where it begins', {
    expected: 'the colder end first',
  });
  return false;
}
