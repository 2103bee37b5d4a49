/**
 * Gates in the order in which they are called: those that the campaign writes, and one proposed at the entry of each committed
 * stretch that has none. A proposal is not a gate: somebody has to take it over into the text.
 */
import type { Campaign } from '../campaign/campaign.ts';
import { formatDuration } from '@handrail/quantity/time';
import { stintsByKey } from '../timeline/person-course.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import type { CommittedStretch } from '../wayhome/committed-stretches.ts';
import type { WayHomeSurface } from '../wayhome/way-home-surface.ts';

export interface GateCall {
  readonly petS: number;
  readonly title: string;
  /** Stint that it opens. */
  readonly before: string;
  readonly caller: string;
  readonly conditions: readonly string[];
  readonly onNo: string;
  /** Task ids and stint keys given up on "no". */
  readonly drops: readonly string[];
  /** null: not stated, or it cannot be told. */
  readonly latestPetS: number | null;
  readonly proposed: boolean;
  readonly stretch: CommittedStretch | null;
}

/** The stint at whose start a committed stretch is entered, and the gate of the campaign before it; null: none. */
export function gateBefore(campaign: Campaign, stretch: CommittedStretch): string | null {
  return campaign.gates.find((gate) => gate.before === stretch.entry)?.id ?? null;
}

export function gateCalls(campaign: Campaign, eva: EvaTimeline, surface: WayHomeSurface): readonly GateCall[] {
  const planned = new Map(eva.stints.map((stint) => [stint.stint, stint] as const));
  const written = campaign.gates.flatMap((gate): GateCall[] => {
    const stint = planned.get(gate.before);
    if (stint === undefined) return [];
    const stretch = surface.committed.find((one) => one.entry === gate.before) ?? null;
    return [{ ...gate, petS: stint.startS, proposed: false, stretch }];
  });
  const proposed = surface.committed
    .filter((stretch) => stretch.entry !== null && gateBefore(campaign, stretch) === null)
    .map((stretch) => proposal(campaign, eva, surface, stretch));
  return [...written, ...proposed].sort((a, b) => a.petS - b.petS || (a.before < b.before ? -1 : 1));
}

function proposal(campaign: Campaign, eva: EvaTimeline, surface: WayHomeSurface, stretch: CommittedStretch): GateCall {
  const before = stretch.entry as string;
  const stint = stintsByKey(campaign).get(before);
  const requests = [
    ...new Set((surface.ground.hardware.effects.get(before)?.controls ?? []).map((control) => control.request)),
  ].map((id) => `${campaign.requests.find((request) => request.id === id)?.title ?? id}, verified`);
  const lengthS = stretch.endS - stretch.startS;
  const latestPetS = latestEntry(surface, stretch);
  const reader = campaign.people.find((person) => person.role === 'inside')?.id ?? campaign.people[0]?.id ?? '?';
  return {
    petS: eva.stints.find((planned) => planned.stint === before)?.startS ?? stretch.startS,
    title: `Go for "${stint?.title ?? before}"`,
    before,
    caller: reader,
    conditions: [
      ...requests,
      `both crew well, and ${formatDuration(lengthS)} to go without a safe stop for ${stretch.person}`,
      ...(latestPetS === null ? [] : ['the wall leaves room for all of it']),
    ],
    onNo: `stay before "${stint?.title ?? before}": close what is open and go on with the next in rank`,
    drops: [],
    latestPetS,
    proposed: true,
    stretch,
  };
}

/** Latest entry from which the stretch, at its longest, ends with room for the longest way home after it; null: it cannot be told. */
export function latestEntry({ limit }: Pick<WayHomeSurface, 'limit'>, stretch: CommittedStretch): number | null {
  const { homeAfterS, longestS } = stretch;
  return limit === null || homeAfterS === null || longestS === null ? null : limit.petS - homeAfterS - longestS;
}
