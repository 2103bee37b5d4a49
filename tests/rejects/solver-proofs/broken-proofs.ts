/** Proofs that must be refused: right ones, written by hand, with one thing wrong. `because` says which. */
import { ModelBuilder, endOf, startOf } from '@handrail/solver/model/build-model';
import type { Model } from '@handrail/solver/model/model';

export interface BrokenProof {
  readonly title: string;
  readonly model: Model;
  readonly right: readonly string[];
  readonly wrong: readonly string[];
  readonly because: RegExp;
}

/**
 * Two jobs of 3 and 4 on one machine, ending by 7 at the earliest. Variables: 0 and 2 are the starts, 1 and 3 the ends (read
 * as starts plus durations), 4 the finish. Constraint 0 is the machine, 1 the finish.
 */
function twoJobs(): Model {
  const b = new ModelBuilder('two jobs', 10);
  const ids = [b.interval('x', 3), b.interval('y', 4)];
  b.post({ kind: 'cumulative', capacity: 1, members: ids.map((interval) => ({ interval, demand: 1 })), tag: null });
  const finish = b.variable('finish', 0, 10);
  b.post({
    kind: 'extreme',
    which: 'max',
    result: finish,
    points: ids.map((id) => endOf(id)),
    otherwise: 0,
    tag: null,
  });
  b.minimise('finish', { terms: [{ coefficient: 1, variable: finish }], constant: 0 });
  return b.build();
}

const FINISH_AT_SEVEN = [
  'handrail-proof 1',
  'o 5 0s0-0e0 1s0-1e0',
  's 0 3 3 7 7',
  'i 1 bound 4<=6 -> 2<=2',
  'i 0 order 2<=2 -> 5<=0',
  'i 0 order 5<=0 -> 0>=4',
  'i 1 bound 4<=6 -> 0<=3',
  'n 1 4<=6 ;',
  'f 0 7',
  'end optimal',
];

/** Six jobs of 2 for two hands, ending by 6 at the earliest; variables as above, 12 the finish. */
function sixJobs(): Model {
  const b = new ModelBuilder('six jobs', 10);
  const ids = Array.from({ length: 6 }, (_, i) => b.interval(`job ${i}`, 2));
  b.post({ kind: 'cumulative', capacity: 2, members: ids.map((interval) => ({ interval, demand: 1 })), tag: null });
  const finish = b.variable('finish', 0, 10);
  b.post({
    kind: 'extreme',
    which: 'max',
    result: finish,
    points: ids.map((id) => endOf(id)),
    otherwise: 0,
    tag: null,
  });
  b.minimise('finish', { terms: [{ coefficient: 1, variable: finish }], constant: 0 });
  return b.build();
}

const TOO_MUCH_BY_FIVE = 'i 0 energy/0/5 0<=3 2<=3 4<=3 6<=3 8<=3 -> 10>=4';
const FINISH_AT_SIX = [
  'handrail-proof 1',
  's 0 2 0 2 2 4 2 4 4 6 4 6 6',
  ...[0, 2, 4, 6, 8, 10].map((start) => `i 1 bound 12<=5 -> ${start}<=3`),
  TOO_MUCH_BY_FIVE,
  'n 1 12<=5 ;',
  'f 0 6',
  'end optimal',
];

const onSixJobs = (title: string, by: string): BrokenProof => ({
  title,
  model: sixJobs(),
  right: FINISH_AT_SIX,
  wrong: FINISH_AT_SIX.map((line) => (line === TOO_MUCH_BY_FIVE ? by : line)),
  because: /does not give 10>=/,
});

/** The same with a second level: the sum of the starts, which is 3 at best (variable 6). */
function twoLevels(): Model {
  const b = new ModelBuilder('two levels', 10);
  const ids = [b.interval('x', 3), b.interval('y', 4)];
  b.post({ kind: 'cumulative', capacity: 1, members: ids.map((interval) => ({ interval, demand: 1 })), tag: null });
  const finish = b.variable('finish', 0, 10);
  b.post({
    kind: 'extreme',
    which: 'max',
    result: finish,
    points: ids.map((id) => endOf(id)),
    otherwise: 0,
    tag: null,
  });
  b.minimise('finish', { terms: [{ coefficient: 1, variable: finish }], constant: 0 });
  const starts = ids.map((id) => ({ coefficient: 1, variable: b.intervalAt(id).start }));
  b.minimise('starts', { terms: starts, constant: 0 });
  return b.build();
}
const TWO_LEVELS = [
  'handrail-proof 1',
  'o 5 0s0-0e0 1s0-1e0',
  'z 6 1',
  's 4 7 0 4 7',
  ...FINISH_AT_SEVEN.slice(3, 9),
  'c 1 3',
  's 0 3 3 7 7',
  'c 1 2',
  'i -1 objective 6<=2 -> 2<=2',
  'i 0 order 2<=2 -> 5<=0',
  'i 0 order 5<=0 -> 0>=4',
  'i -1 objective 0>=4 -> 6>=4',
  'n 2 ;',
  'f 1 3',
  'end optimal',
];

/** A job w after an optional one z: its times (1 start, owned by 0) count only where it is done. Variable 3 is the start of w. */
function optionalJob(): Model {
  const b = new ModelBuilder('optional job', 20);
  const presence = b.boolean('does z');
  const z = b.interval('z', 2, { presence });
  const w = b.interval('w', 3, { endMax: 8 });
  b.post({ kind: 'precedence', from: endOf(z), to: startOf(w), lag: 0, when: [], tag: null });
  b.post({ kind: 'windows', mode: 'inside', from: startOf(z), to: endOf(z), windows: [[5, 9]], when: [], tag: null });
  b.post({ kind: 'clause', literals: [presence], tag: null });
  return b.build();
}
const NO_ROOM_FOR_Z = [
  'handrail-proof 1',
  'i 1 windows -> 1>=5',
  'n 1 1<=4 ;',
  'i 0 lag 1>=5 0>=1 -> 3>=7',
  'i 2 clause -> 0>=1',
  'n 2 ;',
  'end infeasible',
];

/** Two instants on one value: w writes 1 at its instant, r needs 1 at its own. Both constraints are of ties. */
function ties(): Model {
  const b = new ModelBuilder('ties', 4);
  const [w, r] = [b.interval('w', 0), b.interval('r', 0)];
  const at = (id: number) => ({ from: startOf(id), to: endOf(id), tag: null });
  for (let i = 0; i < 2; i++) {
    const writers = [{ ...at(w), value: 1 }];
    const needs = [{ ...at(r), allowed: [1] }];
    b.post({ kind: 'state', name: `value ${i}`, values: 2, initial: 0, writers, needs, tag: null });
  }
  return b.build();
}
const TIES = [
  'handrail-proof 1',
  'o 4 0s0-0e0 1s0-1e0',
  'w 5 0 0 0',
  'i 0 clause -> 5>=1',
  'i 0 clause 5>=1 -> 4>=1',
  'end open',
];

const model = twoJobs();
const replaced = (proof: readonly string[], old: string, ...by: string[]) => {
  if (!proof.includes(old)) throw new Error(`the proof has no line ${old}`);
  return proof.flatMap((line) => (line === old ? by : [line]));
};
const onTwoJobs = (title: string, old: string, by: readonly string[], because: RegExp): BrokenProof => ({
  title,
  model,
  right: FINISH_AT_SEVEN,
  wrong: replaced(FINISH_AT_SEVEN, old, ...by),
  because,
});

export const brokenProofs: readonly BrokenProof[] = [
  onSixJobs('energy of five jobs called too much for ten', 'i 0 energy/0/5 0<=3 2<=3 4<=3 6<=3 -> 10>=4'),
  onSixJobs('energy that pushes a job too far', 'i 0 energy/0/5 0<=3 2<=3 4<=3 6<=3 8<=3 -> 10>=6'),
  onSixJobs('energy of a job that may end later', 'i 0 energy/0/5 0<=3 2<=3 4<=3 6<=3 8<=4 -> 10>=5'),
  onTwoJobs('the first line is missing', 'handrail-proof 1', [], /starts with "handrail-proof 1"/),
  onTwoJobs('another version', 'handrail-proof 1', ['handrail-proof 2'], /starts with "handrail-proof 1"/),
  onTwoJobs('a line that is none', 'f 0 7', ['x 0 7'], /not a line of a proof/),
  onTwoJobs('a bound that is no number', 'i 0 order 2<=2 -> 5<=0', ['i 0 order 2<=b -> 5<=0'], /not an atom: 2<=b/),
  onTwoJobs('an inference without an arrow', 'i 0 order 2<=2 -> 5<=0', ['i 0 order 2<=2 5<=0'], /not an inference/),
  onTwoJobs('a schedule with an overlap', 's 0 3 3 7 7', ['s 0 3 2 6 6'], /not a solution: at 2 the load is 2/),
  onTwoJobs('a schedule with a wrong finish', 's 0 3 3 7 7', ['s 0 3 3 7 6'], /not a solution: the max is 7/),
  onTwoJobs('a level closed below what was reached', 'f 0 7', ['f 0 6'], /the newest solution has 7, not 6/),
  onTwoJobs('a level closed without a reason', 'n 1 4<=6 ;', [], /nothing shows that level 0 cannot be below 7/),
  onTwoJobs(
    'a level closed on a nogood that says less',
    'n 1 4<=6 ;',
    ['n 1 4<=5 ;'],
    /nothing shows that level 0 cannot be below 7/,
  ),
  onTwoJobs('optimal with an open level', 'f 0 7', [], /level 0 is not closed/),
  onTwoJobs('no claim', 'end optimal', [], /ends without a claim/),
  onTwoJobs('something after the claim', 'end optimal', ['end optimal', 'd 1'], /nothing follows the claim/),
  onTwoJobs('infeasible with a solution', 'end optimal', ['end infeasible'], /infeasible with a solution/),
  onTwoJobs(
    'a conclusion one too strong',
    'i 0 order 5<=0 -> 0>=4',
    ['i 0 order 5<=0 -> 0>=5'],
    /cumulative constraint 0 \(order\) does not give 0>=5 from 5<=0/,
  ),
  onTwoJobs(
    'a premise one too weak',
    'i 0 order 2<=2 -> 5<=0',
    ['i 0 order 2<=3 -> 5<=0'],
    /does not give 5<=0 from 2<=3/,
  ),
  onTwoJobs('a premise left out', 'i 0 order 2<=2 -> 5<=0', ['i 0 order -> 5<=0'], /does not give 5<=0 from nothing/),
  onTwoJobs(
    'an order read the wrong way round',
    'i 0 order 5<=0 -> 0>=4',
    ['i 0 order 5>=1 -> 0>=4'],
    /does not give 0>=4 from 5>=1/,
  ),
  onTwoJobs(
    'a constraint that has nothing to do with it',
    'i 0 order 2<=2 -> 5<=0',
    ['i 1 order 2<=2 -> 5<=0'],
    /extreme constraint 1 \(order\)/,
  ),
  onTwoJobs('a constraint that is not there', 'i 0 order 2<=2 -> 5<=0', ['i 7 order 2<=2 -> 5<=0'], /no constraint 7/),
  onTwoJobs(
    'an interval that is not there',
    'i 0 order 2<=2 -> 5<=0',
    ['i -9 duration 2<=2 -> 5<=0'],
    /does not give 5<=0/,
  ),
  onTwoJobs('a variable without a meaning', 'i 0 order 2<=2 -> 5<=0', ['i 0 order 2<=2 -> 9<=0'], /no variable 9/),
  onTwoJobs(
    'an end that has a stand-in',
    'i 0 order 2<=2 -> 5<=0',
    ['i 0 order 3<=6 -> 5<=0'],
    /variable 3 has a stand-in/,
  ),
  onTwoJobs(
    'a meaning given twice',
    's 0 3 3 7 7',
    ['o 5 1s0-1e0 0s0-0e0', 's 0 3 3 7 7'],
    /variable 5 has a meaning already/,
  ),
  onTwoJobs(
    'a meaning for a variable of the model',
    's 0 3 3 7 7',
    ['o 4 1s0-1e0 0s0-0e0', 's 0 3 3 7 7'],
    /variable 4 has a meaning already/,
  ),
  onTwoJobs(
    'an order of an interval that is not there',
    'o 5 0s0-0e0 1s0-1e0',
    ['o 5 0s0-0e0 4s0-4e0'],
    /no interval 4/,
  ),
  onTwoJobs('a nogood that lacks an inference', 'i 0 order 5<=0 -> 0>=4', [], /nogood 1 does not follow/),
  onTwoJobs('a nogood of nothing out of nothing', 'n 1 4<=6 ;', ['n 1 ;'], /nogood 1 does not follow: \(empty\)/),
  onTwoJobs('a nogood that is not there to lean on', 'n 1 4<=6 ;', ['n 1 4<=6 ; 3'], /no nogood 3/),
  onTwoJobs('a number used twice', 'f 0 7', ['n 1 4<=6 ;', 'f 0 7'], /nogood 1 is there already/),
  onTwoJobs('a nogood dropped that is not there', 'f 0 7', ['d 2', 'f 0 7'], /no nogood 2 to drop/),
  onTwoJobs(
    'inferences used once more after their nogood',
    'n 1 4<=6 ;',
    ['n 1 4<=5 ;', 'n 2 4<=6 ;'],
    /nogood 2 does not follow/,
  ),
  onTwoJobs(
    'an assumption after the fact',
    'n 1 4<=6 ;',
    ['a 0>=1', 'n 1 4<=6 ;'],
    /assumptions come before any inference/,
  ),
  onTwoJobs(
    'a solution against an assumption',
    'o 5 0s0-0e0 1s0-1e0',
    ['o 5 0s0-0e0 1s0-1e0', 'a 0>=1'],
    /against the assumption 0>=1/,
  ),
  {
    title: 'a cut deeper than one below the solution',
    model: twoLevels(),
    right: TWO_LEVELS,
    wrong: replaced(TWO_LEVELS, 'c 1 2', 'c 1 1'),
    because: /the solution has 3, not 2/,
  },
  {
    title: 'a cut at a level that is not the last',
    model: twoLevels(),
    right: TWO_LEVELS,
    wrong: replaced(TWO_LEVELS, 's 4 7 0 4 7', 's 4 7 0 4 7', 'c 0 6'),
    because: /a cut is for the last level/,
  },
  {
    title: 'levels closed out of turn',
    model: twoLevels(),
    right: TWO_LEVELS,
    wrong: replaced(TWO_LEVELS, 'f 0 7', 'f 1 4'),
    because: /level 0 is the next to close/,
  },
  {
    title: 'a solution that gives a closed level away',
    model: twoLevels(),
    right: TWO_LEVELS,
    wrong: replaced(TWO_LEVELS, 's 0 3 3 7 7', 's 0 3 4 8 8'),
    because: /does not keep level 0/,
  },
  {
    title: 'an objective said to be less than its terms',
    model: twoLevels(),
    right: TWO_LEVELS,
    wrong: replaced(TWO_LEVELS, 'i -1 objective 6<=2 -> 2<=2', 'i -1 objective 6<=2 -> 2<=1'),
    because: /does not give 2<=1 from 6<=2/,
  },
  {
    title: 'times of an optional job used as if it were done',
    model: optionalJob(),
    right: NO_ROOM_FOR_Z,
    wrong: replaced(NO_ROOM_FOR_Z, 'i 0 lag 1>=5 0>=1 -> 3>=7', 'i 0 lag 1>=5 -> 3>=7'),
    because: /precedence constraint 0 \(lag\) does not give 3>=7 from 1>=5/,
  },
  {
    title: 'infeasible because of a job that may stay away',
    model: optionalJob(),
    right: NO_ROOM_FOR_Z,
    wrong: replaced(NO_ROOM_FOR_Z, 'i 2 clause -> 0>=1'),
    because: /nogood 2 does not follow/,
  },
  {
    title: 'infeasible and nothing shown',
    model: optionalJob(),
    right: NO_ROOM_FOR_Z,
    wrong: replaced(NO_ROOM_FOR_Z, 'n 2 ;'),
    because: /nothing shows that there is no solution/,
  },
  {
    title: 'an order of ties lent to another constraint',
    model: ties(),
    right: TIES,
    wrong: replaced(TIES, 'end open', 'w 6 1 0 0', 'i 1 clause 6>=1 -> 4>=1', 'end open'),
    because: /order variable 4 belongs to constraint 0/,
  },
  {
    title: 'a support by a writer that is not there',
    model: ties(),
    right: TIES,
    wrong: replaced(TIES, 'w 5 0 0 0', 'w 5 0 0 3'),
    because: /a support by no writer/,
  },
];
