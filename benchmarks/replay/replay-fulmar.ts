/**
 * The replay of the whole Fulmar campaign: three EVAs, about seventy stints. First the answers: the plan holds, and the same plan
 * with one stint a quarter of an hour early does not. Then the time, warm.
 */
import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import type { Rule } from '@handrail/eva/rules/define-rule';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { rules } from '@handrail/eva/rules/rules.generated';
import { runRules } from '@handrail/eva/rules/run-rules';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import type { Timeline } from '@handrail/eva/timeline/timeline';

const file = new URL('../../examples/fulmar.kdl', import.meta.url);
const { campaign } = readCampaign([{ name: 'fulmar.kdl', text: readFileSync(file) }], standardLibrary, { templates });
assert.ok(campaign !== null, 'the demo campaign reads');
const model = inferHardware(campaign, standardLibrary);
const planning = planCampaign(campaign, model, { seed: 1, conflictBudget: 300, skipReasons: true, sharingTries: 0 });
let next = planning.next();
while (next.done !== true) next = planning.next();
const { timeline } = next.value;

const stints = timeline.evas.reduce((sum, plan) => sum + plan.stints.length, 0);
assert.ok(stints >= 60, `the plan has ${stints} stints`);
const errorsIn = (one: Timeline): number =>
  replayTimeline(campaign, model, one).filter((finding) => finding.severity === 'error').length;
assert.equal(errorsIn(timeline), 0, 'the plan holds');
const broken = structuredClone(timeline) as unknown as { evas: { stints: { startS: number }[] }[] };
const third = broken.evas[0]?.stints[2];
assert.ok(third !== undefined);
third.startS -= 900;
assert.ok(errorsIn(broken as unknown as Timeline) > 0, 'the plan with one stint moved does not hold');

/** Processor time of this process, ms: what a machine that is doing other things as well does not change. */
const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const times = Array.from({ length: 80 }, () => {
  const begin = cpuMs();
  replayTimeline(campaign, model, timeline);
  return cpuMs() - begin;
});
const [cold = 0] = times;
const warm = times.slice(30).sort((a, b) => a - b);
const median = warm[Math.floor(warm.length / 2)] ?? 0;
console.log(
  `replay: ${stints} stints in ${timeline.evas.length} EVAs: median ${median.toFixed(1)} ms of processor time warm, ${cold.toFixed(0)} ms the first time`,
);

/** The rules too, over the same timeline: those that search for ways home apart, since they keep what they have found. */
const isWayHome = (id: string): boolean => /^(wayhome|gate|response)\//.test(id);
const timeOf = (only: readonly Rule[]): number => {
  const spent = Array.from({ length: 12 }, () => {
    const begin = cpuMs();
    const found = runRules(ruleFacts(campaign, model, standardLibrary, timeline), 0, only);
    assert.ok(found.every((finding) => finding.severity !== 'error' || finding.rule.startsWith('hardware/')));
    return cpuMs() - begin;
  });
  return spent.slice(2).sort((a, b) => a - b)[5] ?? 0;
};
const plain = rules.filter(({ id }) => !isWayHome(id));
console.log(
  `rules: ${plain.length} that read the timeline ${timeOf(plain).toFixed(1)} ms, ${rules.length - plain.length} on ways home ${timeOf(rules.filter(({ id }) => isWayHome(id))).toFixed(1)} ms of processor time warm (median)`,
);
