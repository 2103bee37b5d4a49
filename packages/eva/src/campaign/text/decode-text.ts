/** Bytes to text, with the mistakes that a person can mend: not UTF-8, not text at all, far too large. */
import type { ProblemList } from '../problem/problem.ts';
import type { CampaignFile } from './source-file.ts';

/** A 300-stint campaign is about 0.2 MB; a file above this is something else. */
export const LARGEST_FILE_CHARACTERS = 2_000_000;

/** The text; null (with a problem) when it cannot be a campaign. */
export function decodeText(file: CampaignFile, problems: ProblemList): string | null {
  const place = (line: number, column: number) => ({ file: file.name, line, column, length: 0 });
  if (file.text.length > LARGEST_FILE_CHARACTERS) {
    problems.add('too-large', place(1, 1), `this file has ${(file.text.length / 1e6).toFixed(1)} million characters`, {
      expected: `at most ${LARGEST_FILE_CHARACTERS / 1e6} million; split it into several files`,
    });
    return null;
  }
  let text: string;
  if (typeof file.text === 'string') text = file.text;
  else {
    const decoded = decodeUtf8(file.text);
    const lines = decoded.text.split('\n');
    if (decoded.badByte !== null) {
      const binary = file.text.includes(0);
      problems.add(
        binary ? 'not-text' : 'not-utf-8',
        place(lines.length, (lines.at(-1) ?? '').length + 1),
        binary
          ? 'this is not a text file'
          : `byte ${decoded.badByte + 1} of this file (0x${(file.text[decoded.badByte] ?? 0).toString(16)}) is not UTF-8`,
        { expected: binary ? 'a campaign text in UTF-8' : 'a file saved as UTF-8' },
      );
      return null;
    }
    text = decoded.text;
  }
  const control = firstControl(text);
  if (control >= 0) {
    const lines = text.slice(0, control).split('\n');
    problems.add('not-text', place(lines.length, (lines.at(-1) ?? '').length + 1), 'this is not a text file', {
      expected: 'a campaign text in UTF-8',
    });
    return null;
  }
  return text;
}

/** Index of the first NUL: it stands in no text that a person wrote; -1: none. */
function firstControl(text: string): number {
  return text.indexOf('\0');
}

/** Well-formed UTF-8 only (RFC 3629 section 4): the text, or the text before the first byte that is not. */
function decodeUtf8(bytes: Uint8Array): { readonly text: string; readonly badByte: number | null } {
  const parts: string[] = [];
  let part = '';
  let at = 0;
  const done = (badByte: number | null) => ({ text: parts.join('') + part, badByte });
  while (at < bytes.length) {
    const lead = bytes[at] as number;
    const length = lead < 0x80 ? 1 : lead < 0xc2 ? 0 : lead <= 0xdf ? 2 : lead <= 0xef ? 3 : lead <= 0xf4 ? 4 : 0;
    if (length === 0) return done(at);
    let point = length === 1 ? lead : lead & (0xff >> (length + 1));
    for (let i = 1; i < length; i++) {
      const next = bytes[at + i] ?? 0;
      const least = i > 1 ? 0x80 : lead === 0xe0 ? 0xa0 : lead === 0xf0 ? 0x90 : 0x80;
      const most = i > 1 ? 0xbf : lead === 0xed ? 0x9f : lead === 0xf4 ? 0x8f : 0xbf;
      if (next < least || next > most) return done(at);
      point = (point << 6) | (next & 0x3f);
    }
    part += String.fromCodePoint(point);
    if (part.length > 4096) {
      parts.push(part);
      part = '';
    }
    at += length;
  }
  return done(null);
}
