/*
 * The second method for the history of states: a clock that ticks from second to second and applies, at each tick, first what
 * ends and then what starts. No search, no intervals.
 */
import type { HardwareModel, StintEffects } from '@handrail/eva/hardware/effects';
import { replayContext } from '@handrail/eva/proof/replay/replay-context';
import { StateHistory } from '@handrail/eva/proof/replay/states/state-history';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bareCampaign, SPAN } from '../../reference/routes/bare-campaign.ts';
import { modelOf, role, stint, task } from '../../rejects/replay/build-work.ts';
import { TWO_EVAS } from '../../rejects/replay/two-evas.ts';

interface Drawn {
  readonly startS: number;
  readonly stepsS: readonly number[];
  /** Step after which it writes (−1: at its start), and the value; null: it only looks. */
  readonly writes: readonly { readonly step: number; readonly value: string }[];
}

const drawn = fc
  .record({
    startS: fc.integer({ min: 0, max: 20 }),
    stepsS: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 }),
    writes: fc.array(fc.record({ step: fc.integer({ min: -1, max: 2 }), value: fc.constantFrom('a', 'b', 'c') }), {
      maxLength: 2,
    }),
  })
  .map(
    (one): Drawn => ({
      ...one,
      writes: one.writes
        .filter(
          (write, at, all) => write.step < one.stepsS.length && all.findIndex((x) => x.step === write.step) === at,
        )
        .sort((a, b) => a.step - b.step),
    }),
  );

const END_S = 60;

function historyOf(list: readonly Drawn[]): StateHistory {
  const stints = list.map((one, at) =>
    stint(
      't',
      `s${at}`,
      one.stepsS.map((stepS) => stepS / 60),
      [role('EV1', 'p')],
    ),
  );
  const base = modelOf([], { v: 'start' }, {});
  const effects = new Map<string, StintEffects>();
  list.forEach((one, at) => {
    const origin = { from: 'verb' as const, step: null, words: '', span: SPAN };
    effects.set(`t/s${at}`, {
      stint: `t/s${at}`,
      needs: [],
      tools: [],
      controls: [],
      carriesIn: [],
      carriesOut: [],
      unknowns: [],
      leaves: one.writes.map(({ step, value }) => ({ variable: 'v', value, step, origin })),
      holds: [],
    });
  });
  const model: HardwareModel = { ...base, effects };
  const campaign = bareCampaign({
    tasks: [task('t', 1, 'one', stints)],
    evas: TWO_EVAS.campaign.evas.slice(0, 1).map((eva) => ({ ...eva, egressUtcMs: 0 })),
  });
  const plan = TWO_EVAS.timeline.evas[0];
  if (plan === undefined) throw new Error('the two EVAs have a first one');
  const timeline: Timeline = {
    ...TWO_EVAS.timeline,
    evas: [
      {
        ...plan,
        petZeroUtcMs: 0,
        holds: [],
        stints: list.map((one, at) => {
          let endS = one.startS;
          const stepEndsS = one.stepsS.map((stepS) => (endS += stepS));
          return { stint: `t/s${at}`, startS: one.startS, endS, assigned: ['EV1'], stepEndsS };
        }),
      },
    ],
  };
  return new StateHistory(replayContext(campaign, model, timeline));
}

/** The value that `viewer` sees in each second, by ticking. */
function tick(list: readonly Drawn[], viewer: number): readonly string[] {
  const instant = (one: Drawn, step: number): number =>
    one.startS + one.stepsS.slice(0, step + 1).reduce((sum, stepS) => sum + stepS, 0);
  const seen: string[] = [];
  let value = 'start';
  for (let second = 0; second < END_S; second++) {
    for (const atEnd of [true, false]) {
      list.forEach((one) => {
        for (const write of one.writes) {
          if (write.step >= 0 === atEnd && instant(one, write.step) === second) value = write.value;
        }
      });
    }
    const busy = list.some((one, at) => {
      const [first] = one.writes;
      const last = one.writes.at(-1);
      if (at === viewer || first === undefined || last === undefined) return false;
      return instant(one, first.step) <= second && second < instant(one, last.step);
    });
    seen.push(busy ? 'in work' : value);
  }
  return seen;
}

/** Two stints that write at the same instant race: what is then seen is not defined, and another check tells it. */
function races(list: readonly Drawn[]): boolean {
  const instants = list.flatMap((one) =>
    one.writes.map((write) => one.startS + one.stepsS.slice(0, write.step + 1).reduce((sum, stepS) => sum + stepS, 0)),
  );
  return new Set(instants).size !== instants.length;
}

describe('the history of a state', () => {
  it('is what a clock that ticks from second to second sees', () => {
    let changes = 0;
    fc.assert(
      fc.property(fc.array(drawn, { minLength: 1, maxLength: 4 }), (list) => {
        fc.pre(!races(list));
        const history = historyOf(list);
        for (const viewer of [-1, ...list.keys()]) {
          const ticked = tick(list, viewer);
          const name = viewer === -1 ? null : `t/s${viewer}`;
          const segments = history.during('v', 0, END_S * 1000, name);
          const seen = Array.from(
            { length: END_S },
            (_, second) => segments.findLast((one) => one.fromMs <= second * 1000)?.value,
          );
          expect(seen).toEqual(ticked);
          changes += segments.length - 1;
          // The first second of any shorter stretch shows the same.
          for (const second of [3, 11, 19]) {
            const [first] = history.during('v', second * 1000, (second + 5) * 1000, name);
            expect(first?.value).toBe(ticked[second]);
          }
        }
      }),
      { numRuns: 400, seed: 23 },
    );
    expect(changes).toBeGreaterThan(1000);
  });
});
