import { checkKeyword, type OmmEntry, ommFault, orbitFromOmm } from './omm.ts';
import type { Sgp4Orbit } from './orbit.ts';

/**
 * Reads an orbit mean-elements message in its JSON form: one object whose keys are the keywords of the message, or a list
 * with exactly one such object. Numbers may stand as numbers or as text.
 * @throws Fault `sky/bad-elements` with line and column; `sky/out-of-range`
 * @source [CCSDS-502] CCSDS 502.0-B-3, Orbit Data Messages (2023), section 4 for the keywords; the JSON carrier is common practice
 * @checked tests/reference/sky/omm.test.ts, tests/rejects/sky
 */
export function readOmmJson(text: string): Sgp4Orbit {
  const parsed = parse(text);
  const list: readonly unknown[] = Array.isArray(parsed) ? parsed : [parsed];
  if (list.length !== 1)
    throw ommFault(1, 1, `expected one object; the list holds ${list.length}`, 'keep only the object meant');
  const message = list[0];
  if (typeof message !== 'object' || message === null || Array.isArray(message)) {
    throw ommFault(1, 1, 'expected an object whose keys are the keywords of the message');
  }
  const entries = new Map<string, OmmEntry>();
  for (const [keyword, value] of Object.entries(message)) {
    const place = placeOf(text, keyword);
    checkKeyword(keyword, place.line, place.column);
    // Comments may be lists and unused fields null; both are read past.
    if (keyword === 'COMMENT' || value === null) continue;
    if (typeof value !== 'string' && typeof value !== 'number') {
      throw ommFault(place.line, place.column, `${keyword} must be a number or text`);
    }
    entries.set(keyword, { value: String(value).trim(), ...place });
  }
  return orbitFromOmm(entries, positionAt(text, text.trimEnd().length), 'OMM JSON');
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause);
    const offset = /position (\d+)/.exec(reason);
    const place = positionAt(text, offset === null ? text.length : Number(offset[1]));
    throw ommFault(place.line, place.column, `this is not JSON: ${reason}`);
  }
}

/** Where a key of the object stands. Keys are keywords, plain words, so that the first quoted one followed by a colon is it. */
function placeOf(text: string, keyword: string): { line: number; column: number } {
  const quoted = JSON.stringify(keyword);
  let from = text.indexOf(quoted);
  while (from >= 0 && !/^\s*:/.test(text.slice(from + quoted.length))) from = text.indexOf(quoted, from + 1);
  return positionAt(text, Math.max(0, from));
}

function positionAt(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length, column: (before.at(-1) as string).length + 1 };
}
