import { useReducer } from 'react';
import { keyWords } from '../../actions/action.ts';
import { actionNamed } from '../../actions/all-actions.ts';
import { useDerived, useDocument, usePlanRun, useServer, useSession } from './use-stores.ts';

/** A button that does what the action of this name does, with its key beside its words. */
export function ActionButton({
  id,
  words,
  isPlain = false,
}: {
  readonly id: string;
  readonly words?: string;
  readonly isPlain?: boolean;
}) {
  const action = actionNamed(id);
  // What is possible depends on all of them; each subscription asks again when its store changes.
  useDocument((state) => state.revision);
  useDocument((state) => state.saved);
  useSession((state) => state.selection);
  useSession((state) => state.view);
  useDerived((state) => state.opening);
  usePlanRun((state) => state.isRunning);
  usePlanRun((state) => state.offered);
  useServer((state) => state.session);
  const [, again] = useReducer((count: number) => count + 1, 0);
  const key = action.keys?.[0];
  return (
    <button
      type="button"
      disabled={!action.isPossible()}
      title={key === undefined ? action.title : `${action.title} (${keyWords(key)})`}
      aria-keyshortcuts={key?.replace('mod', 'Control')}
      onClick={() => {
        action.run();
        again();
      }}
    >
      {words ?? action.title}
      {key === undefined || isPlain ? null : <kbd aria-hidden="true">{keyWords(key)}</kbd>}
    </button>
  );
}
