/** Text in a terminal of any width: no line is longer than it, and no character is lost. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coloursOf } from '../../../apps/cli/src/terminal/colours.ts';
import { wrapProse } from '../../../apps/cli/src/terminal/output.ts';
import { findingText, problemText } from '../../../apps/cli/src/terminal/message-text.ts';
import { tableText } from '../../../apps/cli/src/terminal/table-text.ts';
import { textWidth, wrapLines, wrapText } from '../../../apps/cli/src/terminal/wrap-text.ts';

const word = fc.stringMatching(/^[a-zA-Z0-9/·—→-]{1,40}$/);
const sentence = fc.array(word, { minLength: 1, maxLength: 25 }).map((words) => words.join(' '));
const letters = (text: string): string => text.replaceAll(/\s/g, '');

describe('wrapping', () => {
  it('keeps every line within the width and every character in order', () => {
    fc.assert(
      fc.property(
        sentence,
        fc.integer({ min: 12, max: 120 }),
        fc.integer({ min: 0, max: 4 }),
        (text, width, indent) => {
          const lines = wrapText(text, width, indent).split('\n');
          expect(lines.slice(1).every((line) => line.length <= width)).toBe(true);
          expect((lines[0] ?? '').length).toBeLessThanOrEqual(width - indent);
          expect(letters(lines.join(''))).toBe(letters(text));
        },
      ),
    );
  });

  it('does not break a word that has room on a line of its own', () => {
    fc.assert(
      fc.property(sentence, fc.integer({ min: 40, max: 90 }), (text, room) => {
        expect(wrapLines(text, room).flatMap((line) => line.split(' '))).toEqual(text.split(' '));
      }),
    );
  });
});

describe('prose for a terminal', () => {
  it('is wrapped under its own indent and two more, and what fits already is left alone', () => {
    fc.assert(
      fc.property(fc.array(sentence, { maxLength: 4 }), fc.integer({ min: 0, max: 6 }), (lines, indent) => {
        const text = lines.map((line) => ' '.repeat(indent) + line).join('\n');
        const wrapped = wrapProse(text, 60);
        expect(
          wrapped.split('\n').every((line) => (line.length <= 60 && line.search(/\S|$/) >= indent) || line === ''),
        ).toBe(true);
        expect(letters(wrapped)).toBe(letters(text));
        expect(wrapProse(wrapped, 60)).toBe(wrapped);
      }),
    );
  });
});

describe('a table', () => {
  it('fits whenever its columns can be made narrow enough, and loses nothing', () => {
    const row = fc.tuple(word, sentence, sentence);
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), fc.integer({ min: 50, max: 140 }), (rows, width) => {
        const text = tableText(['a', 'b', 'c'], rows, { width });
        expect(text.split('\n').every((line) => line.length <= width)).toBe(true);
        const count = (of: string): number => letters(of.replaceAll(/[│─┌┬┐├┼┤└┴┘]/g, '')).length;
        expect(count(text)).toBe(3 + rows.reduce((sum, cells) => sum + count(cells.join('')), 0));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a message', () => {
  const where = { eva: 'one', person: 'EV1', stint: 'look/see', step: 1, petS: 720, span: null };

  it('fits 80 columns and says its id where the head has no room for it', () => {
    fc.assert(
      fc.property(sentence, sentence, sentence, (title, why, mend) => {
        const finding = { rule: 'home/far', severity: 'error', title, where, why, mend, source: 'X 1', waiver: null };
        const text = findingText({ ...finding, severity: 'error' }, 80);
        expect(text.split('\n').every((line) => line.length <= 80)).toBe(true);
        expect(text).toContain('handrail explain home/far');
        for (const part of [title, why, mend]) expect(letters(text)).toContain(letters(part));
      }),
      { numRuns: 60 },
    );
  });

  it('of a broken text fits too', () => {
    const span = { file: 'campaign.kdl', line: 14, column: 9, length: 2 };
    const what = 'there is no hardware "bolt-nine-of-the-cover" in this campaign, nor anything of that kind at bay';
    const text = problemText(
      { code: 'campaign/unknown-id', severity: 'error', span, what, expected: 'a bolt', nearest: 'b4' },
      80,
    );
    expect(text.split('\n').every((line) => line.length <= 80)).toBe(true);
    expect(text).toContain('  at    campaign.kdl:14:9');
    expect(text).toContain('did you mean "b4"?');
  });
});

describe('the terminal', () => {
  it('says its own width; a file is written for 100 columns', () => {
    expect([textWidth(80), textWidth(undefined), textWidth(0), textWidth(10)]).toEqual([80, 100, 100, 40]);
  });

  it('gets colours only where there is one that wants them', () => {
    const red = '\u001b[31merror\u001b[39m';
    expect(coloursOf({ isTTY: true }, { TERM: 'xterm' }).red('error')).toBe(red);
    expect(coloursOf({ isTTY: true }, { TERM: 'xterm', NO_COLOR: '1' }).red('error')).toBe('error');
    expect(coloursOf({ isTTY: true }, { TERM: 'dumb' }).red('error')).toBe('error');
    expect(coloursOf({}, { TERM: 'xterm', CI: '1' }).red('error')).toBe('error');
  });
});
