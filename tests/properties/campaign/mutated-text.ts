/**
 * A hundred thousand spoilt campaign texts: the reader says what is wrong or reads them, and never throws, whatever comes. The
 * mutator is seeded, so that a failure comes back. Work is counted in characters handed to the parser, not in seconds.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { expect } from 'vitest';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';

export const MOST_PROBLEMS = 501;

/** Small texts are where a mutation meets every part of the reader soonest. Sound ones come twice as often as broken ones. */
const SOUND = readFileSync('tests/properties/campaign/small-campaigns.kdl', 'utf8').split('//----\n');
const BROKEN = readdirSync('tests/rejects/campaigns')
  .filter((file) => file.endsWith('.kdl'))
  .map((file) => readFileSync(`tests/rejects/campaigns/${file}`, 'utf8'));

function pick(below: (n: number) => number): string {
  const from = below(3) === 0 ? BROKEN : SOUND;
  return from[below(from.length)] as string;
}

const TOKENS = [
  '{',
  '}',
  '"',
  '\\',
  '#',
  '/*',
  '*/',
  '//',
  '/-',
  '=',
  ';',
  '\n',
  '\r\n',
  '(',
  ')',
  '"""',
  '#"',
  '"#',
  '\\u{',
  '-',
  '#true',
  '#null',
  '#inf',
  '#nan',
  '0',
  '-1',
  '1e999',
  '0x',
  '9'.repeat(40),
  '"34 kg"',
  '"12 min"',
  'any',
  'both',
  'stint',
  'task',
  'with',
  'hardware',
  'who=',
  'at=',
  'minutes',
  'join',
  'use',
  'it',
  't/s',
  '"t/s"',
  'request:x',
  '\u0000',
  '\ufeff',
  '\u2028',
  '\ud800',
  '\udc00',
  '😀',
  'é',
  '\u200f',
  '__proto__',
  'constructor',
  'toString',
];

/** Marsaglia's 32-bit xorshift. */
function random(seed: number): (below: number) => number {
  let state = seed | 0;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

function mutate(text: string, below: (n: number) => number): string {
  let out = text;
  for (let left = 1 + below(4); left > 0; left--) {
    const at = below(out.length + 1);
    const length = below(8) === 0 ? below(60) : below(4);
    const token = TOKENS[below(TOKENS.length)] as string;
    switch (below(7)) {
      case 0:
        out = out.slice(0, at) + out.slice(at + length);
        break;
      case 1:
        out = out.slice(0, at) + token + out.slice(at);
        break;
      case 2:
        out = out.slice(0, at) + token + out.slice(at + length);
        break;
      case 3: {
        const from = below(out.length + 1);
        out = out.slice(0, at) + out.slice(from, from + length * 8) + out.slice(at);
        break;
      }
      case 4: {
        const other = pick(below);
        const from = below(other.length);
        out = out.slice(0, at) + other.slice(from, from + below(80)) + out.slice(at);
        break;
      }
      case 5: {
        // Two words change places: the likeliest slip that stays valid KDL.
        const words = out.split(/(\s+)/);
        const a = below(words.length);
        const b = below(words.length);
        [words[a], words[b]] = [words[b] as string, words[a] as string];
        out = words.join('');
        break;
      }
      default:
        out = out.slice(0, at) + String.fromCharCode(below(0x3000)) + out.slice(at + 1);
    }
  }
  return out;
}

/** The sound texts themselves: mutations of texts that are broken anyway would say little. */
export const SOUND_TEXTS: readonly string[] = SOUND;

/** Reads `count` mutations; fails with the text of the first one that throws or answers inconsistently. */
export function readMutations(seed: number, count: number): void {
  const below = random(seed);
  let accepted = 0;
  let refused = 0;
  for (let at = 0; at < count; at++) {
    const text = mutate(pick(below), below);
    let reading: ReturnType<typeof readCampaign>;
    try {
      reading = readCampaign([{ name: 'c.kdl', text }], standardLibrary);
    } catch (error) {
      throw new Error(`mutation ${at} of seed ${seed} throws: ${JSON.stringify(text)}`, { cause: error });
    }
    const { campaign, problems, document } = reading;
    if (campaign === null) refused++;
    else accepted++;
    const work = document.files[0]?.parsedCharacters ?? 0;
    const bad =
      (campaign === null) !== problems.some((problem) => problem.severity === 'error') ||
      problems.length > MOST_PROBLEMS ||
      work > 2 * text.length ||
      problems.some(
        ({ span, what }) => span.line < 1 || span.column < 1 || what === '' || /undefined|\[object/.test(what),
      );
    if (bad) expect({ text, problems, work }).toBe('consistent');
  }
  expect(accepted).toBeGreaterThan(count / 200);
  expect(refused).toBeGreaterThan(count / 2);
}
