/** Campaigns of more than one EVA: hardware as left, tasks shared among EVAs, pins and their price. */
import { pricePins } from '@handrail/eva/schedule/price-pins';
import { describe, expect, it } from 'vitest';
import { firstEva, planChecked } from '../../properties/schedule/plan-checked.ts';
import {
  campaign,
  clock,
  EGRESS_MS,
  eva,
  hardwareModel,
  passages,
  person,
  rail,
  role,
  SPAN,
  stint,
  task,
} from '../../properties/schedule/small-campaign.ts';

const MIN = 60;
const DAY_MS = 86_400_000;
const rails = [rail('porch', 'bay', 2)];
const solo = { ...passages(['EV1'], 1), longestS: 40 * MIN };
const people = [person('EV1')];
const evas = [eva('one', solo), eva('two', { ...solo, egressUtcMs: EGRESS_MS + 3 * DAY_MS })];
const work = (key: string, minutes: number) => stint(key, [minutes], [role('lead', ['EV1'], 'porch')]);

describe('a campaign of two EVAs', () => {
  it('starts the second from the hardware as the first and an outside event between them leave it', () => {
    const open = work('a/open', 5);
    const use = work('b/use', 5);
    const c = campaign({
      people,
      evas,
      rails,
      tasks: [task('b', 1, [use], { evas: ['two'] }), task('a', 2, [open], { evas: ['one'] })],
      more: {
        events: [
          {
            id: 'dock',
            title: 'Ship docks',
            atUtcMs: EGRESS_MS + DAY_MS,
            agreed: true,
            leaves: [{ variable: 'port', value: 'taken', span: SPAN }],
            span: SPAN,
          },
        ],
      },
    });
    const hardware = hardwareModel(
      { door: ['shut', 'open'], port: ['free', 'taken'] },
      {
        'a/open': { needs: ['door=shut', 'port=free'], leaves: ['door=open'] },
        'b/use': { needs: ['door=open', 'port=taken'] },
      },
      [open, use],
    );
    expect(planChecked(c, hardware).timeline.evas.map(({ tasks }) => tasks)).toEqual([['a'], ['b']]);
  });

  it('moves a task on to the second EVA when that makes room in the first for one that can only fly there', () => {
    const first = work('first/x', 30);
    const only = work('only/x', 30);
    const c = campaign({
      people,
      evas,
      rails,
      tasks: [task('first', 1, [first], { evas: ['one', 'two'] }), task('only', 2, [only], { evas: ['one'] })],
    });
    const { timeline } = planChecked(c, hardwareModel({}, {}, [first, only]));
    expect(timeline.evas.map(({ tasks }) => tasks)).toEqual([['only'], ['first']]);
    expect(timeline.leftOut).toEqual([]);
  });

  it('can be planned for one EVA alone, from what the one before leaves', () => {
    const open = work('a/open', 5);
    const use = work('b/use', 5);
    const tasks = [task('a', 1, [open], { evas: ['one'] }), task('b', 2, [use], { evas: ['two'] })];
    const hardware = hardwareModel(
      { door: ['shut', 'open'] },
      { 'a/open': { needs: ['door=shut'], leaves: ['door=open'] }, 'b/use': { needs: ['door=open'] } },
      [open, use],
    );
    const { timeline } = planChecked(campaign({ people, evas, rails, tasks }), hardware, { onlyEva: 'two' });
    expect(timeline.evas.map(({ eva: id, tasks: ids }) => [id, ids])).toEqual([['two', ['b']]]);
  });
});

describe('a pin', () => {
  const stints = [work('a/x', 10), work('b/x', 10), work('c/x', 10)];
  const tasks = stints.map((s, i) => task(s.task, i + 1, [s]));

  it('is obeyed, and its price is told', () => {
    const pins = [{ kind: 'start' as const, stint: 'a/x', petS: 15 * MIN, span: SPAN }];
    const c = campaign({ people, evas: [evas[0] as (typeof evas)[0]], rails, tasks, more: { pins } });
    const hardware = hardwareModel({}, {}, stints);
    const { timeline } = planChecked(c, hardware);
    // Pinned to 0:15, one of the others fits before (0:01 to 0:11), the other after: 0:35, in 0:36. Freely 0:31, in 0:32.
    expect(timeline.evas[0]?.bothInS).toBe(36 * MIN);
    expect(timeline.evas[0]?.stints.find(({ stint: key }) => key === 'a/x')?.startS).toBe(15 * MIN);
    const [price] = pricePins(c, hardware, timeline, { seed: 1, conflictBudget: 5000 });
    expect(price?.laterS.get('one')).toBe(4 * MIN);
    expect(price?.proved).toBe(true);
  });

  it('that collides with another is named when it keeps a task out', () => {
    const pins = [
      { kind: 'start' as const, stint: 'b/x', petS: 5 * MIN, span: SPAN },
      // oxlint-disable-next-line unicorn/no-thenable -- a pin says `then`; nobody awaits it
      { kind: 'order' as const, first: 'a/x', then: 'b/x', span: SPAN },
    ];
    const c = campaign({ people, evas: [evas[0] as (typeof evas)[0]], rails, tasks, more: { pins } });
    const { timeline } = planChecked(c, hardwareModel({}, {}, stints));
    expect(timeline.leftOut).toEqual([
      {
        task: 'b',
        why: expect.stringContaining('one: it collides with the pin: b/x starts at 0:05; the pin: a/x before b/x'),
      },
    ]);
  });

  it('to a person gives the work to that person', () => {
    const any = stint('a/x', [10], [role('lead', ['EV1', 'EV2'], 'porch')]);
    const crew = [person('EV1'), person('EV2')];
    const pins = [{ kind: 'person' as const, stint: 'a/x', role: 'lead' as const, person: 'EV2', span: SPAN }];
    const both = { people: crew, evas: [eva('one', passages(['EV1', 'EV2'], 1))], rails, tasks: [task('a', 1, [any])] };
    const hardware = hardwareModel({}, {}, [any]);
    expect(firstEva(planChecked(campaign(both), hardware)).stints[0]?.assigned).toEqual(['EV1']);
    expect(firstEva(planChecked(campaign({ ...both, more: { pins } }), hardware)).stints[0]?.assigned).toEqual(['EV2']);
  });
});

describe('an order that reaches across EVAs', () => {
  const first = work('first/x', 10);
  const lag = (leastH: number) => [{ stint: 'first/x', leastS: leastH * 3600, mostS: null, span: SPAN }];
  const planWith = (leastH: number, firstEvas: readonly string[], thenEvas: readonly string[]) => {
    const then = stint('then/x', [10], [role('lead', ['EV1'], 'porch')], { after: lag(leastH) });
    const tasks = [task('then', 1, [then], { evas: thenEvas }), task('first', 2, [first], { evas: firstEvas })];
    const { timeline } = planChecked(campaign({ people, evas, rails, tasks }), hardwareModel({}, {}, [first, then]));
    return timeline.evas.map(({ tasks: ids }) => ids);
  };

  it('keeps the later one out of the first EVA while the earlier one can only fly in the second', () => {
    expect(planWith(0, ['two'], ['one', 'two'])).toEqual([[], ['then', 'first']]);
  });

  it('counts the lag from the end of the earlier one three days before', () => {
    expect(planWith(24, ['one'], ['two'])).toEqual([['first'], ['then']]);
    expect(planWith(24 * 4, ['one'], ['two'])).toEqual([['first'], []]);
  });
});

describe('a clock that may run for days', () => {
  const cut = work('cut/x', 10);
  const join = work('join/x', 10);
  const other = work('other/x', 25);
  const hardware = hardwareModel(
    { heater: ['on', 'off'], plug: ['open', 'mated'] },
    {
      'cut/x': { needs: ['heater=on'], leaves: ['heater=off'] },
      'join/x': { needs: ['heater=off'], leaves: ['plug=mated'] },
    },
    [cut, join, other],
  );
  const planWith = (limitH: number) => {
    const cold = clock('cold', limitH * 60, 'heater=off', 'plug=mated');
    const tasks = [
      task('cut', 1, [cut], { evas: ['one'] }),
      task('other', 2, [other], { evas: ['two'] }),
      task('join', 3, [join], { evas: ['two'] }),
    ];
    const { timeline } = planChecked(campaign({ people, evas, rails, tasks, more: { clocks: [cold] } }), hardware);
    return timeline.evas.map(({ tasks: ids }) => ids);
  };

  it('is started in one EVA and stopped in the next, which then carries the stop before more important work', () => {
    // Three days and 40 min from egress to the end of the second EVA; 25 + 10 min of work fit into its 40 with 2 for the hatch.
    expect(planWith(73)).toEqual([['cut'], ['other', 'join']]);
    const longer = stint('other/x', [35], [role('lead', ['EV1'], 'porch')]);
    const tasks = [
      task('cut', 1, [cut], { evas: ['one'] }),
      task('other', 2, [longer], { evas: ['two'] }),
      task('join', 3, [join], { evas: ['two'] }),
    ];
    const cold = clock('cold', 73 * 60, 'heater=off', 'plug=mated');
    const { timeline } = planChecked(campaign({ people, evas, rails, tasks, more: { clocks: [cold] } }), hardware);
    expect(timeline.evas.map(({ tasks: ids }) => ids)).toEqual([['cut'], ['join']]);
  });

  it('is not started when the next EVA would be too late', () => {
    expect(planWith(71)[0]).toEqual([]);
  });
});
