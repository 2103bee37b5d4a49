/** A search for a plan that a person asked for: how far it is, what it offers. Nothing of it is in the document until it is taken. */
import type { Finding } from '@handrail/eva/finding/finding';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { createStore } from 'zustand/vanilla';
import type { Judged } from '../derived/derived-store.ts';

export interface PlanRunState {
  readonly isRunning: boolean;
  readonly words: string;
  /** Best so far, or the answer; null: none yet. */
  readonly offered: Timeline | null;
  /** The offer as charts and findings. */
  readonly judged: Judged | null;
  readonly isFinal: boolean;
  /** Why nothing fits, when nothing does; what else planning noticed. */
  readonly findings: readonly Finding[];
}

export const NO_RUN: PlanRunState = {
  isRunning: false,
  words: '',
  offered: null,
  judged: null,
  isFinal: false,
  findings: [],
};

export const planRunStore = createStore<PlanRunState>()(() => NO_RUN);
