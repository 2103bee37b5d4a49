/**
 * Broken campaign texts, each with the problems that it must give: `NAME.kdl` beside `NAME.expected`, a line a problem,
 * `line:column code: what; expected …; did you mean …`. Its first line says in words what is wrong with it.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { formatProblem, formatProblemLine } from '@handrail/eva/campaign/problem/format-problem';
import { PROBLEM_CODES } from '@handrail/eva/campaign/problem/problem-codes';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { buildKindsLibrary, standardLibrary } from '@handrail/eva/kinds/kinds-library';

const FOLDER = 'tests/rejects/campaigns';
const NAMES = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.kdl'))
  .map((file) => file.slice(0, -4));
const HEAD = 'handrail 1\ncampaign c "C"\neva one egress="2031-09-14T11:40:00Z"\n';
const read = (text: string | Uint8Array) => readCampaign([{ name: 'campaign.kdl', text }], standardLibrary);
const codes = (text: string | Uint8Array): readonly string[] => read(text).problems.map((problem) => problem.code);

describe('broken campaign texts', () => {
  test('there are at least eighty of them', () => {
    expect(NAMES.length).toBeGreaterThanOrEqual(80);
  });

  test.each(NAMES)('%s', (name) => {
    const text = readFileSync(join(FOLDER, `${name}.kdl`), 'utf8');
    const { campaign, problems } = readCampaign([{ name: `${name}.kdl`, text }], standardLibrary);
    expect(text).toMatch(/^\/\/ \S/);
    expect(campaign).toBeNull();
    expect(`${problems.map(formatProblemLine).join('\n')}\n`).toBe(
      readFileSync(join(FOLDER, `${name}.expected`), 'utf8'),
    );
  });
});

describe('files that are no campaign text at all', () => {
  test('no file', () => {
    expect(readCampaign([], standardLibrary).problems.map((one) => one.code)).toEqual(['campaign/no-file']);
  });

  test('a binary file: the start of a PNG', () => {
    expect(codes(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]))).toEqual([
      'campaign/not-text',
    ]);
  });

  test('a text with a NUL in it says where', () => {
    const [problem] = read(`${HEAD}\0`).problems;
    expect([problem?.code, problem?.span.line, problem?.span.column]).toEqual(['campaign/not-text', 4, 1]);
  });

  test.each([
    ['Latin-1 é', [0xe9, 0x0a]],
    ['a lone continuation byte', [0x80]],
    ['an overlong slash', [0xc0, 0xaf]],
    ['half of a surrogate pair', [0xed, 0xa0, 0x80]],
    ['beyond the last code point', [0xf4, 0x90, 0x80, 0x80]],
    ['cut off in the middle', [0xe2, 0x82]],
  ])('bytes that are not UTF-8: %s', (_, bad) => {
    const [problem] = read(new Uint8Array([...new TextEncoder().encode('// °\n'), ...bad])).problems;
    expect([problem?.code, problem?.span.line, problem?.span.column]).toEqual(['campaign/not-utf-8', 2, 1]);
  });

  test('UTF-8 of one to four bytes reads as the platform reads it', () => {
    const text = `${HEAD}// aé€😀 ${'N·m '.repeat(3000)}\ntask t { stint s who=EV1 { minutes 10 } }\n`;
    const fromBytes = read(new TextEncoder().encode(text));
    expect(fromBytes.problems).toEqual([]);
    expect(fromBytes.document.files[0]?.source.text).toBe(text);
  });

  test('a file of ten megabytes is refused before anything else is done with it', () => {
    expect(codes(`${HEAD}${'// padding\n'.repeat(950_000)}`)).toEqual(['campaign/too-large']);
  });

  test('braces a hundred thousand deep', () => {
    expect(codes(`${HEAD}${'task t {'.repeat(100_000)}`)).toEqual(['campaign/too-deep']);
  });

  test('comments a hundred thousand deep', () => {
    expect(codes(`${HEAD}${'/*'.repeat(100_000)}`)).toEqual(['campaign/syntax']);
  });

  test('thousands of problems are cut off with a word about it', () => {
    const found = codes(`${HEAD}${'bolt 1\n'.repeat(3000)}`);
    expect(found).toHaveLength(501);
    expect(found).toContain('campaign/too-many-problems');
  });
});

describe('problem codes', () => {
  test('each is given by some broken text, and no text gives another', () => {
    const given = new Set(
      NAMES.flatMap((name) =>
        [
          ...readFileSync(join(FOLDER, `${name}.expected`), 'utf8').matchAll(
            /^\S+ (?:warning )?campaign\/([a-z0-9-]+):/gm,
          ),
        ].map((match) => match[1]),
      ),
    );
    const elsewhere = ['no-file', 'not-text', 'not-utf-8', 'too-deep', 'too-large', 'too-many-problems', 'template'];
    expect(new Set([...given, ...elsewhere])).toEqual(new Set(Object.keys(PROBLEM_CODES)));
  });

  test('a message carries place, expectation, nearest name and where to read on', () => {
    const [problem] = read(`${HEAD}task t rnk=1 { stint s who=EV1 { minutes 10 } }\n`).problems;
    expect(problem === undefined ? '' : formatProblem(problem)).toBe(
      [
        'error  task has no property "rnk"                                     campaign/unknown-property',
        '  at    campaign.kdl:4:8',
        '  mend  did you mean "rank"?',
        '  more  handrail explain campaign/unknown-property',
      ].join('\n'),
    );
  });

  test('problems of several files stand in the order of the files, each with its file', () => {
    const { problems } = readCampaign(
      [
        { name: 'z.kdl', text: `${HEAD}task t { stint s who=EV3 { minutes 10 } }\n` },
        { name: 'a.kdl', text: 'handrail 1\nlimits { margn "15 min" }\n' },
      ],
      standardLibrary,
    );
    expect(problems.map((one) => `${one.span.file}:${one.span.line}`)).toEqual(['z.kdl:4', 'a.kdl:2']);
  });

  test('a library without kinds knows no verb', () => {
    const empty = buildKindsLibrary('standard', '1', []);
    const { problems } = readCampaign(
      [{ name: 'c.kdl', text: `${HEAD}task t { stint s who=EV1 { rest; minutes 10 } }\n` }],
      empty,
    );
    expect(problems.map((one) => one.code)).toEqual(['campaign/unknown-verb']);
  });
});
