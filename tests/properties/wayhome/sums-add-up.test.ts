/** Every sum that is printed with a way home of the demo can be redone by hand: its terms add up, and are those of the steps. */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { MODES } from '@handrail/eva/wayhome/way-home-state';
import type { WayHome } from '@handrail/eva/wayhome/way-home-plan';
import { expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, hardware, timeline } = plannedFulmar();

/** Seconds of `h:mm` or `h:mm:ss`, read here and not by the program. */
function seconds(text: string): number {
  const [hours = 0, minutes = 0, rest = 0] = text.split(':').map(Number);
  return 3600 * hours + 60 * minutes + rest;
}

function terms(words: string): { readonly parts: readonly number[]; readonly total: number } {
  const sum = words.slice(words.indexOf('cannot move: ') < 0 ? 0 : words.indexOf('cannot move: ') + 13);
  const [left = '', right = ''] = sum.split(' = ');
  return {
    parts: left.split(' + ').map((part) => seconds(part.slice(part.lastIndexOf(' ') + 1))),
    total: seconds(right),
  };
}

test.each(timeline.evas.map((eva) => [eva.eva, eva] as const))('EVA %s', (_, eva) => {
  const surface = wayHomeSurface(campaign, hardware, standardLibrary, timeline, eva);
  const ways = new Set<WayHome>();
  for (const { planned, worst } of surface.samples) {
    for (const mode of MODES) {
      ways.add(planned[mode]);
      const { way } = worst[mode];
      if (way !== null) ways.add(way);
    }
  }
  const known = [...ways].filter(({ totalS }) => totalS !== null);
  expect(known.length).toBeGreaterThan(50);
  for (const way of known) {
    const { parts, total } = terms(way.words);
    // Each term is shown to the second.
    expect(Math.abs(parts.reduce((sum, part) => sum + part, 0) - total), way.words).toBeLessThanOrEqual(parts.length);
    expect(Math.abs(total - (way.totalS ?? 0)), way.words).toBeLessThanOrEqual(0.5);
    const lastIn = Math.max(0, ...way.people.map(({ inS }) => inS));
    expect(lastIn + way.closeHatchS, way.words).toBeCloseTo(way.totalS ?? 0, 6);
    for (const { steps, inS } of way.people) {
      steps.forEach((step, at) => expect(step.startS, way.words).toBeCloseTo(steps[at - 1]?.endS ?? 0, 6));
      expect(steps.at(-1)?.endS ?? inS).toBeCloseTo(inS, 6);
    }
  }
});
