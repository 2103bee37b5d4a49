/** From a solution of the model back to the timeline of the EVA: stints, passages, moves, request holds, joins, claim. */
import type { LevelResult } from '@handrail/solver/model/answer';
import type { IntervalId, Solution } from '@handrail/solver/model/model';
import type { Claim, EvaTimeline, PlannedPassage, PlannedStint, RequestHold } from '../timeline/timeline.ts';
import type { StintDraft } from './eva-draft.ts';
import type { EvaModel } from './eva-model.ts';
import { secondsOf } from './grid.ts';
import { readMoves } from './read-moves.ts';
import { SolutionReader } from './solution-reader.ts';
import type { TeamMode } from './team-mode.ts';

export interface ClaimBasis {
  readonly levels: readonly LevelResult[];
  readonly proved: boolean;
  readonly seed: number;
  readonly conflicts: number;
}

export function readEvaTimeline(evaModel: EvaModel, solution: Solution, basis: ClaimBasis): EvaTimeline {
  const { draft, problem } = evaModel;
  const reader = new SolutionReader(evaModel, solution);
  const stints: PlannedStint[] = [];
  for (const stint of draft.stints.values()) {
    const mode = reader.isPresent(stint.master) ? reader.modeOf(stint) : null;
    if (mode !== null) stints.push(plannedStint(reader, stint, mode));
  }
  const order = (key: string) => problem.campaign.people.findIndex(({ id }) => id === key);
  stints.sort((a, b) => a.startS - b.startS || order(a.assigned[0] ?? '') - order(b.assigned[0] ?? ''));
  return {
    eva: problem.eva.id,
    petZeroUtcMs: problem.eva.egressUtcMs,
    tasks: problem.tasks.map(({ id }) => id).filter((id) => isIn(evaModel, reader, id)),
    stints,
    passages: passages(evaModel, reader),
    moves: readMoves(evaModel, reader),
    holds: requestHolds(evaModel, reader),
    joins: joins(evaModel, reader),
    bothInS: secondsOf(solution[draft.bothIn] as number),
    wall: problem.wall,
    claim: claim(basis),
  };
}

function isIn({ draft }: EvaModel, reader: SolutionReader, task: string): boolean {
  const presence = draft.tasks.get(task);
  return presence !== undefined && reader.holds(presence);
}

function plannedStint(reader: SolutionReader, stint: StintDraft, mode: TeamMode): PlannedStint {
  const startS = reader.startS(stint.master);
  const ends = mode.boundaries.slice(1).map((cells) => startS + secondsOf(cells));
  return {
    stint: stint.stint.key,
    startS,
    endS: reader.endS(stint.master),
    assigned: mode.assigned,
    stepEndsS: stint.stint.steps.length === 0 ? [] : ends,
  };
}

function passages({ draft, problem }: EvaModel, reader: SolutionReader): PlannedPassage[] {
  const found: PlannedPassage[] = [];
  const add = (kind: PlannedPassage['kind'], person: string | null, interval: IntervalId | null) => {
    if (interval !== null) found.push({ kind, person, startS: reader.startS(interval), endS: reader.endS(interval) });
  };
  for (const { person } of problem.eva.egress) add('egress', person, draft.passages.get(person)?.egress ?? null);
  for (const { person } of problem.eva.ingress) add('ingress', person, draft.passages.get(person)?.ingress ?? null);
  add('close-hatch', null, draft.closeHatch);
  return found;
}

function requestHolds({ draft, problem }: EvaModel, reader: SolutionReader): RequestHold[] {
  return draft.requestCovers
    .filter(({ cover, inForce }) => reader.isPresent(cover) && inForce.every((literal) => reader.holds(literal)))
    .flatMap(({ request: id, cover }) => {
      const request = problem.campaign.requests.find((candidate) => candidate.id === id);
      if (request === undefined) return [];
      const [firstUseS, lastUseS] = [reader.startS(cover), reader.endS(cover)];
      return {
        request: id,
        askS: firstUseS - request.verifyS - request.setLeadS,
        verifiedS: firstUseS,
        firstUseS,
        lastUseS,
        clearedS: lastUseS + request.clearS,
      };
    })
    .sort((a, b) => a.askS - b.askS);
}

function joins({ draft, problem }: EvaModel, reader: SolutionReader): EvaTimeline['joins'] {
  return problem.tasks.flatMap((task) =>
    task.joins.flatMap((join) => {
      const releases = draft.stints.get(join.releases);
      const waits = draft.stints.get(join.waits);
      if (releases === undefined || waits === undefined) return [];
      if (!reader.isPresent(releases.master) || !reader.isPresent(waits.master)) return [];
      return [{ join: join.id, releasedS: reader.endS(releases.master), waitsUntilS: reader.startS(waits.master) }];
    }),
  );
}

function claim({ levels, proved, seed, conflicts }: ClaimBasis): Claim {
  const isOptimal = proved && levels.length > 0 && levels.every((level) => level.proved);
  return {
    status: isOptimal ? 'optimal for these durations' : 'best found',
    levels: levels.map((level) => {
      const isRank = level.objective === 'rank';
      const scale = (value: number) => (isRank ? value : secondsOf(value));
      return {
        name: level.objective,
        unit: isRank ? 'weight' : 's',
        value: level.value === null ? null : scale(level.value),
        bound: scale(level.bound),
        proved: level.proved,
      };
    }),
    seed,
    conflicts,
  };
}
