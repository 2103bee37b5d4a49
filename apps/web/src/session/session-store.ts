/** What this person looks at: selection, minute, view, theme. It is in the address, so that a view can be sent to somebody. */
import { createStore } from 'zustand/vanilla';

export type View = 'plan' | 'text' | 'findings' | 'requests' | 'tables' | 'versions' | 'agree' | 'people' | 'help';

/** In the order in which they are offered and have their keys. */
export const VIEWS: readonly (readonly [view: View, title: string])[] = [
  ['plan', 'Plan'],
  ['text', 'Text'],
  ['findings', 'Findings'],
  ['requests', 'Requests'],
  ['tables', 'Tables'],
  ['versions', 'Versions'],
  ['agree', 'Not yet agreed'],
  ['people', 'People'],
  ['help', 'Help'],
];

export interface Selection {
  readonly what: 'stint' | 'place' | 'person' | 'arm' | 'item' | 'request' | 'task';
  readonly id: string;
}

export interface SessionState {
  readonly view: View;
  readonly evaId: string | null;
  /** Selected minute of the EVA, s of PET. */
  readonly minuteS: number;
  readonly selection: Selection | null;
  readonly timeMode: 'pet' | 'utc';
  readonly theme: 'light' | 'dark' | 'system';
  readonly arrangement: 'home' | 'orbits';
  /** The chart as a table. */
  readonly isTwinShown: boolean;
  readonly isDrawerOpen: boolean;
  /** Line of the text to go to; null: none asked for. */
  readonly line: number | null;
  /** Table or help page that is open. */
  readonly page: string | null;
  readonly isPaletteOpen: boolean;
  readonly areKeysShown: boolean;
  /** The sum behind a number that somebody asked about. */
  readonly why: { readonly of: string; readonly sum: readonly string[]; readonly line: number | null } | null;
  /** One sentence on what just happened, for everybody and for screen readers. */
  readonly notice: string;
}

export const sessionStore = createStore<SessionState>()(() => ({
  view: 'plan',
  evaId: null,
  minuteS: 0,
  selection: null,
  timeMode: 'pet',
  theme: 'system',
  arrangement: 'home',
  isTwinShown: false,
  isDrawerOpen: false,
  line: null,
  page: null,
  isPaletteOpen: false,
  areKeysShown: false,
  why: null,
  notice: '',
}));

export function look(at: Partial<SessionState>): void {
  sessionStore.setState(at);
}

export function tell(notice: string): void {
  sessionStore.setState({ notice });
}
