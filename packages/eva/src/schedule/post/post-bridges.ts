/**
 * Implied by the lanes, and what ties who does what to how long it takes: a rail that is the only way to some places is crossed
 * out and back by everybody who works there. So the travel of a person is at least twice the length of all such rails behind
 * which they have work. Persons who ride the arm are left out: the arm takes them past the rails.
 */
import { not } from '@handrail/solver/model/build-model';
import type { LinearTerm, Literal, VariableId } from '@handrail/solver/model/model';
import type { Campaign, Person } from '../../campaign/campaign.ts';
import type { EvaDraft } from '../eva-draft.ts';
import { CELL_S } from '../grid.ts';

interface Bridge {
  readonly durationS: number;
  /** Places that only this rail leads to. */
  readonly beyond: ReadonlySet<string>;
}

/** @param travel the travel total of a person's lane */
export function postBridges(draft: EvaDraft, person: Person, travel: VariableId): void {
  const { problem, builder } = draft;
  const work = workPlaces(draft, person);
  if (work === null) return;
  const lightest = Math.min(1, ...problem.campaign.vehicle.loadClasses.map(({ factor }) => factor));
  // Rails behind which the same work lies are crossed together: one literal for all of them.
  const groups = new Map<string, { durationS: number; readonly presences: readonly Literal[] }>();
  for (const { durationS, beyond } of bridgesOf(problem.campaign)) {
    const presences = work.filter(({ place }) => beyond.has(place)).map(({ presence }) => presence);
    if (presences.length === 0) continue;
    const key = presences.map(({ variable }) => variable).join(' ');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { durationS, presences });
    else group.durationS += durationS;
  }
  const terms: LinearTerm[] = [{ coefficient: -CELL_S, variable: travel }];
  for (const { durationS, presences } of groups.values()) {
    const coefficient = Math.floor(2 * durationS * person.pace * lightest);
    const crossed = builder.boolean(`${person.id} beyond ${terms.length}`);
    for (const presence of new Map(presences.map((one) => [one.variable, one])).values()) {
      builder.post({ kind: 'clause', literals: [not(presence), crossed], tag: null });
    }
    terms.push({ coefficient, variable: crossed.variable });
  }
  if (terms.length === 1) return;
  builder.post({ kind: 'linear', expression: { terms, constant: 0 }, bound: 0, when: [], tag: `lane:${person.id}` });
}

/** Where the person may have work, with the literal that says they have. null: they ride, or do not start and end at the hatch. */
function workPlaces(draft: EvaDraft, person: Person): { readonly place: string; readonly presence: Literal }[] | null {
  const { egress = null, ingress = null } = draft.passages.get(person.id) ?? {};
  if (egress === null || ingress === null) return null;
  const found: { place: string; presence: Literal }[] = [];
  for (const { stint, modes, presence } of draft.stints.values()) {
    for (const { mode, interval } of modes) {
      for (const [index, role] of stint.roles.entries()) {
        if (mode.assigned[index] !== person.id) continue;
        if (role.startOn !== null || role.endOn !== null || role.at !== role.to) return null;
        found.push({ place: role.at, presence: draft.builder.intervalAt(interval).presence ?? presence });
      }
    }
  }
  return found;
}

/** Rails without which some places cannot be reached from the hatch. Rails that are closed now count as open: then fewer are bridges. */
function bridgesOf({ vehicle }: Campaign): Bridge[] {
  const { hatch, rails } = vehicle;
  if (hatch === null) return [];
  const all = reached(hatch, rails);
  return rails.flatMap((rail) => {
    const without = reached(
      hatch,
      rails.filter((other) => other !== rail),
    );
    const beyond = new Set([...all].filter((place) => !without.has(place)));
    return beyond.size === 0 ? [] : [{ durationS: rail.durationS, beyond }];
  });
}

function reached(from: string, rails: Campaign['vehicle']['rails']): ReadonlySet<string> {
  const found = new Set([from]);
  const open = [from];
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    for (const { from: a, to: b } of rails) {
      const next = a === place ? b : b === place ? a : null;
      if (next === null || found.has(next)) continue;
      found.add(next);
      open.push(next);
    }
  }
  return found;
}
