import { useStore } from 'zustand';
import { type DerivedState, derivedStore } from '../../derived/derived-store.ts';
import { type DocumentState, documentStore } from '../../document/document-store.ts';
import { type PlanRunState, planRunStore } from '../../planning/plan-run-store.ts';
import { type ServerState, serverStore } from '../../server-link/server-store.ts';
import { type SessionState, sessionStore } from '../../session/session-store.ts';

export function useDocument<T>(pick: (state: DocumentState) => T): T {
  return useStore(documentStore, pick);
}
export function useSession<T>(pick: (state: SessionState) => T): T {
  return useStore(sessionStore, pick);
}
export function useDerived<T>(pick: (state: DerivedState) => T): T {
  return useStore(derivedStore, pick);
}
export function usePlanRun<T>(pick: (state: PlanRunState) => T): T {
  return useStore(planRunStore, pick);
}
export function useServer<T>(pick: (state: ServerState) => T): T {
  return useStore(serverStore, pick);
}
