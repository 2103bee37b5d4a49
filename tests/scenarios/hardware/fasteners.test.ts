import { describe, expect, test } from 'vitest';
import { leaveTexts, needText, readText } from './read-text.ts';

const crate = (more = ''): string => `
hardware crate kind=box at=bay mass="40 kg" load=large state=fastened { state retainer none${more} }
hardware b1 b2 kind=bolt of=crate at=bay state=torqued torque="20 N·m" turns=8
hardware j1 kind=data-connector of=crate at=bay state=mated
hardware driver kind=power-tool at=EV1
`;

describe('taking a box', () => {
  test('needs every fastener released and every connector demated', () => {
    const { effects } = readText(`${crate()}
task get rank=1 { stint it who=EV1 at=bay { take crate } }`);
    expect(effects('get/it').needs.map(needText)).toEqual([
      'during 0-1 b1 = released',
      'during 0-1 b2 = released',
      'during 0-1 j1 = demated',
      'start crate.holder = place:bay',
    ]);
    expect(leaveTexts(effects('get/it'))).toEqual(['0 crate.holder = role:0', '0 crate = free']);
  });

  test('asks the box itself where the campaign names no fasteners', () => {
    const { effects } = readText(`
hardware crate kind=box at=bay state=fastened
task get rank=1 { stint it who=EV1 at=bay { take crate } }`);
    const own = effects('get/it').needs.find((need) => need.variable === 'crate');
    expect(own?.allowed).not.toContain('fastened');
    expect(own?.allowed).toContain('seated');
  });

  test('is answered by a stint that frees the box itself', () => {
    const { effects } = readText(`${crate()}
task get rank=1 { stint it who=EV1 at=bay { demate j1; tether crate; release b1 b2; take crate } }`);
    const needs = effects('get/it').needs.map((need) => need.variable);
    expect(needs).not.toContain('crate.retainer');
    expect(effects('get/it').needs.filter((need) => need.allowed.includes('released'))).toEqual([]);
    expect(effects('get/it').unknowns).toEqual([]);
  });
});

describe('make before break', () => {
  test('a box is seated, no longer fastened, when the last of its fasteners lets go', () => {
    const { effects } = readText(`${crate()}
task get rank=1 { stint it who=EV1 at=bay { tether crate; release b1; release b2 } }`);
    expect(leaveTexts(effects('get/it'))).toEqual([
      '0 crate.retainer = tethered',
      '1 b1 = released',
      '2 b2 = released',
      '2 crate = seated',
    ]);
  });

  test('nothing that holds it is a gap, named at the sentence that lets go', () => {
    const { effects } = readText(`${crate()}
task get rank=1 { stint it who=EV1 at=bay { release b1; release b2 } }`);
    expect(effects('get/it').unknowns.map((one) => one.words)).toEqual([
      'make before break: release b2 may let go crate, and nothing is said to hold it (tether, grip, or soft-capture #true)',
    ]);
  });

  test('guides that keep it are enough', () => {
    const { effects } = readText(`${crate('; property soft-capture #true')}
task get rank=1 { stint it who=EV1 at=bay { release b1 b2 } }`);
    expect(effects('get/it').unknowns).toEqual([]);
  });

  test('a tether from an earlier stint is asked for', () => {
    const { effects } = readText(`${crate()}
task get rank=1 {
    stint first who=EV1 at=bay { release b1; tether crate }
    stint then who=EV1 at=bay { release b2 }
}`);
    expect(effects('get/first').unknowns).toEqual([]);
    expect(effects('get/first').needs.map((need) => need.variable)).not.toContain('crate.retainer');
    expect(effects('get/then').needs.map(needText)).toContain('during 0-1 crate.retainer = tethered | gripped');
  });
});

describe('fastening a box', () => {
  test('needs it in its seat, and leaves it fastened with the last one', () => {
    const { effects } = readText(`
hardware crate kind=box at=deck state=stowed
hardware b1 b2 kind=captive-fastener of=crate at=bay state=released turns=8
hardware driver kind=power-tool at=EV1
task fit rank=1 { stint it who=EV1 at=bay { drive b1; drive b2 } }`);
    expect(effects('fit/it').needs.map(needText)).toContain('during 0-2 crate = seated | held | fastened');
    expect(leaveTexts(effects('fit/it'))).toEqual(['0 b1 = torqued', '1 b2 = torqued', '1 crate = fastened']);
  });

  test('says nothing of the box when it drives some of them', () => {
    const { effects } = readText(`
hardware crate kind=box at=bay state=seated
hardware b1 b2 kind=captive-fastener of=crate at=bay state=released turns=8
hardware driver kind=power-tool at=EV1
task fit rank=1 {
    stint some who=EV1 at=bay { drive b1 }
    stint rest who=EV1 at=bay { drive b2; secure crate }
}`);
    expect(leaveTexts(effects('fit/some'))).toEqual(['0 b1 = torqued']);
    expect(effects('fit/rest').needs.map(needText)).toContain('during 1-2 b1 = torqued');
    expect(leaveTexts(effects('fit/rest'))).toContain('1 crate = fastened');
  });

  test('fasteners of another seat do not count', () => {
    const { effects } = readText(`
hardware crate kind=box at=deck state=fastened
hardware launch-1 kind=bolt of=crate at=deck state=torqued turns=8
hardware b1 kind=captive-fastener of=crate at=bay state=released turns=8
hardware driver kind=power-tool at=EV1
task fit rank=1 {
    stint it who=EV1 at=bay { drive b1 }
    stint sure who=EV1 at=bay { secure crate }
}`);
    expect(leaveTexts(effects('fit/it'))).toEqual(['0 b1 = torqued', '0 crate = fastened']);
    expect(effects('fit/sure').needs.map((need) => need.variable)).not.toContain('launch-1');
    expect(effects('fit/sure').needs.map(needText)).toContain('during 0-1 b1 = torqued');
  });
});
