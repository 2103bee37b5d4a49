import { formatFindings } from '@handrail/eva/finding/format-finding';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Flight, TWO_EVAS } from '../../rejects/replay/two-evas.ts';
import { BROKEN } from '../../rejects/replay/timelines/all.ts';
import { breakIt } from '../../rejects/replay/broken.ts';

/** The whole campaign and its plan moved by a whole number of milliseconds. */
function shifted({ campaign, model, timeline }: Flight, ms: number): Flight {
  return {
    model,
    campaign: {
      ...campaign,
      evas: campaign.evas.map((eva) => ({ ...eva, egressUtcMs: eva.egressUtcMs + ms })),
      events: campaign.events.map((event) => ({ ...event, atUtcMs: event.atUtcMs + ms })),
      windows: campaign.windows.map((set) => ({
        ...set,
        intervals: set.intervals.map(([a, b]) => [a + ms, b + ms] as const),
      })),
    },
    timeline: { ...timeline, evas: timeline.evas.map((plan) => ({ ...plan, petZeroUtcMs: plan.petZeroUtcMs + ms })) },
  };
}

const rulesOf = ({ campaign, model, timeline }: Flight): readonly string[] =>
  replayTimeline(campaign, model, timeline).map(
    ({ rule, where }) => `${rule} ${where.stint ?? ''} ${where.petS ?? ''}`,
  );

describe('the replay', () => {
  it('says the same of everything moved in time together, broken or not', () => {
    fc.assert(
      fc.property(fc.constantFrom(null, ...BROKEN), fc.integer({ min: -400, max: 400 }), (broken, days) => {
        const flight = broken === null ? TWO_EVAS : breakIt(broken);
        expect(rulesOf(shifted(flight, days * 86_400_000))).toEqual(rulesOf(flight));
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  it('does not depend on the order in which the timeline lists things', () => {
    const reversed = (timeline: Timeline): Timeline => ({
      ...timeline,
      evas: timeline.evas
        .map((plan) => ({
          ...plan,
          stints: [...plan.stints].reverse(),
          passages: [...plan.passages].reverse(),
          moves: [...plan.moves].reverse(),
          tasks: [...plan.tasks].reverse(),
        }))
        .reverse(),
    });
    expect(formatFindings(replayTimeline(TWO_EVAS.campaign, TWO_EVAS.model, reversed(TWO_EVAS.timeline)))).toBe('');
    for (const broken of BROKEN.filter(
      (one) => one.rule !== 'replay/every-stint-once' && one.rule !== 'replay/every-eva-once',
    )) {
      const flight = breakIt(broken);
      const other = { ...flight, timeline: reversed(flight.timeline) };
      expect([...new Set(rulesOf(other))].sort(), broken.name).toEqual([...new Set(rulesOf(flight))].sort());
    }
  });

  it('never gives up on a timeline of the right shape, whatever stands in it, and always notices a changed time', () => {
    const numbers = paths(TWO_EVAS.timeline, (value) => typeof value === 'number');
    const texts = paths(TWO_EVAS.timeline, (value) => typeof value === 'string');
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.constantFrom(...numbers),
            fc.oneof(
              fc.integer({ min: -20_000, max: 20_000 }),
              fc.constantFrom(9_999_999, -9_999_999, 9_999_999_999_999, 1e300, 0.25),
            ),
          ),
          { maxLength: 4 },
        ),
        fc.array(
          fc.tuple(fc.constantFrom(...texts), fc.constantFrom('', 'EV1', 'mid', 'swap/unplug', 'crane', 'box')),
          { maxLength: 3 },
        ),
        (times, names) => {
          const timeline = structuredClone(TWO_EVAS.timeline);
          for (const [path, value] of [...times, ...names]) put(timeline, path, value);
          const findings = replayTimeline(TWO_EVAS.campaign, TWO_EVAS.model, timeline);
          for (const finding of findings) {
            expect(finding.rule).toMatch(/^replay\/[a-z-]+$/);
            expect(finding.why).not.toMatch(/undefined|NaN|\[object/);
            expect(finding.title).not.toMatch(/undefined|NaN|\[object/);
          }
        },
      ),
      { numRuns: 400, seed: 5 },
    );
  });

  it('notices every single start or end that is moved by a quarter of an hour', () => {
    const { campaign, model } = TWO_EVAS;
    const unseen: string[] = [];
    const times = paths(TWO_EVAS.timeline, (value) => typeof value === 'number').filter(
      (path) => path.includes('stints') || path.includes('passages') || path.includes('moves'),
    );
    expect(times.length).toBeGreaterThan(90);
    for (const path of times) {
      for (const byS of [-900, 900]) {
        const timeline = structuredClone(TWO_EVAS.timeline);
        put(timeline, path, (get(timeline, path) as number) + byS);
        if (replayTimeline(campaign, model, timeline).length === 0) unseen.push(`${path.join('.')} ${byS}`);
      }
    }
    // Free to differ: a later end of a way where the person then waits (or an arm has nothing more to do).
    expect(unseen.filter((path) => !/moves\.\d+\.(startS|endS)/.test(path))).toEqual([]);
  });
});

type Path = readonly (string | number)[];

function paths(value: unknown, wanted: (leaf: unknown) => boolean, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return wanted(value) ? [at] : [];
  return Object.entries(value).flatMap(([key, inner]) =>
    paths(inner, wanted, [...at, Array.isArray(value) ? Number(key) : key]),
  );
}

function get(target: unknown, path: Path): unknown {
  return path.reduce<unknown>((at, key) => (at as Record<string | number, unknown>)[key], target);
}

function put(target: unknown, path: Path, value: unknown): void {
  (get(target, path.slice(0, -1)) as Record<string | number, unknown>)[path.at(-1) as string | number] = value;
}
