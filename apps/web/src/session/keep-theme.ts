/** The theme that a person chose holds on this browser; "system" follows the machine. */
import { look, type SessionState, sessionStore } from './session-store.ts';

const KEY = 'handrail-theme';

export function keepTheme(): void {
  const kept = localStorage.getItem(KEY);
  if (kept === 'light' || kept === 'dark') look({ theme: kept });
  show(sessionStore.getState().theme);
  sessionStore.subscribe((now, was) => {
    if (now.theme === was.theme) return;
    localStorage.setItem(KEY, now.theme);
    show(now.theme);
  });
}

function show(theme: SessionState['theme']): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
}
