/**
 * What the order and timing proofs check, one line each: the id of the finding, what must hold, and why. For `explain`, help and
 * the reference pages; a test sees to it that the list is complete.
 */
import type { Severity } from '../../finding/finding.ts';

export interface ProofCheck {
  readonly id: `proof/${string}`;
  /** What must hold, as a sentence. */
  readonly title: string;
  readonly why: string;
  readonly severity: Severity;
}

const check = (id: ProofCheck['id'], title: string, why: string, severity: Severity = 'error'): ProofCheck => ({
  id,
  title,
  why,
  severity,
});

const ORDER =
  'A timeline shows one course of events. Where two people work on the same thing and nothing keeps them in order, a stint that runs long turns them round.';
const DURATIONS =
  'Work takes as long as it takes. A limit that holds for planning figures alone breaks on the day that something runs long.';
const BOUNDS = 'Nothing can be claimed of durations that nobody has bounded.';
const CALLS = 'A plan that rests on calls is only as good as the calls: they must be written down, and heard.';

export const PROOF_CHECKS: readonly ProofCheck[] = [
  check('proof/changes-are-in-order', 'Two changes of a state come in one order, however long things take', ORDER),
  check(
    'proof/needs-and-changes-are-in-order',
    'A need and a change of it come in one order, however long things take',
    ORDER,
  ),
  check(
    'proof/order-with-outside-events-is-kept',
    'Work keeps clear of what changes from outside, however long things take',
    ORDER,
  ),
  check('proof/request-stays-over-its-use', 'A request is in force over its use, however long things take', ORDER),
  check(
    'proof/responses-keep-clear-of-others',
    'What a response leaves when it does not work does not break the work of somebody else under their hands',
    'Trouble of one changes what the other works on. Where nothing keeps the two apart, it does so without a word.',
  ),
  check(
    'proof/what-fails-is-decided-at-a-gate',
    'Where work that fails keeps other work from being done, somebody decides at a gate',
    'A plan goes on as if all of it had worked. Who finds that it has not, in front of the next task, decides under pressure what could have been agreed.',
    'note',
  ),
  check('proof/order-leaves-a-way', 'The orders of a plan do not contradict each other', ORDER),
  check(
    'proof/clocks-hold-for-all-durations',
    'The crew can keep every clock, however long things take within bounds',
    DURATIONS,
  ),
  check(
    'proof/windows-hold-for-all-durations',
    'The crew can keep every window, however long things take within bounds',
    DURATIONS,
  ),
  check(
    'proof/gates-hold-for-all-durations',
    'The crew can keep the latest time of every gate, however long things take within bounds',
    DURATIONS,
  ),
  check(
    'proof/request-holds-hold-for-all-durations',
    'No request need be held too long, however long things take within bounds',
    DURATIONS,
  ),
  check(
    'proof/lags-hold-for-all-durations',
    'The crew can keep every longest lag, however long things take within bounds',
    DURATIONS,
  ),
  check(
    'proof/the-wall-holds-for-all-durations',
    'Both are in by the wall, however long things take within bounds',
    DURATIONS,
  ),
  check('proof/durations-have-bounds', 'Every duration has bounds', BOUNDS, 'unknown'),
  check('proof/travel-has-bounds', 'Moves and hatch passages have bounds', BOUNDS, 'warning'),
  check('proof/reaction-time-is-stated', 'It is stated how long it takes to hear a call and act', BOUNDS, 'unknown'),
  check('proof/clocks-stop-in-their-eva', 'A clock is stopped in the EVA that starts it', BOUNDS, 'unknown'),
  check('proof/eva-can-be-drawn-up', 'An EVA has what a network is made of', BOUNDS, 'unknown'),
  check(
    'proof/way-home-has-a-margin',
    'In every listed mode the way home is known from every minute, and there is a limit to hold it against',
    'A crew that must turn back goes home from wherever it stands. A minute without a known way is a minute in which nobody can promise one.',
    'unknown',
  ),
  check(
    'proof/supplies-last-at-the-quantile',
    'Supplies last in the worst case until all durations have both in',
    'Work that runs long is breathed through. What lasts for the planned time alone runs out on the day that it is needed longest.',
  ),
  check(
    'proof/input-level-suffices',
    'The campaign text states what a stamp speaks of',
    'A claim above the level of the input is a claim about nothing.',
    'unknown',
  ),
  check('proof/holds-are-called', 'The waits that the plan rests on are called', CALLS, 'note'),
  check('proof/calls-are-heard', 'No call that the plan waits for falls into a coverage gap', CALLS, 'warning'),
];
