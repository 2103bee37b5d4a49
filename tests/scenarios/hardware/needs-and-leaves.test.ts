import { describe, expect, test } from 'vitest';
import { holdTexts, leaveTexts, needText, readText } from './read-text.ts';

// What each sentence must need and leave is worked out by hand from the definitions of need, leave and hold, and from the
// states of bolts, covers and plugs (common practice).

describe('a stint that opens, demates and releases', () => {
  const { effects, lines } = readText(`
hardware lid kind=cover at=bay state=closed
hardware j1 j2 kind=power-connector at=bay state=mated controls=bus-off
hardware b1 b2 kind=bolt at=bay state=torqued torque="30 N·m" turns=14
hardware driver kind=power-tool at=EV1 { property torque-most "34 N·m" }
task free rank=1 {
    stint all who=EV1 at=bay {
        open lid
        demate j1 j2
        release b1 b2
    }
}
`);
  const all = effects('free/all');

  test('needs each piece as its verb asks before the stint, and until its own step', () => {
    expect(all.needs.map(needText)).toEqual([
      'start lid = closed',
      'start j1 = mated',
      'during 0-1 j1 = mated',
      'start j2 = mated',
      'during 0-1 j2 = mated',
      'start b1 = torqued | started',
      'during 0-2 b1 = torqued | started',
      'start b2 = torqued | started',
      'during 0-2 b2 = torqued | started',
    ]);
  });

  test('leaves each piece as its verb says at the end of its own step', () => {
    expect(leaveTexts(all)).toEqual([
      '0 lid = open',
      '1 j1 = demated',
      '1 j2 = demated',
      '2 b1 = released',
      '2 b2 = released',
    ]);
  });

  test('holds each piece for its own step only', () => {
    expect(holdTexts(all)).toEqual(['lid 0-1', 'j1 1-2', 'j2 1-2', 'b1 2-3', 'b2 2-3']);
  });

  test('asks for the request of the plugs over the step that demates them, once', () => {
    expect(all.controls.map(({ request, fromStep, toStep }) => ({ request, fromStep, toStep }))).toEqual([
      { request: 'bus-off', fromStep: 1, toStep: 2 },
    ]);
  });

  test('takes the only driver that fits for the step that needs one', () => {
    expect(all.tools.map(({ tool, steps }) => ({ tool, steps }))).toEqual([{ tool: 'driver', steps: [2] }]);
  });

  test('leaves nothing open', () => {
    expect(all.unknowns).toEqual([]);
  });

  test('says it in one line a step', () => {
    expect(lines('free/all')).toEqual([
      'all step 1 open lid: needs lid = closed (stated); leaves lid = open',
      'all step 2 demate j1 j2: needs j1 = mated (stated); needs j2 = mated (stated); leaves j1 = demated; leaves j2 = demated; under bus-off',
      'all step 3 release b1 b2: needs b1 = torqued or started (stated); needs b2 = torqued or started (stated); leaves b1 = released; leaves b2 = released; with driver',
    ]);
  });
});

describe('a stint that works on the same piece twice', () => {
  const bolts = `
hardware b1 kind=bolt at=bay state=torqued torque="30 N·m" turns=14
hardware driver kind=power-tool at=EV1
`;

  test('asks the world only for what its first sentence needs', () => {
    const { effects } = readText(`${bolts}
task turn rank=1 { stint twice who=EV1 at=bay { release b1; drive b1 } }`);
    const twice = effects('turn/twice');
    expect(twice.needs.map(needText)).toEqual(['start b1 = torqued | started']);
    expect(leaveTexts(twice)).toEqual(['0 b1 = released', '1 b1 = torqued']);
    expect(holdTexts(twice)).toEqual(['b1 0-2']);
    expect(twice.unknowns).toEqual([]);
  });

  test('is told when its own sentences contradict each other', () => {
    const { effects } = readText(`${bolts}
task turn rank=1 { stint twice who=EV1 at=bay { release b1; release b1 } }`);
    expect(effects('turn/twice').unknowns.map((one) => one.words)).toEqual([
      'release b1 (bolt) needs b1 = torqued or started, but this stint leaves it released in step 1',
    ]);
  });

  test('keeps a piece to itself until the last step that relies on its own change', () => {
    const { effects } = readText(`
hardware j1 kind=data-connector at=bay state=demated
hardware lid kind=cover at=bay state=open
task mate rank=1 { stint it who=EV1 at=bay { mate j1; inspect lid; check j1 } }`);
    expect(holdTexts(effects('mate/it'))).toEqual(['j1 0-3']);
    expect(effects('mate/it').needs.map(needText)).toEqual(['start j1 = demated']);
  });
});

describe('further aspects', () => {
  test('a line is not opened unless its valve is closed', () => {
    const { effects } = readText(`
hardware q1 kind=fluid-connector at=bay state=mated controls=loop-vented { state valve open }
task drain rank=1 {
    stint right who=EV1 at=bay { close-valve q1; demate q1 }
    stint wrong who=EV1 at=bay { demate q1 }
}`);
    expect(effects('drain/right').needs.map(needText)).toEqual([
      'start q1.valve = open',
      'start q1 = mated',
      'during 0-1 q1 = mated',
    ]);
    expect(effects('drain/wrong').needs.map(needText)).toContain('during 0-1 q1.valve = closed');
  });
});

describe('what is not stated', () => {
  test('a state that nobody states starts as unknown, which satisfies nothing', () => {
    const { model, effects } = readText(`
hardware lid kind=cover at=bay
task look rank=1 { stint it who=EV1 at=bay { open lid } }`);
    expect(model.variables.get('lid')?.initial).toBe('unknown');
    expect(effects('look/it').needs[0]?.allowed).not.toContain('unknown');
  });

  test('work on a piece at another place is named', () => {
    const { effects } = readText(`
hardware lid kind=cover at=deck state=closed
task look rank=1 { stint it who=EV1 at=bay { open lid } }`);
    expect(effects('look/it').unknowns.map((one) => one.words)).toEqual([
      'open lid (cover): it is at deck, and this step is done at bay',
    ]);
  });
});

describe('written exceptions', () => {
  const lid = 'hardware lid flap kind=cover at=bay state=closed\n';

  test('a written start need takes the place of the inferred one', () => {
    const { effects } = readText(`${lid}
task look rank=1 { stint it who=EV1 at=bay { inspect flap; open lid; need lid closed open when=start } }`);
    expect(effects('look/it').needs.map(needText)).toEqual(['start lid = closed | open']);
  });

  test('a written need on something else is added', () => {
    const { effects } = readText(`${lid}
task look rank=1 { stint it who=EV1 at=bay { open lid; need flap closed when=during; need lid open when=end } }`);
    expect(effects('look/it').needs.map(needText)).toEqual([
      'start lid = closed',
      'during 0-1 flap = closed',
      'end lid = open',
    ]);
  });

  test('a written leave comes after the own writes, or before them all', () => {
    const { effects } = readText(`${lid}
task look rank=1 { stint it who=EV1 at=bay { close lid; leave lid open at=start; leave flap open at=end } }`);
    expect(leaveTexts(effects('look/it'))).toEqual(['-1 lid = open', '0 lid = closed', '1 flap = open']);
    expect(effects('look/it').needs).toEqual([]);
  });
});

test('a stint without sentences needs what is written of it, and its restraint, throughout', () => {
  const { effects } = readText(`
hardware s1 kind=socket at=bay
hardware r1 kind=foot-restraint at=s1
hardware lid kind=cover at=bay state=closed
task wait rank=1 { stint it who=EV1 at=bay restraint=r1 { minutes 10; need lid closed when=during; under bus-off; leave lid open at=end } }`);
  const it = effects('wait/it');
  expect(it.needs.map(needText)).toEqual(['during 0-1 r1.holder = hardware:s1', 'during 0-1 lid = closed']);
  expect(it.controls.map((one) => [one.request, one.fromStep, one.toStep])).toEqual([['bus-off', 0, 1]]);
  expect(leaveTexts(it)).toEqual(['0 lid = open']);
});
