/**
 * The proof log: text lines that an independent checker can replay with the model alone. Words are separated by one blank.
 *
 * ## Variables and atoms
 * Variables 0..n-1 are the model's, n = number of model variables; others are introduced by `o`, `w` and `z` lines before they
 * are used. An atom is `V>=K` or `V<=K`. Booleans are 0..1. Known from the start: the bounds of variables in the model (those of
 * an end that something stands for, moved by the duration); and of each interval that is always there, or owns its times: start ≥ 0,
 * end ≤ horizon, duration ≥ 0.
 * - *Stand-ins.* The variable of an interval's end is read as its start plus its constant duration where `variableRoles`
 *   (model/variable-roles.ts) says so; no atom then names that end variable.
 * - *Owners.* A variable with an owner (same function: a time of an optional interval that nothing else reads) has conditional
 *   atoms: [v ≥ k] means "if the owner holds, v ≥ k". So [v ≥ k] and [v ≤ k-1] together do not fail but say that the owner is
 *   false. A premise on such a variable may be used for a conclusion on a variable of the same owner, or of an owner that implies
 *   it (a present option implies a present master, a present member a present cover), and otherwise only beside the owner.
 *
 * ## Lines
 * - `handrail-proof 1` first.
 * - `o V B C` — order variable. B and C are stretches written `P,P..-P`, begins before the dash, end after it; an instant P is
 *   interval, `s` or `e`, offset: `4s0`, `12e-30`. A stretch begins with the earliest of its begins. V = 1: B comes before C (B's end
 *   ≤ each begin of C); V = 0: C comes before B. It is meant for stretches that some constraint keeps apart, of intervals that
 *   are both present; else it is free. An option stands for its master (repeatedly) wherever both are the same stretch. Where
 *   both stretches may be without length, V says which comes first in the order by which the constraint is satisfied.
 * - `w V C N W` — support variable of state constraint C: need number N is served by writer number W (-1: by the initial value):
 *   W is present and before the need, and no present foreign writer of a value that is not allowed comes between.
 * - `z V L` — objective variable: V ≥ terms of the expression of level L (its constant left out). Without a `z` line the level's
 *   expression is one variable with coefficient 1, which serves instead, through its stand-in.
 * - `t V C` — total variable: the sum of the transitions between direct successors in sequence C, which has no `transitionTotal`.
 * - `i C LABEL ATOM.. -> ATOM` — inference: constraint C alone (with the definitions above) makes the conclusion follow from
 *   the premises. Without an atom after the arrow: the premises cannot all hold. C ≥ 0: index into `constraints`; C = -1: a variable's own
 *   bounds (label `domain`) or an objective variable (label `objective`); C = -2-I: interval I (label `duration`). Inferences serve the next `n`
 *   line, and any before the next `n` line only.
 * - `n ID ATOM.. ; ID..` — nogood: its atoms cannot all hold. Checked by assuming them all and propagating: the inferences since
 *   the last `n` line and the nogoods named after `;` (earlier IDs), besides all nogoods of one atom or none, must lead to a failure. One
 *   atom: its negation holds from here on. No atom: the model has no solution (under the cuts so far).
 * - `d ID` — the nogood is not used any more.
 * - `s VALUE..` — a solution, one value per model variable.
 * - `c L BOUND` — cut: from here on solutions with level L ≤ BOUND are sought. Allowed after an `s` line whose level L is BOUND+1, with all
 *   levels before L at their closed values, and only for the last level. What follows holds for such solutions.
 * - `f L VALUE` — level L is closed at VALUE: the newest `s` reaches it, and a nogood follows from nothing but the assumptions, closed levels and
 *   [level L ≤ VALUE-1] (or the known lower bound is VALUE). From here on level L ≤ VALUE.
 * - `a ATOM..` — assumptions, before any inference: the claims hold under them.
 * - `end optimal|infeasible|open` — what is claimed. `optimal`: each level has an `f` line, or no level and an `s` line.
 *   `infeasible`: an empty nogood without a cut, or a nogood of assumptions alone.
 *
 * ## Labels and what they rest on
 * precedence: `lag`. interval: `duration` (start + duration = end). clause: `clause`. linear: `linear`.
 * alternative: `clause` (presences), `equal`, `hull` (a bound that all options left share). span: `clause`, `bound`, `span`.
 * sequence: `order` (gap = least over all ways through other members with their least durations), `clause` (first, last,
 * impossible orders, no circles among members that may have no length), `direct` (a pair with some members known not to come between),
 * `total`, `load` (end of a first member that is always there + durations of the others that are present + total ≤ start of such a
 * last member), `route/S/M0/M1..` (total ≥ least spanning tree over the present members under costs S·c(i,j) + M(i) + M(j), less 2·M of each
 * and once M of the first and last, divided by S and rounded up; c closed under the triangle inequality; members in the order of
 * the constraint, each interval once; steps i → j are out by the premises "j before i" or "i before k" and "k before j"). cumulative: `demand` (a member that fits only without length), `order` (two that exceed the capacity), `timetable` (one
 * instant), `energy/A/B` (what has to be done within [A, B); of a sequence as well, one member at a time).
 * worth of a lane: C = -1, `worth/C/M/N/B1../BN/..`, with a premise or conclusion on an objective variable: objective ≥ the least all terms but those of the
 * members of sequence C come to, less the most that a walk from its first to its last member is worth, which keeps to steps, least
 * durations and times of the members, passes none that the premises leave out, and passes member M again only once it has been at a
 * member other than M and B1..BN (N of them; members in the order of the constraint, each interval once).
 * circle of constraints: C = -1, `circle/C1/C2..`: differences of times that the constraints named promise, each alone, under the premises, go
 * round in a circle with a positive sum.
 * reservoir: `reservoir` (one instant). windows: `stretch`, `windows`. extreme: `bound`, `extreme`.
 * state: `stretch`, `order`, `clause` (support, threats, circles).
 */
export const PROOF_VERSION = 1;
