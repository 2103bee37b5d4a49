/**
 * Every sort of problem a campaign text can have, with what to do about it. The reader can give no other; the reference page
 * and `handrail explain` read from here.
 */
export const PROBLEM_CODES = {
  annotation:
    'KDL allows a word in brackets before a name or a value. This format gives it no meaning, so it is refused rather than ignored.',
  'bad-direction': 'A direction needs a length: at least one of its parts is not zero.',
  'bad-elements':
    'The orbit elements do not hold together: a wrong checksum, a field out of its columns, a number that no orbit has. Copy them again from their source; do not mend a checksum by hand.',
  'bad-text': 'A text is empty, or far too long for what it is.',
  'bad-version': 'The first node is `handrail` with one whole number, the version of the format.',
  circle:
    'Something leads back to itself: hardware inside, or a part of, itself; stints that wait for each other. Follow it from piece to piece and break the circle.',
  'extra-argument': 'A node takes fewer values than it is given. A title goes in quotes and stands last.',
  'id-twice':
    'Each id means one thing. People, arms, hardware and places share one set of ids; stints are unique in their task.',
  'interval-backwards': 'An interval of a window begins before it ends.',
  'intervals-overlap': 'Intervals of one window do not overlap; write their union, or two windows.',
  'join-hangs':
    'A join ties the end of one stint to the start of another. Name them with after= and before= where the text around it does not say.',
  'misplaced-node': 'The node is known, and stands where it means nothing.',
  'missing-argument': 'A value that the node cannot do without is not there.',
  'missing-node': 'Something that has to be said is not there.',
  'missing-property': 'A property that has to be said is not there. Nothing that can hurt is filled in.',
  'missing-version': 'Every file begins with the version of the format, so that a later program knows how to read it.',
  'newer-version':
    'The file was written for a newer program. Reading it halfway could drop what matters, so it is not read at all.',
  'no-file': 'A campaign is at least one file.',
  'no-time':
    "A stint takes its time from `minutes`, from timed runs, or from the kinds' figures for its sentences. None of them covers it.",
  'nobody-there': 'A sentence is given to a partner or an arm, and none takes part at that point.',
  'node-twice': 'Something that can be said once is said twice. Neither is taken, since the other might be meant.',
  'not-a-choice': 'The value is one of a few words.',
  'not-a-pet': 'Phase elapsed time is written "2:10" or "2:10:30", counted from the start of egress.',
  'not-a-quantity': 'A figure with its unit, in quotes: "12 min", "1 h 20 min", "34 N·m".',
  'not-a-rule': 'A waiver names one rule by its id, as findings print it.',
  'not-a-state': 'A state is a hardware id (its first aspect), id.aspect, id.holder, or request:ID.',
  'not-computable':
    'A computed window rests on something that the campaign does not state. Nothing is filled in: state it, or write the intervals.',
  'not-an-id': 'An id begins with a letter and goes on with letters, digits and hyphens.',
  'not-an-instant': 'An instant is written in ISO 8601 and UTC: "2031-09-14T11:40:00Z". The day has to exist.',
  'not-text': 'The file holds bytes that no text has. It is probably another sort of file.',
  'not-utf-8': 'The file is not saved as UTF-8. Save it again with that encoding.',
  'not-whole': 'The value is a whole number.',
  'nothing-inside': 'The braces hold no sentence, so the node does nothing.',
  'objectives-differ': 'A task serves one objective; the task and the objective say different things.',
  'older-version': 'The file is written in an older version of the format. Bring it up to date; its meaning is kept.',
  'out-of-range': 'The figure is negative or absurd for what it is. The range is that of the trade, with room.',
  'pin-says': 'A pin fixes exactly one thing, so that its price can be told.',
  'property-twice':
    'A property is given twice. KDL would take the last; here neither is, since the other might be meant.',
  'range-backwards': 'The figures are not in order from low to high.',
  'rank-twice': 'Ranks are unique: they say what is dropped first.',
  'same-ends': 'A rail or a transfer joins two different ends.',
  'pressure-jumps': 'A stage of a pre-breathe begins at the pressure at which the one before it ends.',
  'suit-contradicts': "Two of a suit's figures cannot both be right, such as a reserve above what it starts with.",
  'suit-incomplete':
    'A suit states every constant with its band and its source. None is filled in: a missing one could only be guessed.',
  syntax: 'The text is not KDL: a quote, a brace or a value is missing, or a name with signs in it has no quotes.',
  template: 'A template cannot write its stints from what it is given.',
  'too-deep': 'Braces nest deeper than any campaign does.',
  'too-large': 'The file is larger than any campaign text. It is probably another sort of file.',
  'too-many-problems': 'So many problems that the rest is not listed. Mend the first ones and read again.',
  'two-ends': 'Two things are said that exclude each other.',
  'unexpected-node': 'A sentence of work has nothing inside braces.',
  'unknown-aspect': 'The kind of this hardware has no state of that name.',
  'unknown-id': 'An id is used that nothing declares.',
  'unknown-library':
    'The campaign is pinned to a kinds library that is not here. Verbs and times would change, so it is not read.',
  'unknown-node': 'A node is not known in this place.',
  'unknown-property': 'A property is not known on this node.',
  'unknown-template': 'No task template has this name.',
  'unknown-unit': 'A unit is not known.',
  'unknown-value': 'The state can never have this value.',
  'unknown-verb': 'A sentence begins with a verb of the kinds library.',
  'unreached-place':
    'No rail leads to the place from the hatch and no pose of an arm stands there: nobody can get there.',
  'verb-not-of-kind': 'The kind of this hardware does not know the verb.',
  'wrong-dimension': 'The figure has a unit of another dimension: a mass where a torque stands.',
  'wrong-sort': 'The id exists, and is something else than what this place asks for.',
  'wrong-type': 'The value is of another sort: text where a number stands, a number without its unit.',
} as const;

export type ProblemCode = keyof typeof PROBLEM_CODES;
