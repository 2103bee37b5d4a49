/** Data from outside, spoilt: JSON and lists end in words for a person, never in a fault of the program. */
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { Fault } from '@handrail/quantity/fault';
import { campaignToJson } from '@handrail/wire/campaign/campaign-json';
import { readCampaignJson } from '@handrail/wire/campaign/read-campaign-json';
import { newFromList } from '@handrail/wire/list/new-from-list';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { SOUND_TEXTS } from './mutated-text.ts';

const JSONS = SOUND_TEXTS.map((text) => JSON.stringify(campaignToJson([parseFile('c.kdl', text, new ProblemList())])));
const EGRESS = '2031-09-14T11:40:00Z';

test('spoilt campaign JSON is refused in words, or read', () => {
  let read = 0;
  const change = fc.record({
    which: fc.nat(JSONS.length - 1),
    at: fc.nat(9999).map((part) => part / 10_000),
    // Half of the changes replace one text of the JSON by another, so that what is read is still JSON.
    word: fc.option(fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('t/a', 'EV1', 'any', 'stint', '12 min'))),
    length: fc.nat(12),
    insert: fc.oneof(
      fc.constantFrom(
        'null',
        '[]',
        '{}',
        '"',
        '-1',
        '1e999',
        '"node"',
        ',',
        '"__proto__":',
        '\\u0000',
        '{"node":"task"}',
      ),
      fc.string({ maxLength: 6 }),
    ),
  });
  fc.assert(
    fc.property(change, ({ which, at, word, length, insert }) => {
      const json = JSONS[which] as string;
      const from = Math.floor(at * json.length);
      const texts = [...json.matchAll(/"[^"\\]*"/g)].filter(({ 0: text, index }) => json[index + text.length] !== ':');
      const chosen = texts[Math.floor(at * (texts.length - 1))];
      const text =
        word === null || chosen === undefined
          ? json.slice(0, from) + insert + json.slice(from + length)
          : json.slice(0, chosen.index) + JSON.stringify(word) + json.slice(chosen.index + chosen[0].length);
      try {
        const { files } = readCampaignJson(text);
        read++;
        const { campaign, problems } = readCampaign(files, standardLibrary);
        expect(campaign === null).toBe(problems.some((problem) => problem.severity === 'error'));
      } catch (error) {
        if (!(error instanceof Fault)) throw error;
        expect(error.code).toMatch(/^wire\//);
      }
    }),
    { numRuns: 3000, seed: 21 },
  );
  expect(read).toBeGreaterThan(300);
});

test('any JSON at all is refused in words', () => {
  fc.assert(
    fc.property(fc.json(), (text) => {
      expect(() => readCampaignJson(text)).toThrow(Fault);
    }),
    { numRuns: 500, seed: 22 },
  );
});

test('a list with a header and sound cells becomes a campaign that reads, whatever its words are', () => {
  const cell = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }).filter((text) => text.trim() !== '');
  const row = fc.record({
    who: fc.constantFrom('EV1', 'EV2', 'both', 'any', 'ev 1', 'EV1 or EV2', 'EV1 + EV2'),
    what: cell,
    minutes: fc.constantFrom('5', '12.5', '1:05', '20 min'),
    place: fc.option(cell, { nil: '' }),
  });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), (rows) => {
      const quoted = (text: string): string => `"${text.replaceAll('"', '""').replaceAll('\0', '')}"`;
      const lines = rows.map((one) => [one.who, one.what, one.minutes, one.place].map(quoted).join(','));
      const { text, problems } = newFromList(`who,what,minutes,place\n${lines.join('\n')}\n`, 'Any list', EGRESS);
      expect(problems).toEqual([]);
      const reading = readCampaign([{ name: 'c.kdl', text: text ?? '' }], standardLibrary);
      expect(reading.problems.map((problem) => `${problem.code} ${problem.what}`)).toEqual([]);
      expect(reading.campaign?.tasks.length).toBe(rows.length);
    }),
    { numRuns: 400, seed: 23 },
  );
});

test('any text at all as a list ends in problems with rows, or in a campaign', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 200 }), fc.boolean(), (noise, header) => {
      const { text, problems } = newFromList(header ? `who,what,minutes\n${noise}` : noise, 'L', EGRESS);
      expect(text === null).toBe(problems.length > 0);
      for (const problem of problems) expect(problem.row).toBeGreaterThanOrEqual(1);
    }),
    { numRuns: 2000, seed: 24 },
  );
});
