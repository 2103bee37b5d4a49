/**
 * IV's script: both people and the arm in one column, in order of speech. A row is something that the reader says or hears.
 * Rows of one instant are ordered: what ends, what is called, what begins.
 */
import type { Campaign, Step, Stint } from '../../campaign/campaign.ts';
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { EvaTimeline } from '../../timeline/timeline.ts';
import { personCourse, stepStart } from '../../timeline/person-course.ts';
import { gateCalls } from '../../gate/propose-gates.ts';
import type { BriefInput } from '../brief-input.ts';
import { listOf, stepSentence, titleOf } from '../step-sentence.ts';

export interface ScriptRow {
  readonly petS: number;
  readonly who: string;
  readonly kind: 'begin' | 'step' | 'move' | 'wait' | 'passage' | 'join' | 'request' | 'gate' | 'safe-stop';
  readonly words: string;
  readonly say: string | null;
  readonly hear: string | null;
  readonly caution: string | null;
  readonly note: string | null;
  /** Stint key. */
  readonly stint: string | null;
}

const ORDER: Readonly<Record<ScriptRow['kind'], number>> = {
  'safe-stop': 0,
  request: 1,
  join: 2,
  gate: 3,
  passage: 4,
  move: 5,
  wait: 6,
  begin: 7,
  step: 8,
};

export function scriptRows(input: BriefInput, eva: EvaTimeline): readonly ScriptRow[] {
  const { campaign } = input;
  const rows: ScriptRow[] = [];
  for (const person of campaign.people.filter((candidate) => candidate.role === 'outside')) {
    rows.push(...travelRows(campaign, eva, person.id), ...safeStopRows(input, eva, person.id));
  }
  for (const arm of campaign.arms) rows.push(...armRows(campaign, eva, arm.id));
  const stints = new Map(campaign.tasks.flatMap((task) => task.stints.map((stint) => [stint.key, stint] as const)));
  for (const planned of eva.stints) {
    const stint = stints.get(planned.stint);
    if (stint === undefined) continue;
    rows.push(beginRow(campaign, stint, planned.startS, planned.assigned));
    stint.steps.forEach((step, index) => {
      rows.push(
        stepRow(campaign, stint, step, stepStart(planned, index), whoDoes(stint, step, index, planned.assigned)),
      );
    });
  }
  rows.push(...joinRows(campaign, eva), ...requestRows(campaign, eva), ...gateRows(input, eva));
  return rows.sort(
    (a, b) => a.petS - b.petS || ORDER[a.kind] - ORDER[b.kind] || (a.who < b.who ? -1 : a.who > b.who ? 1 : 0),
  );
}

const SILENT = { say: null, hear: null, caution: null, note: null, stint: null } as const;

function travelRows(campaign: Campaign, eva: EvaTimeline, person: string): ScriptRow[] {
  return personCourse(campaign, eva, person).flatMap((stretch): ScriptRow[] => {
    const row = { ...SILENT, petS: stretch.startS, who: person };
    if (stretch.kind === 'passage') {
      const passage = eva.passages.find(
        (candidate) => candidate.person === person && candidate.startS === stretch.startS,
      );
      return [
        {
          ...row,
          kind: 'passage',
          words: passage?.kind === 'ingress' ? 'In through the hatch' : 'Out through the hatch',
        },
      ];
    }
    if (stretch.kind === 'move') {
      const via = stretch.path.slice(1, -1);
      const words = `Go to ${titleOf(campaign, stretch.to)}${via.length === 0 ? '' : ` by ${listOf(via)}`}${stretch.carrying.length === 0 ? '' : ` with ${listOf(stretch.carrying)}`}`;
      return [{ ...row, kind: 'move', words, note: formatDuration(stretch.endS - stretch.startS) }];
    }
    if (stretch.kind === 'wait' && stretch.endS - stretch.startS >= 60) {
      return [
        {
          ...row,
          kind: 'wait',
          words: `Wait at ${titleOf(campaign, stretch.place)}`,
          note: formatDuration(stretch.endS - stretch.startS),
        },
      ];
    }
    return [];
  });
}

function armRows(campaign: Campaign, eva: EvaTimeline, arm: string): ScriptRow[] {
  const poses = campaign.arms.find((candidate) => candidate.id === arm)?.poses ?? [];
  return eva.moves
    .filter((move) => move.who === arm)
    .map((move) => ({
      ...SILENT,
      petS: move.startS,
      who: arm,
      kind: 'move' as const,
      words: `Move to ${poses.find((pose) => pose.id === move.to)?.title ?? move.to}`,
      note: formatDuration(move.endS - move.startS),
    }));
}

function beginRow(campaign: Campaign, stint: Stint, petS: number, assigned: readonly string[]): ScriptRow {
  const lead = stint.roles[0];
  const restraint = lead?.restraint ?? null;
  const where = lead === undefined ? '' : ` at ${titleOf(campaign, lead.at)}`;
  return {
    ...SILENT,
    petS,
    who: listOf([...new Set(assigned)]),
    kind: 'begin',
    words: `${stint.title}${where}${restraint === null ? '' : `, in ${titleOf(campaign, restraint)}`}`,
    caution: stint.caution,
    note: formatDuration(stint.duration.agreedS),
    stint: stint.key,
  };
}

function stepRow(campaign: Campaign, stint: Stint, step: Step, petS: number, who: string): ScriptRow {
  return {
    petS,
    who,
    kind: 'step',
    words: stepSentence(campaign, step),
    say: step.say,
    hear: step.hear,
    caution: step.caution,
    note: step.note,
    stint: stint.key,
  };
}

function whoDoes(stint: Stint, step: Step, index: number, assigned: readonly string[]): string {
  const role = stint.roles.findIndex(
    (candidate) => candidate.name === step.by && candidate.fromStep <= index && index < candidate.toStep,
  );
  return assigned[role < 0 ? 0 : role] ?? '?';
}

/** A cut-line where everything this person opened is closed again, or is safe for the night as it is. */
function safeStopRows(input: BriefInput, eva: EvaTimeline, person: string): ScriptRow[] {
  const samples = input.wayHome(eva).people.get(person) ?? [];
  const rows: ScriptRow[] = [];
  for (const planned of eva.stints) {
    if (!planned.assigned.includes(person)) continue;
    if (planned.assigned[0] !== person) continue;
    planned.stepEndsS.forEach((end, index) => {
      const sample = samples.find((candidate) => candidate.petS === end);
      if (sample === undefined || !sample.ownClosed) return;
      // Only where something was open before: else every line would be a cut-line.
      const before = samples.find((candidate) => candidate.petS === stepStart(planned, index));
      const last = index === planned.stepEndsS.length - 1;
      if (!last && (before === undefined || before.ownClosed)) return;
      rows.push({
        ...SILENT,
        petS: end,
        who: person,
        kind: 'safe-stop',
        words: `Safe stop for ${person}: what this stint opened is closed or safe for the night`,
        stint: planned.stint,
      });
    });
  }
  return rows;
}

function joinRows(campaign: Campaign, eva: EvaTimeline): ScriptRow[] {
  const joins = new Map(campaign.tasks.flatMap((task) => task.joins.map((join) => [join.id, join] as const)));
  const assignedTo = new Map(eva.stints.map((planned) => [planned.stint, planned.assigned[0] ?? '?'] as const));
  return eva.joins.flatMap((tie) => {
    const join = joins.get(tie.join);
    if (join === undefined) return [];
    const says = join.says ?? assignedTo.get(join.releases) ?? '?';
    const listens = join.listens ?? assignedTo.get(join.waits) ?? '?';
    return [
      {
        ...SILENT,
        petS: tie.releasedS,
        who: says,
        kind: 'join' as const,
        words: `"${join.title}": ${listens} may go on`,
        say: join.title,
        stint: join.waits,
      },
    ];
  });
}

function requestRows(campaign: Campaign, eva: EvaTimeline): ScriptRow[] {
  return eva.holds.flatMap((hold) => {
    const request = campaign.requests.find((candidate) => candidate.id === hold.request);
    if (request === undefined) return [];
    const row = { ...SILENT, who: 'IV', kind: 'request' as const };
    return [
      {
        ...row,
        petS: hold.askS,
        words: `Ask ${request.owner}: ${request.title}`,
        note: `${request.inhibits} independent inhibits`,
      },
      {
        ...row,
        petS: hold.verifiedS,
        words: `Hear that it is verified: ${request.title}`,
        hear: `${request.title} verified`,
      },
      { ...row, petS: hold.lastUseS, words: `Tell ${request.owner} to clear: ${request.title}` },
    ];
  });
}

/** Written gates and, marked as such, those proposed at the entry of stretches without a safe stop, in the order of their calls. */
function gateRows(input: BriefInput, eva: EvaTimeline): ScriptRow[] {
  return gateCalls(input.campaign, eva, input.wayHome(eva)).map((gate) => ({
    ...SILENT,
    petS: gate.petS,
    who: gate.caller,
    kind: 'gate' as const,
    words: `${gate.proposed ? 'Proposed gate, not agreed. ' : ''}Go or no-go: ${gate.title}. ${gate.conditions.join('; ')}`,
    note: `${gate.latestPetS === null ? '' : `latest go PET ${formatPet(Math.floor(gate.latestPetS / 60) * 60)}; `}on no: ${gate.onNo}${gate.drops.length === 0 ? '' : `; given up: ${gate.drops.join(', ')}`}`,
    stint: gate.before,
  }));
}
