/** A campaign with nothing in it, to be filled by the parts that a test is about. */
import type { Campaign, Hardware, Person, Place, Rail } from '@handrail/eva/campaign/campaign';
import { NO_SKY } from '@handrail/eva/campaign/campaign-sky';
import type { Span } from '@handrail/eva/campaign/span';

export const SPAN: Span = { file: 'test.kdl', line: 1, column: 1, length: 1 };

export function bareCampaign(parts: Partial<Campaign> = {}): Campaign {
  return {
    formatVersion: 1,
    id: 'bare',
    title: 'Bare',
    documentHash: 'a'.repeat(64),
    span: SPAN,
    people: [],
    arms: [],
    evas: [],
    objectives: [],
    tasks: [],
    hardware: [],
    vehicle: { id: 'frame', title: 'Frame', places: [], rails: [], loadClasses: [], hatch: null, span: SPAN },
    limits: {
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
    },
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
    ...parts,
  };
}

export function place(id: string, parts: Partial<Place> = {}): Place {
  return {
    id,
    title: id,
    family: 'core',
    positionM: null,
    seenFromM: null,
    light: null,
    keepOut: false,
    span: SPAN,
    ...parts,
  };
}

export function rail(from: string, to: string, durationS: number, parts: Partial<Rail> = {}): Rail {
  return {
    id: `${from}-${to}`,
    from,
    to,
    durationS,
    lengthM: null,
    openWhile: [],
    refuses: [],
    fairlead: null,
    span: SPAN,
    ...parts,
  };
}

export function outsidePerson(id: string, parts: Partial<Person> = {}): Person {
  return {
    id,
    title: id,
    role: 'outside',
    pace: 1,
    suitLimitS: null,
    startAnchor: null,
    tetherLengthM: null,
    carryMost: null,
    suit: null,
    workFactor: null,
    bodyMassKg: null,
    span: SPAN,
    ...parts,
  };
}

export function piece(id: string, kind: string, at: string, parts: Partial<Hardware> = {}): Hardware {
  return {
    id,
    title: id,
    kind,
    at: { kind: 'place', id: at },
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
    ...parts,
  };
}
