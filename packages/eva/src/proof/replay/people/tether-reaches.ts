/**
 * Walks every safety tether along the paths of the plan. A tether is an anchor and the fairleads that it was led through; where an
 * anchor stands it may be moved there. All possibilities that the plan leaves open are kept; a finding is told when none is left.
 * Told too: a reel that is too short, moves without time for the swaps, a tether over a joint that may turn.
 */
import { formatDuration } from '@handrail/quantity/time';
import type { Person, Rail } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';
import type { StateHistory } from '../states/state-history.ts';
import { type Doing, type Lane, nameOf } from './lane.ts';
import { loadClassOf, loadsInHand, railsBetween, whyClosed } from './rails.ts';

/** One way in which the tether may lie. */
interface Lie {
  readonly anchor: string;
  /** Rails with fairleads that it was led through, outward; and the place from which each was entered. */
  readonly threaded: readonly { readonly rail: Rail; readonly from: string }[];
  /** Rails walked since the anchor, with what was walked back taken off. */
  readonly walked: readonly { readonly rail: Rail; readonly from: string }[];
  /** Swaps in the present move, and its time on the rails so far at pace 1. */
  readonly swaps: number;
  readonly timeS: number;
}

export function tetherReaches(context: ReplayContext, history: StateHistory, lanes: readonly Lane[]): Finding[] {
  const findings: Finding[] = [];
  for (const lane of lanes) {
    const person = context.people.get(lane.who);
    if (person?.role !== 'outside' || person.startAnchor === null || person.tetherLengthM === null) continue;
    if (context.campaign.limits.tetherSwapS === null || context.campaign.vehicle.hatch === null) continue;
    if (railLengths(context) === null) continue;
    findings.push(...walkTether(context, history, lane, person, person.startAnchor));
  }
  return findings;
}

function walkTether(
  context: ReplayContext,
  history: StateHistory,
  lane: Lane,
  person: Person,
  startAnchor: string,
): Finding[] {
  const findings: Finding[] = [];
  const reelM = person.tetherLengthM as number;
  const anchors = anchorsByPlace(context);
  const reaches = new Map<string, Reach>();
  /** Tethers lie along rails that are open at the time. */
  const reachAt = (fromMs: number, toMs: number): Reach => {
    const closed = context.campaign.vehicle.rails
      .filter((rail) => whyClosed(rail, history, fromMs, toMs) !== null)
      .map((rail) => rail.id);
    const name = closed.join(' ');
    const reach = reaches.get(name) ?? new Reach(context, new Set(closed));
    reaches.set(name, reach);
    return reach;
  };
  const start = anchorPlace(context, startAnchor);
  if (start === null) return [];
  let lies: readonly Lie[] = [{ anchor: startAnchor, threaded: [], walked: [], swaps: 0, timeS: 0 }];
  let place = context.hatch;
  const zero = lane.plan.petZeroUtcMs;
  const tell = (rule: `replay/${string}`, doing: Doing, title: string, why: string, mend: string): void => {
    const stint = doing.kind === 'stint' ? doing.placed.stint.key : null;
    findings.push(noticed(rule, { title, why, mend, eva: lane.eva, person: lane.who, stint, petS: doing.startS }));
  };
  /** A tether that is not known to lie anywhere: on any anchor that reaches here. */
  const anyLie = (at: string, reach: Reach): readonly Lie[] =>
    [...anchors.values()]
      .flat()
      .filter((anchor) => reach.lengthM(anchorPlace(context, anchor) ?? at, [], at) <= reelM + 1e-9)
      .map((anchor) => ({ anchor, threaded: [], walked: [], swaps: 0, timeS: 0 }));
  lane.doings.forEach((doing, index) => {
    const startMs = zero + doing.startS * 1000;
    const reach = reachAt(startMs, zero + doing.endS * 1000);
    if (doing.kind === 'stint') {
      if (doing.role.startOn !== null || doing.role.endOn !== null || doing.role.at !== doing.role.to) {
        lies = anyLie(doing.role.to, reach);
      }
      place = doing.role.to;
    }
    if (doing.kind === 'move') {
      const { move } = doing;
      if (move.path[0] !== place) lies = anyLie(move.path[0] ?? place, reach);
      const loads = loadsInHand(context, history, lane.who, startMs).map((item) => loadClassOf(context, item));
      const factor = Math.max(1, ...loads.map((load) => load?.factor ?? 1));
      const isOpen = (rail: Rail): boolean =>
        whyClosed(rail, history, startMs, zero + doing.endS * 1000) === null &&
        !loads.some((load) => load !== null && rail.refuses.includes(load.id));
      let walked: readonly Lie[] = lies.map((lie) => ({ ...lie, swaps: 0, timeS: 0 }));
      walked = withSwaps(walked, anchors.get(move.path[0] ?? '') ?? []);
      for (let at = 1; at < move.path.length; at++) {
        const [a, b] = [move.path[at - 1] as string, move.path[at] as string];
        const rails = railsBetween(context.campaign, a, b);
        const open = rails.filter(isOpen);
        walked = distinct(
          walked.flatMap((lie) => (open.length > 0 ? open : rails).flatMap((rail) => step(lie, rail, a, factor))),
        ).filter((lie) => reach.lengthM(anchorPlace(context, lie.anchor) ?? a, lie.threaded, b) <= reelM + 1e-9);
        walked = withSwaps(walked, anchors.get(b) ?? []);
      }
      const ended = move.anchor === null ? walked : walked.filter((lie) => lie.anchor === move.anchor);
      place = move.to;
      if (ended.length === 0) {
        const from = [...new Set(lies.map((lie) => lie.anchor))].join(' or ');
        tell(
          'replay/tether-reaches',
          doing,
          `${lane.who}'s tether does not allow ${nameOf(doing)}`,
          `from ${from || 'no anchor'} with ${reelM} m of reel along ${move.path.join(' → ')}${move.anchor === null ? '' : `, to end on ${move.anchor}`}: no way of leading it fits`,
          'move the tether at an anchor on the way, or go back the way it was led',
        );
        lies = anyLie(move.to, reach);
        return;
      }
      const swapS = context.campaign.limits.tetherSwapS ?? 0;
      const needS = Math.min(...ended.map((lie) => (lie.timeS + lie.swaps * swapS) * person.pace));
      // Shorter than the rails alone is told where the rails are walked.
      const railsS = Math.min(...ended.map((lie) => lie.timeS)) * person.pace;
      const takesS = move.endS - move.startS;
      if (takesS < needS - 1e-6 && takesS >= railsS - 1e-6) {
        tell(
          'replay/tether-swaps-take-their-time',
          doing,
          `${lane.who} has no time to move the tether on ${nameOf(doing)}`,
          `rails and swaps take ${formatDuration(needS)}; planned ${formatDuration(move.endS - move.startS)}`,
          `allow ${formatDuration(needS)}`,
        );
      }
      lies = ended;
    }
    if (doing.kind === 'passage' && doing.passage.kind === 'ingress' && lies.every((lie) => lie.threaded.length > 0)) {
      const passed = lies[0]?.threaded.map(({ rail }) => rail.fairlead ?? rail.id).join(', ') ?? '';
      tell(
        'replay/tether-is-led-back-as-it-was-led-out',
        doing,
        `${lane.who} comes in with the tether still through a fairlead`,
        `led out through ${passed} and not back through it`,
        'go home the way the tether was led, or move it at an anchor',
      );
    }
    const until = lane.doings[index + 1]?.startS ?? doing.endS;
    const closed = overJoint(lies, history, startMs, zero + until * 1000);
    if (closed !== null) {
      tell(
        'replay/no-tether-over-a-joint-that-turns',
        doing,
        `${lane.who}'s tether lies over a joint that may turn`,
        closed,
        'keep the joint parked while the tether lies there, or move the tether past it',
      );
    }
  });
  return findings;
}

/** Crossing a rail: it threads a fairlead outward, unthreads the last one inward; null where the tether forbids it. */
function step(lie: Lie, rail: Rail, from: string, factor: number): readonly Lie[] {
  const to = rail.from === from ? rail.to : rail.from;
  const timeS = lie.timeS + rail.durationS * factor;
  const back = lie.walked.at(-1);
  const walked =
    back !== undefined && back.rail === rail && back.from === to
      ? lie.walked.slice(0, -1)
      : [...lie.walked, { rail, from }];
  if (rail.fairlead === null) return [{ ...lie, walked, timeS }];
  const last = lie.threaded.at(-1);
  if (last !== undefined && last.rail === rail && last.from === to) {
    return [{ ...lie, walked, timeS, threaded: lie.threaded.slice(0, -1) }];
  }
  if (lie.threaded.some((one) => one.rail === rail)) return [];
  return [{ ...lie, walked, timeS, threaded: [...lie.threaded, { rail, from }] }];
}

function withSwaps(lies: readonly Lie[], anchorsHere: readonly string[]): readonly Lie[] {
  const swapped = lies.flatMap((lie) =>
    anchorsHere
      .filter((anchor) => anchor !== lie.anchor)
      .map((anchor) => ({ anchor, threaded: [], walked: [], swaps: lie.swaps + 1, timeS: lie.timeS })),
  );
  return distinct([...lies, ...swapped]);
}

/** Of lies that differ in nothing but time, the one with the fewest swaps and then the least time. */
function distinct(lies: readonly Lie[]): readonly Lie[] {
  const kept = new Map<string, Lie>();
  for (const lie of lies) {
    const name = [
      lie.anchor,
      ...lie.threaded.map((one) => one.rail.id),
      '|',
      ...lie.walked.map((one) => one.rail.id),
    ].join(' ');
    const other = kept.get(name);
    if (other === undefined || lie.swaps < other.swaps || (lie.swaps === other.swaps && lie.timeS < other.timeS)) {
      kept.set(name, lie);
    }
  }
  return [...kept.values()];
}

/** Told only if every way in which the tether may lie has a joint under it that does not stay as it must. */
function overJoint(lies: readonly Lie[], history: StateHistory, fromMs: number, toMs: number): string | null {
  let found: string | null = null;
  for (const lie of lies) {
    const why = lie.walked.map(({ rail }) => whyClosed(rail, history, fromMs, toMs)).find((one) => one !== null);
    if (why === undefined) return null;
    found = why;
  }
  return found;
}

function anchorsByPlace(context: ReplayContext): ReadonlyMap<string, readonly string[]> {
  const starts = new Set(context.campaign.people.map((person) => person.startAnchor));
  const found = new Map<string, string[]>();
  for (const piece of context.campaign.hardware) {
    if (piece.at.kind !== 'place' || (piece.kind !== 'anchor' && !starts.has(piece.id))) continue;
    found.set(piece.at.id, [...(found.get(piece.at.id) ?? []), piece.id]);
  }
  return found;
}

function anchorPlace(context: ReplayContext, anchor: string): string | null {
  const at = context.hardware.get(anchor)?.at;
  return at?.kind === 'place' ? at.id : null;
}

/** Metres of each rail; null when one is neither given nor follows from positions. */
function railLengths(context: ReplayContext): ReadonlyMap<string, number> | null {
  const { places, rails } = context.campaign.vehicle;
  const lengths = new Map<string, number>();
  for (const rail of rails) {
    const a = places.find((place) => place.id === rail.from)?.positionM ?? null;
    const b = places.find((place) => place.id === rail.to)?.positionM ?? null;
    const lengthM =
      rail.lengthM ?? (a === null || b === null ? null : Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]));
    if (lengthM === null) return null;
    lengths.set(rail.id, lengthM);
  }
  return lengths;
}

/** Metres of tether between points, along rails. */
class Reach {
  private readonly rails: readonly { readonly rail: Rail; readonly lengthM: number }[];
  private readonly rows = new Map<string, ReadonlyMap<string, number>>();
  private readonly placeCount: number;

  constructor(context: ReplayContext, closed: ReadonlySet<string>) {
    const { places, rails } = context.campaign.vehicle;
    const lengths = railLengths(context) ?? new Map<string, number>();
    const keptOut = new Set(places.filter((place) => place.keepOut).map((place) => place.id));
    this.rails = rails
      .filter((rail) => !closed.has(rail.id) && !keptOut.has(rail.from) && !keptOut.has(rail.to))
      .map((rail) => ({ rail, lengthM: lengths.get(rail.id) ?? 0 }));
    this.placeCount = places.length;
  }

  lengthM(anchorAt: string, threaded: Lie['threaded'], place: string): number {
    const points = [anchorAt, ...threaded.map(({ rail, from }) => rail.fairlead ?? from), place];
    let sum = 0;
    for (let at = 1; at < points.length; at++) {
      sum += this.row(points[at - 1] as string).get(points[at] as string) ?? Number.POSITIVE_INFINITY;
    }
    return sum;
  }

  private row(from: string): ReadonlyMap<string, number> {
    const made = this.rows.get(from);
    if (made !== undefined) return made;
    const best = new Map<string, number>([[from, 0]]);
    for (let round = 0, changed = true; changed && round < this.placeCount; round++) {
      changed = false;
      for (const { rail, lengthM } of this.rails) {
        for (const [a, b] of [[rail.from, rail.to] as const, [rail.to, rail.from] as const]) {
          const length = (best.get(a) ?? Number.POSITIVE_INFINITY) + lengthM;
          if (length < (best.get(b) ?? Number.POSITIVE_INFINITY)) {
            best.set(b, length);
            changed = true;
          }
        }
      }
    }
    this.rows.set(from, best);
    return best;
  }
}
