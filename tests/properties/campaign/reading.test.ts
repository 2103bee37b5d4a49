/** What sound text means: every expectation here is worked out by hand from the text above it. */
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { describe, expect, test } from 'vitest';

function withoutSpan<T extends { readonly span: unknown }>(value: T): Omit<T, 'span'> {
  return Object.fromEntries(Object.entries(value).filter(([key]) => key !== 'span')) as Omit<T, 'span'>;
}

function read(...texts: readonly string[]) {
  const { campaign, problems } = readCampaign(
    texts.map((text, at) => ({ name: `${at + 1}.kdl`, text: `handrail 1\n${text}` })),
    standardLibrary,
  );
  expect(problems.filter((problem) => problem.severity === 'error')).toEqual([]);
  if (campaign === null) throw new Error('no campaign');
  return campaign;
}

const TOP = 'campaign c "C"\neva one egress="2031-09-14T11:40:00Z"\n';
const CREW = `person EV1 role=outside
person EV2 role=outside
person EV3 role=outside
person IV role=inside
arm crane operator=IV start=parked {
  pose parked
  pose near place=bay { climb-down porch "4 min" }
  pose far place=tip
  transfer near far empty="3 min" loaded="5 min"
  transfer parked near empty="2 min" one-way=#true
}
vehicle v hatch=porch {
  load-class large factor=1.6 fills-hands=#true
  place porch family=core
  place bay { position x="1 m" y="-20 cm" z="0 m" }
  place tip
  rail porch bay minutes="1 min 30 s" length="6 m" refuses=large { open-while joint parked locked }
}
hardware joint kind=rotating-joint at=porch state=parked
`;
const stints = (text: string) => read(TOP, CREW, text).tasks[0]?.stints ?? [];
const roles = (stint: string) => stints(`task t { ${stint} }`)[0]?.roles.map(withoutSpan);
const PLAIN = { startOn: null, endOn: null, restraint: null, fromStep: 0, toStep: 0 };

describe('who is where', () => {
  test('one person, one place', () => {
    expect(roles('stint s who=EV2 at=bay { minutes 1 }')).toEqual([
      { ...PLAIN, name: 'lead', candidates: ['EV2'], at: 'bay', to: 'bay' },
    ]);
  });

  test('any of those outside; either of two, in the order of the crew', () => {
    expect(roles('stint s who=any at=bay { minutes 1 }')?.[0]?.candidates).toEqual(['EV1', 'EV2', 'EV3']);
    expect(roles('stint s who="EV3 EV1" at=bay { minutes 1 }')?.[0]?.candidates).toEqual(['EV1', 'EV3']);
  });

  test('both: the first leads, the second helps at the same place, or elsewhere', () => {
    expect(roles('stint s who=both at=bay to=tip partner-at=porch { minutes 1 }')).toEqual([
      { ...PLAIN, name: 'lead', candidates: ['EV1'], at: 'bay', to: 'tip' },
      { ...PLAIN, name: 'partner', candidates: ['EV2'], at: 'porch', to: 'porch' },
    ]);
    expect(roles('stint s who=both at=bay to=tip { minutes 1 }')?.[1]).toMatchObject({ at: 'bay', to: 'tip' });
  });

  test('any partner is anybody but the lead', () => {
    expect(roles('stint s who=EV2 partner=any at=bay { minutes 1 }')?.[1]?.candidates).toEqual(['EV1', 'EV3']);
    expect(roles('stint s who=any partner=any at=bay { minutes 1 }')?.[1]?.candidates).toEqual(['EV1', 'EV2', 'EV3']);
  });

  test('a helper for some sentences only', () => {
    expect(roles('stint s who=EV1 at=bay { rest; with EV2 at=tip { inspect tip; inspect bay }; rest }')).toEqual([
      { ...PLAIN, name: 'lead', candidates: ['EV1'], at: 'bay', to: 'bay', toStep: 4 },
      { ...PLAIN, name: 'partner', candidates: ['EV2'], at: 'tip', to: 'tip', fromStep: 1, toStep: 3 },
    ]);
  });

  test('work from the plate: the arm takes part, in its only pose there', () => {
    expect(roles('stint s who=EV1 at=bay on=crane { minutes 1 }')).toEqual([
      { ...PLAIN, name: 'lead', candidates: ['EV1'], at: 'bay', to: 'bay', startOn: 'crane', endOn: 'crane' },
      { ...PLAIN, name: 'arm', candidates: ['crane'], at: 'near', to: 'near' },
    ]);
  });

  test('a ride from pose to pose: the rider is where the poses are', () => {
    expect(roles('stint s who=EV1 on=crane pose=near to-pose=far { minutes 1 }')).toEqual([
      { ...PLAIN, name: 'lead', candidates: ['EV1'], at: 'bay', to: 'tip', startOn: 'crane', endOn: 'crane' },
      { ...PLAIN, name: 'arm', candidates: ['crane'], at: 'near', to: 'far' },
    ]);
  });

  test('getting on begins on structure; getting off ends there', () => {
    expect(roles('stint s who=EV1 at=bay end-on=crane pose=near { minutes 1 }')?.[0]).toMatchObject({
      startOn: null,
      endOn: 'crane',
    });
    expect(roles('stint s who=EV1 start-on=crane pose=far { minutes 1 }')?.[0]).toMatchObject({
      at: 'tip',
      to: 'tip',
      startOn: 'crane',
      endOn: null,
    });
  });

  test('the arm alone has no lead, and its sentences are its own', () => {
    const [stint] = stints('task t { stint s who=crane pose=parked to-pose=near { park; minutes 2 } }');
    expect(stint?.roles.map((role) => [role.name, role.at, role.to])).toEqual([['arm', 'parked', 'near']]);
    expect(stint?.steps[0]?.by).toBe('arm');
  });
});

describe('sentences', () => {
  test('carry their objects, ends, tool, figures and words', () => {
    const [stint] = stints(`task t { stint s who=EV1 at=bay {
      release b1 b2 with=driver turns=8 torque="12 N·m" minutes=2.5 say="loose" hear="go" note="n" caution="c" settings="B"
      stow tool in=bag-1
      safe-stop #true
      put tool to=tip from=EV1
    } }
    hardware b1 b2 kind=bolt at=bay torque="20 N·m" turns=14
    hardware driver kind=power-tool at=EV1
    hardware bag-1 kind=bag at=bay
    hardware tool kind=power-tool at=EV1`);
    const [release, stow, put] = (stint?.steps ?? []).map(withoutSpan);
    expect(release).toEqual({
      verb: 'release',
      objects: ['b1', 'b2'],
      from: null,
      to: null,
      tool: 'driver',
      by: 'lead',
      turns: 8,
      torqueNm: 12,
      agreedS: 150,
      settings: 'B',
      note: 'n',
      caution: 'c',
      say: 'loose',
      hear: 'go',
      safeStop: null,
    });
    expect([stow?.to, stow?.safeStop]).toEqual(['bag-1', true]);
    expect([put?.from, put?.to, put?.safeStop]).toEqual(['EV1', 'tip', null]);
  });

  test('of a template become stints that point at its use', () => {
    const campaign = read(
      TOP,
      CREW,
      `hardware r1 kind=foot-restraint at=socket-a
hardware socket-a kind=socket at=bay
hardware socket-b kind=socket at=tip
task t {
  use move-restraint mv who=EV1 restraint=r1 from=socket-a to=socket-b at=bay to-at=tip
}`,
    );
    const made = campaign.tasks[0]?.stints ?? [];
    expect(made.length).toBeGreaterThan(0);
    for (const stint of made) {
      expect(stint.template).toBe('move-restraint');
      expect(stint.key.startsWith('t/mv-')).toBe(true);
      expect([stint.span.file, stint.span.line]).toEqual(['3.kdl', 6]);
    }
  });
});

describe('order', () => {
  test('a join ties the nearest stint above with the speaker to the nearest below with the listener', () => {
    const campaign = read(
      TOP,
      'task t { stint a who=EV1 { minutes 1 }; stint b who=EV2 { minutes 1 }; join "Cables free" from=EV1 to=EV1; stint c who=EV2 { minutes 1 }; stint d who=EV1 { minutes 1 }; join id=last after=a before=c }',
    );
    expect(campaign.tasks[0]?.joins.map(withoutSpan)).toEqual([
      {
        id: 'cables-free',
        title: 'Cables free',
        task: 't',
        releases: 't/a',
        waits: 't/d',
        says: 'EV1',
        listens: 'EV1',
      },
      { id: 'last', title: 'Last', task: 't', releases: 't/a', waits: 't/c', says: null, listens: null },
    ]);
  });

  test('tasks stand in rank order; those without a rank come behind the ranks above them, and the default says so', () => {
    const work = '{ stint s who=EV1 { minutes 1 } }';
    const campaign = read(TOP, `task a rank=2 ${work}\ntask b ${work}\ntask c rank=1 ${work}\ntask d rank=3 ${work}`);
    expect(campaign.tasks.map((task) => [task.id, task.rank])).toEqual([
      ['c', 1],
      ['a', 2],
      ['d', 3],
      ['b', 4],
    ]);
    expect(campaign.defaults).toContainEqual(expect.objectContaining({ what: 'rank of b', value: '4' }) as object);
  });

  test('a task falls in its EVAs: named, any, or the only one', () => {
    const work = '{ stint s who=EV1 { minutes 1 } }';
    const two = `${TOP}eva two egress="2031-09-16T11:40:00Z"\n`;
    expect(
      read(two, `task a eva=two ${work}\ntask b eva="two one" ${work}\ntask c eva=any ${work}`).tasks.map(
        (task) => task.evas,
      ),
    ).toEqual([['two'], ['two', 'one'], ['one', 'two']]);
    expect(read(TOP, `task a ${work}`).tasks[0]?.evas).toEqual(['one']);
  });
});

describe('the rest of the world', () => {
  test('quantities are SI, instants are milliseconds, PET is seconds', () => {
    const campaign = read(
      `campaign c\neva one egress="2031-09-14T11:40:00Z" slip="15 min" longest="6 h 30 min" { in EV2 "6 min"; in EV1 "7 min"; out EV1 "8 min"; out EV2 "90 s"; close-hatch "7 min"; minimum-success t }`,
      `limits { home-within "30 min"; reaction "30 s" }
request off owner=power inhibits=2 lead="10 min" verify="2 min" clear="5 min" longest="2 h" status=agreed
task t { stint s who=EV1 { minutes 1; after u/s } }
task u { stint s who=EV1 { minutes 1 } }
gate g before="t/s" caller=IV latest="-0:05:30" on-no="stay" { condition "a"; condition "b" }
pin "u/s" start="1:10"`.replace('after u/s', 'after "u/s" least="5 min" most="1 h"'),
    );
    const [eva] = campaign.evas;
    // 2031-09-14T11:40:00Z: 22 536 days after the epoch (61 years of 365 days, 15 leap days, 256 days of 2031), 11 h 40 min.
    expect(eva?.egressUtcMs).toBe(((61 * 365 + 15 + 256) * 86_400 + 11 * 3600 + 40 * 60) * 1000);
    expect([eva?.slipS, eva?.longestS, eva?.closeHatchS, eva?.minimumSuccess]).toEqual([900, 23_400, 420, ['t']]);
    expect(eva?.egress.map((one) => [one.person, one.durationS])).toEqual([
      ['EV1', 480],
      ['EV2', 90],
    ]);
    expect(eva?.ingress.map((one) => [one.person, one.durationS])).toEqual([
      ['EV2', 360],
      ['EV1', 420],
    ]);
    expect([campaign.limits.homeWithinS, campaign.limits.reactionS, campaign.limits.marginS]).toEqual([1800, 30, null]);
    expect(campaign.requests[0]).toMatchObject({
      setLeadS: 600,
      verifyS: 120,
      clearS: 300,
      longestHoldS: 7200,
      inhibits: 2,
      status: 'agreed',
    });
    expect(campaign.gates[0]).toMatchObject({ latestPetS: -330, conditions: ['a', 'b'], before: 't/s' });
    expect(campaign.tasks[0]?.stints[0]?.after).toMatchObject([{ stint: 'u/s', leastS: 300, mostS: 3600 }]);
    expect(campaign.pins).toMatchObject([{ kind: 'start', stint: 'u/s', petS: 4200 }]);
  });

  test('a vehicle, its rails and its arm', () => {
    const { vehicle, arms } = read(TOP, CREW, 'task t { stint s who=EV1 at=bay { minutes 1 } }');
    expect(vehicle.hatch).toBe('porch');
    expect(vehicle.places.map((place) => [place.id, place.positionM])).toEqual([
      ['porch', null],
      ['bay', [1, -0.2, 0]],
      ['tip', null],
    ]);
    expect(vehicle.rails[0]).toMatchObject({ id: 'porch--bay', durationS: 90, lengthM: 6, refuses: ['large'] });
    expect(vehicle.rails[0]?.openWhile).toMatchObject([{ variable: 'joint', allowed: ['parked', 'locked'] }]);
    expect(arms[0]).toMatchObject({ operator: 'IV', startPose: 'parked' });
    expect(arms[0]?.poses[1]?.climbDown).toEqual({ place: 'porch', durationS: 240 });
    expect(arms[0]?.transfers.map((one) => [one.emptyS, one.loadedS, one.oneWay])).toEqual([
      [180, 300, false],
      [120, null, true],
    ]);
  });

  test('hardware: many pieces in one line, states by aspect, what is not stated stays out', () => {
    const { hardware, defaults } = read(
      TOP,
      `hardware b1 b2 "Bolt" kind=bolt of=pump torque="34 N·m" turns=14 state=torqued fits="power-tool"
hardware pump "Old pump" kind=box at=EV1 mass="82 kg" controls="off"
request off owner=power inhibits=2 lead="10 min" verify="2 min" clear="5 min" status=agreed
hardware r1 kind=foot-restraint at=pump { setting roll "30 deg" }
task t { stint s who=EV1 { minutes 1 } }`,
    );
    expect(hardware.map((piece) => [piece.id, piece.title])).toEqual([
      ['b1', 'Bolt b1'],
      ['b2', 'Bolt b2'],
      ['pump', 'Old pump'],
      ['r1', 'R1'],
    ]);
    expect(hardware[0]).toMatchObject({
      at: { kind: 'hardware', id: 'pump' },
      of: 'pump',
      torqueNm: 34,
      turns: 14,
      toolFits: ['power-tool'],
    });
    expect(Object.values(hardware[0]?.initial ?? {})).toEqual(['torqued']);
    expect(hardware[2]).toMatchObject({
      at: { kind: 'person', id: 'EV1' },
      massKg: 82,
      initial: {},
      controls: ['off'],
      loadClass: null,
    });
    expect(hardware[3]?.settings).toEqual({ roll: '30 deg' });
    expect(defaults).toContainEqual(expect.objectContaining({ what: 'place of b1', value: 'on pump' }) as object);
  });

  test('states by name: an aspect, a holder, a request', () => {
    const [stint] = stints(`task t { stint s who=EV1 at=bay {
      minutes 1
      need joint parked locked
      need request:off "in force" when=start
      leave bag-1.holder EV2 at=start
      leave bag-1.holder "place:tip"
    } }
    hardware bag-1 kind=bag at=bay
    request off owner=power inhibits=1 lead="1 min" verify="0 s" clear="0 s" status=draft`);
    expect(stint?.needs.map((need) => [need.variable, need.allowed, need.when])).toEqual([
      ['joint', ['parked', 'locked'], 'during'],
      ['request:off', ['in force'], 'start'],
    ]);
    expect(stint?.leaves.map((leave) => [leave.variable, leave.value, leave.at])).toEqual([
      ['bag-1.holder', 'person:EV2', 'start'],
      ['bag-1.holder', 'place:tip', 'end'],
    ]);
  });

  test('windows are sorted; uses say which part', () => {
    const campaign = read(
      TOP,
      `window day pad="30 s" shown-as=night source="table 3" { interval "2031-09-14T13:00:00Z" "2031-09-14T14:00:00Z"; interval "2031-09-14T11:00:00Z" "2031-09-14T12:00:00Z" }
task t { stint s who=EV1 { rest; rest; rest; inside day; outside day part=start; prefer day part=steps from-step=2 to-step=3 } }`,
    );
    expect(campaign.windows[0]).toMatchObject({ padS: 30, shownAs: 'night', source: 'table 3' });
    expect(
      campaign.windows[0]?.intervals.map(([from, to]) => [
        new Date(from).toISOString().slice(11, 16),
        (to - from) / 60_000,
      ]),
    ).toEqual([
      ['11:00', 60],
      ['13:00', 60],
    ]);
    expect(
      campaign.tasks[0]?.stints[0]?.windowUses.map((use) => [
        use.mode,
        use.part,
        use.fromStep,
        use.toStep,
        use.prefers,
      ]),
    ).toEqual([
      ['inside', 'whole', 0, 3, false],
      ['outside', 'start', 0, 3, false],
      ['inside', 'steps', 1, 3, true],
    ]);
  });

  test('clocks, events, responses, waivers, cut orders', () => {
    const campaign = read(
      TOP,
      `hardware j1 j2 kind=power-connector at=EV1 state=mated
hardware b1 kind=bolt at=EV1
hardware bar kind=hand-tool at=EV1
clock cold limit="45 min" { starts j1 demated; stops j2 mated demated }
event ship at="2031-10-02T09:00:00Z" { leaves j1 demated }
response stuck "Stuck bolt" trigger="stalls" kind=bolt { start it; minutes low=3 likely=6 high=12; kit bar; probability "2 %"; leaves b1 torqued }
task t { stint s who=EV1 { minutes 1 } }
insert i { stint s who=EV1 { minutes 1 } }
objective o needed-by=ship { tasks t; milestone m "Half" { tasks t } }
waive "arm/is-safed" of="t/s" reason="r" by="b" until="2031-12-01T00:00:00Z"
cut-order one { drop i; drop t }`,
    );
    expect(campaign.clocks[0]).toMatchObject({
      kind: 'difference',
      limitS: 2700,
      sense: 'most',
      onStop: 'reset',
      start: { variable: 'j1', values: ['demated'] },
      stop: { variable: 'j2', values: ['mated', 'demated'] },
    });
    expect(campaign.events[0]).toMatchObject({ agreed: false, leaves: [{ variable: 'j1', value: 'demated' }] });
    expect(campaign.responses[0]).toMatchObject({
      appliesTo: { kind: 'bolt' },
      duration: { lowS: 180, likelyS: 360, highS: 720 },
      kit: ['bar'],
      probability: 0.02,
      leaves: [{ variable: 'b1', value: 'torqued' }],
    });
    expect(campaign.responses[0]?.steps[0]).toMatchObject({ verb: 'start', objects: ['it'] });
    expect(campaign.tasks.map((task) => [task.insert, task.objective])).toEqual([
      [false, 'o'],
      [true, null],
    ]);
    expect(campaign.objectives[0]).toMatchObject({
      rank: 1,
      neededBy: 'ship',
      tasks: ['t'],
      milestones: [{ title: 'Half', tasks: ['t'] }],
    });
    expect(campaign.waivers[0]).toMatchObject({ rule: 'arm/is-safed', of: 't/s', untilUtcMs: Date.UTC(2031, 11, 1) });
    expect(campaign.cutOrders[0]?.tasks).toEqual(['i', 't']);
  });
});

describe('what is left out', () => {
  test('a pasted list of work stands on defaults that are all listed', () => {
    const campaign = read(TOP, 'task t { stint s who=both { minutes 1 } }');
    expect(campaign.people.map((person) => [person.id, person.role, person.suitLimitS])).toEqual([
      ['EV1', 'outside', null],
      ['EV2', 'outside', null],
      ['IV', 'inside', null],
    ]);
    expect(campaign.vehicle.hatch).toBeNull();
    expect(campaign.vehicle.places.map((place) => place.id)).toEqual(['outside']);
    expect(campaign.evas[0]?.egress.map((one) => one.durationS)).toEqual([0, 0]);
    expect(campaign.evas[0]?.longestS).toBeNull();
    expect(Object.values(campaign.limits).every((value) => value === null)).toBe(true);
    expect(campaign.defaults.map((one) => one.what).sort()).toEqual(
      [
        'EV1 in in one',
        'EV1 out in one',
        'EV2 in in one',
        'EV2 out in one',
        'EVA of t',
        'closing the hatch of one',
        'kinds library',
        'people',
        'rank of t',
        'slip of one',
        'travel',
      ].sort(),
    );
  });

  test('several files make one campaign, and every part remembers its own', () => {
    const campaign = read(TOP, CREW, 'task t { stint s who=EV1 at=bay { minutes 1 } }');
    expect([campaign.span.file, campaign.people[0]?.span.file, campaign.tasks[0]?.stints[0]?.span.file]).toEqual([
      '1.kdl',
      '2.kdl',
      '3.kdl',
    ]);
    expect(campaign.tasks[0]?.stints[0]?.span).toMatchObject({ line: 2, column: 10 });
  });
});
