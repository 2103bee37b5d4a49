/**
 * What a stated slip of PET 0 breaks, as findings: a plan whose egress may be late holds for every start that the text allows,
 * or says which it does not hold for.
 */
import { formatDuration } from '@handrail/quantity/time';
import type { Finding, Severity } from '../finding/finding.ts';
import { type EvaSlip, type SlipInput, slipTable } from './slip-table.ts';
import { leftWords, waitWords } from './slip-words.ts';

const ID = 'slip/plan-holds-for-the-stated-slip';

/** For `explain`, help and the reference pages. */
export const SLIP_CHECKS: readonly {
  readonly id: string;
  readonly title: string;
  readonly why: string;
  readonly severity: Severity;
}[] = [
  {
    id: ID,
    title: 'The plan holds for every egress that the stated slip allows',
    why: 'Windows, events and granted times do not wait for a late egress. An EVA that states a slip says that PET 0 may be anywhere in it, so the plan is replayed for each late start; "handrail slip" shows the whole table.',
    severity: 'error',
  },
];

const STEP_S = 300;

/**
 * One finding for each EVA with a stated slip that breaks something: a warning where waits mend it, an error where they do not.
 * Looked at every 5 min and at the stated slip itself. EVAs without a slip cost nothing.
 */
export function slipFindings(input: SlipInput): readonly Finding[] {
  const { campaign, timeline } = input;
  const stated = new Map(campaign.evas.map(({ id, slipS }) => [id, slipS] as const));
  const slipping = timeline.evas.filter(({ eva }) => (stated.get(eva) ?? 0) > 0);
  if (slipping.length === 0 || (campaign.windows.length === 0 && campaign.events.length === 0)) return [];
  const most = Math.max(...slipping.map(({ eva }) => stated.get(eva) ?? 0));
  const steps = Array.from({ length: Math.floor(most / STEP_S) + 1 }, (_, k) => k * STEP_S);
  return slipTable(input, [...steps, ...slipping.map(({ eva }) => stated.get(eva) ?? 0)]).flatMap((slip) =>
    findingOf(input, slip),
  );
}

function findingOf({ campaign }: SlipInput, { eva, petZeroUtcMs, rows, statedSlipS }: EvaSlip): readonly Finding[] {
  const broken = rows.filter(
    ({ lateS, breaks }) => lateS > 0 && lateS <= statedSlipS && breaks.some(({ severity }) => severity === 'error'),
  );
  const first = broken[0];
  if (first === undefined) return [];
  const worst = broken.find(({ acceptable }) => !acceptable);
  const shown = worst ?? first;
  const errors = shown.breaks.filter(({ severity }) => severity === 'error').map(({ title }) => title);
  const mends = shown.waits.map(waitWords);
  return [
    {
      rule: ID,
      severity: worst === undefined ? 'warning' : 'error',
      title:
        worst === undefined
          ? 'Within the stated slip the plan holds only with waits'
          : 'Within the stated slip there is an egress that the plan does not bear',
      where: {
        eva,
        person: null,
        stint: null,
        step: null,
        petS: 0,
        span: campaign.evas.find(({ id }) => id === eva)?.span ?? null,
      },
      why: `${formatDuration(shown.lateS)} late: ${errors.join('; ')}${worst === undefined ? '' : `; left: ${leftWords(worst).join('; ')}`}. The text states a slip of ${formatDuration(statedSlipS)}`,
      mend:
        mends.length > 0 && worst === undefined
          ? mends.join('; ')
          : 'state a shorter slip, or plan with more room in the windows',
      source: null,
      waiver: waiverOf(campaign, eva, petZeroUtcMs),
    },
  ];
}

/** A waiver of this check for the EVA that still holds when it begins. */
function waiverOf({ waivers }: SlipInput['campaign'], eva: string, petZeroUtcMs: number): string | null {
  const waiver = waivers.find((one) => one.rule === ID && one.of === eva && one.untilUtcMs > petZeroUtcMs);
  return waiver === undefined ? null : `${waiver.reason} (${waiver.by})`;
}
