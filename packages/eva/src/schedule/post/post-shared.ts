/** What only one can use at a time: the voice loop, a foot restraint, a tool. */
import type { IntervalId } from '@handrail/solver/model/model';
import type { EvaDraft } from '../eva-draft.ts';
import { effectsOf } from '../eva-problem.ts';

interface Use {
  readonly interval: IntervalId;
  /** The only body that can be the user, or null where several can. */
  readonly user: string | null;
}

export function postShared(draft: EvaDraft): void {
  postOneAtATime(draft, voiceUses(draft), 'voice');
  for (const [restraint, uses] of restraintUses(draft)) postOneAtATime(draft, uses, `restraint:${restraint}`);
  for (const [tool, uses] of toolUses(draft)) postOneAtATime(draft, uses, `tool:${tool}`);
}

function postOneAtATime(draft: EvaDraft, uses: readonly Use[], tag: string): void {
  const users = new Set(uses.map(({ user }) => user));
  if (uses.length < 2 || (users.size === 1 && !users.has(null))) return;
  draft.post({
    kind: 'sequence',
    members: uses.map(({ interval }) => ({ interval, startType: 0, endType: 0 })),
    types: 1,
    transitions: [0],
    first: null,
    last: null,
    transitionTotal: null,
    tag,
  });
}

function voiceUses(draft: EvaDraft): Use[] {
  return [...draft.stints.values()]
    .filter(({ stint }) => stint.voice)
    .map(({ master }) => ({ interval: master, user: null }));
}

function restraintUses(draft: EvaDraft): Map<string, Use[]> {
  const uses = new Map<string, Use[]>();
  for (const stint of draft.stints.values()) {
    for (const mode of stint.modes) {
      for (const [index, { restraint }] of stint.stint.roles.entries()) {
        if (restraint === null) continue;
        const use = { interval: draft.roleInterval(stint, mode, index), user: mode.mode.assigned[index] ?? null };
        uses.set(restraint, [...(uses.get(restraint) ?? []), use]);
      }
    }
  }
  return uses;
}

/** A tool is taken for all steps from its first to its last use in the stint. */
function toolUses(draft: EvaDraft): Map<string, Use[]> {
  const uses = new Map<string, Use[]>();
  for (const stint of draft.stints.values()) {
    for (const { tool, steps } of effectsOf(draft.problem, stint.stint)?.tools ?? []) {
      if (steps.length === 0) continue;
      const lead = stint.stint.roles[0]?.candidates ?? [];
      const user = lead.length === 1 && stint.stint.roles.length === 1 ? (lead[0] as string) : null;
      for (const form of draft.forms(stint)) {
        const interval = draft.range(form, Math.min(...steps), Math.max(...steps) + 1);
        uses.set(tool, [...(uses.get(tool) ?? []), { interval, user }]);
      }
    }
  }
  return uses;
}
