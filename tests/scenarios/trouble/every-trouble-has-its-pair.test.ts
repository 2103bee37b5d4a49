/** Every stock response, way home and gate has a spacewalk that must trip it and a near miss that must not; all of them are run. */
import { MODES } from '@handrail/eva/wayhome/way-home-state';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { STOCK_RESPONSES } from '@handrail/eva/response/any-response';
import { describe, expect, test } from 'vitest';
import { fulmarCampaign } from '../../support/planned-fulmar.ts';
import { answerTo, readPart } from './trouble-document.ts';

const FOLDERS = ['responses', 'ways-home', 'gates'] as const;
const documents = new Map(
  FOLDERS.map((folder) => [
    folder,
    readdirSync(join(import.meta.dirname, folder))
      .map((name) => name.replace(/\.md$/, ''))
      .sort(),
  ]),
);
const textOf = (folder: string, name: string): string =>
  readFileSync(join(import.meta.dirname, folder, `${name}.md`), 'utf8');
/** Words as a reader takes them: lines and columns do not count. */
const plain = (words: string): string => words.replaceAll(/\s+/g, ' ');

test('every response of the stock set has a document, and asks for itself in both parts', () => {
  expect(documents.get('responses')).toEqual(STOCK_RESPONSES.map(({ id }) => id).sort());
  for (const id of documents.get('responses') ?? []) {
    for (const part of ['Trips', 'Near miss'] as const) {
      expect(readPart(textOf('responses', id), part).asks[0]?.ask, id).toContain(`whatif ${id} at `);
    }
  }
});

test('every mode of the way home has one, with the arm alive and with the arm dead', () => {
  expect(documents.get('ways-home')).toEqual(MODES.flatMap((mode) => [mode, `${mode}-arm-dead`]).sort());
  for (const name of documents.get('ways-home') ?? []) {
    const [mode, dead] = name.split('-arm-');
    for (const part of ['Trips', 'Near miss'] as const) {
      const ask = readPart(textOf('ways-home', name), part).asks[0]?.ask;
      expect(ask, name).toContain(`wayhome ${mode ?? ''}${dead === undefined ? '' : ' arm dead'} at `);
    }
  }
});

test('every gate of the demo campaign has one', () => {
  const { campaign } = fulmarCampaign();
  expect(campaign.gates.length).toBeGreaterThan(0);
  for (const gate of campaign.gates) {
    expect(documents.get('gates')).toContain(gate.id);
    for (const part of ['Trips', 'Near miss'] as const) {
      expect(readPart(textOf('gates', gate.id), part).kdl).toContain(`gate ${gate.id} `);
    }
  }
});

describe.each([...documents].flatMap(([folder, names]) => names.map((name) => [folder, name] as const)))(
  '%s/%s',
  (folder, name) => {
    const document = textOf(folder, name);
    for (const which of ['Trips', 'Near miss'] as const) {
      const part = readPart(document, which);
      test(`${which === 'Trips' ? 'trips' : 'does not trip'}: ${part.title}`, () => {
        expect(part.asks.length).toBeGreaterThan(0);
        expect(part.asks.some(({ says }) => says.length > 0 || which === 'Near miss')).toBe(true);
        for (const { ask, says } of part.asks) {
          const answer = answerTo(part, ask);
          for (const words of says) expect(plain(answer.words), ask).toContain(plain(words));
          expect(answer.trips, `${ask}\n${answer.words}`).toBe(which === 'Trips');
        }
      });
    }
  },
);
