import { look, sessionStore, VIEWS } from '../session/session-store.ts';
import { defineAction } from './action.ts';

const always = (): boolean => true;
const onPlan = (): boolean => sessionStore.getState().view === 'plan';

export const viewActions = [
  ...VIEWS.map(([view, title], index) =>
    defineAction({
      id: `go-${view}`,
      title: `Go to: ${title}`,
      group: 'View',
      keys: [`alt+${index + 1}`],
      evenWhileTyping: true,
      isPossible: always,
      run: () => look({ view, page: null }),
    }),
  ),
  defineAction({
    id: 'arrangement',
    title: 'Home chart or orbit rows',
    group: 'View',
    keys: ['o'],
    isPossible: onPlan,
    run: () => look({ arrangement: sessionStore.getState().arrangement === 'home' ? 'orbits' : 'home' }),
  }),
  defineAction({
    id: 'vehicle',
    title: 'Open or close the vehicle drawer',
    group: 'View',
    keys: ['v'],
    isPossible: onPlan,
    run: () => look({ isDrawerOpen: !sessionStore.getState().isDrawerOpen }),
  }),
  defineAction({
    id: 'time-mode',
    title: 'Time as PET or UTC',
    group: 'View',
    keys: ['u'],
    isPossible: always,
    run: () => look({ timeMode: sessionStore.getState().timeMode === 'pet' ? 'utc' : 'pet' }),
  }),
  defineAction({
    id: 'theme',
    title: 'Dark, light, or as the system has it',
    group: 'View',
    keys: ['d'],
    isPossible: always,
    run: () => {
      const next = { system: 'dark', dark: 'light', light: 'system' } as const;
      look({ theme: next[sessionStore.getState().theme] });
    },
  }),
  defineAction({
    id: 'why',
    title: 'Why this number? (the one in focus or under the pointer)',
    group: 'Help',
    keys: ['y'],
    isPossible: () => document.querySelector('[data-why]') !== null,
    run: () => {
      const asked =
        document.activeElement?.closest('[data-why]') ??
        document.querySelector('[data-why]:hover') ??
        document.querySelector('[data-testid="sheet"] [data-why]') ??
        document.querySelector('[data-why]');
      if (asked instanceof HTMLElement) asked.click();
    },
  }),
  defineAction({
    id: 'close-why',
    title: 'Close the why',
    group: 'Help',
    keys: ['Escape'],
    isPossible: () => sessionStore.getState().why !== null,
    run: () => look({ why: null }),
  }),
  defineAction({
    id: 'table',
    title: 'The chart as a table',
    group: 'View',
    keys: ['t'],
    isPossible: onPlan,
    run: () => look({ isTwinShown: !sessionStore.getState().isTwinShown }),
  }),
  defineAction({
    id: 'palette',
    title: 'Find an action, stint, place or finding …',
    group: 'Help',
    keys: ['mod+k', '/'],
    isPossible: always,
    run: () => look({ isPaletteOpen: true }),
  }),
  defineAction({
    id: 'keys',
    title: 'Show all keys',
    group: 'Help',
    keys: ['?'],
    isPossible: always,
    run: () => look({ areKeysShown: true }),
  }),
] as const;
