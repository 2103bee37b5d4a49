/**
 * What the replay checks, one line each: the id of its findings, what must hold, and why. For `explain`, help and the reference
 * pages; a test sees to it that the list is complete.
 */
import type { Severity } from '../../finding/finding.ts';

export interface ReplayCheck {
  readonly id: `replay/${string}`;
  /** What must hold, as a sentence. */
  readonly title: string;
  readonly why: string;
  /** How grave a finding is: error unless said otherwise. */
  readonly severity: Severity;
}

const check = (id: ReplayCheck['id'], title: string, why: string, severity: Severity = 'error'): ReplayCheck => ({
  id,
  title,
  why,
  severity,
});

const DOCUMENT = 'A plan says something only about the document, library and format that it was made for.';
const WHOLE = 'Tasks are reviewed and trained whole; a plan accounts for each of them, once.';
const HATCH = 'PET runs from the start of egress; the EVA ends when the hatch is closed with both on vehicle supplies.';
const WALL = 'Suits and the operator set the time by which both must be in.';
const PEOPLE = 'A person is in one place and does one thing, with the tools, hands and restraint that it takes.';
const RAILS = 'Hand over hand means from rail to rail, on rails that are open, in the time that they take.';
const TETHER = 'The reel is paid out along anchor, fairleads and person, and comes back the way it was led.';
const ARM =
  'An arm moves by its transfers, with a rider only by work of both, and stands still while somebody boards or leaves.';
const STATES =
  'Each stint finds the hardware as it needs it, from the stated start through every change, EVA after EVA.';
const REQUESTS =
  'A hazard is controlled from before the first use until after the last, verified, and no longer than agreed.';
const CLOCKS = 'What is started by one change must be stopped by another within its limit, whoever makes them.';
const ORDER = 'What the text puts in order, and what a person fixed by hand, stands in the plan.';
const FIGURES = 'The plan rests on the figures that reviewers signed, at the pace of those assigned.';

export const REPLAY_CHECKS: readonly ReplayCheck[] = [
  check('replay/format-is-known', 'The timeline is in a format that this version reads', DOCUMENT),
  check('replay/plan-is-of-this-campaign', 'The timeline belongs to this campaign', DOCUMENT),
  check('replay/plan-is-of-this-document', 'The campaign has not changed since it was planned', DOCUMENT),
  check('replay/plan-is-of-this-library', 'The plan rests on the pinned library of kinds', DOCUMENT),
  check('replay/names-exist', 'Every name in the timeline is known to the campaign', DOCUMENT),
  check('replay/times-are-whole-seconds', 'Times are whole seconds', 'Fractions hide rounding.'),
  check('replay/times-are-in-order', 'Starts come before ends, steps in order', 'Time runs forward.'),
  check('replay/steps-fill-the-stint', 'Each step has its end, the last at the end of the stint', 'Time runs forward.'),
  check('replay/every-stint-once', 'Every stint of a planned task is planned once', WHOLE),
  check('replay/earlier-evas-are-in', 'Every EVA before one that is planned is in the timeline', STATES, 'unknown'),
  check('replay/every-eva-once', 'Every EVA is in the timeline once', WHOLE),
  check('replay/task-is-in-an-eva-it-may-fall-in', 'Tasks are in an EVA that they may fall in', WHOLE),
  check('replay/task-is-in-one-eva', 'A task is in one EVA', WHOLE),
  check('replay/every-task-is-planned-or-left-out', 'Every task is planned or said to be left out', WHOLE),
  check('replay/minimum-success-is-in', 'Each EVA carries the tasks of its minimum success', WHOLE),
  check('replay/hatch-is-passed-in-order', 'The hatch is passed in the stated order', HATCH),
  check('replay/passage-takes-its-time', 'Passages and closing take their planning figures', HATCH),
  check('replay/egress-starts-at-pet-zero', 'The first egress starts at PET 0', HATCH),
  check('replay/pet-zero-is-as-stated', 'PET 0 is the stated egress, late by no more than its slip', HATCH),
  check('replay/hatch-is-closed', 'The hatch is closed, once', HATCH),
  check('replay/hatch-is-closed-after-the-last-in', 'The hatch is closed after the last person is in', HATCH),
  check('replay/both-in-is-the-hatch-closed', 'Both in is the end of closing the hatch', HATCH),
  check('replay/nothing-after-the-hatch-is-closed', 'No work ends after the hatch is closed', HATCH),
  check('replay/one-in-the-hatch-at-once', 'One person is in the hatch at once', HATCH),
  check('replay/a-wall-is-stated', 'It is stated by when both must be in', WALL, 'unknown'),
  check('replay/both-are-in-before-the-wall', 'Both are in before the tightest stated limit', WALL),
  check('replay/margin-to-the-wall', 'The wanted margin is left before the wall', WALL, 'warning'),
  check('replay/the-wall-is-the-tightest-limit', 'The wall shown is the tightest stated limit', WALL),
  check('replay/one-eva-at-a-time', 'An EVA starts after the one before is over', WALL),
  check('replay/every-role-is-filled', 'Every role of a stint is filled', PEOPLE),
  check('replay/assigned-is-a-candidate', 'Roles are filled by those who may fill them', PEOPLE),
  check('replay/assigned-is-outside', 'Work outside is given to those who leave by the hatch', PEOPLE),
  check('replay/one-thing-at-a-time', 'Nobody, and no arm, does two things at once', PEOPLE),
  check('replay/each-thing-starts-where-the-last-ended', 'Each thing starts where the person is', PEOPLE),
  check('replay/restraints-take-their-time', 'There is time to get out of one restraint and into the next', PEOPLE),
  check('replay/one-person-in-a-restraint', 'A foot restraint holds one person at once', PEOPLE),
  check('replay/moves-are-laden-as-carried', 'Moves carry what is in hand, and say so', PEOPLE),
  check('replay/hands-suffice', 'A load that fills both hands is carried alone', PEOPLE),
  check('replay/carried-pieces-have-hooks', 'No more loose pieces than hooks', PEOPLE),
  check('replay/loads-are-in-hand-at-the-start', 'A load that work starts with is in hand', PEOPLE),
  check('replay/tools-are-there', 'Tools are within reach of who uses them', PEOPLE),
  check('replay/one-user-of-a-tool', 'A tool has one user at once', PEOPLE),
  check('replay/path-leads-where-the-move-says', 'A path leads from where to where the move says', RAILS),
  check('replay/each-piece-of-a-path-is-a-rail', 'Each piece of a path is a rail', RAILS),
  check('replay/rails-are-open', 'Rails are open while somebody is on the way', RAILS),
  check('replay/rails-take-the-load', 'Rails take the load that is carried over them', RAILS),
  check('replay/nobody-enters-a-keep-out', 'No path passes a place that is kept out of', RAILS),
  check('replay/moves-take-their-time', 'Moves take as long as their rails, laden as they are', RAILS),
  check('replay/walks-in-a-stint-have-a-way', 'A stint that ends elsewhere has a way there, and time for it', RAILS),
  check('replay/tether-reaches', 'The safety tether reaches wherever somebody goes', TETHER),
  check('replay/tether-swaps-take-their-time', 'Moves leave time to move the tether', TETHER),
  check('replay/tether-is-led-back-as-it-was-led-out', 'The tether comes in the way it was led out', TETHER),
  check('replay/no-tether-over-a-joint-that-turns', 'No tether lies over a joint that turns', TETHER),
  check('replay/the-plate-is-boarded-and-left-by-work', 'An arm’s plate is boarded and left by work', ARM),
  check('replay/arm-starts-where-it-ended', 'An arm starts where it ended', ARM),
  check('replay/arm-transfers-take-their-time', 'An arm’s transfers take their time, empty or loaded', ARM),
  check('replay/arm-carries-a-rider-only-by-work', 'An arm carries a rider only by work of both', ARM),
  check('replay/plate-is-where-the-rider-is', 'The plate is still, at the rider’s place', ARM),
  check('replay/one-operator-moves-one-arm', 'One operator moves one arm at a time', ARM),
  check('replay/effects-are-known', 'What planned work needs and leaves is known', STATES, 'unknown'),
  check('replay/need-holds-at-the-start', 'Work finds the states that it needs at its start', STATES),
  check('replay/need-holds-throughout', 'States that work relies on stay throughout', STATES),
  check('replay/need-holds-at-the-end', 'Work ends with the states that it promises', STATES),
  check('replay/one-writer-at-a-time', 'One stint at a time changes a piece', STATES),
  check('replay/loose-pieces-are-held', 'Every loose piece is held by something that exists, at all times', STATES),
  check('replay/request-is-in-force-over-its-use', 'Requests are in force over every use', REQUESTS),
  check('replay/request-is-not-refused', 'No plan rests on a refused request', REQUESTS),
  check('replay/request-is-asked-in-time', 'Requests are asked early enough to be set and verified', REQUESTS),
  check('replay/request-is-verified-before-use', 'Requests are verified before the first use', REQUESTS),
  check('replay/request-is-cleared-in-time', 'Clearing a request takes its time', REQUESTS),
  check('replay/request-is-not-held-too-long', 'Requests are not held longer than agreed', REQUESTS),
  check('replay/request-is-in-its-window', 'Requests are used when they can be in force', REQUESTS),
  check('replay/request-is-held-once-at-a-time', 'A request is cleared before it is asked again', REQUESTS),
  check(
    'replay/work-is-inside-its-window',
    'Work is inside the window that it needs',
    'Daylight, coverage and quiet times come and go.',
  ),
  check(
    'replay/work-is-outside-the-window',
    'Work is outside the window that it must avoid',
    'Daylight, coverage and quiet times come and go.',
  ),
  check('replay/clock-does-not-run-out', 'No clock runs past its limit', CLOCKS),
  check('replay/clock-runs-long-enough', 'A clock with a least time is not stopped too soon', CLOCKS),
  check('replay/clock-is-stopped', 'Every clock that is started is stopped', CLOCKS),
  check('replay/least-lag-holds', 'Work starts no sooner after other work than written', ORDER),
  check('replay/most-lag-holds', 'Work starts no later after other work than written', ORDER),
  check('replay/joins-hold', 'Who waits for a join starts after it is called', ORDER),
  check('replay/joins-are-told', 'The plan shows each join at its time', ORDER),
  check('replay/written-order-is-kept', 'Stints of a task keep the order of the text', ORDER),
  check('replay/pins-are-obeyed', 'Pins are obeyed', ORDER),
  check('replay/gated-work-starts-by-the-latest', 'Gated work starts by the latest time of its gate', ORDER),
  check('replay/one-voice-at-a-time', 'One stint at a time is talked through', 'The reader has one voice.'),
  check('replay/stints-take-their-figures', 'Stints take their planning figures', FIGURES),
  check('replay/steps-take-their-figures', 'Steps end where their planning figures put them', FIGURES),
];
