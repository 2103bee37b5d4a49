/** One thing that a person can do: the same object serves button, key, menu and palette. One action = one file or one table of a kind. */
export interface Action {
  readonly id: string;
  /** As a button or palette says it. */
  readonly title: string;
  readonly group: 'Document' | 'Plan' | 'Stint' | 'Chart' | 'View' | 'Help';
  /** "mod+z" (Ctrl, on a Mac Cmd), "alt+ArrowRight", "g f" is not used: one stroke each. */
  readonly keys?: readonly string[];
  /** Works while a person types too. */
  readonly evenWhileTyping?: boolean;
  readonly isPossible: () => boolean;
  readonly run: () => void;
}

export function defineAction(action: Action): Action {
  return action;
}

/** How a stroke is written on a key cap. */
export function keyWords(stroke: string): string {
  const isMac = navigator.platform.startsWith('Mac');
  return stroke
    .split('+')
    .map((part) => {
      if (part === 'mod') return isMac ? '⌘' : 'Ctrl';
      if (part === 'shift') return 'Shift';
      if (part === 'alt') return isMac ? '⌥' : 'Alt';
      return (
        { ArrowLeft: '←', ArrowRight: '→', ArrowUp: '↑', ArrowDown: '↓', Escape: 'Esc', ' ': 'Space' }[part] ??
        part.toUpperCase()
      );
    })
    .join(' ');
}

/** The stroke of an event, as actions write it. */
export function strokeOf(event: KeyboardEvent): string {
  const parts: string[] = [];
  if (event.ctrlKey || event.metaKey) parts.push('mod');
  if (event.altKey) parts.push('alt');
  // Shift is in the sign itself where it makes another sign: "?" is "?".
  const isSign = event.key.length === 1 && !/[a-z]/i.test(event.key);
  if (event.shiftKey && !isSign) parts.push('shift');
  parts.push(event.key.length === 1 ? event.key.toLowerCase() : event.key);
  return parts.join('+');
}
