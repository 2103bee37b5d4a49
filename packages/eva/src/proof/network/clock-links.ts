/**
 * Clocks as links between the change that starts them and the change that stops them, as planned. Where a clock adds up over
 * several runs, each run gets its planned length and an equal share of what is left: enough to keep the sum, though stricter.
 */
import { bodyValue } from '../replay/states/state-history.ts';
import type { NetworkDraft } from './network-draft.ts';

interface Change {
  readonly event: number;
  readonly petS: number;
  readonly variable: string;
  readonly value: string;
  readonly by: string;
}

export function clockLinks(draft: NetworkDraft): void {
  const changes = changesOf(draft);
  for (const clock of draft.campaign.clocks) {
    const runs: { start: Change; stop: Change }[] = [];
    const values = new Map<string, string>();
    let open: Change | null = null;
    for (const change of changes) {
      const before = values.get(change.variable) ?? draft.valueAtStart(change.variable);
      values.set(change.variable, change.value);
      const becomes = (of: { variable: string; values: readonly string[] }): boolean =>
        of.variable === change.variable && of.values.includes(change.value) && !of.values.includes(before);
      if (open !== null && becomes(clock.stop)) {
        runs.push({ start: open, stop: change });
        open = null;
      } else if (open === null && becomes(clock.start)) open = change;
    }
    if (open !== null) {
      draft.assumptions.push(
        `"${clock.title}" runs past the end of this EVA: the order proof says nothing of its limit`,
      );
    }
    const usedS = runs.reduce((sum, { start, stop }) => sum + stop.petS - start.petS, 0);
    const addsUp = clock.onStop === 'accumulate' && runs.length > 1;
    const shareS = addsUp ? Math.max(0, clock.limitS - usedS) / runs.length : 0;
    for (const { start, stop } of runs) {
      const limitS = addsUp ? stop.petS - start.petS + shareS : clock.limitS;
      const reason = `clock "${clock.title}", from ${start.by} to ${stop.by}`;
      if (clock.sense === 'most')
        draft.link(start.event, stop.event, null, Math.floor(limitS), 'clock', reason, clock.span);
      else draft.link(start.event, stop.event, Math.ceil(clock.limitS), null, 'clock', reason, clock.span);
    }
  }
}

function changesOf(draft: NetworkDraft): readonly Change[] {
  const changes: Change[] = [];
  for (const placed of draft.placed) {
    for (const leave of placed.effects?.leaves ?? []) {
      const mark = leave.step < 0 ? 0 : Math.min(leave.step + 1, placed.steps);
      changes.push({
        event: draft.boundary(placed, mark),
        petS: draft.plannedBoundaryS(placed, mark),
        variable: leave.variable,
        value: bodyValue(draft.context, leave.value, placed.planned.assigned),
        by: `"${placed.stint.title}"`,
      });
    }
  }
  for (const event of draft.campaign.events) {
    const at = draft.outside.get(event.id);
    if (at === undefined) continue;
    const petS = (event.atUtcMs - draft.plan.petZeroUtcMs) / 1000;
    for (const { variable, value } of event.leaves) {
      changes.push({ event: at, petS, variable, value, by: `"${event.title}"` });
    }
  }
  return changes.sort((a, b) => a.petS - b.petS);
}
