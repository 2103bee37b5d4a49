import { derivedStore } from '../derived/derived-store.ts';
import { leaveOffer, runPlan, stopPlan, takeOffer } from '../planning/run-plan.ts';
import { planRunStore } from '../planning/plan-run-store.ts';
import { look, sessionStore } from '../session/session-store.ts';
import { defineAction } from './action.ts';

const canPlan = (): boolean =>
  derivedStore.getState().opening.value?.campaign != null && !planRunStore.getState().isRunning;
const isOffered = (): boolean => planRunStore.getState().offered !== null;

export const planActions = [
  defineAction({
    id: 'plan-all',
    title: 'Plan the campaign',
    group: 'Plan',
    keys: ['mod+Enter'],
    isPossible: canPlan,
    run: () => {
      look({ view: 'plan' });
      void runPlan(null);
    },
  }),
  defineAction({
    id: 'plan-eva',
    title: 'Plan this EVA alone',
    group: 'Plan',
    keys: ['mod+shift+Enter'],
    isPossible: () => canPlan() && sessionStore.getState().evaId !== null,
    run: () => {
      look({ view: 'plan' });
      void runPlan(sessionStore.getState().evaId);
    },
  }),
  defineAction({
    id: 'stop-planning',
    title: 'Stop planning, keep the best so far',
    group: 'Plan',
    keys: ['mod+.'],
    evenWhileTyping: true,
    isPossible: () => planRunStore.getState().isRunning,
    run: stopPlan,
  }),
  defineAction({
    id: 'take-plan',
    title: 'Take the offered plan',
    group: 'Plan',
    keys: ['mod+alt+Enter'],
    isPossible: isOffered,
    run: takeOffer,
  }),
  defineAction({
    id: 'leave-plan',
    title: 'Leave the offered plan',
    group: 'Plan',
    isPossible: isOffered,
    run: leaveOffer,
  }),
] as const;
