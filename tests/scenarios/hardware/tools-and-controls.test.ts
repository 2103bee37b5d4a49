import { describe, expect, test } from 'vitest';
import { readText } from './read-text.ts';

describe('tools', () => {
  const bolt = 'hardware b1 kind=bolt at=bay state=torqued torque="30 N·m" turns=14\n';
  const release = (how = ''): string => `task turn rank=1 { stint it who=EV1 at=bay { release b1 ${how} } }`;
  const words = (text: string): readonly string[] =>
    readText(text)
      .effects('turn/it')
      .unknowns.map((one) => one.words);

  test('no tool that fits is named, with what would', () => {
    expect(words(`${bolt}${release()}`)).toEqual(['release b1 (bolt): no tool fits (power-tool or ratchet, 30 N·m)']);
  });

  test('a tool that is too weak does not fit', () => {
    expect(
      words(`${bolt}hardware weak kind=power-tool at=EV1 { property torque-most "20 N·m" }\n${release('with=weak')}`),
    ).toEqual(['release b1 (bolt) with weak: it gives up to 20 N·m; 30 N·m is asked']);
  });

  test('a tool of another kind does not fit', () => {
    expect(words(`${bolt}hardware snips kind=cutter at=EV1\n${release('with=snips')}`)).toEqual([
      'release b1 (bolt) with snips: it is a cutter; power-tool or ratchet fits',
    ]);
  });

  test('two that fit are not chosen between', () => {
    expect(words(`${bolt}hardware d1 d2 kind=power-tool at=porch\n${release()}`)).toEqual([
      'release b1 (bolt): d1, d2 all fit; say with=',
    ]);
  });

  test('the one that the person has on them from the start is the one', () => {
    const { effects } = readText(`${bolt}
hardware sack kind=bag at=EV1
hardware d1 kind=power-tool at=sack
hardware d2 kind=power-tool at=EV2
${release()}`);
    expect(effects('turn/it').tools.map((one) => one.tool)).toEqual(['d1']);
    expect(effects('turn/it').unknowns).toEqual([]);
  });
});

describe('controls', () => {
  const plug = (properties: string): string =>
    `hardware crate kind=box at=bay state=fastened\nhardware j1 j2 kind=power-connector at=bay state=mated ${properties}\n`;
  const stint = (inside: string): string => `task cut rank=1 { stint it who=EV1 at=bay { ${inside} } }`;

  test('a live connector without a request is a gap', () => {
    const { effects } = readText(plug('') + stint('demate j1'));
    expect(effects('cut/it').controls).toEqual([]);
    expect(effects('cut/it').unknowns.map((one) => one.words)).toEqual([
      'demate j1 (power connector) must not be done live, and no request is named for j1 (controls=)',
    ]);
  });

  test('a request over the whole stint fills it', () => {
    const { effects } = readText(plug('') + stint('inspect bay; demate j1; under bus-off'));
    expect(effects('cut/it').controls.map((one) => [one.request, one.fromStep, one.toStep])).toEqual([
      ['bus-off', 0, 2],
    ]);
    expect(effects('cut/it').unknowns).toEqual([]);
  });

  test('a connector inherits the requests of its box', () => {
    const text = `hardware crate kind=box at=bay state=fastened controls=loop-vented
hardware j1 kind=power-connector of=crate at=bay state=mated controls=bus-off
`;
    const { effects } = readText(text + stint('demate j1'));
    expect(effects('cut/it').controls.map((one) => one.request)).toEqual(['bus-off', 'loop-vented']);
  });

  test('steps one after another share one hold; a step between parts them', () => {
    const { effects } = readText(plug('controls=bus-off') + stint('demate j1; demate j2; inspect bay; mate j2'));
    expect(effects('cut/it').controls.map((one) => [one.fromStep, one.toStep])).toEqual([
      [0, 2],
      [3, 4],
    ]);
  });

  test('a data connector needs none', () => {
    const { effects } = readText(`hardware j1 kind=data-connector at=bay state=mated\n${stint('demate j1')}`);
    expect(effects('cut/it').controls).toEqual([]);
    expect(effects('cut/it').unknowns).toEqual([]);
  });
});
