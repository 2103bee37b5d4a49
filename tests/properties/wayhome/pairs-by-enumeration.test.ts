/**
 * Small random plans, flown in every way that whole minutes within the bounds allow, by a crew written here that knows nothing of
 * networks: what happens is among the pairs that can stand side by side, where nobody waits nothing else is, and each of them has an
 * execution whose links are checked one by one.
 */
import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import type { Segment } from '@handrail/eva/wayhome/segments';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SmallCase, smallCase } from './small-case.ts';

type Who = 'EV1' | 'EV2';
const BOTH: readonly Who[] = ['EV1', 'EV2'];
interface Work {
  readonly who: Who;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** Comes this much after the end of another's, min. */
  readonly after: { readonly work: number; readonly least: number } | null;
}
/** In the order of their planned starts. */
type Plan = readonly Work[];

const REACTION = 1;
/** All at one place, 5 min from the hatch. */
const PLACE = 'side';
/** Passages and ways in the order in which they are flown: two out, two to work, two home, two in. */
const LEGS = 8;
const LEG = 5;

/** Everything that somebody does, in minutes; waits are what lies between. */
type Course = readonly (readonly [start: number, end: number])[];
interface Flight {
  /** End of each work. */
  readonly ends: readonly number[];
  readonly courses: Readonly<Record<Who, Course>>;
  readonly closed: number;
}
interface Crew {
  readonly minutesOf: (work: number) => number;
  readonly legs: readonly number[];
  /** How long a call takes to be acted on. */
  readonly hears: number;
  /** null: all go on as soon as they may. */
  readonly planned: Flight | null;
}

/** EV1 out first and in last; who is free begins, or waits for the planned time. */
function fly(plan: Plan, { minutesOf, legs, hears, planned }: Crew): Flight {
  const [out1 = LEG, out2 = LEG, to1 = LEG, to2 = LEG, home1 = LEG, home2 = LEG, in2 = LEG, in1 = LEG] = legs;
  const courses: Record<Who, (readonly [number, number])[]> = { EV1: [], EV2: [] };
  const doIt = (who: Who, ready: number, minutes: number): void => {
    const before = courses[who].at(-1)?.[1] ?? 0;
    const notBefore = planned?.courses[who][courses[who].length]?.[0] ?? 0;
    const start = Math.max(before, ready, notBefore);
    courses[who].push([start, start + minutes]);
  };
  const ends: number[] = [];
  const endOf = (who: Who): number => courses[who].at(-1)?.[1] ?? 0;
  doIt('EV1', 0, out1);
  doIt('EV2', endOf('EV1'), out2);
  doIt('EV1', 0, to1);
  doIt('EV2', 0, to2);
  plan.forEach(({ who, after }, at) => {
    const isCalled = after !== null && plan[after.work]?.who !== who;
    const delay = after === null ? 0 : Math.max(after.least, isCalled ? hears : 0);
    doIt(who, after === null ? 0 : (ends[after.work] as number) + delay, minutesOf(at));
    ends[at] = endOf(who);
  });
  doIt('EV1', 0, home1);
  doIt('EV2', 0, home2);
  doIt('EV2', 0, in2);
  doIt('EV1', endOf('EV2'), in1);
  const close = Math.max(endOf('EV1'), planned === null ? 0 : planned.closed - LEG);
  return { ends, courses, closed: close + LEG };
}

function asPlanned(plan: Plan): Flight {
  return fly(plan, { minutesOf: (at) => plan[at]?.likely ?? 0, legs: [], hears: REACTION, planned: null });
}

function caseOf(plan: Plan, slowest = 1): SmallCase {
  const { courses, closed } = asPlanned(plan);
  const text = plan.map(({ who, low, likely, high, after }, at) => {
    const bounds = low === high ? `minutes ${likely}` : `minutes low=${low} likely=${likely} high=${high}`;
    const lag =
      after === null ? '' : `; after "t/w${after.work}"${after.least > 0 ? ` least="${after.least} min"` : ''}`;
    return `stint w${at} "t/w${at}" who=${who} at=${PLACE} { inspect ${PLACE}; ${bounds}${lag} }`;
  });
  const pet = (minutes: number): string => `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
  const lines = BOTH.flatMap((who) => {
    const names = plan.flatMap((work, at) => (work.who === who ? [`t/w${at}`] : []));
    const words = ['out', `porch > ${PLACE}`, ...names, `${PLACE} > porch`, 'in'];
    return courses[who].map(([start, end], at) => `${who} ${pet(start)}-${pet(end)} ${words[at] ?? ''}`);
  });
  return smallCase(
    `limits { reaction "${REACTION} min"; travel-spread least=1 most=${slowest} }\ntask t rank=1 eva=day {\n${text.join('\n')}\n}\n`,
    `eva day\n${lines.join('\n')}\nhatch ${pet(closed - LEG)}-${pet(closed)}\nwall 6:00 longest EVA`,
  );
}

/** Minutes of each work that a proof counts on, read from the campaign. */
function boundsOf(small: SmallCase): readonly (readonly [number, number])[] {
  return small.campaign.tasks.flatMap(({ stints }) =>
    stints.map(({ duration }) => [duration.boundsS[0] / 60, duration.boundsS[1] / 60] as const),
  );
}

/** Every choice of a whole number within each range. */
function* choices(ranges: readonly (readonly [number, number])[]): Generator<readonly number[]> {
  const [first, ...rest] = ranges;
  if (first === undefined) {
    yield [];
    return;
  }
  for (let one = Math.ceil(first[0]); one <= first[1]; one++) for (const more of choices(rest)) yield [one, ...more];
}

function* flights(plan: Plan, small: SmallCase): Generator<Flight> {
  const planned = asPlanned(plan);
  for (const minutes of choices(boundsOf(small))) {
    for (const hears of [0, REACTION]) {
      for (const kept of [null, planned])
        yield fly(plan, { minutesOf: (at) => minutes[at] ?? 0, legs: [], hears, planned: kept });
    }
  }
}

interface Stay {
  readonly from: number;
  readonly to: number;
  /** Segments that say where somebody is then: one, or before and after a wait that is not planned. */
  readonly as: readonly Segment[];
}

function staysOf(segments: readonly Segment[], course: Course, closed: number): readonly Stay[] {
  const stays: Stay[] = [];
  let done = 0;
  let at = 0;
  segments.forEach((segment, index) => {
    if (segment.kind === 'inside' || segment.kind === 'wait') {
      const to = course[done]?.[0] ?? closed;
      stays.push({ from: at, to, as: [segment] });
      at = to;
      return;
    }
    const [from, to] = course[done++] as readonly [number, number];
    if (from > at) stays.push({ from: at, to: from, as: [segments[index - 1] as Segment, segment] });
    stays.push({ from, to, as: [segment] });
    at = to;
  });
  return stays;
}

const name = ({ a, b }: { readonly a: Segment; readonly b: Segment }): string =>
  [a, b].map(({ person, index, kind, stint }) => `${person}#${index} ${kind} ${stint ?? ''}`).join(' with ');

/** Longest after each other by each one's own course: what may come after what. */
const planOf = (spread: number, most: number, waits: boolean): fc.Arbitrary<Plan> =>
  fc
    .array(
      fc.record({
        who: fc.constantFrom<Who>('EV1', 'EV2'),
        likely: fc.integer({ min: 2, max: 9 }),
        less: fc.integer({ min: 0, max: waits ? spread : 0 }),
        more: fc.integer({ min: 0, max: spread }),
        after: fc.option(fc.record({ work: fc.nat(), least: fc.constantFrom(0, 0, 3) }), { freq: 3 }),
      }),
      { minLength: 2, maxLength: most },
    )
    .map((list) =>
      list.map(({ who, likely, less, more, after }, at) => ({
        who,
        low: Math.max(1, likely - less),
        likely,
        high: likely + more,
        after: !waits || after === null || at === 0 ? null : { work: after.work % at, least: after.least },
      })),
    );

describe('every execution of a small plan', () => {
  test('stays among the pairs, in their range, no longer after what is done than they say, also where somebody waits without it being planned', () => {
    fc.assert(
      fc.property(planOf(2, 5, true), (plan) => {
        const small = caseOf(plan);
        const [a = [], b = []] = small.progress.segments;
        const pairs = new Map(small.progress.network.pairs().map((pair) => [name(pair), pair]));
        const { network } = small.progress;
        const doneAt = plan.map((_, at) => network.eventOf(`t/w${at}`, 1));
        for (const { ends, courses, closed } of flights(plan, small)) {
          for (const one of staysOf(a, courses.EV1, closed)) {
            for (const two of staysOf(b, courses.EV2, closed)) {
              const [from, to] = [Math.max(one.from, two.from), Math.min(one.to, two.to)];
              if (from >= to) continue;
              const all = one.as.flatMap((x) => two.as.map((y) => ({ a: x, b: y })));
              const found = all.some((pair) => {
                const known = pairs.get(name(pair));
                if (known === undefined || known.fromS > from * 60 + 1e-6 || known.toS < to * 60 - 1e-6) return false;
                // And what is done may be so long ago.
                return ends.every(
                  (end, at) =>
                    end > from || network.mostSinceS(doneAt[at] ?? null, [pair.a, pair.b]) >= (to - end) * 60 - 1e-6,
                );
              });
              if (!found) {
                const is = all.map((pair) => ({ ...pairs.get(name(pair)), pair: name(pair) }));
                expect.fail(
                  `${from}–${to} min: ${is.map((x) => `${x.pair} [${x.fromS ?? '-'}, ${x.toS ?? '-'}]`).join(' | ')}`,
                );
              }
            }
          }
        }
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  test('makes up all the pairs where nobody waits for anybody', () => {
    fc.assert(
      fc.property(planOf(2, 3, false), (plan) => {
        // Legs of 5 or 6 min: what comes before both may be short or long, for both alike.
        const small = caseOf(plan, (LEG + 1) / LEG);
        const bounds = boundsOf(small);
        const legs = Array.from({ length: LEGS }, (): readonly [number, number] => [LEG, LEG + 1]);
        const [a = [], b = []] = small.progress.segments;
        const met = new Set<string>();
        for (const drawn of choices([...legs, ...bounds])) {
          const minutesOf = (at: number): number => drawn[LEGS + at] ?? 0;
          const { courses, closed } = fly(plan, { minutesOf, legs: drawn.slice(0, LEGS), hears: 0, planned: null });
          const [ones, twos] = [staysOf(a, courses.EV1, closed), staysOf(b, courses.EV2, closed)];
          for (const one of ones) {
            for (const two of twos) {
              const [x] = one.as as readonly [Segment, ...Segment[]];
              const [y] = two.as as readonly [Segment, ...Segment[]];
              if (one.as.length + two.as.length > 2 || x.kind === 'wait' || y.kind === 'wait') continue;
              if (Math.max(one.from, two.from) >= Math.min(one.to, two.to)) continue;
              met.add(name({ a: x, b: y }));
            }
          }
        }
        // The one wait is in front of the hatch: an empty one lies within anything.
        const pairs = small.progress.network.pairs().filter((pair) => pair.a.kind !== 'wait' && pair.b.kind !== 'wait');
        expect(pairs.map(name).sort()).toEqual([...met].sort());
      }),
      { numRuns: 25, seed: 12 },
    );
  });
});

describe('each pair', () => {
  test('has an execution in which both are so, link by link', () => {
    let looked = 0;
    fc.assert(
      fc.property(planOf(2, 5, true), (plan) => {
        const small = caseOf(plan);
        const network = flexiblePlan(small.campaign, small.hardware, small.timeline, small.eva.eva);
        if (network === null) throw new Error('the hatch is closed in the plan');
        const links: Link[] = [
          ...network.requirements.map(({ from, to, leastS, atOnceS, mostS, kind }) => ({
            from,
            to,
            leastS: atOnceS ?? leastS ?? Number.NEGATIVE_INFINITY,
            mostS:
              kind === 'hatch' || kind === 'same-time' ? (mostS ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY,
          })),
          ...network.contingents,
        ];
        const spans = BOTH.map((who) => spansOf(network, small.progress.segments[BOTH.indexOf(who)] ?? [], who));
        for (const { a, b } of small.progress.network.pairs()) {
          const [one, two] = [spans[0]?.get(a), spans[1]?.get(b)] as [Span, Span];
          const times = execution(network.events.length, [
            ...links,
            ...[one, two].flatMap(([from]) =>
              [one, two].map(([, to]) => ({ from, to, leastS: 1, mostS: Number.POSITIVE_INFINITY })),
            ),
          ]);
          for (const { from, to, leastS, mostS } of links) {
            const lengthS = (times[to] as number) - (times[from] as number);
            expect(lengthS >= leastS && lengthS <= mostS, name({ a, b })).toBe(true);
          }
          const [startA, endA, startB, endB] = [...one, ...two].map((event) => times[event] as number) as [
            number,
            number,
            number,
            number,
          ];
          expect(Math.max(startA, startB), name({ a, b })).toBeLessThan(Math.min(endA, endB));
          looked++;
        }
      }),
      { numRuns: 40, seed: 13 },
    );
    expect(looked).toBeGreaterThan(500);
  });
});

interface Link {
  readonly from: number;
  readonly to: number;
  readonly leastS: number;
  readonly mostS: number;
}
type Span = readonly [start: number, end: number];

/** Where segments lie, told by the words of the events; waits lie between what is done. */
function spansOf(
  { events, petZero, bothIn }: { events: readonly { words: string }[]; petZero: number; bothIn: number },
  segments: readonly Segment[],
  who: Who,
): ReadonlyMap<Segment, Span> {
  const at = (words: string): number => {
    const found = events.findIndex((event) => event.words === words);
    if (found < 0) throw new Error(`no event "${words}"`);
    return found;
  };
  const own = segments.map((segment): Span | null => {
    const { kind, stint, rail } = segment;
    if (kind === 'inside' || kind === 'wait') return null;
    const words =
      kind === 'work'
        ? `"${stint ?? ''}"`
        : kind === 'move'
          ? `${who}'s way from ${rail?.[0] ?? ''} to ${rail?.[1] ?? ''}`
          : `${kind === 'in' ? 'ingress' : 'egress'} of ${who}`;
    return [at(`the start of ${words}`), at(`the end of ${words}`)];
  });
  return new Map(
    segments.map((segment, index) => {
      const before = own.slice(0, index).findLast((one) => one !== null);
      const after = own.slice(index + 1).find((one) => one !== null);
      return [segment, own[index] ?? [before?.[1] ?? petZero, after?.[0] ?? bothIn]];
    }),
  );
}

/** Earliest times from the first event on that keep all links: raised until nothing is left to raise. */
function execution(size: number, links: readonly Link[]): readonly number[] {
  const times = Array.from({ length: size }, () => 0);
  for (let round = 0, changed = true; changed; round++) {
    if (round > size) throw new Error('no execution');
    changed = false;
    for (const { from, to, leastS, mostS } of links) {
      const least = (times[from] as number) + leastS;
      if (least > (times[to] as number)) [times[to], changed] = [least, true];
      const back = (times[to] as number) - mostS;
      if (back > (times[from] as number)) [times[from], changed] = [back, true];
    }
  }
  return times;
}
