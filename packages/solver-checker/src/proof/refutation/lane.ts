import type { SequenceMember } from '@handrail/solver/model/model';
import type { Times } from '../view.ts';
import type { Relation } from './relation.ts';
import type { SequenceTables } from './sequence-tables.ts';

/** What is known of the members of a sequence within the bounds; relations are of members. */
export interface Lane extends SequenceTables {
  readonly members: readonly SequenceMember[];
  readonly isPresent: readonly boolean[];
  readonly isAbsent: readonly boolean[];
  readonly times: readonly Times[];
  /** Known order of two present members, and what follows from it. */
  readonly before: Relation;
  /** Order that two members have if both are present. */
  readonly ifPresent: Relation;
  /** Members that something is said about: of the others only the model's bounds are known. */
  readonly isNamed: boolean[];
}
