import { documentStore, hasUnsaved, redo, undo } from '../document/document-store.ts';
import { mayWrite, serverStore } from '../server-link/server-store.ts';
import { look, tell } from '../session/session-store.ts';
import { defineAction } from './action.ts';
import { openBriefing } from './open-briefing.ts';

export const documentActions = [
  defineAction({
    id: 'undo',
    title: 'Undo',
    group: 'Document',
    keys: ['mod+z'],
    isPossible: () => documentStore.getState().past.length > 0,
    run: () => tell(`Undone: ${undo() ?? 'nothing'}`),
  }),
  defineAction({
    id: 'redo',
    title: 'Redo',
    group: 'Document',
    keys: ['mod+shift+z', 'mod+y'],
    isPossible: () => documentStore.getState().future.length > 0,
    run: () => tell(`Done again: ${redo() ?? 'nothing'}`),
  }),
  defineAction({
    id: 'save',
    title: 'Save a version …',
    group: 'Document',
    keys: ['mod+s'],
    evenWhileTyping: true,
    isPossible: () => hasUnsaved(documentStore.getState()) && mayWrite(serverStore.getState()),
    run: () => look({ view: 'versions', page: 'save' }),
  }),
  defineAction({
    id: 'print-briefing',
    title: 'Open the briefing page, to print',
    group: 'Document',
    isPossible: () => documentStore.getState().copy.timeline !== null,
    run: () => void openBriefing(),
  }),
] as const;
