import { formatDuration, formatPet } from '@handrail/quantity/time';
import { claimSentence } from '../../timeline/claim-words.ts';
import type { Margin } from '../../timeline/margins.ts';
import type { EvaTimeline } from '../../timeline/timeline.ts';
import type { Finding } from '../../finding/finding.ts';

/** One sentence on one EVA: what the plan is worth, as far as it has been checked. It never says "safe". */
export function verdictSentence(eva: EvaTimeline, title: string, findings: readonly Finding[]): string {
  const errors = findings.filter((finding) => finding.severity === 'error' && finding.waiver === null).length;
  const unknowns = findings.filter((finding) => finding.severity === 'unknown').length;
  const warnings = findings.filter((finding) => finding.severity === 'warning' && finding.waiver === null).length;
  const checked =
    errors > 0
      ? `does not hold: ${errors} ${errors === 1 ? 'error' : 'errors'}`
      : unknowns > 0
        ? `holds in the nominal replay; ${unknowns} ${unknowns === 1 ? 'thing' : 'things'} cannot be told`
        : warnings > 0
          ? `holds in the nominal replay and under the rules, with ${warnings} ${warnings === 1 ? 'warning' : 'warnings'} to look at`
          : 'holds in the nominal replay and under every rule';
  const wall =
    eva.wall === null
      ? 'no wall is stated'
      : `${formatDuration(Math.abs(eva.wall.petS - eva.bothInS))} ${eva.wall.petS >= eva.bothInS ? 'before' : 'past'} the wall`;
  return `${title}: ${eva.tasks.length} tasks, both in at PET ${formatPet(eva.bothInS)}, ${wall}. The plan ${checked}. ${claimSentence(eva)}`;
}

export function marginWords(margin: Margin): string {
  return `${margin.marginS < 0 ? 'short by' : ''} ${formatDuration(Math.abs(margin.marginS))}${margin.marginS < 0 ? '' : ' left'}: ${margin.words}`.trim();
}
