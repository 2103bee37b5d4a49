import { stepVerbs } from '../kinds/step-verbs.ts';
import { type CampaignFacts, isCarried } from './campaign-facts.ts';
import { carryTarget } from './carry-target.ts';
import { holderValue, holderVariable } from './state-variables.ts';

/** By holder variable and value: who puts the piece there. Stint keys, "event:ID", "response:ID", and "start". */
export type PossibleHolders = ReadonlyMap<string, ReadonlyMap<string, ReadonlySet<string>>>;

/**
 * Every value that the holder of each loose piece can take anywhere in the campaign: where it starts, where any step, written
 * `leave` or outside event puts it. Roles are replaced by everybody who may fill them. In the order of the text.
 */
export function possibleHolders(facts: CampaignFacts): PossibleHolders {
  const { campaign, library } = facts;
  const possible = new Map<string, Map<string, Set<string>>>();
  for (const piece of campaign.hardware) {
    if (isCarried(facts, piece.id)) {
      possible.set(holderVariable(piece.id), new Map([[holderValue(piece.at), new Set(['start'])]]));
    }
  }
  const add = (variable: string, value: string, by: string): void => {
    const values = possible.get(variable);
    if (values !== undefined) values.set(value, (values.get(value) ?? new Set()).add(by));
  };
  for (const stint of campaign.tasks.flatMap((task) => task.stints)) {
    for (const [index, step] of stint.steps.entries()) {
      for (const object of stepVerbs(step, facts.hardware, library).known) {
        if (object.verb.carry === 'none' || object.hardware === null) continue;
        const target = carryTarget(facts, stint, index, object);
        if (!target.ok) continue;
        for (const value of expandRole(target.value, stint.roles)) {
          add(holderVariable(object.hardware.id), value, stint.key);
        }
      }
    }
    for (const leave of stint.leaves) add(leave.variable, leave.value, stint.key);
  }
  for (const event of campaign.events) {
    for (const leave of event.leaves) add(leave.variable, leave.value, `event:${event.id}`);
  }
  for (const response of campaign.responses) {
    for (const leave of response.leaves) add(leave.variable, leave.value, `response:${response.id}`);
  }
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
