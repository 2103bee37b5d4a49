/**
 * Large items in hand at the start and end of each stint, by role: those that its sentences take or give, and those that a
 * rider merely brings along. A ride says nothing of the load; it lies, in the written order of its task, between the stint
 * in which the same person takes the item and the one in which they give it away.
 */
import type { Campaign, Stint, Task } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';

export interface CarriedItem {
  readonly role: number;
  readonly item: string;
}
export interface Carried {
  readonly atStart: readonly CarriedItem[];
  readonly atEnd: readonly CarriedItem[];
}

/** By stint key. */
export function carriedItems(campaign: Campaign, hardware: HardwareModel): ReadonlyMap<string, Carried> {
  const found = new Map<string, Carried>();
  for (const task of campaign.tasks)
    for (const [key, carried] of carriedInTask(task, hardware)) found.set(key, carried);
  return found;
}

function* carriedInTask(task: Task, hardware: HardwareModel): Generator<[string, Carried]> {
  /** Item in hand after the stints so far, by named person. */
  const inHand = new Map<string, Set<string>>();
  for (const stint of task.stints) {
    const effects = hardware.effects.get(stint.key);
    const atStart = [...(effects?.carriesIn ?? [])];
    const atEnd = [...(effects?.carriesOut ?? [])];
    for (const [role, { startOn, endOn }] of stint.roles.entries()) {
      const person = namedBody(stint, role);
      if (person === null) continue;
      const items = inHand.get(person) ?? new Set<string>();
      const isPassing = (startOn !== null || endOn !== null) && !atStart.some((item) => item.role === role);
      if (isPassing && givesLater(task, hardware, stint, person, items)) {
        for (const item of items) {
          atStart.push({ role, item });
          if (!atEnd.some((own) => own.role === role && own.item === item)) atEnd.push({ role, item });
        }
      }
      inHand.set(person, new Set(atEnd.filter((item) => item.role === role).map(({ item }) => item)));
    }
    yield [stint.key, { atStart, atEnd }];
  }
}

/** Whether a later stint of the task has this person give away all that is in hand. */
function givesLater(
  task: Task,
  hardware: HardwareModel,
  after: Stint,
  person: string,
  items: ReadonlySet<string>,
): boolean {
  const later = task.stints.slice(task.stints.indexOf(after) + 1);
  return [...items].every((item) =>
    later.some((stint) =>
      hardware.effects
        .get(stint.key)
        ?.carriesIn.some((carried) => carried.item === item && namedBody(stint, carried.role) === person),
    ),
  );
}

function namedBody(stint: Stint, role: number): string | null {
  const candidates = stint.roles[role]?.candidates ?? [];
  return candidates.length === 1 ? (candidates[0] as string) : null;
}
