/** What is worked out from the document, each with the revision that it is of: older than the document means stale. */
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { Problem } from '@handrail/eva/campaign/problem/problem';
import type { Finding } from '@handrail/eva/finding/finding';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import type { Binding } from '@handrail/eva/timeline/binding-chain';
import type { Margin } from '@handrail/eva/timeline/margins';
import { createStore } from 'zustand/vanilla';

export interface Opening {
  /** null: the text has errors. */
  readonly campaign: Campaign | null;
  readonly hardware: HardwareModel | null;
  readonly problems: readonly Problem[];
  readonly skyFault: string | null;
  readonly levelSentence: string | null;
}
export interface EvaJudged {
  readonly verdict: string;
  readonly margins: readonly Margin[];
  readonly chart: HomeChartData;
  readonly bindings: readonly (readonly [string, readonly Binding[]])[];
}
export interface Judged {
  readonly findings: readonly Finding[];
  readonly evas: ReadonlyMap<string, EvaJudged>;
  /** Ways home are in the charts. */
  readonly hasWaysHome: boolean;
  readonly tookMs: number;
}

export interface Result<T> {
  /** Revision of the document that `value` is of; -1: none yet. */
  readonly revision: number;
  readonly value: T | null;
  readonly isRunning: boolean;
  /** In words; null: it went well. */
  readonly failed: string | null;
}

export interface DerivedState {
  readonly opening: Result<Opening>;
  readonly judged: Result<Judged>;
}

export function nothingYet<T>(): Result<T> {
  return { revision: -1, value: null, isRunning: false, failed: null };
}

export const derivedStore = createStore<DerivedState>()(() => ({ opening: nothingYet(), judged: nothingYet() }));
