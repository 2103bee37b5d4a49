/** The requirement behind a tag of the model, in the words of the trade. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { Campaign } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { Wall } from './eva-problem.ts';

export interface TagContext {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly wall: Wall | null;
}

/**
 * Tags that say little by themselves: people and arms being in one place at a time, states, and what has begun. Named last.
 */
const BACKGROUND: ReadonlySet<string> = new Set(['lane', 'team', 'arm', 'operator', 'order', 'state', 'in', 'past']);

export function isBackground(tag: string): boolean {
  return BACKGROUND.has(tag.split(':')[0] ?? '');
}

export function describeTag({ campaign, hardware, wall }: TagContext, tag: string): string {
  const at = tag.indexOf(':');
  const [kind, name] = at === -1 ? [tag, ''] : [tag.slice(0, at), tag.slice(at + 1)];
  const [first = '', second = ''] = name.split(' ');
  const titled = (list: readonly { readonly id: string; readonly title: string }[], id: string) =>
    list.find((item) => item.id === id)?.title ?? id;
  switch (kind) {
    case 'wall':
      return wall === null ? 'the wall' : `both in by ${formatPet(wall.petS)} (${wall.cause})`;
    case 'lane':
      return `${name} is in one place at a time, with the way between`;
    case 'team':
      return 'the work and the ways of all who are outside, together';
    case 'arm':
      return `${titled(campaign.arms, name)} is in one pose at a time, with the transfer between`;
    case 'operator':
      return `${name} moves one arm at a time`;
    case 'order':
      return `the written order of "${titled(campaign.tasks, name)}"`;
    case 'after':
      return afterWords(campaign, name);
    case 'join':
      return `the join "${titled(
        campaign.tasks.flatMap(({ joins }) => joins),
        name,
      )}"`;
    case 'pin':
      return pinWords(campaign, name);
    case 'gate':
      return `the latest call of the gate "${titled(campaign.gates, name)}"`;
    case 'window':
      return `${second} keeps to the window "${titled(campaign.windows, first)}"`;
    case 'state':
      return `the state of ${hardware.variables.get(name)?.title ?? name}`;
    case 'request':
      return requestWords(campaign, name);
    case 'clock': {
      const clock = campaign.clocks.find(({ id }) => id === name);
      return clock === undefined
        ? name
        : `the clock "${clock.title}" (${clock.sense === 'most' ? 'at most' : 'at least'} ${formatDuration(clock.limitS)})`;
    }
    case 'restraint':
    case 'tool':
      return `only one at a time uses ${titled(campaign.hardware, name)}`;
    case 'voice':
      return 'the reader talks one stint through at a time';
    case 'past':
      return `${name} stays as it has begun`;
    case 'in':
      return `"${titled(campaign.tasks, name)}" is in`;
    default:
      return tag;
  }
}

function afterWords(campaign: Campaign, key: string): string {
  const stint = campaign.tasks.flatMap(({ stints }) => stints).find((candidate) => candidate.key === key);
  const lags = (stint?.after ?? []).map(({ stint: other, leastS, mostS }) => {
    const most = mostS === null ? '' : `, at most ${formatDuration(mostS)}`;
    return `at least ${formatDuration(leastS)}${most} after ${other}`;
  });
  return `${key} starts ${lags.join(' and ')}`;
}

function pinWords(campaign: Campaign, name: string): string {
  const [kind = '', first = '', second = ''] = name.split(' ');
  if (kind === 'order') return `the pin: ${first} before ${second}`;
  const pin = campaign.pins.find((candidate) => candidate.kind === 'start' && candidate.stint === first);
  return pin?.kind === 'start' ? `the pin: ${first} starts at ${formatPet(pin.petS)}` : `the pin on ${first}`;
}

function requestWords(campaign: Campaign, name: string): string {
  const request = campaign.requests.find(({ id }) => id === name);
  if (request === undefined) return `the request ${name}`;
  const longest = request.longestHoldS === null ? '' : `, held ${formatDuration(request.longestHoldS)} at most`;
  return `the request "${request.title}"${longest}`;
}
