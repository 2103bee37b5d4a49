/**
 * What a stint does to the hardware, inferred from its sentences: the one reading that the scheduler, the replay and the
 * `show --states` command share as *input*. It says what is needed and left, not when anything happens.
 */
import type { Span } from '../campaign/span.ts';

/**
 * A state variable. Ids: the bare hardware id for the first aspect ("j1"); "id.aspect" for further ones ("pump.power");
 * "id.holder" for where a carried piece is; "request:ID" for requests ("clear" | "in force").
 */
export interface StateVariable {
  readonly id: string;
  readonly title: string;
  readonly values: readonly string[];
  /** 'unknown' satisfies nothing. */
  readonly initial: string;
  readonly about: 'aspect' | 'holder' | 'request';
  /** Hardware or request id. */
  readonly of: string;
}

/**
 * Holder values: "place:ID", "hardware:ID" (bag, socket, box), "person:ID", "arm:ID". In effects a role may stand for the
 * person who will fill it: "role:0" is role index 0 of that stint.
 */
export interface Need {
  readonly variable: string;
  readonly allowed: readonly string[];
  /** Steps [fromStep, toStep) over which it must hold; at-start: [0,0]; at-end: [n,n] after the own writes. */
  readonly when: 'start' | 'during' | 'end';
  readonly fromStep: number;
  readonly toStep: number;
  readonly origin: Origin;
}
export interface Leave {
  readonly variable: string;
  readonly value: string;
  /** Written at the end of this step; -1: at the start of the stint; steps.length: at its end. */
  readonly step: number;
  readonly origin: Origin;
}
/** Exclusive from the start of `fromStep` to the end of `toStep - 1`. */
export interface Hold {
  readonly variable: string;
  readonly fromStep: number;
  readonly toStep: number;
}
/** Why it is there, for a yes or no: "demate j1 (power connector)". */
export interface Origin {
  readonly from: 'verb' | 'written' | 'restraint' | 'control' | 'tool' | 'carry' | 'rail';
  readonly step: number | null;
  readonly words: string;
  readonly span: Span;
}

export interface StintEffects {
  readonly stint: string;
  readonly needs: readonly Need[];
  readonly leaves: readonly Leave[];
  readonly holds: readonly Hold[];
  /** Tools (hardware ids) that must be on the person (or in a bag there) over the steps that use them. */
  readonly tools: readonly { readonly tool: string; readonly steps: readonly number[]; readonly span: Span }[];
  /** Requests that must be set and verified over these steps. */
  readonly controls: readonly {
    readonly request: string;
    readonly fromStep: number;
    readonly toStep: number;
    readonly origin: Origin;
  }[];
  /** Large items in hand at start or end of the stint, by role: the travel to or from it is laden. */
  readonly carriesIn: readonly { readonly role: number; readonly item: string }[];
  readonly carriesOut: readonly { readonly role: number; readonly item: string }[];
  /** What could not be inferred, in words; each is a finding. */
  readonly unknowns: readonly { readonly words: string; readonly span: Span }[];
}

export interface HardwareModel {
  readonly variables: ReadonlyMap<string, StateVariable>;
  /** By stint key. */
  readonly effects: ReadonlyMap<string, StintEffects>;
}
