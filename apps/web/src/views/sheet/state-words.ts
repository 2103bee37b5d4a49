/** Needs and leaves in words: ids as the titles that people know, who holds something as a person, a bag, a place. */
import { titleOf } from '@handrail/eva/brief/step-sentence';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { StintEffects } from '@handrail/eva/hardware/effects';

export interface StateWords {
  readonly words: string;
  /** Why it is there: the verb, or a written exception. */
  readonly why: string;
}

/** @param assigned who fills each role in the plan in hand; empty: not planned */
export function needWords(
  campaign: Campaign,
  effects: StintEffects,
  assigned: readonly string[],
): readonly StateWords[] {
  const found = new Map<string, StateWords>();
  for (const { variable, allowed, origin } of effects.needs) {
    const values = allowed.map((value) => valueWords(campaign, value, assigned));
    const words = `${subject(campaign, variable)} ${values.length > 3 ? `${values.slice(0, 2).join(', ')} or ${values.length - 2} more` : values.join(' or ')}`;
    if (!found.has(words)) found.set(words, { words, why: origin.words });
  }
  return [...found.values()];
}

export function leaveWords(
  campaign: Campaign,
  effects: StintEffects,
  assigned: readonly string[],
): readonly StateWords[] {
  // Of several writes of one state, the last is how it is left.
  const last = new Map(effects.leaves.map((leave) => [leave.variable, leave] as const));
  return [...last.values()].map(({ variable, value, origin }) => ({
    words: `${subject(campaign, variable)} ${valueWords(campaign, value, assigned)}`,
    why: origin.words,
  }));
}

function subject(campaign: Campaign, variable: string): string {
  if (variable.startsWith('request:')) {
    const id = variable.slice('request:'.length);
    return campaign.requests.find((request) => request.id === id)?.title ?? id;
  }
  const [id = '', aspect] = variable.split('.');
  const title = titleOf(campaign, id);
  if (aspect === undefined) return `${title}:`;
  return aspect === 'holder' ? `${title}:` : `${title}, ${aspect}:`;
}

function valueWords(campaign: Campaign, value: string, assigned: readonly string[]): string {
  const [sort, id = ''] = value.split(':');
  switch (sort) {
    case 'role':
      return `in the hands of ${assigned[Number(id)] ?? `role ${Number(id) + 1}`}`;
    case 'person':
      return `with ${id}`;
    case 'hardware':
      return `in ${titleOf(campaign, id)}`;
    case 'place':
      return `at ${titleOf(campaign, id)}`;
    case 'arm':
      return `on ${titleOf(campaign, id)}`;
    default:
      return value;
  }
}
