/** Campaigns and hardware models written by hand, small enough to reason about: only what a test says differs from plain. */
import type {
  Arm,
  Campaign,
  Clock,
  Eva,
  Hardware,
  Limits,
  Person,
  Rail,
  Request,
  Role,
  Stint,
  Task,
  WindowSet,
} from '@handrail/eva/campaign/campaign';
import { NO_SKY } from '@handrail/eva/campaign/campaign-sky';
import type { Span } from '@handrail/eva/campaign/span';
import type { HardwareModel, Leave, Need, StateVariable, StintEffects } from '@handrail/eva/hardware/effects';

export const SPAN: Span = { file: 'small.kdl', line: 1, column: 1, length: 1 };
export const EGRESS_MS = Date.UTC(2031, 0, 5, 10, 0, 0);

export const NO_LIMITS: Limits = {
  homeWithinS: null,
  partnerWithinS: null,
  gloveCheckEveryS: null,
  padCheckEveryS: null,
  tetherSwapS: null,
  restraintIngressS: null,
  restraintEgressS: null,
  reactionS: null,
  travelSpread: null,
  marginS: null,
  span: null,
};

export function person(id: string, more: Partial<Person> = {}): Person {
  const plain = {
    pace: 1,
    suitLimitS: null,
    startAnchor: null,
    tetherLengthM: null,
    carryMost: null,
    suit: null,
    workFactor: null,
    bodyMassKg: null,
  };
  return { id, title: id, role: 'outside', ...plain, span: SPAN, ...more };
}

export function role(name: Role['name'], candidates: readonly string[], at: string, more: Partial<Role> = {}): Role {
  const plain = { to: at, startOn: null, endOn: null, restraint: null, fromStep: 0, toStep: 1 };
  return { name, candidates, at, ...plain, span: SPAN, ...more };
}

/** Minutes by step. */
export function stint(
  key: string,
  minutes: readonly number[],
  roles: readonly Role[],
  more: Partial<Stint> = {},
): Stint {
  const [task = '', id = ''] = key.split('/');
  const agreedS = minutes.reduce((sum, m) => sum + m, 0) * 60;
  const step = {
    verb: 'check',
    objects: [],
    from: null,
    to: null,
    tool: null,
    by: 'lead' as const,
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
  return {
    key,
    id,
    task,
    title: key,
    roles: roles.map((r) => (r.toStep === 1 && r.fromStep === 0 ? { ...r, toStep: minutes.length } : r)),
    steps: minutes.map(() => step),
    duration: {
      agreedS,
      spread: null,
      boundsS: [agreedS, agreedS],
      basis: 'stated',
      stepsS: minutes.map((m) => m * 60),
      evidence: [],
      span: SPAN,
    },
    needs: [],
    leaves: [],
    windowUses: [],
    after: [],
    under: [],
    voice: false,
    caution: null,
    template: null,
    span: SPAN,
    ...more,
  };
}

export function task(id: string, rank: number, stints: readonly Stint[], more: Partial<Task> = {}): Task {
  const plain = { insert: false, evas: ['one'], objective: null, order: 'written' as const, joins: [] };
  return { id, title: id, rank, ...plain, stints, span: SPAN, ...more };
}

export function eva(id: string, more: Partial<Eva> = {}): Eva {
  return {
    id,
    title: id,
    egressUtcMs: EGRESS_MS,
    slipS: 0,
    longestS: null,
    egress: [],
    ingress: [],
    closeHatchS: 0,
    minimumSuccess: [],
    prebreathe: null,
    indoors: null,
    span: SPAN,
    ...more,
  };
}

/** Out and in, one after the other, the same minutes each. */
export function passages(people: readonly string[], minutes: number) {
  const each = people.map((id) => ({ person: id, durationS: minutes * 60, span: SPAN }));
  return { egress: each, ingress: [...each].reverse() };
}

export function rail(from: string, to: string, minutes: number): Rail {
  const plain = { lengthM: null, openWhile: [], refuses: [], fairlead: null };
  return { id: `${from}-${to}`, from, to, durationS: minutes * 60, ...plain, span: SPAN };
}

export function windowSet(id: string, minutes: readonly (readonly [number, number])[], padS = 0): WindowSet {
  const intervals = minutes.map(([a, b]) => [EGRESS_MS + a * 60_000, EGRESS_MS + b * 60_000] as const);
  return { id, title: id, intervals, padS, shownAs: 'night', source: null, span: SPAN };
}

export function clock(id: string, limitMin: number, start: string, stop: string, more: Partial<Clock> = {}): Clock {
  const change = (text: string) => {
    const [variable = '', value = ''] = text.split('=');
    return { variable, values: [value], span: SPAN };
  };
  const plain = { kind: 'difference' as const, sense: 'most' as const, onStop: 'reset' as const };
  return {
    id,
    title: id,
    ...plain,
    limitS: limitMin * 60,
    start: change(start),
    stop: change(stop),
    span: SPAN,
    ...more,
  };
}

export function request(id: string, more: Partial<Request> = {}): Request {
  const plain = { owner: 'power', inhibits: 1, setLeadS: 600, verifyS: 120, clearS: 180, longestHoldS: null };
  return { id, title: id, ...plain, status: 'agreed', window: null, span: SPAN, ...more };
}

export function hardware(id: string, more: Partial<Hardware> = {}): Hardware {
  return {
    id,
    title: id,
    kind: 'box',
    at: { kind: 'place', id: 'porch' },
    of: null,
    initial: {},
    massKg: null,
    loadClass: null,
    controls: [],
    torqueNm: null,
    turns: null,
    toolFits: [],
    properties: {},
    settings: {},
    span: SPAN,
    ...more,
  };
}

/** Poses "park" and one per place, "at-<place>"; minutes between any two of them. */
export function arm(id: string, places: readonly string[], empty: number, loaded: number | null): Arm {
  const poses = [null, ...places].map((place) => ({
    id: place === null ? 'park' : `at-${place}`,
    title: place ?? 'park',
    place,
    climbDown: null,
    span: SPAN,
  }));
  const transfers = poses.flatMap((from, i) =>
    poses.slice(i + 1).map((to) => ({
      from: from.id,
      to: to.id,
      emptyS: empty * 60,
      loadedS: loaded === null ? null : loaded * 60,
      oneWay: false,
      climbDown: null,
      span: SPAN,
    })),
  );
  return { id, title: id, operator: 'IV', poses, transfers, startPose: 'park', span: SPAN };
}

/** Twice as slow on the way. */
const LARGE = { id: 'large', title: 'Large', factor: 2, fillsHands: true, span: SPAN };

export interface SmallCampaign {
  readonly people?: readonly Person[];
  readonly evas?: readonly Eva[];
  readonly tasks: readonly Task[];
  readonly rails?: readonly Rail[];
  readonly more?: Partial<Campaign>;
}

export function campaign({ people, evas, tasks, rails = [], more = {} }: SmallCampaign): Campaign {
  const names = [...new Set(rails.flatMap(({ from, to }) => [from, to]))];
  const places = names.map((id) => ({
    id,
    title: id,
    family: 'all',
    positionM: null,
    seenFromM: null,
    light: null,
    keepOut: false,
    span: SPAN,
  }));
  return {
    formatVersion: 1,
    id: 'small',
    title: 'small',
    documentHash: '0'.repeat(64),
    span: SPAN,
    people: people ?? [person('EV1'), person('EV2')],
    arms: [],
    evas: evas ?? [eva('one')],
    objectives: [],
    tasks,
    hardware: [],
    vehicle: { id: 'v', title: 'v', places, rails, loadClasses: [LARGE], hatch: names[0] ?? null, span: SPAN },
    limits: NO_LIMITS,
    requests: [],
    events: [],
    clocks: [],
    windows: [],
    gates: [],
    responses: [],
    cutOrders: [],
    sky: NO_SKY,
    pins: [],
    waivers: [],
    suits: [],
    prebreathes: [],
    unitTemperatures: [],
    touchLimits: [],
    surfaceTemperatures: [],
    library: { id: 'standard', version: '1' },
    defaults: [],
    ...more,
  };
}

/** Needs and leaves in short: "x=a" at step boundaries. */
export interface ShortEffects {
  /** Before the stint starts. */
  readonly needs?: readonly string[];
  /** Throughout. */
  readonly during?: readonly string[];
  /** At the end, held from the start of the last step. */
  readonly leaves?: readonly string[];
  readonly more?: Partial<StintEffects>;
}

export function hardwareModel(
  variables: Readonly<Record<string, readonly string[]>>,
  effects: Readonly<Record<string, ShortEffects>>,
  stints: readonly Stint[],
): HardwareModel {
  const origin = (words: string) => ({ from: 'verb' as const, step: 0, words, span: SPAN });
  const parse = (text: string) => text.split('=') as [string, string];
  const all = stints.map(({ key, steps }): [string, StintEffects] => {
    const { needs = [], during = [], leaves = [], more = {} } = effects[key] ?? {};
    const last = steps.length;
    const need = (text: string, when: Need['when']): Need => {
      const [variable, values] = parse(text);
      return {
        variable,
        allowed: values.split('|'),
        when,
        fromStep: 0,
        toStep: when === 'during' ? last : 0,
        origin: origin(text),
      };
    };
    const leave = (text: string): Leave => {
      const [variable, value] = parse(text);
      return { variable, value, step: last - 1, origin: origin(text) };
    };
    const written = leaves.map(leave);
    return [
      key,
      {
        stint: key,
        needs: [...needs.map((text) => need(text, 'start')), ...during.map((text) => need(text, 'during'))],
        leaves: written,
        holds: written.map(({ variable }) => ({ variable, fromStep: last - 1, toStep: last })),
        tools: [],
        controls: [],
        carriesIn: [],
        carriesOut: [],
        unknowns: [],
        ...more,
      },
    ];
  });
  return {
    variables: new Map(
      Object.entries(variables).map(([id, values]): [string, StateVariable] => [
        id,
        {
          id,
          title: id,
          values,
          initial: values[0] as string,
          about: id.endsWith('.holder') ? 'holder' : 'aspect',
          of: id.replace('.holder', ''),
        },
      ]),
    ),
    effects: new Map(all),
  };
}
