import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** Rules whose answer rests on how earlier EVAs leave hardware and arms. */
const RESTS_ON_AS_LEFT: ReadonlySet<string> = new Set([
  'replay/need-holds-at-the-start',
  'replay/need-holds-throughout',
  'replay/need-holds-at-the-end',
  'replay/rails-are-open',
  'replay/walks-in-a-stint-have-a-way',
  'replay/no-tether-over-a-joint-that-turns',
  'replay/moves-are-laden-as-carried',
  'replay/loads-are-in-hand-at-the-start',
  'replay/carried-pieces-have-hooks',
  'replay/tools-are-there',
  'replay/arm-starts-where-it-ended',
  'replay/plate-is-where-the-rider-is',
  'replay/clock-is-stopped',
]);

/**
 * A timeline may hold only some of the EVAs. Then how the missing ones leave things is not known: that is told, and what rests on
 * it cannot be told either, so that it is not called an error.
 */
export function earlierEvasAreIn({ campaign, flown }: ReplayContext): Finding[] {
  return flown.flatMap(({ eva }) =>
    missingBefore(campaign.evas, flown, eva.id).map((missing) =>
      noticed('replay/earlier-evas-are-in', {
        severity: 'unknown',
        title: `EVA ${eva.id} follows EVA ${missing}, which is not in the timeline`,
        why: `how EVA ${missing} leaves hardware and arms is not known; EVA ${eva.id} was replayed from the values stated for the start`,
        mend: 'check a timeline of all EVAs',
        eva: eva.id,
        span: eva.span,
      }),
    ),
  );
}

/** Lowers to `unknown` what rests on an EVA that is not in the timeline. */
export function withoutEarlierEvas(findings: readonly Finding[], context: ReplayContext): readonly Finding[] {
  const { campaign, flown } = context;
  const missing = new Map(flown.map(({ eva }) => [eva.id, missingBefore(campaign.evas, flown, eva.id)]));
  return findings.map((finding) => {
    const before = missing.get(finding.where.eva ?? '') ?? [];
    if (before.length === 0 || finding.severity !== 'error' || !RESTS_ON_AS_LEFT.has(finding.rule)) return finding;
    return { ...finding, severity: 'unknown', why: `${finding.why}; EVA ${before.join(' and ')} may change that` };
  });
}

function missingBefore(
  evas: ReplayContext['campaign']['evas'],
  flown: ReplayContext['flown'],
  id: string,
): readonly string[] {
  const egressMs = evas.find((eva) => eva.id === id)?.egressUtcMs ?? Number.NEGATIVE_INFINITY;
  return evas
    .filter((eva) => eva.egressUtcMs < egressMs && !flown.some((one) => one.eva.id === eva.id))
    .map((eva) => eva.id);
}
