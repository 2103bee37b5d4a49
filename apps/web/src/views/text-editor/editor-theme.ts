import { EditorView } from '@codemirror/view';

export const editorTheme = EditorView.theme({
  '&': { height: '100%', backgroundColor: 'var(--panel)', color: 'var(--ink)', fontSize: '13.5px' },
  '.cm-scroller': { fontFamily: '"IBM Plex Mono", "DejaVu Sans Mono", Consolas, Menlo, monospace', lineHeight: '1.55' },
  '.cm-content': { caretColor: 'var(--ink)' },
  '.cm-cursor': { borderLeftColor: 'var(--ink)', borderLeftWidth: '2px' },
  '.cm-gutters': { backgroundColor: 'var(--panel)', color: 'var(--soft)', borderRight: '1px solid var(--faint)' },
  '.cm-activeLine': { backgroundColor: 'color-mix(in srgb, var(--faint) 60%, transparent)' },
  '.cm-activeLineGutter': { backgroundColor: 'var(--faint)', color: 'var(--ink)' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': {
    backgroundColor: 'color-mix(in srgb, var(--focus) 28%, transparent) !important',
  },
  '.cm-tooltip': {
    backgroundColor: 'var(--raised)',
    color: 'var(--ink)',
    border: '1px solid var(--line)',
    borderRadius: '6px',
  },
  '.cm-tooltip-autocomplete ul li[aria-selected]': { backgroundColor: 'var(--first)', color: 'var(--panel)' },
  '.cm-tooltip-autocomplete .cm-completionDetail': { fontStyle: 'normal', marginLeft: '1em', opacity: '0.85' },
  '.cm-panels': { backgroundColor: 'var(--panel)', color: 'var(--ink)' },
  '.cm-panel.cm-search label': { fontSize: '13px' },
  '.cm-textfield': { backgroundColor: 'var(--raised)', color: 'var(--ink)', border: '1px solid var(--line)' },
  '.cm-button': { backgroundImage: 'none', backgroundColor: 'var(--raised)', border: '1px solid var(--line)' },
  '.cm-lintRange-error': { backgroundImage: 'none', borderBottom: '2px solid var(--error)' },
  '.cm-lintRange-warning': { backgroundImage: 'none', borderBottom: '2px dashed var(--warning)' },
  '.cm-lintRange-info': { backgroundImage: 'none', borderBottom: '2px dotted var(--unknown)' },
  '.cm-diagnostic': { whiteSpace: 'pre-wrap', maxWidth: '520px' },
  '.cm-diagnostic-error': { borderLeft: '5px double var(--error)' },
  '.cm-diagnostic-warning': { borderLeft: '5px dashed var(--warning)' },
  '.cm-diagnostic-info': { borderLeft: '5px dotted var(--unknown)' },
});
