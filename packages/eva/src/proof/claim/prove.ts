/**
 * The claim on a timeline as the data of a stamp: replay, order and timing, and the parts that are worked out elsewhere. It says
 * "checked against R within D", names what D is, what is waived and what is not known, and expires with any change. It never says "safe".
 */
import { formatUtc } from '@handrail/quantity/time';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Campaign } from '../../campaign/campaign.ts';
import type { Finding } from '../../finding/finding.ts';
import type { HardwareModel } from '../../hardware/effects.ts';
import type { Timeline } from '../../timeline/timeline.ts';
import { REPLAY_CHECKS } from '../replay/replay-checks.ts';
import { replayContext } from '../replay/replay-context.ts';
import { replayTimeline } from '../replay/replay-timeline.ts';
import { waiveFindings } from '../replay/waive-findings.ts';
import type { ClaimParts } from './claim-parts.ts';
import { PROOF_CHECKS } from './proof-checks.ts';
import { type EvaProof, type ProofOptions, proveEva } from './prove-eva.ts';
import { proved } from './prove-finding.ts';

/** Changes when the network of a plan is drawn up in another way. */
const MODEL = 'flexible-plan 3';

/** Checked only where the parts of a whole stamp are given. */
const OF_PARTS: ReadonlySet<string> = new Set([
  'proof/way-home-has-a-margin',
  'proof/supplies-last-at-the-quantile',
  'proof/input-level-suffices',
]);

export interface Stamp {
  readonly verdict: 'checked' | 'does not hold' | 'cannot tell';
  /** One sentence. */
  readonly words: string;
  /** SHA-256 over the campaign's hash, the library, the model, R, what D was made of, and the timeline. */
  readonly hash: string;
  readonly documentHash: string;
  readonly library: { readonly id: string; readonly version: string };
  /** R: ids of everything that was checked. */
  readonly requirements: readonly string[];
  readonly evas: readonly EvaProof[];
  /** Ways home, supplies, rules, input level; null: only replay, order and timing were asked for, and the sentence says so. */
  readonly parts: Omit<ClaimParts, 'requirements' | 'findings'> | null;
  /** Waived ones are marked. */
  readonly findings: readonly Finding[];
  readonly unknowns: readonly string[];
  /** What was read in some way because nothing is stated. */
  readonly assumptions: readonly string[];
  readonly waivers: readonly {
    readonly rule: string;
    readonly of: string;
    readonly reason: string;
    readonly by: string;
    readonly untilUtcMs: number;
  }[];
  readonly expiry: { readonly withAnyChangeOf: string; readonly atUtcMs: number; readonly why: string };
}

/**
 * @param hardware what stints need and leave, as inferred from the same campaign
 * @param options bounds of moves, where the reader sits, agreed holds
 * @param parts absent: replay, order and timing alone
 */
export function prove(
  campaign: Campaign,
  hardware: HardwareModel,
  timeline: Timeline,
  options: ProofOptions = {},
  parts: ClaimParts | null = null,
): Stamp {
  const requirements = [
    ...[...REPLAY_CHECKS, ...PROOF_CHECKS.filter(({ id }) => parts !== null || !OF_PARTS.has(id))].map(({ id }) => id),
    ...(parts?.requirements ?? []),
  ];
  const context = replayContext(campaign, hardware, timeline);
  const replayed = replayTimeline(campaign, hardware, timeline);
  const evas: EvaProof[] = [];
  const found: Finding[] = [];
  for (const { eva } of context.flown) {
    const proof = proveEva(campaign, hardware, timeline, context, eva.id, options);
    if (proof === null) found.push(cannotDraw(eva.id));
    else {
      evas.push(proof);
      found.push(...proof.findings);
    }
  }
  const ends = new Map(context.flown.map(({ plan }) => [plan.eva, plan.petZeroUtcMs + plan.bothInS * 1000]));
  const findings = [...replayed, ...waiveFindings([...found, ...(parts?.findings ?? [])], campaign, ends)];
  const open = findings.filter(({ waiver }) => waiver === null);
  const isBroken = open.some(({ severity }) => severity === 'error');
  const isUnknown = context.flown.length === 0 || open.some(({ severity }) => severity === 'unknown');
  const verdict = isBroken ? 'does not hold' : isUnknown ? 'cannot tell' : 'checked';
  const used = new Set(findings.filter(({ waiver }) => waiver !== null).map(({ rule }) => rule));
  const waivers = campaign.waivers.filter(({ rule }) => used.has(rule));
  return {
    verdict,
    words: sentence(verdict, evas, open, requirements.length, parts),
    hash: bytesToHex(
      sha256(
        utf8ToBytes(
          JSON.stringify([
            campaign.documentHash,
            campaign.library,
            MODEL,
            requirements,
            options,
            parts === null ? null : [parts.quantile, parts.margins.map(({ eva, mode }) => [eva, mode])],
            timeline,
          ]),
        ),
      ),
    ),
    documentHash: campaign.documentHash,
    library: campaign.library,
    requirements,
    evas,
    parts:
      parts === null
        ? null
        : {
            margins: parts.margins,
            supplies: parts.supplies,
            quantile: parts.quantile,
            level: parts.level,
            dataAge: parts.dataAge,
          },
    findings,
    unknowns: open.filter(({ severity }) => severity === 'unknown').map(({ title }) => title),
    assumptions: [...new Set(evas.flatMap(({ assumptions }) => assumptions))],
    waivers: waivers.map(({ rule, of, reason, by, untilUtcMs }) => ({ rule, of, reason, by, untilUtcMs })),
    expiry: expiryOf(context.flown, waivers, evas),
  };
}

function cannotDraw(eva: string): Finding {
  return proved('proof/eva-can-be-drawn-up', {
    severity: 'unknown',
    title: `EVA ${eva} has no end to prove anything of`,
    why: 'the timeline has no closing of the hatch',
    mend: 'plan the ingress and the closing of the hatch',
    eva,
  });
}

function sentence(
  verdict: Stamp['verdict'],
  evas: readonly EvaProof[],
  open: readonly Finding[],
  count: number,
  parts: ClaimParts | null,
): string {
  const within = evas
    .map(({ eva, scale, scaleIsMost }) => {
      const least =
        scale === null
          ? 'not even for planning figures'
          : `${scaleIsMost ? 'at least ' : ''}${scale.toFixed(2)} of the stated spread`;
      return `${eva} ${least}`;
    })
    .join(', ');
  const scale = evas[0]?.durations.scale ?? 1;
  const D =
    scale === 1 ? 'within the stated durations (D)' : `within ${Math.round(scale * 100)} % of the stated spreads (D)`;
  const checks = `${count} requirements (R)${parts === null ? ' of replay, order and timing alone' : ''}`;
  const rests = parts === null ? '' : `; rests on input level ${parts.level.level} (${parts.level.title})`;
  const borne = `${within === '' ? '' : `; can be kept up to: ${within}`}${rests}`;
  if (verdict === 'checked') return `checked against ${checks} ${D}${borne}`;
  const severity = verdict === 'does not hold' ? 'error' : 'unknown';
  const found = open.filter((finding) => finding.severity === severity).length;
  if (verdict === 'does not hold')
    return `does not hold against ${checks} ${D}: ${found} ${found === 1 ? 'error' : 'errors'}${borne}`;
  return `cannot tell whether it holds against ${checks} ${D}: ${found} of what it rests on ${found === 1 ? 'is' : 'are'} not stated${borne}`;
}

/** The claim stands for PET 0 within its slip: once the last egress has passed, or a waiver has run out, it is worth nothing. */
function expiryOf(
  flown: ReturnType<typeof replayContext>['flown'],
  waivers: readonly Campaign['waivers'][number][],
  evas: readonly EvaProof[],
): Stamp['expiry'] {
  const egresses = flown.map(({ eva }) => ({
    atUtcMs: eva.egressUtcMs + (evas.find((one) => one.eva === eva.id)?.slipS ?? eva.slipS) * 1000,
    why: `the last egress that it is made for, EVA ${eva.id}`,
  }));
  const last = egresses.toSorted((a, b) => b.atUtcMs - a.atUtcMs)[0] ?? { atUtcMs: 0, why: 'nothing is planned' };
  const first = waivers
    .map(({ untilUtcMs, rule }) => ({ atUtcMs: untilUtcMs, why: `the waiver of ${rule} runs out` }))
    .sort((a, b) => a.atUtcMs - b.atUtcMs)[0];
  const { atUtcMs, why } = first !== undefined && first.atUtcMs < last.atUtcMs ? first : last;
  return {
    withAnyChangeOf: 'the campaign text, the library or the timeline',
    atUtcMs,
    why: `${why}, ${formatUtc(atUtcMs)}`,
  };
}
