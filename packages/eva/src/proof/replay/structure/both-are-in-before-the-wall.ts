import { formatDuration, formatPet } from '@handrail/quantity/time';
import { suitWall } from '../../../suit/supplies-wall.ts';
import type { Campaign, Eva } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** Both on vehicle supplies, hatch closed, before the tightest stated limit; EVAs one after the other. */
export function bothAreInBeforeTheWall({ campaign, flown, people }: ReplayContext): Finding[] {
  const findings: Finding[] = [];
  let before: { eva: string; inUtcMs: number } | null = null;
  for (const { eva, plan } of flown) {
    const limits: { petS: number; cause: string }[] = [];
    if (eva.longestS !== null) limits.push({ petS: eva.longestS, cause: `the longest EVA stated for ${eva.title}` });
    const indoors = nobodyOutside(campaign, eva, plan.petZeroUtcMs);
    if (indoors !== null) limits.push(indoors);
    for (const { person } of eva.egress) {
      const wearer = people.get(person);
      const suit = wearer === undefined ? null : suitWall(campaign, wearer);
      if (suit !== null) limits.push({ petS: suit.petS, cause: `the ${suit.cause}` });
    }
    limits.sort((a, b) => a.petS - b.petS);
    const [wall] = limits;
    const where = { eva: eva.id, petS: plan.bothInS, span: eva.span };
    if (wall === undefined) {
      findings.push(
        noticed('replay/a-wall-is-stated', {
          severity: 'unknown',
          title: `Nothing says by when both must be in on EVA ${eva.id}`,
          why: 'neither a longest EVA nor a suit limit is stated',
          mend: 'state longest= on the EVA or suit-limit= on the persons',
          ...where,
        }),
      );
    } else {
      if (plan.bothInS > wall.petS) {
        findings.push(
          noticed('replay/both-are-in-before-the-wall', {
            title: `Both are in after the wall on EVA ${eva.id}`,
            why: `in at PET ${formatPet(plan.bothInS)}; ${wall.cause} ends at PET ${formatPet(wall.petS)} (late by ${formatDuration(plan.bothInS - wall.petS)})`,
            mend: 'drop the lowest rank, or move work to another EVA',
            ...where,
          }),
        );
      } else if (campaign.limits.marginS !== null && plan.bothInS + campaign.limits.marginS > wall.petS) {
        findings.push(
          noticed('replay/margin-to-the-wall', {
            severity: 'warning',
            title: `The margin to the wall is smaller than wanted on EVA ${eva.id}`,
            why: `${formatDuration(wall.petS - plan.bothInS)} between both in and ${wall.cause}; wanted ${formatDuration(campaign.limits.marginS)}`,
            mend: 'drop the lowest rank, or accept the smaller margin with a waiver',
            ...where,
          }),
        );
      }
      if (plan.wall !== null && plan.wall.petS > wall.petS) {
        findings.push(
          noticed('replay/the-wall-is-the-tightest-limit', {
            title: `The plan shows a later wall than the campaign states for EVA ${eva.id}`,
            why: `shown PET ${formatPet(plan.wall.petS)} (${plan.wall.cause}); stated PET ${formatPet(wall.petS)} (${wall.cause})`,
            ...where,
          }),
        );
      }
    }
    if (before !== null && plan.petZeroUtcMs < before.inUtcMs) {
      findings.push(
        noticed('replay/one-eva-at-a-time', {
          title: `EVA ${eva.id} starts before EVA ${before.eva} is over`,
          why: `${formatDuration((before.inUtcMs - plan.petZeroUtcMs) / 1000)} too early`,
          eva: eva.id,
          petS: 0,
          span: eva.span,
        }),
      );
    }
    before = { eva: eva.id, inUtcMs: plan.petZeroUtcMs + plan.bothInS * 1000 };
  }
  return findings;
}

/** Read a second time, apart from the planner: the first interval that PET 0, on time or as late as it may slip, does not outlive. */
function nobodyOutside(
  { windows }: Campaign,
  { indoors, egressUtcMs, slipS }: Eva,
  petZeroUtcMs: number,
): { petS: number; cause: string } | null {
  for (const { id, title, intervals, padS } of windows) {
    if (id !== indoors) continue;
    const zeros = [petZeroUtcMs, egressUtcMs + slipS * 1000];
    const [first] = intervals
      .filter(([, end]) => end / 1000 + padS > petZeroUtcMs / 1000)
      .map(([begin]) => Math.min(...zeros.map((zero) => begin / 1000 - padS - zero / 1000)));
    if (first !== undefined) return { petS: Math.floor(Math.max(first, 0)), cause: `"${title}" with nobody outside` };
  }
  return null;
}
