import type { Timeline } from '@handrail/eva/timeline/timeline';
import { readTimelineJson, timelineJsonSchema, writeTimelineJson } from '@handrail/wire/timeline/timeline-schema';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';

const TIMELINE: Timeline = {
  format: 'handrail-timeline',
  version: 1,
  campaign: 'fulmar',
  documentHash: 'a'.repeat(64),
  library: { id: 'standard', version: '1' },
  evas: [
    {
      eva: 'pump',
      petZeroUtcMs: Date.parse('2031-09-14T11:40:00Z'),
      tasks: ['swap-pump'],
      stints: [
        { stint: 'swap-pump/free', startS: 1200, endS: 2280, assigned: ['EV1', 'EV2'], stepEndsS: [1500, 2280] },
      ],
      passages: [
        { kind: 'egress', person: 'EV1', startS: 0, endS: 480 },
        { kind: 'close-hatch', person: null, startS: 3000, endS: 3420 },
      ],
      moves: [
        {
          who: 'EV1',
          from: 'porch',
          to: 'pump-bay',
          startS: 480,
          endS: 900,
          path: ['porch', 'spine-1', 'pump-bay'],
          anchor: 'anchor-port',
          carrying: ['driver'],
        },
      ],
      holds: [{ request: 'bus-off', askS: -60, verifiedS: 1100, firstUseS: 1200, lastUseS: 2280, clearedS: 2580 }],
      joins: [{ join: 'pump-free', releasedS: 2280, waitsUntilS: 2280 }],
      bothInS: 3420,
      wall: { petS: 23400, cause: 'longest EVA 6 h 30 min' },
      claim: {
        status: 'best found',
        levels: [{ name: 'finish', unit: 's', value: 3420, bound: null, proved: false }],
        seed: 1,
        conflicts: 120,
      },
    },
  ],
  leftOut: [{ task: 'photo', why: 'no room before the wall' }],
};

describe('timeline JSON', () => {
  const schema = new Ajv2020({ strict: false }).compile(timelineJsonSchema());

  test('comes back as it was written', () => {
    expect(readTimelineJson(writeTimelineJson(TIMELINE))).toEqual(TIMELINE);
  });

  test('fits its published schema, by another program', () => {
    expect([schema(TIMELINE), schema.errors]).toEqual([true, null]);
  });

  const broken = (change: (eva: Record<string, unknown>, whole: Record<string, unknown>) => void): string => {
    const copy = structuredClone(TIMELINE) as unknown as { evas: Record<string, unknown>[] } & Record<string, unknown>;
    change(copy.evas[0] as Record<string, unknown>, copy);
    return JSON.stringify(copy);
  };

  test.each([
    ['a time that is no whole second', broken((eva) => (eva['bothInS'] = 3420.5)), 'evas.0.bothInS'],
    ['a key that nobody knows', broken((eva) => (eva['finish'] = 1)), 'evas.0'],
    [
      'a claim above what may be claimed',
      broken((eva) => (eva['claim'] = { status: 'verified', levels: [], seed: 0, conflicts: 0 })),
      'evas.0.claim.status',
    ],
    ['a hash that is none', broken((_, whole) => (whole['documentHash'] = 'abc')), 'documentHash'],
    ['a part that is missing', broken((eva) => delete eva['moves']), 'evas.0.moves'],
  ])('with %s is refused, by the program and by the schema', (_, text, place) => {
    expect(() => readTimelineJson(text)).toThrow(expect.objectContaining({ code: 'wire/wrong-shape' }) as Error);
    expect(() => readTimelineJson(text)).toThrow(`at ${place}`);
    expect(schema(JSON.parse(text))).toBe(false);
  });

  test('of a newer version is refused whole', () => {
    const newer = broken((_, whole) => (whole['version'] = 2));
    expect(() => readTimelineJson(newer)).toThrow(expect.objectContaining({ code: 'wire/newer-version' }) as Error);
  });
});
