/** The stock responses, and what one of them costs at one minute of a plan, redone by hand. */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { allResponses, STOCK_RESPONSES } from '@handrail/eva/response/any-response';
import { type WhatIf, whatIf } from '@handrail/eva/response/what-if';
import { describe, expect, test } from 'vitest';
import { smallCase } from '../../properties/wayhome/small-case.ts';

const MIN = 60;
const small = smallCase(
  `
limits { restraint-egress "1 min"; restraint-ingress "1 min" }
hardware driver kind=power-tool at=EV1 { property torque-most "40 N·m" }
hardware ratchet-one kind=ratchet at=bay { property torque-most "60 N·m" }
hardware b1 b2 kind=bolt at=bay state=torqued torque="20 N·m" turns=8
hardware plug kind=data-connector at=bay state=mated
clock cold "Unit without data" limit="30 min" kind=difference sense=most on-stop=reset { starts plug demated; stops plug mated }
window light "Light" pad="0 s" shown-as=band source="invented" { interval "2031-05-01T10:40:00Z" "2031-05-01T11:00:00Z" }
task work rank=1 eva=day {
    stint pull who=EV1 at=bay { demate plug; release b1 with=driver; release b2 with=driver; mate plug; minutes 20 }
    stint look who=EV1 at=bay { inspect bay; inside light part=whole; minutes 10 }
}
task wait-for-it rank=2 eva=day { stint see who=EV2 at=side { inspect side; minutes 5; after "work/look" } }
response stuck "Bolt stuck" trigger="no turns" kind=bolt { minutes low=2 likely=5 high=15; kit ratchet-one }
response vague "Something odd" trigger="something odd"
`,
  `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV1 0:15-0:35 work/pull
steps 0:17 0:22 0:27 0:35
EV1 0:40-0:50 work/look
EV2 0:50-0:55 wait-for-it/see
EV1 0:50-0:54 bay > porch
EV2 0:55-1:00 side > porch
EV2 1:00-1:05 in
EV1 1:05-1:10 in
hatch 1:10-1:15
wall 1:30 supplies`,
);
const apply = (id: string, petS: number): WhatIf => {
  const response = allResponses(small.campaign).find((one) => one.id === id);
  if (response === undefined) throw new Error(id);
  return whatIf(small.campaign, small.hardware, standardLibrary, small.timeline, small.eva, response, petS);
};

describe('a bolt that is stuck for 15 min (90th percentile) at PET 0:20', () => {
  const found = apply('stuck', 20 * MIN);
  test('stops the one who turns it, and the kit lies at the place', () => {
    expect(found.responding).toEqual([{ person: 'EV1', stint: 'work/pull', place: 'bay' }]);
    expect(found.missingKit).toEqual([]);
  });
  test('lets the wait of 5 min take up its share: the look begins 10 min later, and so does all that follows', () => {
    expect(found.delayed).toEqual([
      { stint: 'work/pull', fromS: 35 * MIN, toS: 50 * MIN },
      { stint: 'work/look', fromS: 50 * MIN, toS: 60 * MIN },
      { stint: 'wait-for-it/see', fromS: 55 * MIN, toS: 65 * MIN },
    ]);
    expect(found.bothInS).toEqual({ plannedS: 75 * MIN, thenS: 85 * MIN });
  });
  test('breaks the clock and keeps the wall and the window', () => {
    // The plug is open from 0:17 to 0:35, 18 min; then to 0:50, 33 min of at most 30. The wall: 1:30 − 1:25. Light until 1:00.
    expect(found.consequences.map(({ about, marginS, breaks }) => [about, marginS, breaks])).toEqual([
      ['wall', 5 * MIN, false],
      ['clock', -3 * MIN, true],
    ]);
  });
  test('says that work on the way home begins after the response', () => expect(found.home?.startS).toBe(35 * MIN));
});

test('a minute later in the light the window breaks', () => {
  const found = apply('tether-snag', 41 * MIN);
  // 8 min (90th percentile) longer: 0:40 to 0:58 is still in the light; of the other, 12 min, it would not be.
  expect(found.consequences.filter((one) => one.about === 'window')).toEqual([]);
  expect(apply('restraint-will-not-seat', 41 * MIN).notHere).toContain('foot-restraint');
  expect(apply('hatch-will-not-seal', 41 * MIN).notHere).toContain('hatch');
  const lost = apply('lost-item', 36 * MIN);
  // In the wait of 5 min for the light: 8 min, so everything is 3 min later.
  expect(lost.bothInS?.thenS).toBe(78 * MIN);
});

describe('a response of the campaign under the name of a stock one', () => {
  const replaced = (leadsTo: string) => {
    const { campaign } = smallCase(
      `response suit-leak "Leak" trigger="it hisses"${leadsTo} { report; minutes low=1 likely=1 high=2 }`,
      'eva day\nEV1 0:00-0:05 out\nEV1 0:05-0:10 in\nhatch 0:10-0:15',
    );
    return allResponses(campaign).filter((one) => one.id === 'suit-leak');
  };
  test('takes its place and still leads home, for nothing dangerous has a default', () => {
    const [leak, ...more] = replaced('');
    expect(more).toEqual([]);
    expect([leak?.from, leak?.leadsTo]).toEqual(['campaign', 'abort']);
    expect(replaced(' leads-to=terminate')[0]?.leadsTo).toBe('terminate');
  });
  test('goes on with work only where it says so', () => {
    expect(replaced(' leads-to=go-on')[0]?.leadsTo).toBeNull();
  });
});

test('the way to the kit and back counts: 15 min and 2 × 4 min by the rail from the bay to the tip', () => {
  const far = smallCase(
    `
hardware driver kind=power-tool at=EV1 { property torque-most "40 N·m" }
hardware crank kind=ratchet at=tip { property torque-most "60 N·m" }
hardware b1 kind=bolt at=bay state=torqued torque="20 N·m" turns=8
task work rank=1 eva=day { stint turn who=EV1 at=bay { release b1 with=driver } }
response stuck "Bolt stuck" trigger="no turns" kind=bolt { inspect it; minutes low=2 likely=5 high=15; kit ratchet }
`,
    'eva day\nEV1 0:00-0:05 out\nEV2 0:05-0:10 out\nEV1 0:10-0:14 porch > bay\nEV1 0:14-0:20 work/turn\nEV1 0:20-0:24 bay > porch\nEV2 0:24-0:29 in\nEV1 0:29-0:34 in\nhatch 0:34-0:39',
  );
  const stuck = allResponses(far.campaign)[0];
  if (stuck === undefined) throw new Error('no response');
  const found = whatIf(far.campaign, far.hardware, standardLibrary, far.timeline, far.eva, stuck, 16 * MIN);
  expect(found.kit).toEqual([{ asked: 'ratchet', piece: 'crank', where: 'at tip', fetchS: 8 * MIN, inUseBy: null }]);
  expect(found.delayS).toBe(23 * MIN);
  expect(found.missingKit).toEqual([]);
});

test('a response without minutes cannot be told, one for elsewhere does not apply', () => {
  expect(apply('vague', 20 * MIN).cannotTell.length).toBe(1);
  expect(apply('stuck', 45 * MIN).notHere).toContain('bolt');
});

test('the worse the alarm, the sooner they are in', () => {
  const home = (id: string): number => {
    const found = apply(id, 20 * MIN).home;
    return (found?.startS ?? 0) + (found?.way.totalS ?? 0);
  };
  expect(home('suit-leak')).toBeLessThanOrEqual(home('suit-warning'));
  expect(home('suit-warning')).toBeLessThanOrEqual(home('suit-caution'));
  expect(apply('partner-silent', 20 * MIN).home?.way.mode).toBe('assist');
});

test('who does not answer is who is brought in', () => {
  const silent = allResponses(small.campaign).find((one) => one.id === 'partner-silent');
  if (silent === undefined) throw new Error('partner-silent');
  for (const who of ['EV1', 'EV2']) {
    const args = [small.campaign, small.hardware, standardLibrary, small.timeline, small.eva] as const;
    expect(whatIf(...args, silent, 20 * MIN, who).home?.way.words).toContain(`${who} cannot move`);
  }
});

test('what leads home says so, and nothing else is called delayed', () => {
  for (const response of STOCK_RESPONSES.filter((one) => one.leadsTo !== null && !one.armStops)) {
    const found = apply(response.id, 30 * MIN);
    expect(found.home?.way.mode, response.id).toBe(response.leadsTo);
    expect(found.delayed).toEqual([]);
    expect(found.responding.length).toBe(2);
  }
});

test('a delay never brings anybody in earlier, and without it nothing changes', () => {
  for (const response of allResponses(small.campaign)) {
    for (let petS = 12 * MIN; petS < 60 * MIN; petS += 7 * MIN) {
      const found = apply(response.id, petS);
      if (found.bothInS !== null) expect(found.bothInS.thenS).toBeGreaterThanOrEqual(found.bothInS.plannedS);
      for (const one of found.delayed) expect(one.toS).toBeGreaterThan(one.fromS);
    }
  }
});

describe.each(STOCK_RESPONSES.map((response) => [response.id, response] as const))('%s', (_, response) => {
  test('has sentences, times in order, an outcome and a source', () => {
    expect(response.steps.length).toBeGreaterThanOrEqual(3);
    expect(response.steps.every(([, words]) => /^[A-Z].*[.]$/.test(words))).toBe(true);
    expect(response.timeS.low).toBeGreaterThan(0);
    expect(response.timeS.likely).toBeGreaterThanOrEqual(response.timeS.low);
    expect(response.timeS.high).toBeGreaterThanOrEqual(response.timeS.likely);
    expect(response.outcome.length).toBeGreaterThan(15);
    expect(response.source).toContain('common practice');
  });
  test('names kinds and tools that the library has, and says that flight rules prevail', () => {
    for (const kind of [...response.kinds, ...response.kit]) expect(standardLibrary.kinds.has(kind), kind).toBe(true);
    const shown = allResponses(small.campaign).find((one) => one.id === response.id);
    expect(shown?.prevails).toContain('prevail');
  });
});
