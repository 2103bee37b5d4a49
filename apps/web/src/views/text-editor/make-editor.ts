/**
 * The text as an editor. It holds no truth of its own: what is typed goes to the document as a change, and what changes in the
 * document by other hands comes in here. Undo and redo are the document's, over all views.
 */
import { autocompletion, closeBrackets, type CompletionContext, type CompletionResult } from '@codemirror/autocomplete';
import { defaultKeymap, indentWithTab } from '@codemirror/commands';
import { bracketMatching, foldGutter, foldKeymap, indentOnInput, indentUnit } from '@codemirror/language';
import { lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint';
import { highlightSelectionMatches, search, searchKeymap } from '@codemirror/search';
import { Annotation, EditorState } from '@codemirror/state';
import {
  drawSelection,
  EditorView,
  highlightActiveLine,
  highlightActiveLineGutter,
  keymap,
  lineNumbers,
} from '@codemirror/view';
import type { TextEdit } from '@handrail/eva/campaign/edit/text-edit';
import { derivedStore } from '../../derived/derived-store.ts';
import { change, documentStore, redo, undo } from '../../document/document-store.ts';
import { editBetween, FILE_NAME } from '../../document/working-copy.ts';
import { mayWrite, serverStore } from '../../server-link/server-store.ts';
import { checkingWorker } from '../../workers/connect.ts';
import { editorTheme } from './editor-theme.ts';
import { kdlLanguage } from './kdl-language.ts';
import { textMarks } from './text-marks.ts';

/** Came from the document: it must not go back there. */
const fromDocument = Annotation.define<boolean>();

export function makeEditor(parent: HTMLElement): { readonly view: EditorView; readonly close: () => void } {
  const view = new EditorView({
    parent,
    state: EditorState.create({
      doc: documentStore.getState().copy.text,
      extensions: [
        lineNumbers(),
        lintGutter(),
        foldGutter(),
        highlightActiveLine(),
        highlightActiveLineGutter(),
        drawSelection(),
        indentOnInput(),
        indentUnit.of('    '),
        bracketMatching(),
        closeBrackets(),
        highlightSelectionMatches(),
        search({ top: true }),
        kdlLanguage,
        editorTheme,
        autocompletion({ override: [complete], icons: false }),
        EditorState.readOnly.of(!mayWrite(serverStore.getState())),
        EditorView.contentAttributes.of({ 'aria-label': 'Campaign text', tabindex: '0' }),
        keymap.of([
          { key: 'Mod-z', run: () => undo() !== null, preventDefault: true },
          { key: 'Mod-y', mac: 'Mod-Shift-z', run: () => redo() !== null, preventDefault: true },
          { key: 'Mod-Shift-z', run: () => redo() !== null, preventDefault: true },
          ...searchKeymap,
          ...lintKeymap,
          ...foldKeymap,
          // A key of the whole page stays the page's.
          ...defaultKeymap.filter(({ key }) => key !== 'Mod-Enter'),
          indentWithTab,
        ]),
        EditorView.updateListener.of((update) => {
          if (!update.docChanged || update.transactions.some((one) => one.annotation(fromDocument) === true)) return;
          const { text } = documentStore.getState().copy;
          if (text.includes('\r')) {
            // The editor counts a line end as one character: the text keeps its own line ends.
            const edit = editBetween(text, update.state.doc.toString().replaceAll('\n', '\r\n'));
            change('Typing', { edits: edit === null ? [] : [edit] }, true);
            return;
          }
          const edits: TextEdit[] = [];
          update.changes.iterChanges((fromA, toA, _fromB, _toB, inserted) => {
            const remove = update.startState.sliceDoc(fromA, toA);
            edits.unshift({ file: FILE_NAME, at: fromA, remove, insert: inserted.toString() });
          });
          change('Typing', { edits }, true);
        }),
      ],
    }),
  });
  const stops = [
    documentStore.subscribe((now, was) => {
      if (now.copy.text === was.copy.text) return;
      const edit = editBetween(view.state.doc.toString(), now.copy.text.replaceAll('\r\n', '\n'));
      if (edit === null) return;
      view.dispatch({
        changes: { from: edit.at, to: edit.at + edit.remove.length, insert: edit.insert },
        annotations: fromDocument.of(true),
      });
    }),
    derivedStore.subscribe((now, was) => {
      if (now.opening.value !== was.opening.value || now.judged.value !== was.judged.value) mark(view);
    }),
  ];
  mark(view);
  return {
    view,
    close: () => {
      for (const stop of stops) stop();
      view.destroy();
    },
  };
}

/** Places of what was found are of the text that was read: while it is being read again, the old marks move with the text. */
function mark(view: EditorView): void {
  const derived = derivedStore.getState();
  if (derived.opening.revision !== documentStore.getState().revision) return;
  view.dispatch(setDiagnostics(view.state, [...textMarks(view.state.doc, derived)]));
}

async function complete(context: CompletionContext): Promise<CompletionResult | null> {
  const before = context.matchBefore(/[\w:-]*/);
  const isEmpty = before === null || before.from === before.to;
  if (isEmpty && !context.explicit && context.matchBefore(/[=" ]/) === null) return null;
  if (isEmpty && !context.explicit && context.matchBefore(/^\s*/)?.to === context.pos) return null;
  const found = await checkingWorker().complete(context.state.doc.toString(), context.pos);
  if (context.aborted || found.items.length === 0) return null;
  return {
    from: found.from,
    to: found.to,
    validFor: /^[\w:-]*$/,
    options: found.items.map(({ text, kind, about }) => ({
      label: text,
      detail: kind === 'word' ? about : `${kind} · ${about}`,
      type: kind,
    })),
  };
}

/** Puts the cursor at the beginning of a line and shows it in the middle. */
export function goToLine(view: EditorView, number: number): void {
  const line = view.state.doc.line(Math.min(Math.max(1, number), view.state.doc.lines));
  view.dispatch({ selection: { anchor: line.from }, effects: EditorView.scrollIntoView(line.from, { y: 'center' }) });
  view.focus();
}
