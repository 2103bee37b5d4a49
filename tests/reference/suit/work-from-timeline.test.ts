import { describe, expect, it } from 'vitest';
import type { Step, Stint } from '@handrail/eva/campaign/campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { type EffortChoice, workFromTimeline } from '@handrail/eva/suit/work-from-timeline';
import type { EvaTimeline } from '@handrail/eva/timeline/timeline';

const span = { file: 'test.kdl', line: 1, column: 1, length: 1 };
const step = (verb: string, by: Step['by'] = 'lead'): Step => ({
  verb,
  objects: [],
  from: null,
  to: null,
  tool: null,
  by,
  turns: null,
  torqueNm: null,
  agreedS: null,
  settings: null,
  note: null,
  caution: null,
  say: null,
  hear: null,
  safeStop: null,
  span,
});
const role = (name: 'lead' | 'partner', fromStep: number, toStep: number): Stint['roles'][number] => ({
  name,
  candidates: ['EV1', 'EV2'],
  at: 'bay',
  to: 'bay',
  startOn: null,
  endOn: null,
  restraint: null,
  fromStep,
  toStep,
  span,
});
const stint: Stint = {
  key: 'task/stint',
  id: 'stint',
  task: 'task',
  title: 'a stint',
  roles: [role('lead', 0, 4), role('partner', 1, 3)],
  // By the library: low, moderate, moderate, and a verb it does not know.
  steps: [step('rest'), step('ingress-restraint'), step('egress-restraint'), step('juggle')],
  duration: {
    agreedS: 400,
    spread: null,
    boundsS: [400, 400],
    basis: 'stated',
    stepsS: [100, 100, 100, 100],
    evidence: [],
    span,
  },
  needs: [],
  leaves: [],
  windowUses: [],
  after: [],
  under: [],
  voice: false,
  caution: null,
  template: null,
  span,
};
const eva: EvaTimeline = {
  eva: 'eva-1',
  petZeroUtcMs: 0,
  tasks: ['task'],
  stints: [
    { stint: 'task/stint', startS: 1000, endS: 1400, assigned: ['EV1', 'EV2'], stepEndsS: [1100, 1200, 1300, 1400] },
  ],
  passages: [
    { kind: 'egress', person: 'EV1', startS: 0, endS: 300 },
    { kind: 'close-hatch', person: null, startS: 2000, endS: 2300 },
  ],
  moves: [
    {
      who: 'EV1',
      from: 'hatch',
      to: 'bay',
      startS: 300,
      endS: 900,
      path: ['hatch', 'bay'],
      anchor: null,
      carrying: [],
    },
  ],
  holds: [],
  joins: [],
  bothInS: 2300,
  wall: null,
  claim: { status: 'written by hand', levels: [], seed: 0, conflicts: 0 },
};
const choice: EffortChoice = {
  moving: 'steady',
  passing: 'brisk',
  helping: 'light',
  unknown: 'hard',
  classes: { low: 'light', moderate: 'steady', high: 'hard' },
};
const work = (person: string, timeline = eva) =>
  workFromTimeline(timeline, new Map([[stint.key, stint]]), new Map(), standardLibrary, person, choice);

describe('the work of a person, out of the timeline', () => {
  it('is passages, moves and steps by the effort of their verbs, equal neighbours joined, gaps left', () => {
    expect(work('EV1')).toEqual([
      { startS: 0, endS: 300, effort: 'brisk' },
      { startS: 300, endS: 900, effort: 'steady' },
      { startS: 1000, endS: 1100, effort: 'light' },
      { startS: 1100, endS: 1300, effort: 'steady' },
      { startS: 1300, endS: 1400, effort: 'hard' },
    ]);
  });

  it('is helping effort where the other does the step', () => {
    expect(work('EV2')).toEqual([{ startS: 1100, endS: 1300, effort: 'light' }]);
  });

  it('is empty for who has nothing to do, and refused for who is in two places', () => {
    expect(work('EV3')).toEqual([]);
    const twice = {
      ...eva,
      moves: [...eva.moves, { ...(eva.moves[0] as EvaTimeline['moves'][number]), startS: 1050, endS: 1060 }],
    };
    expect(() => work('EV1', twice)).toThrow('EV1 has two things to do from 1050 s');
    expect(() =>
      work('EV1', { ...eva, stints: [{ ...(eva.stints[0] as EvaTimeline['stints'][number]), stint: 'no/such' }] }),
    ).toThrow('the timeline has the stint no/such');
  });
});
