/**
 * Generated campaigns can be done: the plan they are drawn from, played into the model by hand, is a solution. And a seed gives
 * the same campaign every time.
 */
import type { Model } from '@handrail/solver/model/model';
import { checkSolution } from '@handrail/solver-checker/check-solution';
import { describe, expect, it } from 'vitest';
import { generateCampaign } from '../../../benchmarks/solver/campaign-generator.ts';
import { campaignModel } from '../../../benchmarks/solver/campaigns/campaign-model.ts';
import { type DrawnCampaign, HATCH_TIME, drawCampaign } from '../../../benchmarks/solver/campaigns/draw-campaign.ts';

describe('the plan a campaign is drawn from is a solution of its model', () => {
  it.each([
    [12, 2, 50],
    [25, 2, 50],
    [40, 2, 0],
    [60, 3, 50],
    [120, 4, 50],
  ])('%i stints, %i crew, %i per cent of roles open', (stints, crew, openPercent) => {
    for (let seed = 1; seed <= 5; seed++) {
      const campaign = drawCampaign(seed, { stints, crew, openPercent });
      const model = campaignModel(campaign, 'campaign');
      expect({ seed, violations: checkSolution(model, playedIn(campaign, model)) }).toEqual({ seed, violations: [] });
    }
  });
});

it('the same seed gives the same campaign, another one another', () => {
  const options = { stints: 25, seed: 3, named: false };
  expect(generateCampaign(options)).toEqual(generateCampaign(options));
  expect(generateCampaign({ ...options, seed: 4 }).variables).not.toEqual(generateCampaign(options).variables);
});

/** The witness as values of the model's variables, which are found by their names. */
function playedIn(campaign: DrawnCampaign, model: Model): number[] {
  const values = model.variables.map(({ min }) => min);
  const set = (name: string, value: number) => {
    const index = model.variables.findIndex((variable) => variable.name === name);
    if (index >= 0) values[index] = value;
  };
  const setInterval = (name: string, start: number, duration: number) => {
    set(`${name}.start`, start);
    set(`${name}.end`, start + duration);
  };
  const lanes: { start: number; end: number; from: number; to: number }[][] = Array.from(
    { length: campaign.shape.crew },
    () => [],
  );
  campaign.stints.forEach((stint, i) => {
    const start = campaign.witness[i] as number;
    set(`does ${stint.name}`, 1);
    setInterval(stint.name, start, stint.duration);
    setInterval(`${stint.name} second`, start, stint.duration);
    stint.crew.forEach((person, role) => {
      set(`person ${person + 1} does ${stint.name} role ${role + 1}`, 1);
      setInterval(`${stint.name} role ${role + 1} by person ${person + 1}`, start, stint.duration);
      lanes[person]?.push({ start, end: start + stint.duration, from: stint.from, to: stint.to });
    });
  });
  let finish = 0;
  lanes.forEach((lane, person) => {
    let place = 0;
    let at = HATCH_TIME;
    let travelled = 0;
    for (const { start, end, from, to } of lane.toSorted((a, b) => a.start - b.start)) {
      travelled += campaign.travel[place]?.[from] as number;
      expect(start).toBeGreaterThanOrEqual(at);
      place = to;
      at = end;
    }
    const home = campaign.travel[place]?.[0] as number;
    setInterval(`egress ${person + 1}`, 0, HATCH_TIME);
    setInterval(`ingress ${person + 1}`, at + home, HATCH_TIME);
    set(`travel ${person + 1}`, travelled + home);
    finish = Math.max(finish, at + home + HATCH_TIME);
  });
  set('finish', finish);
  return values;
}
