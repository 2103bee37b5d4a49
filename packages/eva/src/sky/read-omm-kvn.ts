import { checkKeyword, type OmmEntry, ommFault, orbitFromOmm } from './omm.ts';
import type { Sgp4Orbit } from './orbit.ts';

/**
 * Reads an orbit mean-elements message in keyword-value notation: one `KEYWORD = value` a line, `COMMENT` lines free,
 * an optional unit in brackets, which is checked.
 * @throws Fault `sky/bad-elements` with line and column; `sky/out-of-range`
 * @source [CCSDS-502] CCSDS 502.0-B-3, Orbit Data Messages (2023), sections 4 and 7
 * @checked tests/reference/sky/omm.test.ts, tests/rejects/sky
 */
export function readOmmKvn(text: string): Sgp4Orbit {
  const entries = new Map<string, OmmEntry>();
  const rows = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  let started = false;
  for (const [index, row] of rows.entries()) {
    const line = index + 1;
    if (row.trim() === '' || /^\s*COMMENT(\s|$)/.test(row)) continue;
    const match = /^(\s*)([A-Za-z_0-9]+)(\s*=\s*)(.*?)\s*$/.exec(row);
    if (match === null) throw ommFault(line, row.search(/\S/) + 1, `expected "KEYWORD = value"; found "${row.trim()}"`);
    const keyword = match[2] as string;
    const column = (match[1] as string).length + 1;
    if (!started && keyword !== 'CCSDS_OMM_VERS') {
      throw ommFault(line, column, `a message begins with CCSDS_OMM_VERS; found ${keyword}`);
    }
    started = true;
    checkKeyword(keyword, line, column);
    const before = entries.get(keyword);
    if (before !== undefined)
      throw ommFault(line, column, `${keyword} stands here a second time; it is first on line ${before.line}`);
    const value = match[4] as string;
    const valueColumn = column + keyword.length + (match[3] as string).length;
    if (value === '') throw ommFault(line, valueColumn, `${keyword} has no value`);
    entries.set(keyword, { value, line, column: valueColumn });
  }
  const version = entries.get('CCSDS_OMM_VERS');
  if (version === undefined) throw ommFault(1, 1, 'the message is empty: it must begin with CCSDS_OMM_VERS');
  if (!/^[23]\.\d+$/.test(version.value)) {
    throw ommFault(version.line, version.column, `version "${version.value}" is not known; versions 2.x and 3.x are`);
  }
  const last = rows.findLastIndex((row) => row.trim() !== '');
  return orbitFromOmm(entries, { line: last + 1, column: (rows[last] as string).length + 1 }, 'OMM KVN');
}
