/** How the replay says what it noticed. Ids are `replay/<what-must-hold>`. */
import { formatPet } from '@handrail/quantity/time';
import type { Span } from '../../campaign/span.ts';
import { type Finding, NOWHERE, type Severity } from '../../finding/finding.ts';

export interface Noticed {
  readonly severity?: Severity;
  readonly title: string;
  readonly why: string;
  readonly mend?: string | null;
  readonly eva?: string | null;
  readonly person?: string | null;
  readonly stint?: string | null;
  readonly step?: number | null;
  readonly petS?: number | null;
  readonly span?: Span | null;
}

export function noticed(rule: `replay/${string}`, what: Noticed): Finding {
  return {
    rule,
    severity: what.severity ?? 'error',
    title: what.title,
    where: {
      ...NOWHERE,
      eva: what.eva ?? null,
      person: what.person ?? null,
      stint: what.stint ?? null,
      step: what.step ?? null,
      petS: what.petS ?? null,
      span: what.span ?? null,
    },
    why: what.why,
    mend: what.mend ?? null,
    source: null,
    waiver: null,
  };
}

/** "PET 1:20 to 1:45". */
export function petSpan(fromS: number, toS: number): string {
  return `PET ${formatPet(fromS)} to ${formatPet(toS)}`;
}

/** "a, b or c". */
export function oneOf(values: readonly string[]): string {
  if (values.length < 2) return values[0] ?? 'nothing';
  return `${values.slice(0, -1).join(', ')} or ${values.at(-1) ?? ''}`;
}
