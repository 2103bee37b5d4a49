/**
 * A finding as text, the same in terminal, app and print:
 *
 *     error  EV2 comes back with too little oxygen                       supplies/oxygen-left-at-hatch
 *       at    EV2 · ingress · PET 6:12          campaign.kdl:214:7
 *       why   0.18 kg left with the hatch closed; the limit is 0.25 kg (short by 0.07 kg)   [SUIT 4.2]
 *       mend  start "route harness 2" 14 min earlier
 *       more  handrail explain supplies/oxygen-left-at-hatch
 *
 * Pure text. Colours are the terminal's business: `paint` is called with each part and its meaning.
 */
import { formatPet } from '@handrail/quantity/time';
import { formatSpan } from '../campaign/span.ts';
import type { Finding, FindingPlace } from './finding.ts';

export type FindingPart = 'severity' | 'title' | 'rule' | 'label' | 'text' | 'place' | 'waiver';

export interface FindingFormat {
  /** Marks a part up; the default leaves it as it is. Widths are counted before. */
  readonly paint?: (part: FindingPart, text: string, finding: Finding) => string;
  /** Column at which the rule id ends when it fits; the ids of short titles line up. */
  readonly width?: number;
}

/** Lines of one finding, without a final line break. */
export function formatFinding(finding: Finding, format: FindingFormat = {}): string {
  const paint = (part: FindingPart, text: string): string => format.paint?.(part, text, finding) ?? text;
  const width = format.width ?? 110;
  const head = `${finding.severity.padEnd(8)}${finding.title}`;
  const gap = Math.max(3, width - head.length - finding.rule.length);
  const lines = [
    `${paint('severity', finding.severity.padEnd(7))} ${paint('title', finding.title)}${' '.repeat(gap)}${paint('rule', finding.rule)}`,
  ];
  const line = (label: string, part: FindingPart, text: string): void => {
    lines.push(`  ${paint('label', label.padEnd(6))}${paint(part, text)}`);
  };
  const where = formatPlace(finding.where);
  if (where !== '') line('at', 'place', where);
  line('why', 'text', finding.source === null ? finding.why : `${finding.why}   [${finding.source}]`);
  if (finding.mend !== null) line('mend', 'text', finding.mend);
  if (finding.waiver !== null) line('waived', 'waiver', finding.waiver);
  line('more', 'text', `handrail explain ${finding.rule}`);
  return lines.join('\n');
}

/** All findings, one blank line between. */
export function formatFindings(findings: readonly Finding[], format: FindingFormat = {}): string {
  return findings.map((finding) => formatFinding(finding, format)).join('\n\n');
}

/** "EV2 · swap-pump/free-old-pump · step 3 · EVA pump · PET 6:12          campaign.kdl:214:7". */
export function formatPlace(where: FindingPlace): string {
  const parts = [
    where.person,
    where.stint,
    where.step === null ? null : `step ${where.step + 1}`,
    where.eva === null ? null : `EVA ${where.eva}`,
    where.petS === null ? null : `PET ${formatPet(where.petS)}`,
  ].filter((part) => part !== null);
  const words = parts.join(' · ');
  if (where.span === null) return words;
  return words === '' ? formatSpan(where.span) : `${words.padEnd(34)}  ${formatSpan(where.span)}`;
}

/** "2 errors, 1 warning, 1 unknown; 1 waived", "no findings". */
export function countFindings(findings: readonly Finding[]): string {
  const waived = findings.filter((finding) => finding.waiver !== null).length;
  const open = findings.filter((finding) => finding.waiver === null);
  const parts = (['error', 'warning', 'unknown', 'note'] as const).flatMap((severity) => {
    const count = open.filter((finding) => finding.severity === severity).length;
    const noun = count === 1 || severity === 'unknown' ? severity : `${severity}s`;
    return count === 0 ? [] : [`${count} ${noun}`];
  });
  const words = parts.length === 0 ? 'no findings' : parts.join(', ');
  return waived === 0 ? words : `${words}; ${waived} waived`;
}
