import type { Campaign } from '../../campaign/campaign.ts';
import type { Finding } from '../../finding/finding.ts';

/**
 * Marks findings that the campaign waives: same rule, limited to the stint, task, EVA or person that the waiver names, and valid
 * on the day that the finding is about. A waiver that has run out marks nothing.
 *
 * @param untilUtcMs EVA id → the instant until which a waiver must hold to count for it (its end)
 */
export function waiveFindings(
  findings: readonly Finding[],
  campaign: Campaign,
  untilUtcMs: ReadonlyMap<string, number>,
): readonly Finding[] {
  const latest = Math.max(0, ...untilUtcMs.values());
  return findings.map((finding) => {
    const { eva, stint, person } = finding.where;
    const about = new Set([eva, stint, person, stint?.split('/')[0] ?? null]);
    const neededMs = (eva === null ? undefined : untilUtcMs.get(eva)) ?? latest;
    const waiver = campaign.waivers.find(
      (one) => one.rule === finding.rule && about.has(one.of) && one.untilUtcMs >= neededMs,
    );
    return waiver === undefined ? finding : { ...finding, waiver: `${waiver.reason} (${waiver.by})` };
  });
}
