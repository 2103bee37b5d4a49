/** Rides on the arm: it comes empty, somebody gets on, both go, it stands still while they work and get off. */
import { describe, expect, it } from 'vitest';
import { firstEva, planChecked } from '../../properties/schedule/plan-checked.ts';
import {
  arm,
  campaign,
  eva,
  hardware,
  hardwareModel,
  passages,
  person,
  rail,
  role,
  stint,
  task,
} from '../../properties/schedule/small-campaign.ts';

const MIN = 60;
const crane = role('arm', ['crane'], 'at-deck');
const bay = { at: 'at-bay', to: 'at-bay' };
const ride = [
  stint('ride/on', [3], [role('lead', ['EV1'], 'deck', { endOn: 'crane' }), crane]),
  stint(
    'ride/go',
    [6],
    [role('lead', ['EV1'], 'deck', { to: 'bay', startOn: 'crane', endOn: 'crane' }), { ...crane, to: 'at-bay' }],
  ),
  stint('ride/work', [10], [role('lead', ['EV1'], 'bay', { startOn: 'crane', endOn: 'crane' })]),
  stint('ride/off', [2], [role('lead', ['EV1'], 'bay', { startOn: 'crane' }), { ...crane, ...bay }]),
];
const base = {
  people: [person('EV1'), person('IV', { role: 'inside' as const })],
  evas: [eva('one', { ...passages(['EV1'], 1), longestS: 4 * 60 * MIN })],
  rails: [rail('porch', 'deck', 2), rail('deck', 'bay', 20)],
};

describe('a ride', () => {
  it('takes the arm from its park to the rider and both to the work, and the rider walks home by the rails', () => {
    const c = campaign({
      ...base,
      tasks: [task('ride', 1, ride)],
      more: { arms: [arm('crane', ['deck', 'bay'], 4, 6)] },
    });
    const plan = firstEva(planChecked(c, hardwareModel({}, {}, ride)));
    // The arm needs 4 min from its park, EV1 is at the deck at 1 + 2 = 0:03: on at 0:04. 4 + 3 + 6 + 10 + 2 = 0:25 off at
    // the bay, 22 min on the rails = 0:47, in 0:48.
    expect(plan.stints.map(({ stint: key, startS }) => [key, startS / MIN])).toEqual([
      ['ride/on', 4],
      ['ride/go', 7],
      ['ride/work', 13],
      ['ride/off', 23],
    ]);
    expect(plan.bothInS).toBe(48 * MIN);
    expect(plan.moves.filter(({ who }) => who === 'crane').map(({ from, to, startS }) => [from, to, startS])).toEqual([
      ['park', 'at-deck', 0],
    ]);
  });

  it('keeps the arm with its rider: other work of the arm comes before they get on or after they get off', () => {
    const scan = stint('scan/look', [5], [role('arm', ['crane'], 'park')]);
    const all = [...ride, scan];
    const c = campaign({
      ...base,
      tasks: [task('ride', 1, ride), task('scan', 2, [scan])],
      more: { arms: [arm('crane', ['deck', 'bay'], 4, 6)] },
    });
    const plan = firstEva(planChecked(c, hardwareModel({}, {}, all)));
    const look = plan.stints.find(({ stint: key }) => key === 'scan/look');
    const off = plan.stints.find(({ stint: key }) => key === 'ride/off');
    // After the ride it is over while EV1 walks home; before it EV1 would wait.
    expect(plan.bothInS).toBe(48 * MIN);
    expect(look?.startS).toBeGreaterThanOrEqual((off?.endS ?? 0) + 4 * MIN);
  });

  it('is refused when its minutes are fewer than the transfer takes with somebody on the plate', () => {
    const c = campaign({
      ...base,
      tasks: [task('ride', 1, ride)],
      more: { arms: [arm('crane', ['deck', 'bay'], 4, 9)] },
    });
    expect(planChecked(c, hardwareModel({}, {}, ride)).timeline.leftOut).toEqual([
      { task: 'ride', why: 'one: ride/go takes crane from at-deck to at-bay in 6 min, but the way takes 9 min' },
    ]);
  });

  it('does not begin with a box in hand that no part of it takes along', () => {
    const take = stint('ride/take', [2], [role('lead', ['EV1'], 'deck')]);
    const put = stint('ride/put', [2], [role('lead', ['EV1'], 'bay')]);
    const [on, go, work, off] = ride as [(typeof ride)[0], (typeof ride)[0], (typeof ride)[0], (typeof ride)[0]];
    const box = { role: 0, item: 'box' };
    const holder = { 'box.holder': ['place:deck', 'person:EV1', 'place:bay'] };
    const effects = {
      'ride/take': { needs: ['box.holder=place:deck'], leaves: ['box.holder=role:0'], more: { carriesOut: [box] } },
      'ride/put': { needs: ['box.holder=role:0'], leaves: ['box.holder=place:bay'], more: { carriesIn: [box] } },
    };
    const planWith = (stints: typeof ride) => {
      const c = campaign({
        ...base,
        tasks: [task('ride', 1, stints)],
        more: { arms: [arm('crane', ['deck', 'bay'], 4, 6)], hardware: [hardware('box', { loadClass: 'large' })] },
      });
      return planChecked(c, hardwareModel(holder, effects, stints)).timeline;
    };
    // On, across and off with the box: a rider brings it along although the ride's sentences do not name it.
    expect(planWith([take, on, go, off, put]).leftOut).toEqual([]);
    expect(planWith([take, on, go, work, off]).leftOut.map(({ task: id }) => id)).toEqual(['ride']);
  });
});
