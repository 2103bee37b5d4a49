/**
 * What the codes of faults mean that a command may end with: input that cannot be worked with, said by the part of the program
 * that meets it first. A test holds the list to the sources, both ways.
 */
import { WIRE_CODES } from '@handrail/wire/error-codes';

export const FAULT_CODES: Readonly<Record<string, string>> = {
  ...WIRE_CODES,
  'campaign/bad-definition':
    'A word of the campaign text is defined wrongly. This is a fault of the program; please report it.',
  'campaign/edit-out-of-date':
    'The text has changed since the edit was made. Make the edit again from the text as it is now.',
  'campaign/no-such-node': 'The edit speaks of a part of the text that is not there any more. Read the text again.',
  'fastener/no-torque-window':
    'Without a lowest and a highest torque no reading can be judged. State both for this fastener.',
  'fastener/turns-unknown':
    'How many turns the fastener takes is not stated, so its drive cannot be judged. State turns=.',
  'fastener/unknown-thread':
    'The thread is not in the table of metric threads. Write its size and pitch, such as M8x1.25.',
  'fastener/window-out-of-order': 'The lowest turns or torque of a drive window lies above the highest. Exchange them.',
  'input/band-out-of-order': 'Three figures stand in order: low, likely, high.',
  'input/out-of-range':
    'A figure lies where no such quantity can lie; the message says between what it must. Often the unit is wrong.',
  'input/source-missing': 'Figures of suits and bodies need a source beside them, so that someone can look them up.',
  'kinds/no-such-verb': 'The record speaks of a verb that this kind of hardware does not have.',
  'kinds/times-out-of-order': 'The three times of a verb stand in order: low, likely, high.',
  'kinds/twice': 'Two kinds, or two verbs of one kind, have the same id. Each id means one thing.',
  'kinds/version-twice': 'A revised library needs a version of its own: campaigns are pinned to the old one.',
  'prebreathe/no-compartments':
    'The tissue model has no compartments, so nothing can be computed. State at least one half-time.',
  'prebreathe/no-stages': 'A pre-breathe without stages says nothing. Write its stages in order.',
  'prebreathe/pressure-jumps':
    'A stage begins at another pressure than the one before it ended at. Write the change as a stage of its own.',
  'prebreathe/stage-incomplete': 'The protocol leaves figures to the operator. Give them: they are never filled in.',
  'routes/pace-not-positive': 'A pace is above 0; 1 is the pace at which the times of rails are given.',
  'routes/too-many-tether-positions':
    'The tether can lie in more ways than can be looked through. Fewer fairleads, or a shorter reel, help.',
  'routes/unknown-load-class':
    'The vehicle has no load class of this id. "handrail routes FILE" shows how they are used; they stand under vehicle.',
  'routes/unknown-person': 'The campaign has no person of this id.',
  'routes/unknown-place': 'The vehicle has no place of this id. "handrail routes FILE" lists the places.',
  'routes/unknown-pose': 'The arm has no pose of this id. "handrail routes FILE" lists the poses.',
  'schedule/unknown-eva': 'The campaign has no EVA of this id.',
  'sky/bad-attitude':
    'The attitude of the vehicle does not hold together: an axis without length, or two axes along one line.',
  'sky/bad-elements':
    'The orbit elements do not hold together. Copy them again from their source; do not mend a checksum by hand.',
  'sky/bad-interval': 'An interval ends before it begins.',
  'sky/bad-shape':
    'A body of the vehicle does not hold together: an edge without length, or a joint that is not there.',
  'sky/cannot-fill': 'A computed window cannot be filled from what is stated. The message says what is missing.',
  'sky/decayed': 'By these elements the vehicle has re-entered before the instant asked for. Use newer elements.',
  'sky/not-a-rotation': 'Nine numbers were given as a rotation and are none. Give an attitude in words instead.',
  'sky/out-of-range':
    'A figure of the orbit or the sky lies outside the range that is modelled; the message says which.',
  'suit/constant-missing':
    "A suit does not state all of its figures. State them with their source: a suit's figures are never filled in.",
  'suit/curve-not-rising': 'The points of a curve stand in rising order.',
  'suit/curve-too-short': 'A curve needs two points at least.',
  'suit/gap-in-stretches': 'There is a gap in what a person does, so supplies cannot be summed over it.',
  'suit/outside-curve': 'A reading lies outside the curve that it is looked up in. Nothing is guessed beyond its ends.',
  'suit/person-in-two-places': 'The timeline has a person in two places at once. "handrail check" says where.',
  'suit/reading-above-start': 'A reading is above what the suit started with. Read it again.',
  'suit/reserve-above-start': 'The reserve of a supply is above what the suit starts with.',
  'suit/stint-unknown':
    'The timeline has a stint that the campaign does not have. Is it the timeline of this campaign?',
  'suit/stretch-outside-span': 'Work lies outside the time on suit supplies.',
  'suit/stretches-out-of-order': 'What a person does must follow in order of time.',
  'suit/stretches-overlap': 'A person does two things at once in the timeline. "handrail check" says where.',
  'suit/unknown-effort': 'The suit has no rate of this effort. The message lists those that it has.',
  'suit/unknown-load': 'The suit has no electrical load of this name. The message lists those that it has.',
  'suit/unknown-relation':
    'The relation between work and oxygen is none of those that are known; the message lists them.',
  'thermal/no-limit': 'A unit states no temperature that it must not leave, so no time without power follows.',
  'thermal/no-touch-limits': 'The gloves state no temperatures that they may touch.',
  'thermal/starts-outside': 'The unit starts outside its limits, so there is no time left to count.',
  'thermal/touch-limits-cross': 'The lowest temperature that gloves may touch lies above the highest.',
  'timeline/notation':
    'A line of a timeline written by hand does not read. The message gives the line and what was expected.',
};
