import { readFileSync } from 'node:fs';
import type { Kind, Verb } from '@handrail/eva/kinds/kind';
import { buildKindsLibrary, standardLibrary, verbOf } from '@handrail/eva/kinds/kinds-library';
import { kindsPage } from '@handrail/eva/kinds/kinds-page';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { Fault } from '@handrail/quantity/fault';
import { describe, expect, test } from 'vitest';

const kinds = [...standardLibrary.kinds.values()];
const verbs: readonly (readonly [string, Kind, Verb])[] = kinds.flatMap((kind) =>
  kind.verbs.map((verb) => [`${kind.id} ${verb.id}`, kind, verb] as const),
);

/** The values that a verb may speak of. */
function valuesOf(kind: Kind, aspect: string | null): readonly string[] {
  return kind.aspects.find((one) => one.id === aspect)?.values ?? [];
}

describe.each(verbs)('%s', (_, kind, verb) => {
  test('speaks of an aspect and of values that its kind has', () => {
    if (verb.aspect === null) {
      expect(verb.needs).toEqual([]);
      expect(verb.leaves).toBeNull();
    } else {
      const values = valuesOf(kind, verb.aspect);
      expect(values).not.toEqual([]);
      expect(values).toEqual(expect.arrayContaining([...verb.needs]));
      if (verb.leaves !== null) expect(values).toContain(verb.leaves);
    }
    for (const also of verb.alsoNeeds ?? []) {
      expect(also.aspect).not.toBe(verb.aspect);
      expect(valuesOf(kind, also.aspect)).toEqual(expect.arrayContaining([...also.values]));
    }
  });

  test('has times in order, and a source', () => {
    const { low, likely, high } = verb.timeS;
    expect(low).toBeGreaterThan(0);
    expect(likely).toBeGreaterThanOrEqual(low);
    expect(high).toBeGreaterThanOrEqual(likely);
    expect(verb.source.length).toBeGreaterThan(10);
  });

  test('closing brings the piece to a value that is safe for the night', () => {
    if (!verb.closing || verb.leaves === null) return;
    const safe = kind.aspects.find((one) => one.id === verb.aspect)?.safe[verb.leaves];
    expect(['always', 'next-eva', 'tonight']).toContain(safe);
  });

  test('carries only what is carried, with tools that exist', () => {
    if (verb.carry !== 'none') expect(kind.carried).toBe(true);
    for (const tool of verb.toolKinds) expect(standardLibrary.kinds.get(tool)?.carried).toBe(true);
  });
});

describe.each(kinds.map((kind) => [kind.id, kind] as const))('kind %s', (id, kind) => {
  test('judges every value that it has, and no other', () => {
    for (const aspect of kind.aspects) {
      for (const value of Object.keys(aspect.safe)) expect(aspect.values).toContain(value);
      // What holds a piece while it is worked on says nothing of leaving it.
      if (aspect.id !== 'retainer') expect(Object.keys(aspect.safe).sort()).toEqual([...aspect.values].sort());
    }
  });

  test('has a way back from every value that must never be left', () => {
    for (const aspect of kind.aspects) {
      const never = aspect.values.filter((value) => aspect.safe[value] === 'never');
      for (const value of never) {
        const closing = kind.verbs.filter(
          (verb) => verb.closing && verb.aspect === aspect.id && verb.needs.includes(value),
        );
        expect(closing.length, `${id} ${value}`).toBeGreaterThan(0);
      }
    }
  });

  test('a fastener or line says when it holds and when it has let go, and never both', () => {
    if (kind.attaches === undefined) return;
    const values = kind.aspects[0]?.values ?? [];
    expect(values).toEqual(expect.arrayContaining([...kind.attaches.free, ...kind.attaches.fast]));
    expect(kind.attaches.free.filter((value) => kind.attaches?.fast.includes(value))).toEqual([]);
  });
});

// Remove power upstream before mating or demating a power connector (common practice; the number of inhibits is the user's).
test.each(['power-connector', 'fluid-connector'])('a %s is never opened or closed live', (id) => {
  for (const word of ['mate', 'demate']) expect(verbOf(standardLibrary, id, word)?.underControl).toBe(true);
});

test('a library refuses two kinds of one name, and a kind with a verb twice', () => {
  const [kind] = kinds as [Kind, ...Kind[]];
  expect(() => buildKindsLibrary('x', '1', [kind, kind])).toThrow(Fault);
  const [verb] = kind.verbs as [Verb, ...Verb[]];
  expect(() => buildKindsLibrary('x', '1', [{ ...kind, verbs: [verb, verb] }])).toThrow(/twice/);
});

test('the verbs of the library are those of its kinds, each once', () => {
  const listed = [...standardLibrary.verbs].flatMap(([word, entries]) =>
    entries.map(({ kind, verb }) => `${kind.id} ${verb.id === word ? word : '?'}`),
  );
  expect([...listed].sort()).toEqual(verbs.map(([name]) => name).sort());
});

test('the page of kinds is that of the library', () => {
  const page = readFileSync(new URL('../../../docs/reference/kinds.md', import.meta.url), 'utf8');
  expect(page).toBe(kindsPage(standardLibrary, templates));
});
