import type { Need, StintEffects } from '@handrail/eva/hardware/effects';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readText } from '../../scenarios/hardware/read-text.ts';
import { carryOut, type Sentence, sentenceText, type World } from './naive-crew.ts';

const one = (verb: string, objects: string, more: Partial<Sentence> = {}): Sentence => ({
  verb,
  objects: objects.split(' '),
  ...more,
});
const SENTENCES: readonly Sentence[] = [
  one('open', 'lid'),
  one('close', 'lid'),
  one('release', 'b1'),
  one('release', 'b2'),
  one('release', 'b1 b2'),
  one('start', 'b1'),
  one('drive', 'b1'),
  one('drive', 'b2'),
  one('drive', 'b1 b2'),
  one('demate', 'j1'),
  one('mate', 'j1'),
  one('tether', 'crate'),
  one('untether', 'crate'),
  one('make-fast', 'crate'),
  one('secure', 'crate'),
  one('inspect', 'crate'),
  one('take', 'crate'),
  one('take', 'crate', { by: 'partner' }),
  one('put', 'crate'),
  one('put', 'crate', { by: 'partner' }),
  one('stow', 'crate', { to: 'sack' }),
  one('seat', 'crate', { to: 'rack' }),
  one('hand-over', 'crate', { to: 'EV2' }),
  one('hand-over', 'crate', { to: 'EV1', by: 'partner' }),
  one('take', 'probe'),
  one('take', 'probe', { from: 'sack' }),
  one('take', 'probe', { by: 'partner' }),
  one('stow', 'probe', { to: 'sack' }),
  one('put', 'probe'),
  one('check', 'probe'),
  one('take', 'sack'),
  one('put', 'sack'),
];

const start = fc.record({
  lid: fc.constantFrom('open', 'closed'),
  b1: fc.constantFrom('torqued', 'started', 'released'),
  b2: fc.constantFrom('torqued', 'started', 'released'),
  j1: fc.constantFrom('mated', 'demated'),
  crate: fc.constantFrom(
    'fastened rack',
    'seated rack',
    'held rack',
    'free EV1',
    'free EV2',
    'parked bay',
    'stowed sack',
  ),
  retainer: fc.constantFrom('none', 'tethered'),
  sack: fc.constantFrom('bay', 'EV1', 'EV2', 'deck'),
  probe: fc.constantFrom('bay', 'sack', 'EV1', 'EV2', 'deck'),
});
type Start = typeof start extends fc.Arbitrary<infer T> ? T : never;

/** Choices of sentences: mostly among those that the crew could do next, so that long stints often succeed; now and then any. */
const choices = fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 11 })), { minLength: 1, maxLength: 6 });
type Choices = typeof choices extends fc.Arbitrary<infer T> ? T : never;

function sentencesOf(picks: Choices, at: Start, before: World): readonly Sentence[] {
  const sentences: Sentence[] = [];
  for (const [pick, mood] of picks) {
    const doable = SENTENCES.filter((next) => {
      const all = [...sentences, next];
      return carryOut(all, before, takenSomewhere(at, all)) !== null;
    });
    const from = mood === 0 || doable.length === 0 ? SENTENCES : doable;
    sentences.push(from[pick % from.length] as Sentence);
  }
  return sentences;
}

function campaignText(at: Start, stints: readonly (readonly Sentence[])[]): string {
  const [crate, crateAt] = at.crate.split(' ') as [string, string];
  return `
hardware rack kind=bay at=bay
hardware crate kind=box at=${crateAt} state=${crate} { state retainer ${at.retainer}; property soft-capture #true }
hardware b1 kind=bolt of=crate at=bay state=${at.b1} turns=8
hardware b2 kind=bolt of=crate at=bay state=${at.b2} turns=8
hardware j1 kind=data-connector of=crate at=bay state=${at.j1}
hardware lid kind=cover at=bay state=${at.lid}
hardware sack kind=bag at=${at.sack}
hardware probe kind=hand-tool at=${at.probe}
hardware driver kind=power-tool at=EV1
task work rank=1 {
${stints.map((sentences, index) => `stint s${index} who=EV1 at=bay partner=EV2 {\n${sentences.map(sentenceText).join('\n')}\n}`).join('\n')}
}`;
}

function worldOf(at: Start): World {
  const place = (id: string): string =>
    ({ bay: 'place:bay', deck: 'place:deck', EV1: 'person:EV1', EV2: 'person:EV2' })[id] ?? `hardware:${id}`;
  const [crate, crateAt] = at.crate.split(' ') as [string, string];
  return new Map([
    ['lid', at.lid],
    ['b1', at.b1],
    ['b2', at.b2],
    ['j1', at.j1],
    ['crate', crate],
    ['crate.retainer', at.retainer],
    ['crate.holder', place(crateAt)],
    ['sack.holder', place(at.sack)],
    ['probe.holder', place(at.probe)],
  ]);
}

/** Pieces that some sentence puts into hands, or that start there: those must be in hand before they are put or stowed. */
function takenSomewhere(at: Start, sentences: readonly Sentence[]): ReadonlySet<string> {
  const pieces = sentences
    .filter(({ verb }) => verb === 'take' || verb === 'hand-over')
    .flatMap(({ objects }) => objects);
  const inHand = (id: string): boolean => id === 'EV1' || id === 'EV2';
  if (inHand(at.crate.split(' ')[1] as string)) pieces.push('crate');
  if (inHand(at.sack)) pieces.push('sack');
  if (inHand(at.probe)) pieces.push('probe');
  return new Set(pieces);
}

const person = (value: string): string => value.replace('role:0', 'person:EV1').replace('role:1', 'person:EV2');
const holds = (world: World, need: Need): boolean =>
  need.allowed.map(person).includes(world.get(need.variable) as string);
function after(world: World, effects: StintEffects): World {
  const next = new Map(world);
  for (const leave of effects.leaves) next.set(leave.variable, person(leave.value));
  return next;
}

describe('one stint, nobody else about', () => {
  test('it can be carried out exactly when its needs hold and it does not contradict itself, and leaves what it leaves', () => {
    let done = 0;
    let refused = 0;
    fc.assert(
      fc.property(start, choices, (at, picks) => {
        const sentences = sentencesOf(picks, at, worldOf(at));
        const effects = readText(campaignText(at, [sentences])).effects('work/s0');
        const world = worldOf(at);
        const result = carryOut(sentences, world, takenSomewhere(at, sentences));
        const expected = effects.unknowns.length === 0 && effects.needs.every((need) => holds(world, need));
        expect(result !== null, effects.unknowns.map((one) => one.words).join('; ')).toBe(expected);
        if (result === null) {
          refused++;
          return;
        }
        done++;
        expect(Object.fromEntries(after(world, effects))).toEqual(Object.fromEntries(result));
      }),
      { numRuns: 500, seed: 20310914 },
    );
    // Both kinds occur, or the property says nothing.
    expect(done).toBeGreaterThan(200);
    expect(refused).toBeGreaterThan(50);
  });
});

describe('two stints, one after the other', () => {
  test('where the needs of each hold when it starts, both can be carried out, and the last value written stays', () => {
    let done = 0;
    fc.assert(
      fc.property(start, choices, choices, (at, one, two) => {
        const first = sentencesOf(one, at, worldOf(at));
        const between = carryOut(first, worldOf(at), takenSomewhere(at, first)) ?? worldOf(at);
        const second = sentencesOf(two, at, between);
        const { effects } = readText(campaignText(at, [first, second]));
        const taken = takenSomewhere(at, [...first, ...second]);
        let world = worldOf(at);
        for (const [key, sentences] of [['work/s0', first] as const, ['work/s1', second] as const]) {
          const own = effects(key);
          if (own.unknowns.length > 0 || !own.needs.every((need) => holds(world, need))) return;
          const result = carryOut(sentences, world, taken);
          expect(result).not.toBeNull();
          world = after(world, own);
          expect(Object.fromEntries(world)).toEqual(Object.fromEntries(result as World));
        }
        done++;
      }),
      { numRuns: 300, seed: 20310917 },
    );
    expect(done).toBeGreaterThan(10);
  });
});
