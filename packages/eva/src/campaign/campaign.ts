/**
 * The campaign, read and resolved: the one document type that everything downstream reads. References have been checked to
 * exist, units are SI, templates are expanded into stints, and every part remembers its place in the text. What a person
 * left out is `null` or listed in `defaults`; nothing that can hurt has been filled in.
 *
 * Invariant: immutable. Planning never writes into it.
 */
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import type { Vector3 } from '@handrail/quantity/vector';
import type { CampaignSky, ComputedWindow } from './campaign-sky.ts';
import type { BreakRule } from '../prebreathe/break-payback.ts';
import type { PrebreatheStage } from '../prebreathe/prebreathe-protocol.ts';
import type { TissueModel } from '../prebreathe/tissue-model.ts';
import type { SuitSpecification } from '../suit/suit-specification.ts';
import type { TouchLimit } from '../thermal/touch-temperature.ts';
import type { UnpoweredLimit, UnpoweredUnit } from '../thermal/unpowered-unit.ts';
import type { Span } from './span.ts';

export interface Campaign {
  readonly formatVersion: 1;
  readonly id: string;
  readonly title: string;
  /** SHA-256 (hex) of the canonical JSON form: comments and layout do not change it. */
  readonly documentHash: string;
  readonly span: Span;
  readonly people: readonly Person[];
  readonly arms: readonly Arm[];
  readonly evas: readonly Eva[];
  readonly objectives: readonly Objective[];
  /** In rank order, mandatory work and inserts alike. */
  readonly tasks: readonly Task[];
  readonly hardware: readonly Hardware[];
  readonly vehicle: Vehicle;
  readonly limits: Limits;
  readonly requests: readonly Request[];
  readonly events: readonly OutsideEvent[];
  readonly clocks: readonly Clock[];
  readonly windows: readonly WindowSet[];
  /** Orbit, attitude, bodies, radio, weak field, as stated. */
  readonly sky: CampaignSky;
  readonly gates: readonly Gate[];
  readonly responses: readonly Response[];
  readonly cutOrders: readonly CutOrder[];
  readonly pins: readonly Pin[];
  readonly waivers: readonly Waiver[];
  readonly suits: readonly Suit[];
  readonly prebreathes: readonly Prebreathe[];
  readonly unitTemperatures: readonly UnitTemperature[];
  /** What a glove may touch and for how long; none: not stated. */
  readonly touchLimits: readonly TouchLimit[];
  readonly surfaceTemperatures: readonly SurfaceTemperature[];
  /** The kinds library this document was written against: id and version, pinned. */
  readonly library: { readonly id: string; readonly version: string };
  /** Values the reader filled in, each shown wherever the value is shown. */
  readonly defaults: readonly DefaultUsed[];
}

export interface DefaultUsed {
  readonly what: string;
  readonly value: string;
  readonly source: string;
  readonly span: Span;
}

// ---- people -------------------------------------------------------------------------------------------------------

export interface Person {
  /** EV1, EV2, IV, … */
  readonly id: string;
  readonly title: string;
  /** outside: in a suit, has a lane. inside: reads the steps. arm: operates an arm from inside. */
  readonly role: 'outside' | 'inside' | 'arm';
  /** Multiplies travel and work; 1 is the crew's own planning figures. */
  readonly pace: number;
  /** The longest time from PET 0 to vehicle supplies that this person's suit allows; null: not stated (a finding). */
  readonly suitLimitS: number | null;
  /** Anchor (hardware id) this person's safety tether starts from, at egress; null: not stated. */
  readonly startAnchor: string | null;
  /** Reel length, metres; null: not stated. */
  readonly tetherLengthM: number | null;
  /** Hooks and hands for loose items; null: not stated. */
  readonly carryMost: number | null;
  /** Suit id; null: not stated, so nothing is claimed about supplies. */
  readonly suit: string | null;
  /** Multiplies every metabolic rate of the suit's classes; null: no suit stated. */
  readonly workFactor: SourcedValue | null;
  /** null: no suit stated. */
  readonly bodyMassKg: number | null;
  readonly span: Span;
}

/** A suit as its owner states it. */
export interface Suit {
  readonly id: string;
  readonly title: string;
  readonly specification: SuitSpecification;
  /** It leaves vehicle supplies this long before PET 0. */
  readonly beforeEgressS: number;
  readonly effortUse: EffortUse;
  readonly loadUse: readonly SuitLoadUse[];
  readonly span: Span;
}
/** Which class of effort counts for what; names of the suit's own classes. */
export interface EffortUse {
  readonly low: string;
  readonly moderate: string;
  readonly high: string;
  readonly moving: string;
  readonly passing: string;
  readonly helping: string;
  readonly unknown: string;
  readonly idle: string;
  /** After the planned end. */
  readonly beyond: string;
  /** Throughout, where there is no plan yet. */
  readonly planning: string;
}
export interface SuitLoadUse {
  readonly load: string;
  /** On while this window is open; null: always. */
  readonly window: string | null;
}

/** A pre-breathe as the operator states it: nothing in it is filled in. */
export interface Prebreathe {
  readonly id: string;
  readonly title: string;
  readonly model: TissueModel;
  readonly stages: readonly PrebreatheStage[];
  /** null: it has no break. */
  readonly breakRule: BreakRule | null;
  readonly span: Span;
}

export interface Arm {
  readonly id: string;
  readonly title: string;
  readonly operator: string;
  readonly poses: readonly ArmPose[];
  readonly transfers: readonly ArmTransfer[];
  /** Pose at PET 0. */
  readonly startPose: string;
  readonly span: Span;
}
export interface ArmPose {
  readonly id: string;
  readonly title: string;
  /** The place at which a rider can get on or off, or the arm's tip works; null: a free pose (park). */
  readonly place: string | null;
  /** Climb-down from the plate at this pose if the arm is dead: the place reached and the time; null: none, so it is committed. */
  readonly climbDown: ClimbDown | null;
  readonly span: Span;
}
/** Off the plate of a dead arm: the place on structure that is reached, and the time at the longest. */
export interface ClimbDown {
  readonly place: string;
  readonly durationS: number;
}
/** Both ways unless oneWay. Times by what hangs on the arm. */
export interface ArmTransfer {
  readonly from: string;
  readonly to: string;
  readonly emptyS: number;
  /** With a person on the plate or a payload held; null: not allowed. */
  readonly loadedS: number | null;
  readonly oneWay: boolean;
  /** From anywhere between the two poses if the arm is dead; null: none, so a ride is committed. */
  readonly climbDown: ClimbDown | null;
  readonly span: Span;
}

// ---- excursions ------------------------------------------------------------------------------------------------------

export interface Eva {
  readonly id: string;
  readonly title: string;
  /** Planned PET 0. */
  readonly egressUtcMs: number;
  /** PET 0 may slip by up to this. */
  readonly slipS: number;
  /** From PET 0 to both on vehicle supplies, hatch closed: the operator's figure. null: not stated. */
  readonly longestS: number | null;
  /** Window set in which nobody may be outside: both are in before its next interval. null: none. */
  readonly indoors: string | null;
  /** Who leaves by the hatch, in order, and how long each passage takes. */
  readonly egress: readonly Passage[];
  /** Who comes in, in order. */
  readonly ingress: readonly Passage[];
  /** After the last person is in: hatch closed and on vehicle supplies. */
  readonly closeHatchS: number;
  /** Task ids that make this EVA worth having flown (minimum success). */
  readonly minimumSuccess: readonly string[];
  /** Pre-breathe id; null: not stated. */
  readonly prebreathe: string | null;
  readonly span: Span;
}
export interface Passage {
  readonly person: string;
  readonly durationS: number;
  readonly span: Span;
}

export interface Objective {
  readonly id: string;
  readonly title: string;
  /** 1 is the most important; unique. */
  readonly rank: number;
  readonly tasks: readonly string[];
  readonly milestones: readonly Milestone[];
  /** An outside event that waits for this objective. */
  readonly neededBy: string | null;
  readonly span: Span;
}
export interface Milestone {
  readonly id: string;
  readonly title: string;
  /** Tasks that together reach it. */
  readonly tasks: readonly string[];
  readonly span: Span;
}

// ---- work ------------------------------------------------------------------------------------------------------------

export interface Task {
  readonly id: string;
  readonly title: string;
  /** 1 is the most important; unique in the campaign; the planner drops from the bottom. */
  readonly rank: number;
  /** An insert is worth taking only if there is room; it is complete in itself. */
  readonly insert: boolean;
  /** EVA ids it may fall in; one: fixed. */
  readonly evas: readonly string[];
  readonly objective: string | null;
  /** written: stints that share a named person keep the order of the text. free: only states, joins and `after` order them. */
  readonly order: 'written' | 'free';
  readonly stints: readonly Stint[];
  readonly joins: readonly Join[];
  readonly span: Span;
}

export interface Stint {
  /** `task/stint`, unique in the campaign. */
  readonly key: string;
  readonly id: string;
  readonly task: string;
  readonly title: string;
  readonly roles: readonly Role[];
  readonly steps: readonly Step[];
  readonly duration: StintDuration;
  /** Written exceptions, beside what the verbs imply. */
  readonly needs: readonly WrittenNeed[];
  readonly leaves: readonly WrittenLeave[];
  readonly windowUses: readonly WindowUse[];
  readonly after: readonly After[];
  /** Requests that must be set and verified throughout, beside those that the hardware demands. */
  readonly under: readonly string[];
  /** The reader must talk it through without a break: takes the voice loop for its whole length. */
  readonly voice: boolean;
  /** What a person should look at before it: text for cards. */
  readonly caution: string | null;
  /** Template it came from, e.g. "swap-box"; null when written out. */
  readonly template: string | null;
  readonly span: Span;
}

/**
 * One body that the stint needs, over a range of its steps. lead does the steps; partner helps; arm holds or carries;
 * rider is a lead or partner standing on the arm's plate (`on` = arm id).
 */
export interface Role {
  readonly name: 'lead' | 'partner' | 'arm';
  /** Person ids (or arm ids for `arm`) that may fill it; one: fixed. Sorted as in `people`. */
  readonly candidates: readonly string[];
  /** Place (for an arm: pose) at the start and at the end of the role; they differ only for rides and arm moves. */
  readonly at: string;
  readonly to: string;
  /** null: on structure. An arm id: on that arm's plate at the start/end. Mounting has startOn null and endOn set. */
  readonly startOn: string | null;
  readonly endOn: string | null;
  /** Foot restraint (hardware id) the person works from; null: hand-held and tethered. */
  readonly restraint: string | null;
  /** Steps [fromStep, toStep); the whole stint is [0, steps.length]. */
  readonly fromStep: number;
  readonly toStep: number;
  readonly span: Span;
}

/** One sentence: verb, hardware, counts. */
export interface Step {
  readonly verb: string;
  readonly objects: readonly string[];
  /** Prepositions: from=, in=, to=, with= (tool), onto=… resolved to ids. */
  readonly from: string | null;
  readonly to: string | null;
  readonly tool: string | null;
  readonly by: 'lead' | 'partner' | 'arm';
  /** Overrides of the kind's figures; null: the kind's own. */
  readonly turns: number | null;
  readonly torqueNm: number | null;
  readonly agreedS: number | null;
  readonly settings: string | null;
  readonly note: string | null;
  readonly caution: string | null;
  /** Spoken: what the crew says when done; what they wait to hear before it. */
  readonly say: string | null;
  readonly hear: string | null;
  /** This step ends at a safe stop even if the kinds cannot tell; or never does. null: inferred. */
  readonly safeStop: boolean | null;
  readonly span: Span;
}

/** Three figures kept apart: planning figure, spread, bounds. All in seconds. */
export interface StintDuration {
  /** What reviewers signed: what the plan uses. */
  readonly agreedS: number;
  /** 10th, 50th, 90th percentile; null where nothing is known. */
  readonly spread: { readonly lowS: number; readonly likelyS: number; readonly highS: number } | null;
  /** What proofs use. */
  readonly boundsS: readonly [number, number];
  /** stated: minutes in the text. three-figures: low/likely/high. samples: from records. steps: summed from the kinds' figures. */
  readonly basis: 'stated' | 'three-figures' | 'samples' | 'steps';
  /** Planning figure by step; sums to agreedS. */
  readonly stepsS: readonly number[];
  readonly evidence: readonly DurationSample[];
  readonly span: Span;
}
export interface DurationSample {
  readonly durationS: number;
  readonly where: 'tank' | 'rig' | 'simulator' | 'flight';
  readonly who: string | null;
  readonly when: string | null;
  readonly conditions: string | null;
  readonly span: Span;
}

export interface WrittenNeed {
  /** State variable id, see hardware/state-variable.ts. */
  readonly variable: string;
  readonly allowed: readonly string[];
  readonly when: 'start' | 'during' | 'end';
  readonly span: Span;
}
export interface WrittenLeave {
  readonly variable: string;
  readonly value: string;
  readonly at: 'start' | 'end';
  readonly span: Span;
}

export interface WindowUse {
  readonly window: string;
  /** inside: the part lies within one interval. outside: it meets none. */
  readonly mode: 'inside' | 'outside';
  readonly part: 'whole' | 'start' | 'steps';
  readonly fromStep: number;
  readonly toStep: number;
  /** A wish: costs nothing but a note. */
  readonly prefers: boolean;
  readonly span: Span;
}

/** This stint starts at least `leastS` after (and at most `mostS` after) the end of `stint`, where both are planned. */
export interface After {
  /** Stint key. */
  readonly stint: string;
  readonly leastS: number;
  readonly mostS: number | null;
  readonly span: Span;
}

export interface Join {
  readonly id: string;
  readonly title: string;
  readonly task: string;
  /** The stint whose end (or step) releases; and the one that waits for it. Stint keys. */
  readonly releases: string;
  readonly waits: string;
  /** Who says it, who waits: person or arm ids, or null for the roles' own. */
  readonly says: string | null;
  readonly listens: string | null;
  readonly span: Span;
}

// ---- hardware ------------------------------------------------------------------------------------------------------------

export interface Hardware {
  readonly id: string;
  readonly title: string;
  /** Kind id in the library. */
  readonly kind: string;
  /** Where it is at the campaign's start. */
  readonly at: Location;
  /** What it belongs to: the box that a bolt fastens or a connector feeds; null: structure. */
  readonly of: string | null;
  /** Initial value per aspect of the kind; an aspect not stated is 'unknown'. */
  readonly initial: Readonly<Record<string, string>>;
  readonly massKg: number | null;
  /** Load class id of the vehicle for carrying it; null: small, clips to the suit and does not slow travel. */
  readonly loadClass: string | null;
  /** Requests that must be set and verified before its hazardous verbs. */
  readonly controls: readonly string[];
  readonly torqueNm: number | null;
  readonly turns: number | null;
  /** Tool kinds or ids that fit; empty: the kind's own default. */
  readonly toolFits: readonly string[];
  /** For tools: torque range; for bags: how many items it takes; by property name of the kind. */
  readonly properties: Readonly<Record<string, number | string | boolean>>;
  /** Restraint settings by name, e.g. {"roll": "30 deg"}. */
  readonly settings: Readonly<Record<string, string>>;
  readonly span: Span;
}

export type Location =
  | { readonly kind: 'place'; readonly id: string }
  /** Inside a bag, seated in a socket, fastened on a box. */
  | { readonly kind: 'hardware'; readonly id: string }
  | { readonly kind: 'person'; readonly id: string }
  | { readonly kind: 'arm'; readonly id: string };

// ---- vehicle ------------------------------------------------------------------------------------------------------------

export interface Vehicle {
  readonly id: string;
  readonly title: string;
  readonly places: readonly Place[];
  readonly rails: readonly Rail[];
  readonly loadClasses: readonly LoadClass[];
  /** Place id outside the hatch where passages start and end. null at level 0 (no places given). */
  readonly hatch: string | null;
  readonly span: Span;
}
export interface Place {
  readonly id: string;
  readonly title: string;
  /** Colour family on the home chart, labelled. */
  readonly family: string;
  /** Vehicle frame, metres; null: not given. */
  readonly positionM: Vector3 | null;
  /** Where one stands to look at it, vehicle frame, metres; null: not given. */
  readonly seenFromM: Vector3 | null;
  /** Window set that says when this place is lit; null: not given. */
  readonly light: string | null;
  readonly keepOut: boolean;
  readonly span: Span;
}
/** A hand-over-hand way between two places, both ways. */
export interface Rail {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Planning figure for an unladen person of pace 1. */
  readonly durationS: number;
  /** For the tether; null: not given. */
  readonly lengthM: number | null;
  /** Passable only while these hold. */
  readonly openWhile: readonly Condition[];
  /** Load class ids that do not fit here. */
  readonly refuses: readonly string[];
  /** Place where the tether runs through a fairlead on this rail; null: none. */
  readonly fairlead: string | null;
  readonly span: Span;
}
export interface Condition {
  readonly variable: string;
  readonly allowed: readonly string[];
  readonly span: Span;
}
export interface LoadClass {
  readonly id: string;
  readonly title: string;
  /** Multiplies travel time. */
  readonly factor: number;
  /** Both hands: nothing else may be carried. */
  readonly fillsHands: boolean;
  readonly span: Span;
}

// ---- limits, outside world ---------------------------------------------------------------------------------------------------

/** The operator's limits. None has a default: null means not stated, and what rests on it cannot be claimed. */
export interface Limits {
  readonly homeWithinS: number | null;
  readonly partnerWithinS: number | null;
  readonly gloveCheckEveryS: number | null;
  readonly padCheckEveryS: number | null;
  readonly tetherSwapS: number | null;
  readonly restraintIngressS: number | null;
  readonly restraintEgressS: number | null;
  readonly reactionS: number | null;
  /** Factors on the planning figures of moves, climbs, transfers and passages, at the quickest and at the slowest. */
  readonly travelSpread: readonly [least: number, most: number] | null;
  /** Margin wanted between both in and the wall. */
  readonly marginS: number | null;
  readonly span: Span | null;
}

export interface Request {
  readonly id: string;
  readonly title: string;
  readonly owner: string;
  /** How many independent inhibits it sets. */
  readonly inhibits: number;
  /** How long before first use it must be asked, set, and how long verifying takes. */
  readonly setLeadS: number;
  readonly verifyS: number;
  readonly clearS: number;
  /** Longest it may be held; null: no limit stated. */
  readonly longestHoldS: number | null;
  readonly status: 'draft' | 'asked' | 'agreed' | 'refused';
  /** UTC window sets in which it can be in force; null: any time. */
  readonly window: string | null;
  readonly span: Span;
}

/** Something outside the plan that changes hardware, at a known instant. */
export interface OutsideEvent {
  readonly id: string;
  readonly title: string;
  readonly atUtcMs: number;
  readonly agreed: boolean;
  readonly leaves: readonly { readonly variable: string; readonly value: string; readonly span: Span }[];
  readonly span: Span;
}

export interface Clock {
  readonly id: string;
  readonly title: string;
  readonly kind: 'difference' | 'budget';
  readonly limitS: number;
  /** most: stop − start ≤ limit. least: stop − start ≥ limit. */
  readonly sense: 'most' | 'least';
  readonly onStop: 'reset' | 'accumulate';
  readonly start: StateChange;
  readonly stop: StateChange;
  readonly span: Span;
}
/** What is known of a unit that may stand without power, and the clock that counts it. */
export interface UnitTemperature {
  readonly hardware: string;
  readonly clock: string;
  readonly unit: UnpoweredUnit;
  /** What follows from it. */
  readonly limit: UnpoweredLimit;
  readonly source: string;
  readonly span: Span;
}
/** The band of temperatures that a surface may have when a glove touches it. */
export interface SurfaceTemperature {
  readonly hardware: string;
  readonly leastK: number;
  readonly mostK: number;
  readonly source: string;
  readonly span: Span;
}
/** The variable takes one of `values`, having had another value before. */
export interface StateChange {
  readonly variable: string;
  readonly values: readonly string[];
  readonly span: Span;
}

export interface WindowSet {
  readonly id: string;
  readonly title: string;
  /** Disjoint, sorted, half-open, UTC milliseconds; the pad is not yet applied. */
  readonly intervals: readonly (readonly [number, number])[];
  /** Shrinks for inside, widens for outside. */
  readonly padS: number;
  /** Drawn on the home chart as: night tone, coverage gap hatching, or a plain band. */
  readonly shownAs: 'night' | 'gap' | 'band';
  /** Where the figures come from. null: not said. */
  readonly source: string | null;
  /** Absent: the intervals are written in the text. */
  readonly computed?: ComputedWindow;
  readonly span: Span;
}

export interface Gate {
  readonly id: string;
  readonly title: string;
  /** Before this stint. */
  readonly before: string;
  readonly caller: string;
  readonly latestPetS: number | null;
  readonly conditions: readonly string[];
  readonly onNo: string;
  /** Task ids and stint keys given up on "no", beside the stint that it opens. */
  readonly drops: readonly string[];
  readonly span: Span;
}

export interface Response {
  readonly id: string;
  readonly title: string;
  readonly trigger: string;
  /** Kind id, stint key, or null for anywhere. */
  readonly appliesTo: { readonly kind: string } | { readonly stint: string } | null;
  readonly steps: readonly Step[];
  readonly duration: { readonly lowS: number; readonly likelyS: number; readonly highS: number } | null;
  /** Hardware ids, or kinds of which any piece will do. */
  readonly kit: readonly string[];
  readonly leaves: readonly { readonly variable: string; readonly value: string; readonly span: Span }[];
  /** When it has not worked: value of the first aspect of the piece in hand; null: not stated. */
  readonly leavesIt: string | null;
  /** What follows at once; null: not stated. */
  readonly leadsTo: 'go-on' | 'terminate' | 'abort' | 'assist' | null;
  readonly probability: number | null;
  readonly span: Span;
}

export interface CutOrder {
  readonly eva: string;
  /** Task ids, first dropped first. */
  readonly tasks: readonly string[];
  readonly span: Span;
}

/** What a person fixed by hand. The planner obeys and can tell the price. */
export type Pin =
  | {
      readonly kind: 'person';
      readonly stint: string;
      readonly role: 'lead' | 'partner';
      readonly person: string;
      readonly span: Span;
    }
  | { readonly kind: 'start'; readonly stint: string; readonly petS: number; readonly span: Span }
  | { readonly kind: 'order'; readonly first: string; readonly then: string; readonly span: Span }
  | { readonly kind: 'eva'; readonly task: string; readonly eva: string; readonly span: Span }
  | { readonly kind: 'out'; readonly task: string; readonly span: Span };

export interface Waiver {
  readonly rule: string;
  /** Stint key, hardware, request, task or EVA id it is limited to. */
  readonly of: string;
  readonly reason: string;
  readonly by: string;
  /** Expires at this instant; null is refused by the reader. */
  readonly untilUtcMs: number;
  readonly span: Span;
}
