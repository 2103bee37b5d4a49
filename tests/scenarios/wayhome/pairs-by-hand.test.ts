/** Which progress of two people can stand side by side, in plans small enough to see it; where the plan is not whole or not right as well. */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { describe, expect, test } from 'vitest';
import { type SmallCase, smallCase } from '../../properties/wayhome/small-case.ts';

const OPEN = 'eva day\nEV1 0:00-0:05 out\nEV2 0:05-0:10 out\nEV1 0:10-0:14 porch > bay\nEV2 0:10-0:15 porch > side\n';
const HOME =
  '\nEV1 0:40-0:44 bay > porch\nEV2 0:40-0:45 side > porch\nEV2 0:45-0:50 in\nEV1 0:50-0:55 in\nhatch 0:55-1:00\nwall 6:00 longest EVA';
const pairOf = (small: SmallCase, one: string, two: string) =>
  small.progress.network.pairs().find(({ a, b }) => a.stint === one && b.stint === two);
const surfaceOf = (small: SmallCase) =>
  wayHomeSurface(small.campaign, small.hardware, standardLibrary, small.timeline, small.eva);

describe('what is no fact keeps nothing apart', () => {
  const HEATER = 'hardware heater "Heater plug" kind=data-connector at=bay state=mated\n';
  const TASKS = (lag: string): string => `
task off rank=1 eva=day { stint pull who=EV1 at=bay { demate heater; minutes 5 } }
task on rank=2 eva=day { stint mate who=EV1 at=bay { mate heater; minutes 4${lag} } }
task look rank=3 eva=day { stint see who=EV2 at=side { inspect side; minutes 6 } }
`;
  const TIMELINE = `${OPEN}EV1 0:14-0:19 off/pull\nEV2 0:15-0:21 look/see\nEV1 0:30-0:34 on/mate${HOME}`;
  test('the least that a clock is to run is a wish: EV1 may have pulled by 0:14 and mate while EV2 looks, from 0:15 to 0:21', () => {
    const clock =
      'clock cold "Unit to cool down" limit="12 min" kind=difference sense=least on-stop=reset { starts heater demated; stops heater mated }\n';
    const small = smallCase(HEATER + clock + TASKS(''), TIMELINE);
    expect(pairOf(small, 'on/mate', 'look/see')).toMatchObject({ fromS: 15 * 60, toS: 21 * 60 });
  });
  test('a lag is an order: 8 min after 0:14 is 0:22, when EV2 has looked', () => {
    const small = smallCase(HEATER + TASKS('; after "off/pull" least="8 min"'), TIMELINE);
    expect(pairOf(small, 'on/mate', 'look/see')).toBeUndefined();
  });
});

describe('a call may be acted on at once, or late', () => {
  const small = smallCase(
    `
limits { reaction "2 min" }
task one rank=1 eva=day {
    stint free who=EV1 at=bay { inspect bay; minutes 6 }
    stint look who=EV1 at=bay { inspect bay; minutes 1 }
}
task two rank=2 eva=day { stint take who=EV2 at=side { inspect side; minutes 6; after "one/free" } }
`,
    `${OPEN}EV1 0:14-0:20 one/free\nEV1 0:20-0:21 one/look\nEV2 0:22-0:28 two/take${HOME}`,
  );
  test('at once EV2 takes while EV1 looks: it is free from 0:15 on, and looked at by 0:21', () => {
    expect(pairOf(small, 'one/look', 'two/take')).toMatchObject({ fromS: 15 * 60, toS: 21 * 60 });
  });
  test('but never before it is free', () => {
    expect(pairOf(small, 'one/free', 'two/take')).toBeUndefined();
  });
});

describe('a wait that is not planned is told by what is before and after it', () => {
  test('EV1 has looked by 0:20, but waits for EV2, who may take until 0:24', () => {
    const small = smallCase(
      `
task one rank=1 eva=day {
    stint look who=EV1 at=bay { inspect bay; minutes 6 }
    stint then who=EV1 at=bay { inspect bay; minutes 6; after "two/take" }
}
task two rank=2 eva=day { stint take who=EV2 at=side { inspect side; minutes low=3 likely=4 high=9 } }
`,
      `${OPEN}EV1 0:14-0:20 one/look\nEV2 0:15-0:19 two/take\nEV1 0:20-0:26 one/then${HOME}`,
    );
    const takeS = small.campaign.tasks[1]?.stints[0]?.duration.boundsS[1] ?? 0;
    expect(takeS).toBe(9 * 60);
    expect(pairOf(small, 'one/then', 'two/take')).toBeUndefined();
    expect(pairOf(small, 'one/look', 'two/take')?.toS).toBe(15 * 60 + takeS);
  });
  test('EV1 may have looked by 0:15 and waits for 0:20, as pinned; EV2 takes what EV1 has looked at meanwhile', () => {
    const small = smallCase(
      `
task one rank=1 eva=day {
    stint look who=EV1 at=bay { inspect bay; minutes 6 }
    stint then who=EV1 at=bay { inspect bay; minutes 6 }
}
task two rank=2 eva=day { stint take who=EV2 at=side { inspect side; minutes 4; after "one/look" } }
pin "one/then" start="0:20"
`,
      `${OPEN}EV1 0:14-0:20 one/look\nEV1 0:20-0:26 one/then\nEV2 0:21-0:25 two/take${HOME}`,
    );
    expect(pairOf(small, 'one/look', 'two/take')).toBeUndefined();
    expect(pairOf(small, 'one/then', 'two/take')?.fromS).toBe(15 * 60);
  });
});

test('how long it takes once begun: from the planned start, also where EV1 could have begun at 0:09 already', () => {
  const small = smallCase(
    'task one rank=1 eva=day { stint look who=EV1 at=bay { inspect bay; minutes 6 }; stint then who=EV1 at=bay { inspect bay; minutes 6 } }\n',
    `${OPEN}EV1 0:14-0:20 one/look\nEV1 0:25-0:31 one/then${HOME}`,
  );
  const { network, segments } = small.progress;
  const [look, then] = ['one/look', 'one/then'].map((key) => segments[0]?.find(({ stint }) => stint === key));
  if (look === undefined || then === undefined) throw new Error('both are planned');
  expect(network.earliestS([look])).toBe(9 * 60);
  expect(network.mostFromS(look, then)).toBe((31 - 14) * 60);
});

test('a step that takes no time is nowhere', () => {
  const small = smallCase(
    'task one rank=1 eva=day { stint look who=EV1 at=bay { inspect bay; report; minutes 6 } }\n',
    `${OPEN}EV1 0:14-0:20 one/look\nsteps 0:14 0:20${HOME}`,
  );
  const steps = small.progress.segments[0]?.filter(({ stint }) => stint === 'one/look') ?? [];
  expect(steps).toHaveLength(2);
  const met = steps.map((step) => small.progress.network.pairs().filter(({ a }) => a === step).length > 0);
  expect(met).toEqual([false, true]);
});

describe('a plan that is not whole or not right', () => {
  const TASKS = `
task one rank=1 eva=day { stint first who=EV1 at=bay { inspect bay; minutes 6 } }
task two rank=2 eva=day { stint then who=EV2 at=side { inspect side; minutes 6; after "one/first" } }
`;
  const every = (small: SmallCase): number => {
    const [a = [], b = []] = small.progress.segments;
    return a.length * b.length;
  };
  test('without a closing of the hatch there is no network: every pair, at any time', () => {
    const small = smallCase(TASKS, `${OPEN}EV1 0:14-0:20 one/first\nEV2 0:21-0:27 two/then\nwall 6:00 longest EVA`);
    const pairs = small.progress.network.pairs();
    expect(pairs).toHaveLength(every(small));
    expect(new Set(pairs.map(({ fromS, toS }) => `${fromS} ${toS}`))).toEqual(new Set(['0 Infinity']));
    expect(surfaceOf(small).samples.length).toBeGreaterThan(0);
  });
  test('a stint that stands in it twice runs its orders in a circle: every pair', () => {
    const small = smallCase(
      TASKS,
      `${OPEN}EV1 0:14-0:20 one/first\nEV2 0:21-0:27 two/then\nEV1 0:22-0:28 one/first${HOME}`,
    );
    expect(small.progress.network.pairs()).toHaveLength(every(small));
    expect(surfaceOf(small).samples.length).toBeGreaterThan(0);
  });
  test('an order that the plan breaks takes nothing away that stands in the plan', () => {
    const small = smallCase(TASKS, `${OPEN}EV1 0:14-0:20 one/first\nEV2 0:16-0:22 two/then${HOME}`);
    expect(pairOf(small, 'one/first', 'two/then')).toMatchObject({ fromS: 16 * 60, toS: 20 * 60 });
    const [a = [], b = []] = small.progress.segments;
    const among = new Set(small.progress.network.pairs().map((pair) => `${pair.a.index} ${pair.b.index}`));
    for (const one of a) {
      for (const two of b) {
        if (Math.max(one.startS, two.startS) < Math.min(one.endS, two.endS))
          expect(among, `${one.index} with ${two.index}`).toContain(`${one.index} ${two.index}`);
      }
    }
  });
  test('steps that the text does not have', () => {
    const text = TASKS.replace('inspect bay;', 'inspect bay; report;');
    const small = smallCase(text, `${OPEN}EV1 0:14-0:20 one/first\nEV2 0:21-0:27 two/then${HOME}`);
    const stints = small.eva.stints.map((one) => ({ ...one, stepEndsS: [one.startS + 60] }));
    const eva = { ...small.eva, stints };
    const timeline = { ...small.timeline, evas: [eva] };
    const surface = wayHomeSurface(small.campaign, small.hardware, standardLibrary, timeline, eva);
    const [a = [], b = []] = surface.progress.segments;
    expect(surface.pairs).toHaveLength(a.length * b.length);
  });
});
