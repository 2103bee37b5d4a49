/** What a window says of the engine that fills it. */
import type { ComputedSort, ComputedWindow } from '../campaign-sky.ts';
import { PLACED_SORTS } from '../campaign-sky.ts';
import { type CheckedNode, childrenOf, number, spanOf, text } from '../check/checked-node.ts';
import type { ReadContext } from './read-context.ts';

/** null: the intervals are written; a window with neither is reported. */
export function readComputed(node: CheckedNode, statedPadS: number, context: ReadContext): ComputedWindow | null {
  const { problems } = context;
  const what = text(node, 'computed') as ComputedSort | null;
  const place = text(node, 'place');
  const written = childrenOf(node, 'interval')[0];
  if (what === null) {
    // A computed= that could not be read has been reported and says enough.
    const misread = node.source.entries.some((entry) => entry.name === 'computed');
    if (!misread && !node.source.children.some((one) => one.name === 'interval')) {
      problems.add('missing-node', node.nameSpan, 'this window has no "interval" inside', {
        expected: 'interval "2031-09-14T11:00:00Z" "2031-09-14T11:35:00Z"',
      });
    }
    for (const property of ['place', 'at-least']) {
      if (misread || !node.properties.has(property)) continue;
      problems.add(
        'two-ends',
        spanOf(node, property),
        `"${property}" is for a computed window, and this one is written`,
        {
          expected: 'computed=lit, or no such property',
        },
      );
    }
    return null;
  }
  if (written !== undefined) {
    problems.add('two-ends', written.span, 'a computed window takes no intervals of its own', {
      expected: 'computed=, or intervals',
    });
  }
  const placed = PLACED_SORTS.includes(what);
  if (placed && place === null && !node.properties.has('place')) {
    problems.add('missing-property', node.nameSpan, `a window computed=${what} says at which place`, {
      expected: 'place=, a place id',
    });
  }
  if (!placed && place !== null) {
    problems.add('two-ends', spanOf(node, 'place'), `a window computed=${what} is about the whole vehicle`, {
      expected: `no place=, or computed=${PLACED_SORTS.join(' | ')}`,
    });
  }
  return { what, place: placed ? place : null, leastS: number(node, 'at-least') ?? 0, statedPadS, filled: false };
}
