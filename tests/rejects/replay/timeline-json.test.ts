import { readTimelineJson } from '@handrail/eva/timeline/read-timeline-json';
import { describe, expect, it } from 'vitest';
import { TWO_EVAS } from './two-evas.ts';

function problemsOf(
  change: (timeline: Record<string, unknown>, eva: Record<string, unknown>) => void,
): readonly string[] {
  const timeline = structuredClone(TWO_EVAS.timeline) as unknown as Record<string, unknown>;
  change(timeline, (timeline['evas'] as Record<string, unknown>[])[0] as Record<string, unknown>);
  const reading = readTimelineJson(timeline);
  return reading.ok ? [] : reading.problems.map(({ path, words }) => `${path}: ${words}`);
}

describe('a timeline read from JSON', () => {
  it('is taken when every field has its shape', () => {
    expect(problemsOf(() => {})).toEqual([]);
  });
  it.each<[string, Parameters<typeof problemsOf>[0], string]>([
    ['a missing field', (timeline) => delete timeline['leftOut'], 'leftOut: is missing'],
    ['a later version', (timeline) => (timeline['version'] = 2), 'version: should be 1, is 2'],
    [
      'text for a number',
      (_, eva) => (eva['bothInS'] = '1:39'),
      'evas[0].bothInS: should be a number of seconds from -10000000 to 10000000, is "1:39"',
    ],
    ['a number for a list', (_, eva) => (eva['moves'] = 7), 'evas[0].moves: should be a list, is 7'],
    ['null for an object', (_, eva) => (eva['claim'] = null), 'evas[0].claim: should be an object, is null'],
    ['a list for an object', (timeline) => (timeline['library'] = []), 'library: should be an object, is a list'],
    [
      'an instant that no calendar has',
      (_, eva) => (eva['petZeroUtcMs'] = 1e20),
      'evas[0].petZeroUtcMs: should be a number of milliseconds from 0 to 10000000000000, is 100000000000000000000',
    ],
    [
      'a passage of another kind',
      (_, eva) => ((eva['passages'] as { kind: string }[])[1] = { kind: 'jump' }),
      'evas[0].passages[1].kind: should be egress or ingress or close-hatch, is "jump"',
    ],
  ])('is refused with %s, by its path', (_, change, expected) => {
    expect(problemsOf(change)).toContain(expected);
  });
  it('is refused when it is no object at all', () => {
    for (const value of [null, 3, 'timeline', [], undefined]) expect(readTimelineJson(value).ok).toBe(false);
  });
  it('names no more than twenty problems', () => {
    const reading = readTimelineJson({ ...TWO_EVAS.timeline, evas: Array.from({ length: 50 }, () => 1) });
    expect(reading.ok ? 0 : reading.problems.length).toBe(20);
  });
});
