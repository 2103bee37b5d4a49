import type { Hardware, Step } from '@handrail/eva/campaign/campaign';
import type { Kind } from '@handrail/eva/kinds/kind';
import { buildKindsLibrary } from '@handrail/eva/kinds/kinds-library';
import { stepTimeS } from '@handrail/eva/kinds/step-time';
import { describe, expect, test } from 'vitest';

// A library of two kinds with round figures, so that every sum can be redone in the head.
const span = { file: 'test', line: 1, column: 1, length: 1 };
const plain = { aspect: null, needs: [], leaves: null, carry: 'none', toolKinds: [] } as const;
const verb = (id: string, low: number, likely: number, high: number, perTurnS: number | null) => ({
  ...plain,
  id,
  sentence: id,
  timeS: { low, likely, high },
  perTurnS,
  underControl: false,
  effort: 'low' as const,
  voice: false,
  closing: false,
  source: 'test',
});
const kind = (id: string, verbs: Kind['verbs']): Kind => ({
  id,
  title: id,
  about: id,
  aspects: [],
  carried: false,
  holds: 'nothing',
  verbs,
  properties: [],
  source: 'test',
});
const library = buildKindsLibrary('test', '1', [
  kind('bolt', [verb('release', 10, 20, 40, 2)]),
  kind('cover', [verb('open', 30, 60, 90, null)]),
  kind('crew', [verb('rest', 60, 120, 300, null)]),
]);

const piece = (id: string, kindId: string, turns: number | null): Hardware => ({
  id,
  title: id,
  kind: kindId,
  at: { kind: 'place', id: 'bay' },
  of: null,
  initial: {},
  massKg: null,
  loadClass: null,
  controls: [],
  torqueNm: null,
  turns,
  toolFits: [],
  properties: {},
  settings: {},
  span,
});
const hardware = new Map(
  [piece('b1', 'bolt', 14), piece('b2', 'bolt', 14), piece('b3', 'bolt', null), piece('lid', 'cover', null)].map(
    (one) => [one.id, one],
  ),
);
const step = (word: string, objects: readonly string[], more: Partial<Step> = {}): Step => ({
  verb: word,
  objects,
  from: null,
  to: null,
  tool: null,
  by: 'lead',
  turns: null,
  torqueNm: null,
  agreedS: null,
  settings: null,
  note: null,
  caution: null,
  say: null,
  hear: null,
  safeStop: null,
  span,
  ...more,
});

describe('the time of a step', () => {
  test('a piece without turns takes its verb as it is', () => {
    expect(stepTimeS(step('open', ['lid']), hardware, library)).toEqual({ low: 30, likely: 60, high: 90 });
  });

  test('turns at two seconds each are added to each of the three figures: 14 turns are 28 s', () => {
    expect(stepTimeS(step('release', ['b1']), hardware, library)).toEqual({ low: 38, likely: 48, high: 68 });
  });

  test('two pieces take twice as long', () => {
    expect(stepTimeS(step('release', ['b1', 'b2']), hardware, library)).toEqual({ low: 76, likely: 96, high: 136 });
  });

  test('turns on the step go before those of the piece: 5 turns are 10 s', () => {
    expect(stepTimeS(step('release', ['b1'], { turns: 5 }), hardware, library)).toEqual({
      low: 20,
      likely: 30,
      high: 50,
    });
  });

  test('a time agreed on the step replaces all of it', () => {
    expect(stepTimeS(step('release', ['b1', 'b2'], { agreedS: 240 }), hardware, library)).toEqual({
      low: 240,
      likely: 240,
      high: 240,
    });
  });

  test('a step without an object is the crew’s own', () => {
    expect(stepTimeS(step('rest', []), hardware, library)).toEqual({ low: 60, likely: 120, high: 300 });
  });

  test('turns that nobody states are not made up', () => {
    expect(stepTimeS(step('release', ['b3']), hardware, library)).toBeNull();
    expect(stepTimeS(step('release', ['b1', 'b3']), hardware, library)).toBeNull();
  });

  test('a verb that the kind does not know has no time', () => {
    expect(stepTimeS(step('open', ['b1']), hardware, library)).toBeNull();
  });
});

// 20 turns: 20 s at 60 rev/min, 40 s at 30 rev/min (arithmetic; a power tool turns up to 60 rev/min: NASA Tech Briefs GSC, EVA power tool).
test('the standard library drives at 30 rev/min, within what a power tool gives', async () => {
  const { standardLibrary } = await import('@handrail/eva/kinds/kinds-library');
  const perTurnS = standardLibrary.kinds.get('bolt')?.verbs.find((one) => one.id === 'drive')?.perTurnS ?? Number.NaN;
  expect(20 * perTurnS).toBe(40);
  expect(60 / perTurnS).toBeLessThanOrEqual(60);
});
