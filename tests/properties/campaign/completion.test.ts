import { readFileSync } from 'node:fs';
import { completeAt, declarationsOf } from '@handrail/eva/campaign/complete/complete-at';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { describe, expect, test } from 'vitest';

const CAMPAIGN = `handrail 1
campaign c
person EV1 "First out" role=outside
person EV2 role=outside
vehicle v hatch=porch { place porch; place pump-bay "Pump bay"; rail porch pump-bay minutes="2 min" }
eva one egress="2031-09-14T11:40:00Z"
request bus-off owner=power inhibits=2 lead="1 min" verify="1 min" clear="1 min"
hardware j1 j2 kind=power-connector at=pump-bay state=mated
task swap "Swap" { stint first who=EV1 at=pump-bay { minutes 5 } }
`;
const ids = declarationsOf([{ name: 'c.kdl', text: CAMPAIGN }], standardLibrary);

/** What is offered where the bar stands. */
function offered(line: string): readonly string[] {
  const text = `${CAMPAIGN}${line}`;
  const offset = text.indexOf('|');
  return completeAt(text.replace('|', ''), offset, ids, standardLibrary).items.map((item) => item.text);
}

describe('what may be written here', () => {
  test.each([
    ['nodes at the top of a file', 'ha|', ['handrail', 'hardware']],
    ['nodes inside a node', 'limits { pa|', ['pad-check', 'partner-within']],
    ['verbs beside nodes in a stint', 'task t { stint s who=EV1 { dem|', ['demate']],
    ['properties that are not yet there', 'task t rank=1 "T" e|', ['eva=']],
    ['words of a choice', 'task t order=|', ['free', 'written']],
    ['flags', 'pin swap out=|', ['#false', '#true']],
    ['ids of the right sort', 'task t { stint s who=EV1 at=p|', ['porch', 'pump-bay']],
    ['words that stand beside ids', 'task t { stint s who=|', ['EV1', 'EV2', 'any', 'both']],
    ['the second of several ids in one text', 'task t { stint s who="EV1 |', ['EV1', 'EV2', 'any', 'both']],
    ['kinds', 'hardware b1 kind=power-c|', ['power-connector']],
    ['states of the kind that is named', 'hardware j3 kind=power-connector state=|', ['demated', 'mated']],
    ['hardware of a sentence', 'task t { stint s who=EV1 { demate j|', ['j1', 'j2']],
    ['stints from outside, in full', 'pin "swap/|', ['swap/first']],
    ['states and requests', 'task t { stint s who=EV1 { need re|', ['request:bus-off']],
    ['templates', 'task t { use ride|', ['ride-arm']],
    ['arguments of a template', 'task t { use ride-arm over who=EV1 from|', ['from-pose=']],
    ['after a broken node', 'event x at=\nlimits { mar|', ['margin']],
    ['nothing in a comment', '// ha|', []],
    ['nothing that does not exist', 'limits { xyz|', []],
  ])('%s', (_, line, expected) => {
    expect(offered(line)).toEqual(expected);
  });

  test('stints of the same task are offered by their short name', () => {
    const text = CAMPAIGN.replace('minutes 5 }', 'minutes 5 }; stint second who=EV2 { after  }');
    const at = text.indexOf('after ') + 'after '.length;
    const own = declarationsOf([{ name: 'c.kdl', text }], standardLibrary);
    const words = completeAt(text, at, own, standardLibrary).items.map((item) => item.text);
    expect(words).toContain('first');
    expect(words).not.toContain('swap/first');
  });

  test('the stretch that is replaced is what has been written of the word', () => {
    const text = `${CAMPAIGN}task t { stint s who=EV1 at=pum`;
    const { from, to } = completeAt(text, text.length, ids, standardLibrary);
    expect(text.slice(from, to)).toBe('pum');
  });

  test('every place in the demo is answered without a fault', () => {
    const text = readFileSync('examples/fulmar.kdl', 'utf8');
    const all = declarationsOf([{ name: 'fulmar.kdl', text }], standardLibrary);
    for (let offset = 0; offset <= text.length; offset += 97) {
      const { from, to } = completeAt(text, offset, all, standardLibrary);
      expect(from).toBeLessThanOrEqual(to);
      expect(to).toBe(offset);
    }
  });
});
