/**
 * A timeline as a person writes it, a line a fact, for examples and for plans drawn up by hand:
 *
 *     eva mast                       the EVA that the next lines belong to
 *     EV1 0:00-0:08 out              a passage through the hatch; `in` at the end
 *     hatch 5:40-5:47                closing the hatch; its end is "both in"
 *     EV1 0:08-0:10 porch > bay      a move; places passed may stand between: porch > spine-1 > bay; `carrying mast` may follow
 *     EV1+EV2 0:10-0:30 fit/seat     a stint with its people in the order of its roles
 *     steps 0:15 0:22 0:30           ends of the steps of the stint above; without it they share its time evenly
 *     request bus-off 0:01 0:10 0:15-0:25 0:30    asked, verified, first and last use, cleared
 *     join call 0:30 0:30            released, waited until
 *     wall 6:30 longest EVA          the time both must be in by, and its cause
 *
 * Lines that start with # are remarks. Times are PET h:mm or h:mm:ss.
 */
import { Fault } from '@handrail/quantity/fault';
import { parsePet } from '@handrail/quantity/time';
import type { Campaign } from '../campaign/campaign.ts';
import type { EvaTimeline, PlannedMove, PlannedPassage, PlannedStint, RequestHold, Timeline } from './timeline.ts';

interface Draft {
  readonly eva: string;
  readonly stints: PlannedStint[];
  readonly passages: PlannedPassage[];
  readonly moves: PlannedMove[];
  readonly holds: RequestHold[];
  readonly joins: { join: string; releasedS: number; waitsUntilS: number }[];
  wall: { petS: number; cause: string } | null;
}

/** @throws Fault `timeline/notation` with the line and what was expected. */
export function readTimelineNotation(text: string, campaign: Campaign): Timeline {
  const drafts: Draft[] = [];
  const steps = new Map(
    campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint.steps.length] as const)),
  );
  text.split('\n').forEach((raw, index) => {
    const line = raw.trim();
    if (line === '' || line.startsWith('#')) return;
    const words = line.split(/\s+/);
    if (words[0] === 'eva') {
      drafts.push({ eva: words[1] ?? '', stints: [], passages: [], moves: [], holds: [], joins: [], wall: null });
      return;
    }
    const draft = drafts.at(-1);
    if (draft === undefined) throw fault(index, line, 'a line "eva ID" first');
    readLine(draft, words, index, line, steps);
  });
  const planned = new Set(drafts.flatMap((draft) => draft.stints.map((stint) => stint.stint.split('/')[0] as string)));
  return {
    format: 'handrail-timeline',
    version: 1,
    campaign: campaign.id,
    documentHash: campaign.documentHash,
    library: campaign.library,
    evas: drafts.map((draft) => finish(draft, campaign)),
    leftOut: campaign.tasks
      .filter((task) => !planned.has(task.id))
      .map((task) => ({ task: task.id, why: 'not written' })),
  };
}

function readLine(
  draft: Draft,
  words: readonly string[],
  index: number,
  line: string,
  stepCounts: ReadonlyMap<string, number>,
): void {
  const time = (word: string | undefined): number => {
    const petS = word === undefined ? null : parsePet(word);
    if (petS === null) throw fault(index, line, 'a PET time such as 1:05');
    return petS;
  };
  const range = (word: string | undefined): readonly [number, number] => {
    const [from, to] = (word ?? '').split('-');
    return [time(from), time(to)];
  };
  const [first = '', second, ...rest] = words;
  if (first === 'steps') {
    const stint = draft.stints.pop();
    if (stint === undefined) throw fault(index, line, 'a stint on a line above');
    draft.stints.push({ ...stint, stepEndsS: words.slice(1).map(time) });
  } else if (first === 'wall') {
    draft.wall = { petS: time(second), cause: rest.join(' ') };
  } else if (first === 'hatch') {
    const [startS, endS] = range(second);
    draft.passages.push({ kind: 'close-hatch', person: null, startS, endS });
  } else if (first === 'request') {
    const [ask, verified, used, cleared] = rest;
    const [firstUseS, lastUseS] = range(used);
    draft.holds.push({
      request: second ?? '',
      askS: time(ask),
      verifiedS: time(verified),
      firstUseS,
      lastUseS,
      clearedS: time(cleared),
    });
  } else if (first === 'join') {
    draft.joins.push({ join: second ?? '', releasedS: time(rest[0]), waitsUntilS: time(rest[1]) });
  } else {
    const [startS, endS] = range(second);
    if (rest[0] === 'out' || rest[0] === 'in') {
      draft.passages.push({ kind: rest[0] === 'out' ? 'egress' : 'ingress', person: first, startS, endS });
    } else if (rest.includes('>')) {
      const cut = rest.indexOf('carrying');
      const path = (cut < 0 ? rest : rest.slice(0, cut)).filter((word) => word !== '>');
      const carrying = cut < 0 ? [] : rest.slice(cut + 1);
      draft.moves.push({
        who: first,
        from: path[0] ?? '',
        to: path.at(-1) ?? '',
        startS,
        endS,
        path,
        anchor: null,
        carrying,
      });
    } else if (rest.length === 1 && rest[0]?.includes('/')) {
      const count = stepCounts.get(rest[0]) ?? 0;
      const stepEndsS = Array.from({ length: count }, (_, step) =>
        Math.round(startS + ((endS - startS) * (step + 1)) / count),
      );
      draft.stints.push({ stint: rest[0], startS, endS, assigned: first.split('+'), stepEndsS });
    } else {
      throw fault(index, line, 'out, in, task/stint, or place > place');
    }
  }
}

function finish(draft: Draft, campaign: Campaign): EvaTimeline {
  const ends = [...draft.passages, ...draft.stints, ...draft.moves].map((entry) => entry.endS);
  return {
    eva: draft.eva,
    petZeroUtcMs: campaign.evas.find((eva) => eva.id === draft.eva)?.egressUtcMs ?? 0,
    tasks: [...new Set(draft.stints.map((stint) => stint.stint.split('/')[0] as string))],
    stints: draft.stints.toSorted((a, b) => a.startS - b.startS),
    passages: draft.passages.toSorted((a, b) => a.startS - b.startS),
    moves: draft.moves.toSorted((a, b) => a.startS - b.startS),
    holds: draft.holds,
    joins: draft.joins,
    bothInS: Math.max(0, ...ends),
    wall: draft.wall,
    claim: { status: 'written by hand', levels: [], seed: 0, conflicts: 0 },
  };
}

function fault(index: number, line: string, expected: string): Fault {
  return new Fault('timeline/notation', `line ${index + 1}: "${line}": expected ${expected}`, {
    values: { line: index + 1 },
  });
}
