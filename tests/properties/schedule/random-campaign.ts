/** Random very small campaigns in whole minutes: two people, three places, states, a clock, a window, orders and lags. */
import type { Campaign, Role, Stint, Task } from '@handrail/eva/campaign/campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import * as fc from 'fast-check';
import {
  campaign,
  clock,
  eva,
  hardware,
  hardwareModel,
  NO_LIMITS,
  passages,
  person,
  rail,
  role,
  type ShortEffects,
  SPAN,
  stint,
  task,
  windowSet,
} from './small-campaign.ts';

export interface RandomCase {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly wallMin: number;
}

const HOLDERS = ['place:porch', 'person:EV1', 'person:EV2', 'place:bay'];
const place = fc.constantFrom('porch', 'mast', 'bay');
const who = fc.constantFrom<readonly string[]>(['EV1'], ['EV2'], ['EV1', 'EV2']);
const effect = fc.constantFrom<ShortEffects>(
  {},
  {},
  { needs: ['x=a'] },
  { needs: ['x=b'] },
  { during: ['x=b'] },
  { needs: ['x=a'], leaves: ['x=b'] },
  { needs: ['x=b'], leaves: ['x=a'] },
  { needs: ['x=b'], leaves: ['x=b'] },
  { leaves: ['y=b'] },
  { needs: ['y=b'] },
  { leaves: ['x=b'], during: ['y=a'] },
  {
    needs: ['box.holder=place:porch'],
    leaves: ['box.holder=role:0'],
    more: { carriesOut: [{ role: 0, item: 'box' }] },
  },
  {
    needs: ['box.holder=role:0'],
    leaves: ['box.holder=place:bay'],
    more: { carriesIn: [{ role: 0, item: 'box' }] },
  },
);
const stintShape = fc.record({
  minutes: fc.array(fc.integer({ min: 1, max: 2 }), { minLength: 1, maxLength: 2 }),
  at: place,
  who,
  partnered: fc.integer({ min: 0, max: 4 }),
  restrained: fc.boolean(),
  voice: fc.boolean(),
  window: fc.constantFrom('none' as const, 'none' as const, 'none' as const, 'inside' as const, 'outside' as const),
  after: fc.constantFrom('none', 'none', 'least', 'most'),
  effect,
});

export const randomCase: fc.Arbitrary<RandomCase> = fc
  .record({
    stints: fc.array(stintShape, { minLength: 2, maxLength: 4 }),
    free: fc.boolean(),
    wallMin: fc.integer({ min: 9, max: 17 }),
    night: fc.integer({ min: 2, max: 8 }),
    nightLength: fc.integer({ min: 2, max: 6 }),
    clockMin: fc.integer({ min: 0, max: 6 }),
    restraintMin: fc.constantFrom(0, 1),
    passageMin: fc.constantFrom(0, 1),
    pace: fc.constantFrom(1, 1, 2),
  })
  .map(({ stints: shapes, free, wallMin, night, nightLength, clockMin, restraintMin, passageMin, pace }) => {
    const effects: Record<string, ShortEffects> = {};
    const built = shapes.map((shape, i): Stint => {
      // Stints 0 and 1 make one task where there are four: tasks of more than one stint must occur.
      const owner = shapes.length === 4 && i === 1 ? 't0' : `t${i}`;
      const key = `${owner}/s${i}`;
      effects[key] = shape.effect;
      const restraint = shape.restrained ? 'r1' : null;
      const roles: Role[] = [role('lead', shape.who, shape.at, { restraint })];
      if (shape.partnered === 0) roles.push(role('partner', ['EV1', 'EV2'], shape.at));
      // A partner for the last of two steps only.
      if (shape.partnered === 1 && shape.minutes.length === 2) {
        roles.push(role('partner', ['EV1', 'EV2'], shape.at, { fromStep: 1, toStep: 2 }));
      }
      const previous = i > 0 && shape.after !== 'none' ? shapes[i - 1] : undefined;
      const before = shapes.length === 4 && i === 2 ? 't0/s1' : `t${i - 1}/s${i - 1}`;
      const lag = { leastS: 60, mostS: shape.after === 'most' ? 180 : null, span: SPAN };
      return stint(key, shape.minutes, roles, {
        voice: shape.voice,
        after: previous === undefined || owner === 't0' ? [] : [{ stint: before, ...lag }],
        windowUses:
          shape.window === 'none'
            ? []
            : [
                {
                  window: 'night',
                  mode: shape.window,
                  part: 'whole',
                  fromStep: 0,
                  toStep: 1,
                  prefers: false,
                  span: SPAN,
                },
              ],
      });
    });
    const owners = [...new Set(built.map((s) => s.task))];
    const tasks: Task[] = owners.map((id, i) =>
      task(
        id,
        i + 1,
        built.filter((s) => s.task === id),
        { order: free ? 'free' : 'written' },
      ),
    );
    const short = () =>
      JSON.stringify({
        shapes,
        free,
        wallMin,
        night: [night, night + nightLength],
        clockMin,
        restraintMin,
        passageMin,
        pace,
      });
    return {
      [fc.toStringMethod]: short,
      campaign: campaign({
        people: [person('EV1'), person('EV2', { pace })],
        evas: [
          eva('one', { ...passages(['EV1', 'EV2'], passageMin), closeHatchS: passageMin * 60, longestS: wallMin * 60 }),
        ],
        tasks,
        rails: [rail('porch', 'mast', 2), rail('porch', 'bay', 1)],
        more: {
          hardware: [hardware('box', { loadClass: 'large' })],
          clocks: clockMin === 0 ? [] : [clock('cold', clockMin, 'x=b', 'y=b')],
          windows: [windowSet('night', [[night, night + nightLength]])],
          limits: { ...NO_LIMITS, restraintIngressS: restraintMin * 60, restraintEgressS: restraintMin * 60 },
        },
      }),
      hardware: hardwareModel({ x: ['a', 'b'], y: ['a', 'b'], 'box.holder': HOLDERS }, effects, built),
      wallMin,
    };
  });
