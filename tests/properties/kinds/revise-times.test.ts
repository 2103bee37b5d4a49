import { standardLibrary, verbOf } from '@handrail/eva/kinds/kinds-library';
import { reviseTimes } from '@handrail/eva/kinds/revise-times';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';

const own = { kind: 'bolt', verb: 'drive', timeS: { low: 20, likely: 35, high: 70 }, source: 'tank run, May 2031' };

test('an operator’s own times take the place of the planning figures, and say where they come from', () => {
  const library = reviseTimes(standardLibrary, 'standard', '1-own', [own]);
  expect(verbOf(library, 'bolt', 'drive')).toMatchObject({ timeS: own.timeS, source: own.source, leaves: 'torqued' });
  expect(library.version).toBe('1-own');
  expect(verbOf(standardLibrary, 'bolt', 'drive')?.source).not.toBe(own.source);
});

test('everything else stays', () => {
  fc.assert(
    fc.property(fc.constantFrom(...standardLibrary.kinds.values()), (kind) => {
      const library = reviseTimes(standardLibrary, 'own', '1', [own]);
      const verbs = kind.verbs.filter((verb) => kind.id !== own.kind || verb.id !== own.verb);
      for (const verb of verbs) expect(verbOf(library, kind.id, verb.id)).toEqual(verb);
      expect({ ...library.kinds.get(kind.id), verbs: [] }).toEqual({ ...kind, verbs: [] });
    }),
  );
});

test('figures out of order, unknown verbs and a version used twice are refused', () => {
  const revise = (change: object, version = '2') =>
    reviseTimes(standardLibrary, 'standard', version, [{ ...own, ...change }]);
  expect(() => revise({ timeS: { low: 40, likely: 35, high: 70 } })).toThrow(/40 s, 35 s, 70 s/);
  expect(() => revise({ timeS: { low: 0, likely: 35, high: 70 } })).toThrow(/0 s/);
  expect(() => revise({ timeS: { low: 20, likely: 35, high: Number.NaN } })).toThrow(/NaN/);
  expect(() => revise({ perTurnS: 0 })).toThrow();
  expect(() => revise({ verb: 'fry' })).toThrow(/no verb fry/);
  expect(() => revise({}, standardLibrary.version)).toThrow(/is the library that is revised/);
});
