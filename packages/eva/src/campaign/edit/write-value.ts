/** Values and names as KDL writes them. */
import type { Scalar } from '../text/source-node.ts';

/** Words that KDL keeps for itself. */
const KEPT = new Set(['true', 'false', 'null', 'inf', '-inf', 'nan']);
const BARE = /^[A-Za-z][A-Za-z0-9-]*$/;

export function writeValue(value: Scalar): string {
  if (typeof value === 'string') return writeName(value);
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return Object.is(value, -0) ? '-0' : String(value);
    return Number.isNaN(value) ? '#nan' : value > 0 ? '#inf' : '#-inf';
  }
  return `#${value}`;
}

/** Bare where it can be, else in quotes. */
export function writeName(text: string): string {
  return BARE.test(text) && !KEPT.has(text) ? text : writeQuoted(text);
}

export function writeQuoted(text: string): string {
  let out = '"';
  for (const char of text) {
    const code = char.codePointAt(0) as number;
    if (char === '"' || char === '\\') out += `\\${char}`;
    else if (char === '\n') out += '\\n';
    else if (char === '\r') out += '\\r';
    else if (char === '\t') out += '\\t';
    // Line ends of other alphabets and signs that are not allowed as they are.
    else if (
      code < 0x20 ||
      code === 0x7f ||
      code === 0x85 ||
      code === 0x2028 ||
      code === 0x2029 ||
      isUnprintable(code)
    ) {
      out += `\\u{${code.toString(16)}}`;
    } else out += char;
  }
  return `${out}"`;
}

/** Direction marks and the byte order mark, which KDL refuses inside a text. */
function isUnprintable(code: number): boolean {
  return (
    (code >= 0x200e && code <= 0x200f) ||
    (code >= 0x202a && code <= 0x202e) ||
    (code >= 0x2066 && code <= 0x2069) ||
    code === 0xfeff
  );
}
