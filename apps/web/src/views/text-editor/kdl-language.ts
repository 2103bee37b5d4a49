/** Colours for the campaign text: what names a node, a property, a value; read line by line, so it also works on broken text. */
import { HighlightStyle, type StreamParser, StreamLanguage, syntaxHighlighting } from '@codemirror/language';
import type { Extension } from '@codemirror/state';
import { tags } from '@lezer/highlight';

interface LineState {
  /** The next word names a node. */
  isName: boolean;
  isInComment: boolean;
}

const WORD = /^[^\s{}();="\\/]+/;

const parser: StreamParser<LineState> = {
  name: 'kdl',
  startState: () => ({ isName: true, isInComment: false }),
  copyState: (state) => ({ ...state }),
  token: (stream, state) => {
    if (state.isInComment) {
      if (stream.skipTo('*/')) {
        stream.match('*/');
        state.isInComment = false;
      } else stream.skipToEnd();
      return 'comment';
    }
    if (stream.sol()) state.isName = true;
    if (stream.eatSpace()) return null;
    if (stream.match('//')) {
      stream.skipToEnd();
      return 'comment';
    }
    if (stream.match('/*')) {
      state.isInComment = true;
      return 'comment';
    }
    if (stream.match('/-')) return 'meta';
    if (stream.match(/^"(?:[^"\\]|\\.)*"?/)) {
      state.isName = false;
      return stream.peek() === '=' ? 'propertyName' : 'string';
    }
    if (stream.match(/^#(?:true|false|null|nan|inf)/)) return 'bool';
    const sign = stream.peek();
    if (sign === '{' || sign === '}' || sign === ';') {
      stream.next();
      state.isName = true;
      return 'brace';
    }
    if (stream.match(/^[-+]?\d[\d_.]*/)) return 'number';
    if (stream.match(WORD)) {
      const wasName = state.isName;
      state.isName = false;
      if (stream.peek() === '=') return 'propertyName';
      return wasName ? 'keyword' : 'variableName';
    }
    stream.next();
    return null;
  },
  languageData: {
    commentTokens: { line: '//', block: { open: '/*', close: '*/' } },
    closeBrackets: { brackets: ['{', '"'] },
  },
  tokenTable: { brace: tags.brace },
};

const colours = HighlightStyle.define([
  { tag: tags.keyword, color: 'var(--first)', fontWeight: '600' },
  { tag: tags.propertyName, color: 'var(--ride)' },
  { tag: tags.string, color: 'var(--good)' },
  { tag: tags.number, color: 'var(--second)' },
  { tag: tags.bool, color: 'var(--second)', fontWeight: '600' },
  { tag: tags.comment, color: 'var(--soft)', fontStyle: 'italic' },
  { tag: tags.meta, color: 'var(--warning)', fontWeight: '600' },
  { tag: tags.brace, color: 'var(--soft)' },
]);

export const kdlLanguage: Extension = [StreamLanguage.define(parser), syntaxHighlighting(colours)];
