/** How the proofs say what they noticed. Ids are `proof/<what-must-hold>`. */
import type { Span } from '../../campaign/span.ts';
import { type Finding, NOWHERE, type Severity } from '../../finding/finding.ts';

export interface Proved {
  readonly severity?: Severity;
  readonly title: string;
  readonly why: string;
  readonly mend?: string | null;
  readonly eva?: string | null;
  readonly person?: string | null;
  readonly stint?: string | null;
  readonly petS?: number | null;
  readonly span?: Span | null;
}

export function proved(rule: `proof/${string}`, what: Proved): Finding {
  return {
    rule,
    severity: what.severity ?? 'error',
    title: what.title,
    where: {
      ...NOWHERE,
      eva: what.eva ?? null,
      person: what.person ?? null,
      stint: what.stint ?? null,
      petS: what.petS ?? null,
      span: what.span ?? null,
    },
    why: what.why,
    mend: what.mend ?? null,
    source: null,
    waiver: null,
  };
}
