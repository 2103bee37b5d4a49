import type { SequenceMember } from '@handrail/solver/model/model';
import type { Times } from '../view.ts';

/** What is known of the members of a sequence within the bounds, all tables member × member. */
export interface Lane {
  readonly members: readonly SequenceMember[];
  readonly isPresent: readonly boolean[];
  readonly isAbsent: readonly boolean[];
  readonly times: readonly Times[];
  readonly shortest: readonly number[];
  /** Known order of two present members, and what follows from it. */
  readonly before: boolean[][];
  /** Order that two members have if both are present. */
  readonly ifPresent: boolean[][];
  readonly direct: (i: number, j: number) => number;
  /** Members that something is said about: of the others only the model's bounds are known. */
  readonly isNamed: boolean[];
}
