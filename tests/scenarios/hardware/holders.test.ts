import { describe, expect, test } from 'vitest';
import { leaveTexts, needText, readText } from './read-text.ts';

describe('carrying', () => {
  test('a box goes from its bay through hand and partner into a bag', () => {
    const { effects } = readText(`
hardware rack kind=bay at=bay
hardware crate kind=box at=rack load=large state=seated
hardware sack kind=bag at=EV2
task move rank=1 {
    stint it who=EV1 at=bay partner=EV2 {
        take crate
        hand-over crate to=EV2 say="yours" hear="mine"
        stow crate in=sack by=partner
    }
}`);
    const it = effects('move/it');
    expect(it.needs.filter((need) => need.variable === 'crate.holder').map(needText)).toEqual([
      'start crate.holder = hardware:rack',
    ]);
    expect(leaveTexts(it)).toEqual([
      '0 crate.holder = role:0',
      '0 crate = free',
      '1 crate.holder = role:1',
      '1 crate = free',
      '2 crate.holder = hardware:sack',
      '2 crate = stowed',
    ]);
    expect(it.carriesIn).toEqual([]);
    expect(it.carriesOut).toEqual([]);
    expect(it.unknowns).toEqual([]);
  });

  test('a large piece in hand at either end of a stint loads the travel', () => {
    const { effects } = readText(`
hardware crate kind=box at=deck load=large state=parked
task move rank=1 {
    stint fetch who=EV1 at=deck { take crate }
    stint bring who=EV1 at=bay { put crate }
}`);
    expect(effects('move/fetch').carriesIn).toEqual([]);
    expect(effects('move/fetch').carriesOut).toEqual([{ role: 0, item: 'crate' }]);
    expect(effects('move/bring').carriesIn).toEqual([{ role: 0, item: 'crate' }]);
    expect(effects('move/bring').carriesOut).toEqual([]);
    expect(effects('move/bring').needs.map(needText)).toContain('start crate.holder = role:0');
    expect(leaveTexts(effects('move/bring'))).toContain('0 crate.holder = place:bay');
  });

  test('a small piece that nobody takes is stowed straight from where it is', () => {
    const { effects } = readText(`
hardware sack kind=bag at=EV1
hardware probe kind=hand-tool at=bay
task tidy rank=1 { stint it who=EV1 at=bay { stow probe in=sack } }`);
    expect(effects('tidy/it').needs.map(needText)).toEqual(['start probe.holder = place:bay']);
  });

  test('a piece that somebody takes elsewhere must be in hand to be stowed', () => {
    const { effects } = readText(`
hardware sack kind=bag at=EV1
hardware probe kind=hand-tool at=deck
task tidy rank=1 {
    stint fetch who=EV1 at=deck { take probe }
    stint it who=EV1 at=bay { stow probe in=sack }
}`);
    expect(effects('tidy/it').needs.map(needText)).toEqual(['start probe.holder = role:0']);
  });

  test('stowing needs to know into what', () => {
    const { effects } = readText(`
hardware probe kind=hand-tool at=bay
task tidy rank=1 { stint it who=EV1 at=bay { take probe; stow probe } }`);
    expect(effects('tidy/it').unknowns.map((one) => one.words)).toEqual(['"stow probe": into what is not said (in=)']);
    expect(leaveTexts(effects('tidy/it'))).toEqual(['0 probe.holder = role:0']);
  });
});

describe('bags', () => {
  test('a piece in a bag in a bag is in reach when the outer bag is', () => {
    const { effects } = readText(`
hardware sack kind=bag at=deck
hardware pouch kind=bag at=sack
hardware probe kind=hand-tool at=pouch
task use rank=1 {
    stint bring who=EV1 at=deck { take sack; take probe from=pouch }
}`);
    // sack and probe move, pouch never leaves the sack: so only the sack and the probe are asked for.
    expect(effects('use/bring').needs.map(needText)).toEqual([
      'start sack.holder = place:deck',
      'start probe.holder = hardware:pouch',
      'during 0-1 probe.holder = hardware:pouch',
    ]);
    expect(effects('use/bring').unknowns).toEqual([]);
  });

  test('a bag on somebody who is not there is out of reach', () => {
    const { effects } = readText(`
hardware pouch kind=bag at=EV2
hardware probe kind=hand-tool at=pouch
task use rank=1 { stint it who=EV1 at=bay { check probe } }`);
    expect(effects('use/it').unknowns.map((one) => one.words)).toEqual([
      'check probe (hand tool), probe at hand: nothing in the campaign brings pouch within reach here',
    ]);
  });

  test('what nothing brings within reach is named', () => {
    const { effects } = readText(`
hardware probe kind=hand-tool at=deck
task use rank=1 { stint it who=EV1 at=bay { take probe } }`);
    expect(effects('use/it').unknowns.map((one) => one.words)).toEqual([
      'take probe (hand tool): nothing in the campaign brings probe within reach here',
    ]);
  });

  test('one of two bags is not guessed', () => {
    const { effects } = readText(`
hardware sack pouch kind=bag at=EV1
hardware probe kind=hand-tool at=sack
task use rank=1 {
    stint pack who=EV1 at=porch { take probe from=sack; stow probe in=pouch }
    stint it who=EV1 at=bay { take probe }
}`);
    expect(effects('use/it').unknowns.map((one) => one.words)).toEqual([
      'take probe (hand tool): it may be in sack or pouch; say from=',
    ]);
  });

  test('a socket or bay is empty before something goes in', () => {
    const { effects } = readText(`
hardware rack kind=bay at=bay
hardware old-crate kind=box at=rack state=seated
hardware new-crate kind=box at=deck state=parked
task swap rank=1 {
    stint out who=EV1 at=bay { take old-crate; put old-crate }
    stint fetch who=EV1 at=deck { take new-crate }
    stint in who=EV1 at=bay { seat new-crate in=rack }
}`);
    expect(effects('swap/in').needs.map(needText)).toContain('during 0-1 old-crate.holder = person:EV1 | place:bay');
  });

  test('what sits in a bay for good keeps others out', () => {
    const { effects } = readText(`
hardware rack kind=bay at=bay
hardware old-crate kind=box at=rack state=seated
hardware new-crate kind=box at=deck state=parked
task swap rank=1 {
    stint fetch who=EV1 at=deck { take new-crate }
    stint in who=EV1 at=bay { seat new-crate in=rack }
}`);
    expect(effects('swap/in').unknowns.map((one) => one.words)).toEqual([
      'seat new-crate (box): old-crate is still in rack',
    ]);
  });
});

describe('foot restraints', () => {
  const plates = `
hardware s1 kind=socket at=bay
hardware s2 kind=socket at=deck
hardware r1 kind=foot-restraint at=s2
hardware lid kind=cover at=bay state=closed
`;

  test('working from one needs it in a socket there, throughout', () => {
    const { effects } = readText(`${plates}
task work rank=1 { stint it who=EV1 at=bay restraint=r1 { open lid; inspect lid } }`);
    expect(effects('work/it').needs.map(needText)).toContain('during 0-2 r1.holder = hardware:s1');
  });

  test('a stint that seats it itself needs it only in hand', () => {
    const { effects } = readText(`${plates}
task work rank=1 {
    stint fetch who=EV1 at=deck { unseat r1 }
    stint it who=EV1 at=bay restraint=r1 { seat r1; open lid; inspect lid }
}`);
    const it = effects('work/it');
    expect(it.needs.filter((need) => need.variable === 'r1.holder').map(needText)).toEqual([
      'start r1.holder = role:0',
    ]);
    expect(it.holds.find((hold) => hold.variable === 'r1.holder')).toEqual({
      variable: 'r1.holder',
      fromStep: 0,
      toStep: 3,
    });
    expect(it.unknowns).toEqual([]);
  });

  test('a stint that unseats it at the end needs it seated until then', () => {
    const { effects } = readText(`${plates}
task work rank=1 { stint it who=EV1 at=deck restraint=r1 { inspect deck; photograph deck; unseat r1 } }`);
    expect(effects('work/it').needs.map(needText)).toContain('during 0-2 r1.holder = hardware:s2');
  });

  test('a place without a socket is named', () => {
    const { effects } = readText(`${plates}
task work rank=1 { stint it who=EV1 at=tip restraint=r1 { inspect tip } }`);
    expect(effects('work/it').unknowns.map((one) => one.words)).toEqual([
      'EV1 works from r1, but there is no socket at tip',
    ]);
  });
});

describe('a partner who joins later', () => {
  const text = (steps: string): string => `
hardware crate kind=box at=deck load=large state=parked
hardware lid kind=cover at=bay state=closed
task bring rank=1 {
    stint fetch who=EV2 at=deck { take crate }
    stint work who=EV1 at=bay { open lid; inspect lid; ${steps} }
}`;

  test('brings the load when they join, not when the stint starts', () => {
    const { effects } = readText(text('with EV2 at=bay { inspect bay; hand-over crate to=EV1 by=partner }; put crate'));
    const work = effects('bring/work');
    expect(work.needs.filter((need) => need.variable === 'crate.holder').map(needText)).toEqual([
      'during 2-3 crate.holder = role:1',
    ]);
    expect(work.carriesIn).toEqual([{ role: 1, item: 'crate' }]);
    expect(leaveTexts(work)).toEqual([
      '0 lid = open',
      '3 crate.holder = role:0',
      '3 crate = free',
      '4 crate.holder = place:bay',
      '4 crate = parked',
    ]);
  });

  test('and joins in the very step that hands it over', () => {
    const { effects } = readText(text('with EV2 at=bay { hand-over crate to=EV1 by=partner }; put crate'));
    expect(
      effects('bring/work')
        .needs.filter((need) => need.variable === 'crate.holder')
        .map(needText),
    ).toEqual(['during 2-3 crate.holder = role:1']);
  });

  test('who takes no part cannot be handed anything', () => {
    const { effects } = readText(`
hardware probe kind=hand-tool at=bay
task give rank=1 { stint it who=EV1 at=bay { take probe; hand-over probe to=EV2 } }`);
    expect(effects('give/it').unknowns.map((one) => one.words)).toEqual([
      '"hand-over probe": EV2 takes no part in this step',
    ]);
  });
});

describe('with the arm', () => {
  test('the arm takes a load from the lead', () => {
    const { effects } = readText(`
hardware crate kind=box at=bay load=large state=seated
task give rank=1 { stint it who=EV1 at=bay arm=crane pose=crane-bay { take crate; hand-over crate to=crane } }`);
    expect(leaveTexts(effects('give/it')).filter((one) => one.includes('holder'))).toEqual([
      '0 crate.holder = role:0',
      '1 crate.holder = arm:crane',
    ]);
    expect(effects('give/it').carriesOut).toEqual([{ role: 1, item: 'crate' }]);
  });
});
