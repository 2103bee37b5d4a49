import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { documentHash } from '@handrail/eva/campaign/json/canonical-json';
import { nodes } from '@handrail/eva/campaign/nodes.generated';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { type CampaignJson, campaignFromJson, campaignToJson } from '@handrail/wire/campaign/campaign-json';
import { campaignSchema } from '@handrail/wire/campaign/campaign-schema';
import { readCampaignJson } from '@handrail/wire/campaign/read-campaign-json';
import { SOUND_TEXTS } from './mutated-text.ts';

const EXAMPLES = readdirSync('examples')
  .filter((file) => file.endsWith('.kdl'))
  .map((file) => [file, readFileSync(`examples/${file}`, 'utf8')] as const);
const TEXTS = [...EXAMPLES, ...SOUND_TEXTS.map((text, at) => [`small campaign ${at + 1}`, text] as const)];
const COMMENTED = `// above
handrail 1 /* the first */ // behind
/-window gone { interval }
campaign c /* a */ "C" /-"no"
task t { // opens
  // before
  stint s who=EV1 /* lead */ { minutes 10 // ten
    // last of the stint
  }
  /* last
     of the task */
}
// last of all
`;

const parsed = (text: string) => parseFile('c.kdl', text, new ProblemList());
const toJson = (text: string): CampaignJson => campaignToJson([parsed(text)]);
const back = (json: CampaignJson): string => campaignFromJson(json)[0]?.text ?? '';
const ajv = new Ajv2020({ strict: false, allErrors: true });
const validate = ajv.compile(campaignSchema());

const { $defs } = campaignSchema();
const validators = new Map(nodes.map((node) => [node.name, ajv.compile({ $ref: `#/$defs/node-${node.name}`, $defs })]));
function validatorOf(name: string): typeof validate {
  const found = validators.get(name);
  if (found === undefined) throw new Error(`no schema for ${name}`);
  return found;
}

describe('campaign JSON', () => {
  test.each(TEXTS)('says the same as the text, there and back: %s', (_, text) => {
    const json = toJson(text);
    const written = back(JSON.parse(JSON.stringify(json)) as CampaignJson);
    expect(toJson(written)).toEqual(json);
    expect(documentHash(parsed(written).nodes)).toBe(documentHash(parsed(text).nodes));
    const before = readCampaign([{ name: 'c.kdl', text }], standardLibrary);
    const after = readCampaign([{ name: 'c.kdl', text: written }], standardLibrary);
    const plain = (value: unknown): unknown =>
      JSON.parse(JSON.stringify(value, (key, inner: unknown) => (key === 'span' ? undefined : inner)));
    expect(after.problems).toEqual(before.problems);
    expect(plain(after.campaign)).toEqual(plain(before.campaign));
  });

  test('keeps the order of nodes, sentences and values', () => {
    const json = toJson('handrail 1\ntask t { stint s who=EV1 { demate j2 j1; release b1; demate j3 } }\n');
    const stint = json.files[0]?.nodes[1]?.children?.[0];
    expect(stint?.children?.map((one) => [one.node, ...(one.arguments ?? [])])).toEqual([
      ['demate', 'j2', 'j1'],
      ['release', 'b1'],
      ['demate', 'j3'],
    ]);
  });

  test('keeps every comment and writes it back as a comment', () => {
    const json = toJson(COMMENTED);
    const written = back(json);
    for (const words of ['above', 'the first', 'behind', 'gone', 'a', 'no', 'opens', 'before', 'lead', 'ten']) {
      expect(written).toContain(words);
    }
    for (const words of ['last of the stint', 'last\n', 'of the task', 'last of all']) expect(written).toContain(words);
    expect(documentHash(parsed(written).nodes)).toBe(documentHash(parsed(COMMENTED).nodes));
    expect(toJson(written).files[0]?.nodes.length).toBe(json.files[0]?.nodes.length);
  });

  test('a title is told from an id by its quotes, in JSON as in the text', () => {
    const json = toJson('handrail 1\nhardware valve "Valve" kind=valve of=v\nhardware v w kind=box at=p\n');
    expect(json.files[0]?.nodes[1]).toMatchObject({ title: 'Valve', arguments: ['valve'] });
    expect(json.files[0]?.nodes[2]).toMatchObject({ arguments: ['v', 'w'] });
    expect(back(json)).toContain('hardware valve "Valve" kind=valve');
  });
});

describe('the hash of a document', () => {
  const hash = (text: string): string => documentHash(parsed(text).nodes);
  const base = 'handrail 1\ntask t rank=1 eva=one { stint s who=EV1 { minutes 10 } }\n';

  test('is the SHA-256 of the canonical form, as another program computes it', async () => {
    const canonical =
      '{"format":"handrail-campaign","version":1,"nodes":[{"node":"task","arguments":["t"],"properties":{"eva":"one","rank":1},' +
      '"children":[{"node":"stint","arguments":["s"],"properties":{"who":"EV1"},"children":[{"node":"minutes","arguments":[10]}]}]}]}';
    const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(canonical));
    expect(hash(base)).toBe(Buffer.from(digest).toString('hex'));
  });

  test.each([
    ['a comment', 'handrail 1 // one\ntask t rank=1 eva=one { stint s who=EV1 { minutes 10 } }\n'],
    ['layout', 'handrail 1;task   t\\\n rank=1 eva="one"{\nstint s who=EV1{minutes 10.0}}'],
    ['the order of properties', 'handrail 1\ntask t eva=one rank=1 { stint s who=EV1 { minutes 10 } }\n'],
    ['quotes round a word', 'handrail 1\ntask t rank=1 eva="one" { stint s who="EV1" { minutes 10 } }\n'],
  ])('is not changed by %s', (_, text) => {
    expect(hash(text)).toBe(hash(base));
  });

  test.each([
    ['a figure', base.replace('10', '11')],
    ['the order of nodes', 'handrail 1\ntask t rank=1 eva=one { stint s who=EV1 { minutes 10 }; join "x" }\n'],
    ['a title', base.replace('task t', 'task t "T"')],
  ])('is changed by %s', (_, text) => {
    expect(hash(text)).not.toBe(hash(base));
  });
});

describe('the published schema', () => {
  test.each(TEXTS)('accepts %s', (_, text) => {
    expect([validate(toJson(text)), validate.errors]).toEqual([true, null]);
  });

  const valid = nodes.flatMap((node) => node.examples.valid.map((text) => [text, node.name] as const));
  test.each(valid)('accepts %s', (text, name) => {
    const one = validatorOf(name);
    expect([one(toJson(text).files[0]?.nodes[0]), one.errors]).toEqual([true, null]);
  });

  /** What a schema cannot say: a property twice, a day that no calendar has, ranges of figures with units. */
  const BEYOND =
    /kind=bolt kind=box|02-30|minutes="0 min"|mass="-2 kg"|"120 %"|along-z="0 m"|"24 nT"|"95 deg"|"415 km"/;
  const invalid = nodes.flatMap((node) => node.examples.invalid.map((one) => [one.text, node.name] as const));
  test.each(invalid.filter(([text]) => !BEYOND.test(text)))('refuses %s', (text, name) => {
    expect(validatorOf(name)(toJson(text).files[0]?.nodes[0])).toBe(false);
  });
});

describe('reading campaign JSON', () => {
  const json = (change: object): string =>
    JSON.stringify({ format: 'handrail-campaign', version: 1, files: [{ name: 'c.kdl', nodes: [] }], ...change });

  test('gives the text of each file', () => {
    expect(readCampaignJson(json({}))).toEqual({ files: [{ name: 'c.kdl', text: '' }], migrated: [] });
  });

  test.each([
    ['text that is not JSON', '{', 'wire/not-json'],
    ['another format', json({ format: 'handrail-timeline' }), 'wire/wrong-format'],
    ['no object at all', '[1, 2]', 'wire/wrong-format'],
    ['a newer version', json({ version: 2 }), 'wire/newer-version'],
    ['a version before the first', json({ version: 0 }), 'wire/no-migration'],
    ['a node without a name', json({ files: [{ name: 'c.kdl', nodes: [{ arguments: [] }] }] }), 'wire/wrong-shape'],
    [
      'an unknown key',
      json({ files: [{ name: 'c.kdl', nodes: [{ node: 'task', argument: ['t'] }] }] }),
      'wire/wrong-shape',
    ],
    ['brackets a hundred thousand deep', '['.repeat(100_000), 'wire/wrong-shape'],
  ])('refuses %s', (_, text, code) => {
    expect(() => readCampaignJson(text)).toThrow(expect.objectContaining({ code }) as Error);
  });
});
