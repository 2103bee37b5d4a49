import type { BreakRule } from './break-payback.ts';
import type { OutlineStage, StageRole } from './prebreathe-protocol.ts';
import { NOT_MEDICAL_ADVICE } from './tissue-model.ts';

/** A protocol as a public report describes it: an example to compare with, no recommendation. */
export interface PublishedProtocol {
  readonly id: string;
  readonly title: string;
  readonly stages: readonly OutlineStage[];
  readonly source: string;
  readonly remarks: readonly string[];
}

const PSI = 6894.757_293_168;
const SEA_LEVEL_PA = 14.7 * PSI;
const STAGED_PA = 10.2 * PSI;
const MIN = 60;
const STAGED_OXYGEN = 0.265;

function stage(
  title: string,
  role: StageRole,
  pressures: readonly [number, number],
  oxygenFraction: number,
  minutes: number | null,
  exerciseVo2: OutlineStage['exerciseVo2'] = null,
): OutlineStage {
  return {
    title,
    role,
    startPressurePa: pressures[0],
    endPressurePa: pressures[1],
    oxygenFraction,
    durationS: minutes === null ? null : minutes * MIN,
    exerciseVo2,
  };
}

const LEVEL = [SEA_LEVEL_PA, SEA_LEVEL_PA] as const;
const STAGED = [STAGED_PA, STAGED_PA] as const;
const DOWN = [SEA_LEVEL_PA, STAGED_PA] as const;
const UP = [STAGED_PA, SEA_LEVEL_PA] as const;

function staged(id: string, holdHours: number, inSuitMin: number): PublishedProtocol {
  return {
    id,
    title: `Staged at 70.3 kPa for ${holdHours} h, ${inSuitMin} min in the suit`,
    source: '[E14] §5a',
    stages: [
      stage('mask at cabin pressure', 'oxygen', LEVEL, 1, 45),
      stage('mask, pressure going down', 'oxygen', DOWN, 1, 15),
      stage('staged cabin', 'hold', STAGED, STAGED_OXYGEN, holdHours * 60),
      stage('in the suit', 'oxygen', STAGED, 1, inSuitMin),
    ],
    remarks: [NOT_MEDICAL_ADVICE, 'The in-suit time depends on the time staged: 40 to 75 min in the source.'],
  };
}

export const PUBLISHED_PROTOCOLS: readonly PublishedProtocol[] = [
  {
    id: 'in-suit-rest-4h',
    title: 'Four hours of oxygen in the suit, at rest',
    source: '[E14] §B',
    stages: [stage('in the suit', 'oxygen', LEVEL, 1, 240)],
    remarks: [
      NOT_MEDICAL_ADVICE,
      'By the 360 min model it ends at a ratio of 1.70 for a 29.6 kPa suit, above the limit of 1.65 published with that model.',
    ],
  },
  {
    id: 'in-suit-rest-3h30',
    title: 'Three and a half hours of oxygen in the suit, at rest',
    source: '[E14] §B',
    stages: [stage('in the suit', 'oxygen', LEVEL, 1, 210)],
    remarks: [NOT_MEDICAL_ADVICE, 'Given up in favour of four hours.'],
  },
  staged('staged-12h', 12, 75),
  staged('staged-24h', 24, 40),
  {
    id: 'overnight-in-the-airlock',
    title: 'Overnight at 70.3 kPa in the airlock',
    source: '[E14] §4b',
    stages: [
      stage('staged cabin overnight', 'hold', STAGED, STAGED_OXYGEN, 8 * 60 + 40),
      stage('mask, pressure coming back', 'oxygen', UP, 1, 0),
      stage('mask at cabin pressure', 'oxygen', LEVEL, 1, 70),
      stage('mask, pressure going down', 'oxygen', DOWN, 1, 0),
      stage('suit donning at staged pressure', 'hold', STAGED, STAGED_OXYGEN, null),
      stage('in the suit, pressure coming back', 'oxygen', UP, 1, 0),
      stage('in the suit', 'oxygen', LEVEL, 1, 50),
    ],
    remarks: [
      NOT_MEDICAL_ADVICE,
      'The source gives the night as at most 8 h 40 min and no donning time; changes of pressure are taken as sudden.',
    ],
  },
  {
    id: 'exercise-on-a-cycle',
    title: 'Oxygen with ten minutes of hard exercise on a cycle',
    source: '[E14] §4c',
    stages: [
      stage('mask, rising exercise', 'oxygen', LEVEL, 1, 3, 'by-the-person'),
      stage('mask, hard exercise', 'oxygen', LEVEL, 1, 7, 'by-the-person'),
      stage('mask, rest', 'oxygen', LEVEL, 1, 40),
      stage('mask, pressure going down', 'oxygen', DOWN, 1, 30),
      stage('suit donning at staged pressure', 'hold', STAGED, STAGED_OXYGEN, null),
      stage('in the suit, pressure coming back', 'oxygen', UP, 1, 5),
      stage('in the suit', 'oxygen', LEVEL, 1, 55),
    ],
    remarks: [
      NOT_MEDICAL_ADVICE,
      'The source states exercise against the person’s own peak: 37.5 to 62.5 % for 3 min, 75 % for 7 min.',
      'A final 30 min of pressure going down follows.',
    ],
  },
  {
    id: 'light-exercise-in-the-suit',
    title: 'Light exercise in the suit',
    source: '[E14] §4c, §B',
    stages: [
      stage('mask at cabin pressure', 'oxygen', LEVEL, 1, 40),
      stage('mask, pressure going down', 'oxygen', DOWN, 1, 20),
      stage('suit donning at staged pressure', 'hold', STAGED, STAGED_OXYGEN, null),
      stage('in the suit, pressure coming back', 'oxygen', UP, 1, 0),
      stage('in the suit, light exercise', 'oxygen', LEVEL, 1, 50, 6.8),
      stage('in the suit, rest', 'oxygen', LEVEL, 1, 50),
    ],
    remarks: [
      NOT_MEDICAL_ADVICE,
      'Exercise is 4 min of movement and 1 min of rest in turn, at 6.8 mL/kg/min or more over the 50 min.',
      'A final 30 min of pressure going down follows: 190 min in all.',
    ],
  },
];

/** @source [B24] §3.2 */
export const PUBLISHED_BREAK_RULE: BreakRule = { paybackRatio: 2, longestBreakS: 10 * MIN, source: '[B24] §3.2' };
