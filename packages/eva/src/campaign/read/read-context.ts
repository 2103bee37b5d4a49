/** What every part of the reader shares: where problems go, which ids exist, what was filled in. */
import type { KindsLibrary } from '../../kinds/kinds-library.ts';
import type { DefaultUsed } from '../campaign.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { Span } from '../span.ts';
import type { Declarations } from './declarations.ts';

export interface ReadContext {
  readonly library: KindsLibrary;
  readonly ids: Declarations;
  readonly problems: ProblemList;
  readonly defaults: DefaultUsed[];
  /** People in suits, in the order of the text. */
  readonly outside: readonly string[];
  /** People and arms in the order of the text: candidates are sorted by it. */
  readonly bodyOrder: ReadonlyMap<string, number>;
  /** No vehicle: every stint is at the one place "outside". */
  readonly placeless: boolean;
}

/** The place of a campaign that gives none. */
export const OUTSIDE = 'outside';

/** Fills in a value and says so. */
export function filledIn<T>(
  context: ReadContext,
  value: T,
  span: Span,
  what: string,
  shown: string,
  source: string,
): T {
  context.defaults.push({ what, value: shown, source, span });
  return value;
}

/** "fit-mast" → "Fit mast". */
export function titleOf(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
