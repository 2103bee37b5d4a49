/**
 * A finding: one thing that a check noticed about a campaign or a timeline. Findings are data, collected, never thrown;
 * the same object becomes the terminal message, the app's row and the print. Words for people are in it already, in trade
 * terms, with numbers and units.
 */
import type { Span } from '../campaign/span.ts';

/** error: the plan may not be called verified. warning: someone must look. note: worth knowing. unknown: cannot tell, and why. */
export type Severity = 'error' | 'warning' | 'note' | 'unknown';

export interface Finding {
  /** `<subject>/<what-must-hold>`, the rule's id. */
  readonly rule: string;
  readonly severity: Severity;
  /** One sentence: what is wrong. */
  readonly title: string;
  readonly where: FindingPlace;
  /** Why, with numbers: "0.18 kg left with the hatch closed; the limit is 0.25 kg (short by 0.07 kg)". */
  readonly why: string;
  /** How to mend, concrete; null where none is known. */
  readonly mend: string | null;
  /** Source key of the rule or limit, e.g. "SUIT 4.2", "common practice"; null for what the document itself demands. */
  readonly source: string | null;
  /** Waived by a `waive` node: its reason; null when not. */
  readonly waiver: string | null;
}

export interface FindingPlace {
  readonly eva: string | null;
  readonly person: string | null;
  /** Stint key `task/stint`. */
  readonly stint: string | null;
  readonly step: number | null;
  readonly petS: number | null;
  readonly span: Span | null;
}

export const NOWHERE: FindingPlace = { eva: null, person: null, stint: null, step: null, petS: null, span: null };
