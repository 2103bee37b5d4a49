/**
 * Somebody may be in a step without a safe stop while everybody else could go home: the margin is then no more than what the known
 * pairs leave, it is said so, and what is short for certain is still found. Times by hand.
 */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { modeMargins } from '@handrail/eva/judge/stamp-margins';
import { leastMargin } from '@handrail/eva/wayhome/least-margin';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { isWhole } from '@handrail/eva/wayhome/worst-over-pairs';
import { rules } from '@handrail/eva/rules/rules.generated';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { runRules } from '@handrail/eva/rules/run-rules';
import { describe, expect, test } from 'vitest';
import { smallCase } from '../../properties/wayhome/small-case.ts';

const MIN = 60;
/** EV1's step without a safe stop takes 4 to 16 min where 8 are planned; EV2 looks at the side for 5 min from 0:15 on. */
const text = (safeStop: string): string => `
hardware plug "Plug" kind=power-connector at=bay state=mated
task look rank=1 eva=day { stint see who=EV2 at=side { inspect side; minutes 5 } }
task half rank=2 eva=day { stint half who=EV1 at=bay { report; ${safeStop} minutes low=4 likely=8 high=16 } }
`;
const timeline = (wall: string): string => `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV2 0:15-0:20 look/see
EV1 0:14-0:22 half/half
EV1 0:30-0:34 bay > porch
EV2 0:30-0:35 side > porch
EV2 0:35-0:40 in
EV1 0:40-0:45 in
hatch 0:45-0:50
wall ${wall} longest EVA`;
function surfaceOf(safeStop: string, wall: string) {
  const small = smallCase(text(safeStop), timeline(wall));
  return wayHomeSurface(small.campaign, small.hardware, standardLibrary, small.timeline, small.eva);
}
/** The text says it of the step that has ended: the next one is done from there. */
const COMMITTED = 'safe-stop #false; report;';
const PLAIN = 'report;';

describe('a step without a safe stop that may last into the stretches after it', () => {
  const surface = surfaceOf(COMMITTED, '6:00');
  const plain = surfaceOf(PLAIN, '6:00');
  // Planned to end at 0:22; at its longest (16 min) at 0:30.
  const after = surface.samples.filter(({ petS }) => petS >= 22 * MIN && petS < 30 * MIN);

  test('is not known there, though the planned pair is, and the way of the other pairs is told', () => {
    expect(after.length).toBeGreaterThan(0);
    for (const sample of after) {
      expect(sample.planned.terminate.totalS).not.toBeNull();
      expect(isWhole(sample.worst.terminate)).toBe(false);
      // EV2 at the side: travel 5, EV1 in at 4 + 5 before, EV2 at 14, closed at 19.
      expect(sample.worst.terminate.totalS).toBe(19 * MIN);
      expect(sample.marginAtMostS.terminate).toBe(6 * 3600 - sample.endS - 19 * MIN);
    }
    expect(plain.samples.every(({ worst }) => isWhole(worst.terminate))).toBe(true);
  });
  test('makes the least margin of the EVA a bound, and that of the stamp', () => {
    expect(leastMargin(surface, 'terminate')?.isWhole).toBe(false);
    expect(leastMargin(plain, 'terminate')?.isWhole).toBe(true);
    const [terminate] = modeMargins(surface, ['terminate']);
    expect(terminate?.committedS).toBeGreaterThanOrEqual(8 * MIN);
    expect(leastMargin(surface, 'abort')?.isWhole).toBe(true);
  });
  test('takes the last moment to start what the other does meanwhile, and leaves that to abort', () => {
    const look = surface.lastMoments.find(({ stint }) => stint === 'look/see');
    expect(look?.terminate.latestS).toBeNull();
    expect(look?.terminate.why).toContain('safe stop');
    // 6:00 less 5 min of looking, less travel 5 + both passages and the hatch 15, EV1 at the bay first: 19.
    expect(look?.terminate.atMostS).toBe(6 * 3600 - 5 * MIN - 19 * MIN);
    expect(look?.abort.latestS).toBe(6 * 3600 - 5 * MIN - 19 * MIN);
    const same = plain.lastMoments.find(({ stint }) => stint === 'look/see');
    expect(same?.terminate.latestS).toBe(6 * 3600 - 5 * MIN - 19 * MIN);
    expect(same?.terminate.why).toBeNull();
  });
  test('is committed for its longest time from the step before it on, which may be done already, and what follows is home in 19 min at the longest', () => {
    expect(surface.committed).toMatchObject([
      { person: 'EV1', entry: 'half/half', longestS: 16 * MIN, homeAfterS: 19 * MIN },
    ]);
  });
  test('what is short without it is found, as short at least', () => {
    const small = smallCase(text(COMMITTED), timeline('0:40'));
    const facts = ruleFacts(small.campaign, small.hardware, standardLibrary, small.timeline);
    const rule = rules.find(({ id }) => id === 'wayhome/terminate-fits-before-the-wall');
    if (rule === undefined) throw new Error('there is such a rule');
    const [found] = runRules(facts, 0, [rule]);
    expect(found?.why).toContain('short by at least');
    const plainSmall = smallCase(text(PLAIN), timeline('0:40'));
    const plainFacts = ruleFacts(plainSmall.campaign, plainSmall.hardware, standardLibrary, plainSmall.timeline);
    expect(runRules(plainFacts, 0, [rule])[0]?.why).toMatch(/short by \d/);
  });
});

describe('two stretches without a safe stop, one for each', () => {
  const RULE = 'wayhome/committed-stretches-are-not-shared';
  function found(order: string) {
    const small = smallCase(
      `
task half rank=1 eva=day { stint half who=EV1 at=bay { report; safe-stop #false; report; minutes low=4 likely=8 high=16 } }
task other rank=2 eva=day { stint half who=EV2 at=side { report; safe-stop #false; report; minutes 6; ${order} } }
`,
      timeline('6:00')
        .replace('EV2 0:15-0:20 look/see', 'EV2 0:23-0:29 other/half')
        .replace('EV1 0:14-0:22 half/half', 'EV1 0:14-0:22 half/half\nsteps 0:18 0:22'),
    );
    const facts = ruleFacts(small.campaign, small.hardware, standardLibrary, small.timeline);
    return runRules(
      facts,
      0,
      rules.filter(({ id }) => id === RULE),
    );
  }
  test('are shared where only the planned times keep them apart', () => {
    const [one, ...others] = found('');
    expect(others).toEqual([]);
    expect(one?.why).toContain('not as planned');
  });
  test('are not where an order does', () => {
    expect(found('after "half/half"')).toEqual([]);
  });
});
