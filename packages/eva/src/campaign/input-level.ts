/**
 * How deep the input goes. Every output says the level it rests on and what the next one lacks, so that no more is claimed
 * than was stated.
 */
import type { HardwareModel } from '../hardware/effects.ts';
import type { Campaign } from './campaign.ts';

export interface InputLevel {
  readonly level: 0 | 1 | 2 | 3 | 4;
  readonly title: string;
  /** What a claim at this level covers. */
  readonly covers: string;
  /** What is missing for the next level, in words; empty at the highest that this version reads. */
  readonly missing: readonly string[];
}

const TITLES = [
  { title: 'a list', covers: 'order and times of the work as listed, without travel' },
  { title: 'places', covers: 'order, times and travel' },
  { title: 'hardware', covers: 'order, times, travel, hardware states and kit' },
  {
    title: 'safing and limits',
    covers: "order, times, travel, hardware states, kit, requests, clocks and the operator's limits",
  },
  {
    title: 'orbit and bodies',
    covers:
      "order, times, travel, hardware states, kit, requests, clocks, the operator's limits, and light and coverage computed from the stated orbit, attitude and bodies",
  },
] as const;

/** Method: the highest level whose demands, and those of all levels below, are met. */
export function inputLevel(campaign: Campaign, hardware: HardwareModel): InputLevel {
  const demands = [
    placesMissing(campaign),
    hardwareMissing(campaign, hardware),
    limitsMissing(campaign),
    skyMissing(campaign),
  ];
  const open = demands.findIndex((missing) => missing.length > 0);
  const level = (open < 0 ? 4 : open) as InputLevel['level'];
  return {
    level,
    ...TITLES[level],
    missing: open < 0 ? ['shapes for reach and clearance are not read by this version'] : (demands[open] ?? []),
  };
}

/** One sentence for the head of an output. */
export function inputLevelSentence({ level, title, covers, missing }: InputLevel): string {
  const some = missing.slice(0, 4).join('; ');
  const rest = missing.length > 4 ? `; and ${missing.length - 4} more` : '';
  return `Rests on input level ${level} (${title}): it speaks of ${covers}. For level ${level + 1}: ${some}${rest}.`;
}

function placesMissing(campaign: Campaign): readonly string[] {
  return campaign.vehicle.hatch === null ? ['the vehicle with its hatch, places and rails'] : [];
}

function hardwareMissing(campaign: Campaign, hardware: HardwareModel): readonly string[] {
  const missing: string[] = [];
  const stints = campaign.tasks.flatMap((task) => task.stints);
  const bare = stints.filter((stint) => stint.steps.length === 0);
  if (bare.length > 0) missing.push(`steps in ${bare.length === 1 ? bare[0]?.key : `${bare.length} stints`}`);
  const needed = new Set(
    [...hardware.effects.values()].flatMap((effects) => effects.needs.map((need) => need.variable)),
  );
  for (const variable of needed) {
    if (hardware.variables.get(variable)?.initial === 'unknown') missing.push(`the state of ${variable}`);
  }
  for (const effects of hardware.effects.values()) {
    for (const unknown of effects.unknowns) missing.push(`${effects.stint}: ${unknown.words}`);
  }
  return missing;
}

function limitsMissing(campaign: Campaign): readonly string[] {
  const { limits } = campaign;
  const missing: string[] = [];
  const want = (stated: boolean, words: string): void => {
    if (!stated) missing.push(words);
  };
  want(limits.homeWithinS !== null, 'limits home-within');
  want(limits.partnerWithinS !== null, 'limits partner-within');
  want(limits.gloveCheckEveryS !== null, 'limits glove-check');
  want(limits.padCheckEveryS !== null, 'limits pad-check');
  want(limits.reactionS !== null, 'limits reaction');
  want(limits.marginS !== null, 'limits margin');
  for (const person of campaign.people.filter((candidate) => candidate.role === 'outside')) {
    want(person.startAnchor !== null && person.tetherLengthM !== null, `anchor and tether of ${person.id}`);
    want(person.suitLimitS !== null || person.suit !== null, `suit or suit-limit of ${person.id}`);
  }
  for (const eva of campaign.evas) want(eva.longestS !== null, `longest of EVA ${eva.id}`);
  return missing;
}

/** Night and coverage from engines, not from a list that somebody typed; light at worksites needs attitude and bodies. */
function skyMissing({ sky, windows }: Campaign): readonly string[] {
  const missing: string[] = [];
  const want = (stated: boolean, words: string): void => {
    if (!stated) missing.push(words);
  };
  want(sky.orbit !== null, 'the orbit');
  const isComputed = (...sorts: string[]): boolean =>
    windows.some(({ computed }) => computed?.filled === true && sorts.includes(computed.what));
  want(isComputed('night'), 'a window computed=night');
  want(isComputed('coverage', 'coverage-gap'), 'a relay or ground station and a window computed=coverage-gap');
  want(sky.attitude !== null, 'the attitude');
  want(sky.bodies.length > 0, 'bodies that cast shadow');
  return missing;
}
