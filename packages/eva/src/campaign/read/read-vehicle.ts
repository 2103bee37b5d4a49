/** Places, rails and classes of load; and which places the rails reach. */
import type { Vector3 } from '@handrail/quantity/vector';
import type { Arm, LoadClass, Place, Rail, Vehicle } from '../campaign.ts';
import {
  type CheckedNode,
  child,
  childrenOf,
  flag,
  number,
  text,
  textAt,
  words,
  wordsFrom,
} from '../check/checked-node.ts';
import type { Span } from '../span.ts';
import { filledIn, OUTSIDE, type ReadContext, titleOf } from './read-context.ts';
import { readCondition } from './read-state.ts';

export function readVehicle(node: CheckedNode, context: ReadContext): Vehicle {
  const id = textAt(node, 0) ?? '';
  const rails = childrenOf(node, 'rail').map((rail) => readRail(rail, context));
  const seen = new Map<string, Rail>();
  for (const rail of rails) {
    const before = seen.get(rail.id);
    if (before !== undefined) {
      context.problems.add('id-twice', rail.span, `a rail "${rail.id}" stands already in line ${before.span.line}`, {
        expected: 'id= on one of the two rails',
      });
    }
    seen.set(rail.id, rail);
  }
  return {
    id,
    title: node.title ?? titleOf(id),
    places: childrenOf(node, 'place').map(readPlace),
    rails,
    loadClasses: childrenOf(node, 'load-class').map(readLoadClass),
    hatch: text(node, 'hatch'),
    span: node.span,
  };
}

/** Level 0: one place without rails; travel is not counted, and the default says so. */
export function placelessVehicle(span: Span, context: ReadContext): Vehicle {
  const place: Place = {
    id: OUTSIDE,
    title: 'Outside',
    family: 'none',
    positionM: null,
    seenFromM: null,
    light: null,
    keepOut: false,
    span,
  };
  return filledIn(
    context,
    { id: 'vehicle', title: 'Vehicle not given', places: [place], rails: [], loadClasses: [], hatch: null, span },
    span,
    'travel',
    '0 min everywhere: no places are given',
    'format',
  );
}

function readPlace(node: CheckedNode): Place {
  const id = textAt(node, 0) ?? '';
  return {
    id,
    title: node.title ?? titleOf(id),
    family: text(node, 'family') ?? 'none',
    positionM: readPoint(child(node, 'position')),
    seenFromM: readPoint(child(node, 'seen-from')),
    light: text(node, 'light'),
    keepOut: flag(node, 'keep-out') ?? false,
    span: node.span,
  };
}

function readPoint(node: CheckedNode | null): Vector3 | null {
  return node === null ? null : [number(node, 'x') ?? 0, number(node, 'y') ?? 0, number(node, 'z') ?? 0];
}

function readRail(node: CheckedNode, context: ReadContext): Rail {
  const from = textAt(node, 0) ?? '';
  const to = textAt(node, 1) ?? '';
  if (from !== '' && from === to) {
    context.problems.add('same-ends', node.span, `this rail begins and ends at "${from}"`);
  }
  return {
    id: text(node, 'id') ?? `${from}--${to}`,
    from,
    to,
    durationS: number(node, 'minutes') ?? 0,
    lengthM: number(node, 'length'),
    openWhile: childrenOf(node, 'open-while').map((one) => {
      const { variable, values } = readCondition(one, wordsFrom(one, 1), context);
      return { variable, allowed: values, span: one.span };
    }),
    refuses: words(node, 'refuses').map((word) => word.text),
    fairlead: text(node, 'fairlead'),
    span: node.span,
  };
}

function readLoadClass(node: CheckedNode): LoadClass {
  const id = textAt(node, 0) ?? '';
  return {
    id,
    title: node.title ?? titleOf(id),
    factor: number(node, 'factor') ?? 1,
    fillsHands: flag(node, 'fills-hands') ?? false,
    span: node.span,
  };
}

/** Places that nobody can get to: no rail leads there from the hatch and no arm pose stands there. */
export function reportUnreached(
  vehicle: Vehicle,
  arms: readonly Arm[],
  used: ReadonlyMap<string, Span>,
  context: ReadContext,
): void {
  if (vehicle.hatch === null || context.ids.get('place', vehicle.hatch) === null) return;
  const neighbours = new Map<string, string[]>();
  const link = (from: string, to: string): void => {
    const list = neighbours.get(from);
    if (list === undefined) neighbours.set(from, [to]);
    else list.push(to);
  };
  for (const rail of vehicle.rails) {
    link(rail.from, rail.to);
    link(rail.to, rail.from);
  }
  const posed = arms.flatMap((arm) => arm.poses.flatMap((pose) => (pose.place === null ? [] : [pose.place])));
  const reached = new Set([vehicle.hatch, ...posed]);
  const open = [...reached];
  for (let at = 0; at < open.length; at++) {
    for (const next of neighbours.get(open[at] as string) ?? []) {
      if (reached.has(next)) continue;
      reached.add(next);
      open.push(next);
    }
  }
  for (const place of vehicle.places) {
    if (reached.has(place.id) || place.keepOut) continue;
    const user = used.get(place.id);
    const expected = `a rail from a place that can be reached from "${vehicle.hatch}"`;
    if (user === undefined) {
      context.problems.warn('unreached-place', place.span, `no rail reaches "${place.id}" from the hatch`, {
        expected,
      });
    } else {
      context.problems.add(
        'unreached-place',
        place.span,
        `no rail reaches "${place.id}" from the hatch, and line ${user.line} works there`,
        { expected },
      );
    }
  }
}
