/** After a hand on the plan: what is kept of the way home equals what is worked out with nothing kept, and only what changed is worked out. */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { moveStint } from '@handrail/eva/timeline/edit/move-stint';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { wayHomeSurface, type WayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { expect, test } from 'vitest';
import { fulmarCampaign, plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, hardware, timeline } = plannedFulmar();

/** What people are shown of a surface. */
function shown({ eva, limit, samples, people, committed, lastMoments, pairs }: WayHomeSurface) {
  return { eva, limit, samples, people, committed, lastMoments, pairs };
}
// As a worker gets it: a copy, in which nothing is the same object as before.
const surfaces = (line: Timeline, at = { campaign, hardware }): readonly WayHomeSurface[] => {
  const copy = structuredClone(line);
  return copy.evas.map((eva) => wayHomeSurface(at.campaign, at.hardware, standardLibrary, copy, eva));
};

test.each(timeline.evas.map(({ eva, stints }) => [eva, stints[3]?.stint ?? '', stints[3]?.startS ?? 0] as const))(
  'a stint of EVA %s moved by a minute: that EVA alone is worked out again, and right',
  (edited, stint, startS) => {
    const before = surfaces(timeline);
    const moved = moveStint({ stint, startS: startS + 60, pushesLater: true })({ campaign, hardware }, timeline);
    const after = surfaces(moved);
    after.forEach((surface, at) => {
      if (surface.eva === edited) expect(surface).not.toBe(before[at]);
      else expect(surface, `${surface.eva} stays`).toBe(before[at]);
    });
    expect(after.map(shown)).toEqual(surfaces(moved, fulmarCampaign()).map(shown));
  },
  120_000,
);

test('what the EVAs before leave otherwise is seen by those after', () => {
  const [first, ...rest] = timeline.evas;
  if (first === undefined) throw new Error('nothing is planned');
  const before = surfaces(timeline);
  // The work of the first EVA not done at all: the next finds the hardware as it was.
  const undone = { ...timeline, evas: [{ ...first, stints: [], moves: [] }, ...rest] };
  const after = surfaces(undone);
  expect(after[1]).not.toBe(before[1]);
  expect(after.map(shown)).toEqual(surfaces(undone, fulmarCampaign()).map(shown));
});
