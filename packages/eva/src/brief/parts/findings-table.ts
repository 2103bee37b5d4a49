import { formatPet } from '@handrail/quantity/time';
import { formatSpan } from '../../campaign/span.ts';
import type { Finding } from '../../finding/finding.ts';
import { type Markup, markup } from '../markup.ts';

export function findingsTable(findings: readonly Finding[], caption: string): Markup {
  if (findings.length === 0) return markup`<p class="empty">${caption}: none.</p>`;
  return markup`<table class="findings"><caption>${caption}</caption><thead><tr><th scope="col">Weight</th><th scope="col">What</th><th scope="col">Where</th><th scope="col">Why</th><th scope="col">Mend</th><th scope="col">Rule</th></tr></thead><tbody>${findings.map(
    (finding) =>
      markup`<tr class="${finding.severity}"><td>${finding.waiver === null ? finding.severity : `${finding.severity}, waived: ${finding.waiver}`}</td><th scope="row">${finding.title}</th><td>${placeWords(finding)}</td><td>${finding.why}${finding.source === null ? null : ` [${finding.source}]`}</td><td>${finding.mend ?? ''}</td><td>${finding.rule}</td></tr>`,
  )}</tbody></table>`;
}

function placeWords(finding: Finding): string {
  const { eva, person, stint, petS, span } = finding.where;
  const words = [
    eva,
    person,
    stint,
    petS === null ? null : `PET ${formatPet(petS)}`,
    span === null ? null : formatSpan(span),
  ];
  return words.filter((word) => word !== null).join(' · ');
}
