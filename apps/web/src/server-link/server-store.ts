/** How the page stands with its server: who is here, whether it is reached, what waits to be saved, what others did. */
import type { SessionAnswer, VersionWhole } from '@handrail/wire/api/api-types';
import { createStore } from 'zustand/vanilla';

export interface ServerState {
  /** null: not asked yet. */
  readonly session: SessionAnswer | null;
  readonly isReached: boolean;
  readonly saving: 'nothing' | 'running' | 'failed';
  readonly savingWords: string;
  /** A version that somebody else saved while there were changes here: both are shown, nothing is written over. */
  readonly conflict: VersionWhole | null;
  readonly people: readonly { readonly name: string; readonly at: string }[];
  /** Grows when somebody decided on a version: lists of decisions are read again. */
  readonly approvalsSeen: number;
  /** When the working copy was last put by, UTC ms; null: not yet. */
  readonly draftAtMs: number | null;
}

export const serverStore = createStore<ServerState>()(() => ({
  session: null,
  isReached: true,
  saving: 'nothing',
  savingWords: '',
  conflict: null,
  people: [],
  approvalsSeen: 0,
  draftAtMs: null,
}));

export function mayWrite({ session }: ServerState): boolean {
  return session?.mode === 'open' || (session?.user?.roles.includes('planner') ?? false);
}
export function mayApprove({ session }: ServerState): boolean {
  return session?.mode === 'open' || (session?.user?.roles.includes('approver') ?? false);
}
