/** What `--json` prints is what its published schema says, for every command that answers; the schemas on disk are read, not the code. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { answers } from '@handrail/wire/answers.generated';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLES, isClean, PackedHandrail } from './packed-handrail.ts';

const SCHEMAS = join(EXAMPLES, '../docs/schemas');
const UTC = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/;

let handrail: PackedHandrail;
const validator = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true });
validator.addFormat('date-time', UTC);

function problemsOf(schema: string, answer: unknown): readonly string[] {
  const validate =
    validator.getSchema(schema) ??
    validator.compile({ ...(JSON.parse(readFileSync(join(SCHEMAS, schema), 'utf8')) as object), $id: schema });
  if (validate(answer) === true) return [];
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message ?? ''}`);
}

/** Pins of three sorts, a request, an arm-less vehicle with a rail: what the demo does not have. */
const PINNED = `handrail 1
campaign pinned "Pinned"
person EV1 role=outside suit-limit="6 h" anchor=ring tether="20 m"
person EV2 role=outside suit-limit="6 h" anchor=ring tether="20 m"
vehicle small hatch=porch {
  place porch
  place bay
  rail porch bay minutes="3 min" length="6 m"
}
eva one egress="2031-09-14T11:40:00Z" longest="4 h"
hardware ring kind=anchor at=porch
task look rank=1 "Look" {
  stint see who=EV1 at=bay { minutes 5 }
  stint see-again who=any at=bay { minutes 4 }
}
pin "look/see" start="0:20"
pin "look/see" before="look/see-again"
`;

beforeAll(async () => {
  handrail = await PackedHandrail.packed();
  cpSync(EXAMPLES, handrail.folder, { recursive: true });
  writeFileSync(handrail.path('pinned.kdl'), PINNED);
  const planned = handrail.run(['plan', 'fulmar.kdl', '--budget', '300', '-o', 'fulmar.json']);
  expect(planned.code).toBe(0);
  handrail.run(['plan', 'pinned.kdl', '-o', 'pinned.json']);
  handrail.run(['plan', 'first-campaign.kdl', '-o', 'first.json', '--proof', 'first.proof']);
});
afterAll(() => handrail.remove());

/** By command: how it is asked, more than once where answers differ in shape. */
const ASKED: Readonly<Record<string, readonly (readonly string[])[]>> = {
  plan: [
    ['plan', 'cannot-fit.kdl'],
    ['plan', 'pinned.kdl', '--price-pins'],
  ],
  check: [
    ['check', 'fulmar.kdl', 'fulmar.json'],
    ['check', 'first-campaign.kdl'],
  ],
  routes: [
    ['routes', 'fulmar.kdl'],
    ['routes', 'pinned.kdl', 'porch', 'bay', '--person', 'EV1'],
  ],
  show: [
    ['show', 'fulmar.kdl', '--states'],
    ['show', 'pinned.kdl', '--kind', 'bolt'],
  ],
  sky: [['sky', 'fulmar.kdl']],
  light: [['light', 'fulmar.kdl', '--place', 'pump-bay', '--eva', 'pump']],
  slip: [['slip', 'fulmar.kdl', 'fulmar.json', '--step', '30', '--most', '30']],
  supplies: [['supplies', 'fulmar.kdl', 'fulmar.json']],
  prebreathe: [['prebreathe', 'fulmar.kdl']],
  fasteners: [['fasteners', 'fulmar.kdl']],
  prove: [['prove', 'fulmar.kdl', 'fulmar.json']],
  wayhome: [
    ['wayhome', 'pinned.kdl', 'pinned.json'],
    ['wayhome', 'fulmar.kdl', 'fulmar.json', '--eva', 'pump', '--at', '2:00'],
  ],
  whatif: [
    ['whatif', 'pinned.kdl', 'pinned.json', '--list'],
    ['whatif', 'fulmar.kdl', 'fulmar.json', '--kit'],
    ['whatif', 'fulmar.kdl', 'fulmar.json', '--eva', 'harvest', '--response', 'lost-item'],
    ['whatif', 'fulmar.kdl', 'fulmar.json', '--eva', 'pump', '--response', 'bolt-will-not-move', '--at', '1:50'],
    ['whatif', 'fulmar.kdl', 'fulmar.json', '--eva', 'pump', '--response', 'suit-leak', '--at', '2:10', '--who', 'EV2'],
    ['whatif', 'fulmar.kdl', 'fulmar.json', '--eva', 'pump', '--response', 'bolt-will-not-move', '--at', '3:00'],
  ],
  explain: [['explain'], ['explain', 'clock/clock-is-kept'], ['explain', 'campaign/unknown-id']],
  compare: [
    ['compare', 'fulmar.json', 'fulmar.json'],
    ['compare', 'first-campaign.kdl', 'pinned.kdl'],
  ],
  why: [['why', 'pinned.kdl', 'pinned.json', 'look/see-again']],
  'verify-proof': [['verify-proof', 'first.proof']],
};

describe('an answer as JSON', () => {
  it('is asked for here for every command that has a schema', () => {
    expect(answers.map(({ command }) => command).filter((command) => ASKED[command] === undefined)).toEqual([]);
  });

  it.each(answers.map(({ command }) => command))(
    'of %s is what its schema says, with the exit code in it',
    (command) => {
      for (const args of ASKED[command] ?? []) {
        const ended = handrail.run([...args, '--json']);
        const answer = JSON.parse(ended.out) as { format: string; version: number; command: string; exitCode: number };
        expect(problemsOf(`${command}.schema.json`, answer)).toEqual([]);
        expect(answer).toMatchObject({ format: 'handrail-answer', version: 1, command, exitCode: ended.code });
        expect(isClean({ ...ended, out: '' })).toBe(true);
      }
    },
  );

  it('is refused by its schema when a figure is missing, of another sort, or one too many', () => {
    const answer = JSON.parse(handrail.run(['plan', 'pinned.kdl', '--json']).out) as {
      evas: { bothIn: { petS?: number | string; utc: string }; extra?: number }[];
    };
    const spoiled = [
      (copy: typeof answer) => delete copy.evas[0]?.bothIn.petS,
      (copy: typeof answer) => Object.assign(copy.evas[0]?.bothIn ?? {}, { petS: 10.5 }),
      (copy: typeof answer) => Object.assign(copy.evas[0]?.bothIn ?? {}, { utc: '11:40' }),
      (copy: typeof answer) => Object.assign(copy.evas[0] ?? {}, { extra: 1 }),
    ].map((spoil) => {
      const copy = structuredClone(answer);
      spoil(copy);
      return problemsOf('plan.schema.json', copy).length > 0;
    });
    expect(problemsOf('plan.schema.json', answer)).toEqual([]);
    expect(spoiled).toEqual([true, true, true, true]);
  });

  it('gives every instant on both clocks: UTC is PET 0 and the seconds since', () => {
    const answer = JSON.parse(handrail.run(['plan', 'pinned.kdl', '--json']).out) as {
      evas: { petZeroUtc: string; bothIn: { petS: number; utc: string }; wall: { petS: number; utc: string } }[];
      timeline: { evas: { stints: { stint: string; startS: number }[] }[] };
    };
    const [eva] = answer.evas;
    // The egress that the text states, and the pinned start: 0:20 is 1200 s.
    expect(eva?.petZeroUtc).toBe('2031-09-14T11:40:00Z');
    expect(answer.timeline.evas[0]?.stints.find(({ stint }) => stint === 'look/see')?.startS).toBe(1200);
    // The longest EVA, 4 h after 11:40.
    expect(eva?.wall).toMatchObject({ petS: 14_400, utc: '2031-09-14T15:40:00Z' });
    const sinceS = (Date.parse(eva?.bothIn.utc ?? '') - Date.parse(eva?.petZeroUtc ?? '')) / 1000;
    expect(sinceS).toBe(eva?.bothIn.petS);
  });

  it('of a command that fails is the failure that is published, not half an answer', () => {
    for (const args of [
      ['plan', 'none.kdl', '--json'],
      ['routes', 'pinned.kdl', 'porch', 'moon', '--json'],
      ['check', '--json'],
      ['explain', 'nothing/at-all', '--json'],
      ['verify-proof', 'pinned.kdl', '--json'],
    ]) {
      const ended = handrail.run(args);
      const failure = JSON.parse(ended.out) as { command: string; failure: { message: string } };
      expect(problemsOf('failure.schema.json', failure)).toEqual([]);
      expect([failure.command, ended.code]).toEqual([args[0], 2]);
      expect(ended.err).toContain(failure.failure.message);
    }
  });
});
