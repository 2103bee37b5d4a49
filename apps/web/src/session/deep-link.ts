/** The session as the address of the page, and back. */
import { formatPet, parsePet } from '@handrail/quantity/time';
import { look, type Selection, sessionStore, type SessionState, VIEWS } from './session-store.ts';

const SELECTABLE = new Set<Selection['what']>(['stint', 'place', 'person', 'arm', 'item', 'request', 'task']);

export function linkOf(campaignId: string | null, state: SessionState): string {
  const asked = new URLSearchParams();
  if (state.view !== 'plan') asked.set('view', state.view);
  if (state.evaId !== null) asked.set('eva', state.evaId);
  if (state.minuteS !== 0) asked.set('at', formatPet(state.minuteS));
  if (state.selection !== null) asked.set('pick', `${state.selection.what}:${state.selection.id}`);
  if (state.timeMode !== 'pet') asked.set('time', state.timeMode);
  if (state.arrangement !== 'home') asked.set('rows', 'orbits');
  if (state.isTwinShown) asked.set('chart', 'table');
  if (state.isDrawerOpen) asked.set('vehicle', 'open');
  if (state.line !== null) asked.set('line', String(state.line));
  if (state.page !== null) asked.set('page', state.page);
  const query = asked.toString();
  return `/${campaignId === null ? '' : `campaigns/${encodeURIComponent(campaignId)}`}${query === '' ? '' : `?${query}`}`;
}

export function campaignOfPath(path: string): string | null {
  const found = /^\/campaigns\/([^/?]+)/.exec(path);
  return found === null ? null : decodeURIComponent(found[1] ?? '');
}

/** What the address says and can be read; the rest keeps its default. */
export function stateOfLink(query: string): Partial<SessionState> {
  const asked = new URLSearchParams(query);
  const view = asked.get('view');
  const at = asked.get('at');
  const [what, ...id] = (asked.get('pick') ?? '').split(':');
  const line = Number(asked.get('line'));
  return {
    view: VIEWS.find(([one]) => one === view)?.[0] ?? 'plan',
    evaId: asked.get('eva'),
    minuteS: (at === null ? null : parsePet(at)) ?? 0,
    selection: SELECTABLE.has(what as Selection['what']) ? { what: what as Selection['what'], id: id.join(':') } : null,
    timeMode: asked.get('time') === 'utc' ? 'utc' : 'pet',
    arrangement: asked.get('rows') === 'orbits' ? 'orbits' : 'home',
    isTwinShown: asked.get('chart') === 'table',
    isDrawerOpen: asked.get('vehicle') === 'open',
    line: Number.isInteger(line) && line > 0 ? line : null,
    page: asked.get('page'),
  };
}

/** Keeps the address in step with the session, and the session with the browser's back and forward. */
export function followAddress(campaignOf: () => string | null): void {
  let due: ReturnType<typeof setTimeout> | undefined;
  sessionStore.subscribe((now, was) => {
    const link = linkOf(campaignOf(), now);
    if (link === `${location.pathname}${location.search}`) return;
    // Another view or EVA is a step that one can go back from; a moved minute is not.
    if (now.view !== was.view || now.evaId !== was.evaId || now.page !== was.page) history.pushState(null, '', link);
    else {
      clearTimeout(due);
      due = setTimeout(() => history.replaceState(null, '', linkOf(campaignOf(), sessionStore.getState())), 200);
    }
  });
  window.addEventListener('popstate', () => look(stateOfLink(location.search)));
}
