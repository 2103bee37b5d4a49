/**
 * Timelines of larger campaigns, with everything in them at once: two EVAs, a ride on the arm, requests that may not be held for
 * long, shared tools and restraints, boxes carried, an outside event, eclipse, joins. The search is stopped early; whatever
 * it has found by then passes the independent checker and the replay (see plan-checked.ts).
 */
import type { Join, Role, Stint, Task } from '@handrail/eva/campaign/campaign';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planChecked } from './plan-checked.ts';
import {
  arm,
  campaign,
  clock,
  EGRESS_MS,
  eva,
  hardware,
  hardwareModel,
  NO_LIMITS,
  passages,
  person,
  rail,
  request,
  role,
  type ShortEffects,
  SPAN,
  stint,
  task,
  windowSet,
} from './small-campaign.ts';

const PLACES = ['porch', 'deck', 'bay', 'mast', 'wing'];
const shape = fc.record({
  minutes: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 3 }),
  place: fc.constantFrom(...PLACES),
  who: fc.constantFrom<readonly string[]>(['EV1'], ['EV2'], ['EV1', 'EV2']),
  partner: fc.constantFrom('none', 'none', 'whole', 'last'),
  restraint: fc.constantFrom(null, null, 'r1', 'r2'),
  voice: fc.boolean(),
  under: fc.constantFrom<readonly string[]>([], [], ['bus-off'], ['lock-off']),
  window: fc.constantFrom('none', 'none', 'none', 'inside', 'outside'),
  tool: fc.boolean(),
  link: fc.integer({ min: 0, max: 5 }),
  sameTask: fc.boolean(),
  evas: fc.constantFrom<readonly string[]>(['one'], ['two'], ['one', 'two']),
});

const ride: readonly Stint[] = [
  stint('ride/on', [3], [role('lead', ['EV2'], 'deck', { endOn: 'crane' }), role('arm', ['crane'], 'at-deck')]),
  stint(
    'ride/go',
    [7],
    [
      role('lead', ['EV2'], 'deck', { to: 'bay', startOn: 'crane', endOn: 'crane' }),
      role('arm', ['crane'], 'at-deck', { to: 'at-bay' }),
    ],
  ),
  stint('ride/off', [2], [role('lead', ['EV2'], 'bay', { startOn: 'crane' }), role('arm', ['crane'], 'at-bay')]),
];

interface Drawn {
  readonly shapes: readonly (typeof shape extends fc.Arbitrary<infer T> ? T : never)[];
  readonly eventMin: number;
  readonly longestMin: number;
}

function build({ shapes, eventMin, longestMin }: Drawn) {
  const effects: Record<string, ShortEffects> = {};
  const variables: Record<string, readonly string[]> = {
    joint: ['turning', 'parked'],
    'driver.holder': ['place:porch', ...PLACES.map((id) => `place:${id}`)],
    'box.holder': ['place:mast', 'person:EV1', 'person:EV2', 'place:wing'],
  };
  const stints: Stint[] = [];
  let owner = 't0';
  for (const [i, one] of shapes.entries()) {
    if (i > 0 && !one.sameTask) owner = `t${i}`;
    const key = `${owner}/s${i}`;
    const roles: Role[] = [role('lead', one.who, one.place, { restraint: one.restraint })];
    if (one.partner === 'whole') roles.push(role('partner', ['EV1', 'EV2'], one.place));
    if (one.partner === 'last' && one.minutes.length > 1) {
      const last = one.minutes.length;
      roles.push(role('partner', ['EV1', 'EV2'], one.place, { fromStep: last - 1, toStep: last }));
    }
    variables[`v${i}`] = ['before', 'after'];
    const needs = [`v${i}=before`];
    if (one.link > 0 && i >= one.link) needs.push(`v${i - one.link}=after`);
    if (one.link === 5) needs.push('joint=parked');
    const usesTool = one.tool && one.place === 'porch';
    effects[key] = {
      needs,
      leaves: [`v${i}=after`],
      ...(usesTool ? { more: { tools: [{ tool: 'driver', steps: [0], span: SPAN }] } } : {}),
    };
    stints.push(
      stint(key, one.minutes, roles, {
        voice: one.voice,
        under: one.under,
        windowUses:
          one.window === 'none'
            ? []
            : [
                {
                  window: 'night',
                  mode: one.window,
                  part: 'whole',
                  fromStep: 0,
                  toStep: 1,
                  prefers: false,
                  span: SPAN,
                },
              ],
      }),
    );
  }
  const take = stint('box/take', [2], [role('lead', ['EV1', 'EV2'], 'mast')]);
  const put = stint('box/put', [3], [role('lead', ['EV1', 'EV2'], 'wing')]);
  const box = { role: 0, item: 'box' };
  effects['box/take'] = {
    needs: ['box.holder=place:mast'],
    leaves: ['box.holder=role:0'],
    more: { carriesOut: [box] },
  };
  effects['box/put'] = { needs: ['box.holder=role:0'], leaves: ['box.holder=place:wing'], more: { carriesIn: [box] } };
  const owners = [...new Set(stints.map((one) => one.task))];
  const tasks: Task[] = owners.map((id, i) => {
    const own = stints.filter((one) => one.task === id);
    const evas = shapes[Number(id.slice(1))]?.evas ?? ['one'];
    const [first, second] = own;
    const joins: Join[] =
      first === undefined || second === undefined
        ? []
        : [
            {
              id: `join-${id}`,
              title: 'clear',
              task: id,
              releases: first.key,
              waits: second.key,
              says: null,
              listens: null,
              span: SPAN,
            },
          ];
    return task(id, i + 3, own, { evas, joins, order: i % 2 === 0 ? 'free' : 'written' });
  });
  tasks.push(task('ride', 1, ride, { evas: ['one', 'two'] }), task('box', 2, [take, put], { evas: ['one', 'two'] }));
  const crew = { ...passages(['EV1', 'EV2'], 2), closeHatchS: 180, longestS: longestMin * 60 };
  const c = campaign({
    people: [person('EV1'), person('EV2', { pace: 1.1 }), person('IV', { role: 'inside' })],
    evas: [eva('one', crew), eva('two', { ...crew, egressUtcMs: EGRESS_MS + 86_400_000 })],
    tasks,
    rails: [rail('porch', 'deck', 2), rail('deck', 'bay', 3), rail('porch', 'mast', 4), rail('mast', 'wing', 1.5)],
    more: {
      arms: [arm('crane', ['deck', 'bay'], 3, 6)],
      hardware: [hardware('driver'), hardware('box', { loadClass: 'large' }), hardware('r1'), hardware('r2')],
      windows: [
        windowSet(
          'night',
          [
            [20, 45],
            [75, 100],
            [130, 155],
          ],
          30,
        ),
      ],
      clocks: [clock('cold', 40, 'v0=after', 'v1=after')],
      requests: [request('bus-off', { longestHoldS: 40 * 60 }), request('lock-off', { setLeadS: 300 })],
      limits: { ...NO_LIMITS, restraintIngressS: 60, restraintEgressS: 30, marginS: 600 },
      events: [
        {
          id: 'park',
          title: 'Joint parks',
          atUtcMs: EGRESS_MS + eventMin * 60_000,
          agreed: true,
          leaves: [{ variable: 'joint', value: 'parked', span: SPAN }],
          span: SPAN,
        },
      ],
    },
  });
  return { campaign: c, hardware: hardwareModel(variables, effects, [...stints, take, put, ...ride]) };
}

describe('a timeline of a campaign with everything in it', () => {
  it('passes the checker and the replay although its search was stopped early', () => {
    let planned = 0;
    fc.assert(
      fc.property(
        fc.record({
          shapes: fc.array(shape, { minLength: 3, maxLength: 8 }),
          eventMin: fc.integer({ min: 0, max: 120 }),
          longestMin: fc.integer({ min: 40, max: 170 }),
        }),
        (drawn) => {
          const { campaign: c, hardware: model } = build(drawn);
          const { timeline } = planChecked(c, model, { conflictBudget: 150, skipReasons: true, sharingTries: 2 });
          planned += timeline.evas.reduce((sum, { stints }) => sum + stints.length, 0);
        },
      ),
      { numRuns: 40, seed: 31 },
    );
    // Empty plans would pass as well.
    expect(planned).toBeGreaterThan(40 * 5);
  });
});
