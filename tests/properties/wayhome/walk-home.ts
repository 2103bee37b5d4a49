/**
 * Walks a found way home by itself: its own shortest ways over the rails, its own sums, its own book of what stands open. It
 * knows the campaign and the kinds, and of the engine only what the plan says. Returns what does not hold, in words.
 */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import type { WayHome } from '@handrail/eva/wayhome/way-home-plan';

export interface Begin {
  /** Person → place and what must pass before they can leave it. */
  readonly at: ReadonlyMap<string, string>;
  /** Hardware id → value of its first aspect. */
  readonly open: ReadonlyMap<string, string>;
  /** Hardware id → place, of what has been moved; null: not at a place. */
  readonly moved?: ReadonlyMap<string, string | null>;
}

export function walkHome(
  campaign: Campaign,
  plan: WayHome,
  begin: Begin,
  isSafe: (kind: string, value: string) => boolean,
): string[] {
  const wrong: string[] = [];
  const open = new Map(begin.open);
  const hatch = campaign.vehicle.hatch as string;
  const passages: [number, number][] = [];
  for (const { person, steps, atHatchS, inS } of plan.people) {
    let at = begin.at.get(person) ?? hatch;
    let t = 0;
    const pace = campaign.people.find((one) => one.id === person)?.pace ?? 1;
    for (const step of steps) {
      if (Math.abs(step.startS - t) > 1e-6) wrong.push(`${person}: "${step.words}" starts at ${step.startS}, not ${t}`);
      t = step.endS;
      const lengthS = step.endS - step.startS;
      if (step.kind === 'travel') {
        if (step.from !== at) wrong.push(`${person} travels from ${step.from} but is at ${at}`);
        const least = shortest(campaign, step.from, step.to) * pace;
        if (lengthS < least - 1e-6)
          wrong.push(`${person}: ${step.from} to ${step.to} takes ${least} s, not ${lengthS}`);
        at = step.to;
      } else if (step.kind === 'leave' || step.kind === 'go') at = step.to;
      else if (step.kind === 'hatch') {
        if (at !== hatch) wrong.push(`${person} passes the hatch from ${at}`);
        passages.push([step.startS, step.endS]);
      } else if (step.kind === 'close') {
        let leastS = 0;
        for (const sentence of step.words.replace(/ \(stops [^)]*\)/g, '').split(', ')) {
          const piece = campaign.hardware.find((one) => sentence.endsWith(` ${one.title}`));
          const kind = standardLibrary.kinds.get(piece?.kind ?? '');
          const verb = kind?.verbs.find((one) => one.id === sentence.slice(0, sentence.indexOf(' ')));
          if (piece === undefined || verb === undefined) {
            wrong.push(`${person}: nobody knows how to "${sentence}"`);
            continue;
          }
          const text = piece.at.kind === 'place' ? piece.at.id : null;
          const place = begin.moved?.has(piece.id) === true ? begin.moved.get(piece.id) : text;
          if (typeof place === 'string' && place !== at) wrong.push(`${person} closes ${piece.id} from ${at}`);
          leastS += (plan.basis === 'planning' ? verb.timeS.likely : verb.timeS.high) * pace;
          if (verb.aspect === kind?.aspects[0]?.id && verb.leaves !== null) open.set(piece.id, verb.leaves);
        }
        if (lengthS < leastS - 1e-6) wrong.push(`${person}: "${step.words}" takes ${leastS} s, not ${lengthS}`);
      }
    }
    if (Math.abs(t - inS) > 1e-6) wrong.push(`${person} is in at ${t}, not ${inS}`);
    if (atHatchS > inS) wrong.push(`${person} is at the hatch after being in`);
  }
  passages.sort((a, b) => a[0] - b[0]);
  passages.slice(1).forEach(([from], at) => {
    if (from < (passages[at]?.[1] ?? 0) - 1e-6) wrong.push('two are in the hatch at once');
  });
  const lastS = Math.max(0, ...plan.people.map((person) => person.inS));
  if (Math.abs(lastS + plan.closeHatchS - (plan.totalS ?? Number.NaN)) > 1e-6)
    wrong.push(`the hatch is closed at ${lastS + plan.closeHatchS}, not ${plan.totalS}`);
  for (const [id, value] of open) {
    const kind = campaign.hardware.find((one) => one.id === id)?.kind ?? '';
    if (!isSafe(kind, value)) wrong.push(`${id} is left ${value}`);
  }
  return wrong;
}

/** Unladen, over all rails, by relaxing every rail until nothing changes. */
export function shortest(campaign: Campaign, from: string, to: string): number {
  const times = new Map([[from, 0]]);
  for (let changed = true; changed; ) {
    changed = false;
    for (const rail of campaign.vehicle.rails) {
      for (const [x, y] of [
        [rail.from, rail.to],
        [rail.to, rail.from],
      ] as const) {
        const t = times.get(x);
        if (t !== undefined && t + rail.durationS < (times.get(y) ?? Number.POSITIVE_INFINITY)) {
          times.set(y, t + rail.durationS);
          changed = true;
        }
      }
    }
  }
  return times.get(to) ?? Number.POSITIVE_INFINITY;
}
