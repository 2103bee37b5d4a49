import { stepVerbs } from '../kinds/step-verbs.ts';
import { type CampaignFacts, isCarried } from './campaign-facts.ts';
import { carryTarget } from './carry-target.ts';
import { holderValue, holderVariable } from './state-variables.ts';

/**
 * Every value that the holder of each loose piece can take anywhere in the campaign: where it starts, where any step, written
 * `leave` or outside event puts it. Roles are replaced by everybody who may fill them. In the order of the text.
 */
export function possibleHolders(facts: CampaignFacts): Map<string, Set<string>> {
  const { campaign, library } = facts;
  const possible = new Map<string, Set<string>>();
  for (const piece of campaign.hardware) {
    if (isCarried(facts, piece.id)) possible.set(holderVariable(piece.id), new Set([holderValue(piece.at)]));
  }
  const add = (variable: string, value: string): void => {
    possible.get(variable)?.add(value);
  };
  for (const stint of campaign.tasks.flatMap((task) => task.stints)) {
    for (const [index, step] of stint.steps.entries()) {
      for (const object of stepVerbs(step, facts.hardware, library).known) {
        if (object.verb.carry === 'none' || object.hardware === null) continue;
        const target = carryTarget(facts, stint, index, object);
        if (!target.ok) continue;
        for (const value of expandRole(target.value, stint.roles)) add(holderVariable(object.hardware.id), value);
      }
    }
    for (const leave of stint.leaves) add(leave.variable, leave.value);
  }
  for (const event of campaign.events) for (const leave of event.leaves) add(leave.variable, leave.value);
  for (const response of campaign.responses) for (const leave of response.leaves) add(leave.variable, leave.value);
  return possible;
}

function expandRole(
  value: string,
  roles: readonly { readonly name: string; readonly candidates: readonly string[] }[],
): readonly string[] {
  if (!value.startsWith('role:')) return [value];
  const role = roles[Number(value.slice('role:'.length))];
  if (role === undefined) return [];
  return role.candidates.map((id) => `${role.name === 'arm' ? 'arm' : 'person'}:${id}`);
}
