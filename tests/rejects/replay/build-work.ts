/** Short ways to write campaigns out by hand, with the hardware model beside them: times in minutes. */
import type { Hardware, Person, Role, Step, Stint, Task } from '@handrail/eva/campaign/campaign';
import type { HardwareModel, Need, Origin, StateVariable, StintEffects } from '@handrail/eva/hardware/effects';
import { SPAN } from '../../reference/routes/bare-campaign.ts';

export const MIN = 60;

export function role(candidates: string, at: string, parts: Partial<Role> = {}): Role {
  const ids = candidates.split(' ');
  return {
    name: 'lead',
    candidates: ids,
    at,
    to: parts.to ?? at,
    startOn: null,
    endOn: null,
    restraint: null,
    fromStep: 0,
    toStep: Number.MAX_SAFE_INTEGER,
    span: SPAN,
    ...parts,
  };
}

export function armRole(arm: string, at: string, to = at): Role {
  return role(arm, at, { name: 'arm', to });
}

/** A stint of `minutes.length` steps. */
export function stint(
  task: string,
  id: string,
  minutes: readonly number[],
  roles: readonly Role[],
  parts: Partial<Stint> = {},
): Stint {
  const steps = minutes.map((): Step => STEP);
  const stepsS = minutes.map((one) => one * MIN);
  const agreedS = stepsS.reduce((sum, one) => sum + one, 0);
  return {
    key: `${task}/${id}`,
    id,
    task,
    title: id.replaceAll('-', ' '),
    roles: roles.map((one) => ({ ...one, toStep: Math.min(one.toStep, minutes.length) })),
    steps,
    duration: { agreedS, spread: null, boundsS: [agreedS, agreedS], basis: 'stated', stepsS, evidence: [], span: SPAN },
    needs: [],
    leaves: [],
    windowUses: [],
    after: [],
    under: [],
    voice: false,
    caution: null,
    template: null,
    span: SPAN,
    ...parts,
  };
}

const STEP: Step = {
  verb: 'work',
  objects: [],
  from: null,
  to: null,
  tool: null,
  by: 'lead',
  turns: null,
  torqueNm: null,
  agreedS: null,
  settings: null,
  note: null,
  caution: null,
  say: null,
  hear: null,
  safeStop: null,
  span: SPAN,
};

export function task(
  id: string,
  rank: number,
  evas: string,
  stints: readonly Stint[],
  parts: Partial<Task> = {},
): Task {
  return {
    id,
    title: id.replaceAll('-', ' '),
    rank,
    insert: false,
    evas: evas.split(' '),
    objective: null,
    order: 'written',
    stints,
    joins: [],
    span: SPAN,
    ...parts,
  };
}

export function insidePerson(id: string): Person {
  return {
    id,
    title: id,
    role: 'inside',
    pace: 1,
    suitLimitS: null,
    startAnchor: null,
    tetherLengthM: null,
    carryMost: null,
    suit: null,
    workFactor: null,
    bodyMassKg: null,
    span: SPAN,
  };
}

const ORIGIN: Origin = { from: 'verb', step: 0, words: 'the work', span: SPAN };

/** What one stint does, in short: "cover: closed > open @0" changes cover at the end of step 0. */
export interface Doing {
  /** variable, values needed before, value left, step. */
  readonly changes?: readonly (readonly [variable: string, from: string, to: string, step: number])[];
  /** variable, values needed, from step, to step. */
  readonly looks?: readonly (readonly [variable: string, allowed: string, fromStep: number, toStep: number])[];
  readonly atEnd?: readonly (readonly [variable: string, allowed: string])[];
  readonly tools?: readonly (readonly [tool: string, step: number])[];
  readonly controls?: readonly (readonly [request: string, fromStep: number, toStep: number])[];
  readonly carriesIn?: readonly (readonly [role: number, item: string])[];
  readonly carriesOut?: readonly (readonly [role: number, item: string])[];
}

export function effectsOf(key: string, doing: Doing): StintEffects {
  const needs: Need[] = [];
  for (const [variable, from, , step] of doing.changes ?? []) {
    const allowed = from.split('|');
    needs.push({ variable, allowed, when: 'start', fromStep: 0, toStep: 0, origin: ORIGIN });
    if (step > 0) needs.push({ variable, allowed, when: 'during', fromStep: 0, toStep: step, origin: ORIGIN });
  }
  for (const [variable, allowed, fromStep, toStep] of doing.looks ?? []) {
    needs.push({ variable, allowed: allowed.split('|'), when: 'during', fromStep, toStep, origin: ORIGIN });
  }
  for (const [variable, allowed] of doing.atEnd ?? []) {
    needs.push({ variable, allowed: allowed.split('|'), when: 'end', fromStep: 1, toStep: 1, origin: ORIGIN });
  }
  return {
    stint: key,
    needs,
    leaves: (doing.changes ?? []).map(([variable, , value, step]) => ({ variable, value, step, origin: ORIGIN })),
    holds: (doing.changes ?? []).map(([variable, , , step]) => ({ variable, fromStep: step, toStep: step + 1 })),
    tools: (doing.tools ?? []).map(([tool, step]) => ({ tool, steps: [step], span: SPAN })),
    controls: (doing.controls ?? []).map(([request, fromStep, toStep]) => ({
      request,
      fromStep,
      toStep,
      origin: ORIGIN,
    })),
    carriesIn: (doing.carriesIn ?? []).map(([index, item]) => ({ role: index, item })),
    carriesOut: (doing.carriesOut ?? []).map(([index, item]) => ({ role: index, item })),
    unknowns: [],
  };
}

export function modelOf(
  hardware: readonly Hardware[],
  variables: Readonly<Record<string, string>>,
  doings: Readonly<Record<string, Doing>>,
): HardwareModel {
  const list = Object.entries(variables).map(([id, initial]): StateVariable => {
    const isHolder = id.endsWith('.holder');
    const isRequest = id.startsWith('request:');
    const of = isHolder ? id.slice(0, -'.holder'.length) : isRequest ? id.slice('request:'.length) : id;
    const title = hardware.find((one) => one.id === of)?.title ?? of;
    return { id, title, values: [initial], initial, about: isHolder ? 'holder' : isRequest ? 'request' : 'aspect', of };
  });
  return {
    variables: new Map(list.map((one) => [one.id, one])),
    effects: new Map(Object.entries(doings).map(([key, doing]) => [key, effectsOf(key, doing)])),
  };
}
