/**
 * The way home over the whole Fulmar campaign. First the answers: with nobody committed and nothing open the way home is travel and
 * hatch; the worst is never below what is planned. Then the time, cold and again with nothing kept, and after a stint was moved by
 * hand (less than 300 ms wanted), where the answer equals the one with nothing kept.
 */
import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import { moveStint } from '@handrail/eva/timeline/edit/move-stint';
import type { EvaTimeline } from '@handrail/eva/timeline/timeline';
import { type WayHomeSurface, wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { MODES } from '@handrail/eva/wayhome/way-home-state';

const file = new URL('../../examples/fulmar.kdl', import.meta.url);
const { campaign } = readCampaign([{ name: 'fulmar.kdl', text: readFileSync(file) }], standardLibrary, { templates });
assert.ok(campaign !== null, 'the demo campaign reads');
const model = inferHardware(campaign, standardLibrary);
const planning = planCampaign(campaign, model, { seed: 1, conflictBudget: 300, skipReasons: true, sharingTries: 0 });
let next = planning.next();
while (next.done !== true) next = planning.next();
const { timeline } = next.value;

/**
 * By the clock, and processor time of this process, ms. The latter counts compiling and cleaning up on other cores as well; a
 * machine that is doing other things does not change it.
 */
interface Took {
  readonly ms: number;
  readonly cpuMs: number;
}
function timed<T>(run: () => T): readonly [T, Took] {
  const [begin, before] = [performance.now(), process.cpuUsage()];
  const made = run();
  const { user, system } = process.cpuUsage(before);
  return [made, { ms: performance.now() - begin, cpuMs: (user + system) / 1000 }];
}
const words = ({ ms, cpuMs }: Took): string => `${ms.toFixed(0)} ms (processor time ${cpuMs.toFixed(0)} ms)`;
const median = (times: readonly Took[]): Took =>
  times.toSorted((a, b) => a.ms - b.ms)[times.length >> 1] ?? { ms: 0, cpuMs: 0 };
// A copy of the campaign each time: what is kept is kept for one campaign object.
const surfaces = (line = timeline): readonly WayHomeSurface[] => {
  const fresh = { ...campaign };
  return line.evas.map((eva: EvaTimeline) => wayHomeSurface(fresh, model, standardLibrary, line, eva));
};
const times: Took[] = [];
let made: readonly WayHomeSurface[] = [];
for (let round = 0; round < 5; round++) {
  const [found, took] = timed(surfaces);
  made = found;
  times.push(took);
}
for (const surface of made) {
  const [first] = surface.samples;
  assert.ok(first !== undefined && surface.limit !== null);
  for (const sample of surface.samples) {
    for (const mode of MODES) {
      const planned = sample.planned[mode].totalS;
      if (planned !== null) assert.ok((sample.worst[mode].totalS ?? 0) >= planned - 1e-6, `${surface.eva} ${mode}`);
    }
  }
  // After the buddy check both are at the porch with nothing open: two passages of 6 min and 7 min to close the hatch, at the slowest.
  const check = surface.progress.eva.stints.find((planned) => planned.stint.endsWith('/buddy-check'));
  const then = surface.samples.find((sample) => sample.petS === check?.startS);
  const byHandS = (6 + 6 + 7) * 60 * (campaign.limits.travelSpread?.[1] ?? 1);
  assert.ok(Math.abs((then?.planned.terminate.totalS ?? 0) - byHandS) < 1e-6, surface.eva);
}
const pairs = made.reduce((sum, surface) => sum + surface.pairs.length, 0);
const samples = made.reduce((sum, surface) => sum + surface.samples.length, 0);
console.log(
  `way home: ${made.length} EVAs, ${pairs} pairs, ${samples} samples, three modes: ${words(times[0] as Took)} cold, ${words(median(times.slice(1)))} warm`,
);

const worstOf = (made: readonly WayHomeSurface[]) =>
  made.map(({ samples }) => samples.map(({ marginAtMostS }) => marginAtMostS));
const edits: Took[] = [];
const surfacesOf = (line: typeof timeline): readonly WayHomeSurface[] =>
  line.evas.map((eva) => wayHomeSurface(campaign, model, standardLibrary, line, eva));
// Whoever edits has seen the plan before.
surfacesOf(timeline);
for (let round = 1; round <= 4; round++) {
  for (const { stints } of timeline.evas) {
    const { stint, startS } = stints[3] as EvaTimeline['stints'][number];
    const moved = moveStint({ stint, startS: startS + 60 * round, pushesLater: true })(
      { campaign, hardware: model },
      timeline,
    );
    const copy = structuredClone(moved);
    const [after, took] = timed(() => surfacesOf(copy));
    edits.push(took);
    if (round === 1) assert.deepEqual(worstOf(after), worstOf(surfaces(moved)));
  }
}
const longest = edits.reduce((most, one) => (one.ms > most.ms ? one : most));
console.log(`after a stint was moved: median ${words(median(edits))}, longest ${words(longest)}`);
