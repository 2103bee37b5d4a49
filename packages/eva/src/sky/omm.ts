import { Fault } from '@handrail/quantity/fault';
import { checkedSgp4Orbit, type Sgp4Orbit } from './orbit.ts';

/** One value of an orbit mean-elements message and where it stands. */
export interface OmmEntry {
  readonly value: string;
  readonly line: number;
  readonly column: number;
}

/**
 * Keywords of the orbit mean-elements message that matter here or are read past: header, metadata, mean elements, spacecraft,
 * element-set parameters. Covariance (`C…`) and `USER_DEFINED_…` are let through by form.
 * @source [CCSDS-502] CCSDS 502.0-B-3, Orbit Data Messages (2023), section 4, tables 4-1 to 4-3
 */
const KEYWORDS = (
  'CCSDS_OMM_VERS COMMENT CLASSIFICATION CREATION_DATE ORIGINATOR MESSAGE_ID OBJECT_NAME OBJECT_ID CENTER_NAME REF_FRAME ' +
  'REF_FRAME_EPOCH TIME_SYSTEM MEAN_ELEMENT_THEORY EPOCH SEMI_MAJOR_AXIS MEAN_MOTION ECCENTRICITY INCLINATION RA_OF_ASC_NODE ' +
  'ARG_OF_PERICENTER MEAN_ANOMALY GM MASS SOLAR_RAD_AREA SOLAR_RAD_COEFF DRAG_AREA DRAG_COEFF EPHEMERIS_TYPE ' +
  'CLASSIFICATION_TYPE NORAD_CAT_ID ELEMENT_SET_NO REV_AT_EPOCH BSTAR BTERM MEAN_MOTION_DOT MEAN_MOTION_DDOT AGOM COV_REF_FRAME'
).split(' ');

export function ommFault(line: number, column: number, what: string, advice?: string): Fault {
  const values = { line, column };
  return new Fault(
    'sky/bad-elements',
    `line ${line}, column ${column}: ${what}`,
    advice === undefined ? { values } : { values, advice },
  );
}

/** Refuses a keyword that the standard does not know, with the nearest that it does. */
export function checkKeyword(keyword: string, line: number, column: number): void {
  if (KEYWORDS.includes(keyword) || /^USER_DEFINED_\w+$/.test(keyword) || /^C[XYZ](_DOT)?_[XYZ](_DOT)?$/.test(keyword))
    return;
  const nearest = KEYWORDS.reduce((best, k) => (editDistance(k, keyword) < editDistance(best, keyword) ? k : best));
  throw ommFault(
    line,
    column,
    `"${keyword}" is not a keyword of an orbit mean-elements message; the nearest is ${nearest}`,
  );
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min((row[j - 1] as number) + same, (row[j] as number) + 1, (next[j - 1] as number) + 1));
    }
    row = next;
  }
  return row[b.length] as number;
}

/**
 * An SGP4 orbit from the entries of a message. What the standard makes mandatory but the JSON form in use leaves out
 * (centre, frame, time system, theory) is taken as Earth, TEME, UTC, SGP4, and said in `assumptions`.
 */
export function orbitFromOmm(
  entries: ReadonlyMap<string, OmmEntry>,
  end: { readonly line: number; readonly column: number },
  source: 'OMM KVN' | 'OMM JSON',
): Sgp4Orbit {
  const needed = (keyword: string): OmmEntry => {
    const entry = entries.get(keyword);
    if (entry === undefined) throw ommFault(end.line, end.column, `the message ends without ${keyword}`);
    return entry;
  };
  const number = (keyword: string, unit: string): number => {
    const entry = needed(keyword);
    const match = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:[eEdD][-+]?\d+)?)(?:\s*\[([^\]]*)\])?$/.exec(entry.value);
    if (match === null) {
      throw ommFault(entry.line, entry.column, `${keyword} must be a number in ${unit}; found "${entry.value}"`);
    }
    const written = match[2]?.toLowerCase().replace(/\s/g, '');
    if (written !== undefined && written !== unit.toLowerCase()) {
      throw ommFault(entry.line, entry.column, `${keyword} must be in ${unit}; the message says [${match[2]}]`);
    }
    return Number((match[1] as string).replace(/[dD]/, 'e'));
  };
  const optional = (keyword: string, unit: string): number | null =>
    entries.has(keyword) ? number(keyword, unit) : null;
  const assumptions: string[] = [];
  const word = (keyword: string, accepted: readonly string[]): void => {
    const entry = entries.get(keyword);
    if (entry === undefined) {
      if (source === 'OMM KVN') throw ommFault(end.line, end.column, `the message ends without ${keyword}`);
      assumptions.push(`${keyword} is not given; taken as ${accepted[0]}`);
    } else if (!accepted.includes(entry.value.toUpperCase())) {
      throw ommFault(entry.line, entry.column, `${keyword} must be ${accepted.join(' or ')}; found "${entry.value}"`);
    }
  };
  word('CENTER_NAME', ['EARTH']);
  word('REF_FRAME', ['TEME']);
  word('TIME_SYSTEM', ['UTC']);
  word('MEAN_ELEMENT_THEORY', ['SGP4', 'SGP/SGP4']);
  const type = entries.get('EPHEMERIS_TYPE');
  if (type !== undefined && type.value !== '0' && type.value !== '2') {
    throw ommFault(
      type.line,
      type.column,
      `EPHEMERIS_TYPE must be 0 (SGP4); found "${type.value}", whose elements belong to another theory`,
    );
  }
  const axis = entries.get('SEMI_MAJOR_AXIS');
  if (axis !== undefined && !entries.has('MEAN_MOTION')) {
    throw ommFault(
      axis.line,
      axis.column,
      'SGP4 needs MEAN_MOTION; a message with SEMI_MAJOR_AXIS is of another theory',
    );
  }
  const rate = optional('MEAN_MOTION_DOT', 'rev/day**2');
  if (rate === null) {
    assumptions.push('MEAN_MOTION_DOT is not given; the growth of error assumes the decay of a station near 400 km');
  }
  const name = needed('OBJECT_NAME').value;
  return checkedSgp4Orbit({
    kind: 'sgp4',
    name,
    catalogueNumber: entries.get('NORAD_CAT_ID')?.value ?? '',
    epochUtcMs: ommEpoch(needed('EPOCH')),
    meanMotionRevPerDay: number('MEAN_MOTION', 'rev/day'),
    eccentricity: number('ECCENTRICITY', '1'),
    inclinationDeg: number('INCLINATION', 'deg'),
    raanDeg: number('RA_OF_ASC_NODE', 'deg'),
    argPerigeeDeg: number('ARG_OF_PERICENTER', 'deg'),
    meanAnomalyDeg: number('MEAN_ANOMALY', 'deg'),
    bstarPerEarthRadius: number('BSTAR', '1/ER'),
    halfMeanMotionRateRevPerDay2: rate,
    lines: null,
    source,
    assumptions,
  });
}

/** Calendar or day-of-year form, with any number of decimals of a second; always UTC. */
function ommEpoch(entry: OmmEntry): number {
  const match = /^(\d{4})-(?:(\d{2})-(\d{2})|(\d{3}))T(\d{2}):(\d{2}):(\d{2}(?:\.\d+)?)Z?$/.exec(entry.value);
  if (match === null) {
    throw ommFault(
      entry.line,
      entry.column,
      `EPOCH must read like 2031-09-14T11:40:00.123456 or 2031-257T11:40:00; found "${entry.value}"`,
    );
  }
  const year = Number(match[1]);
  const dayMs =
    match[4] === undefined
      ? Date.UTC(year, Number(match[2]) - 1, Number(match[3]))
      : Date.UTC(year, 0, Number(match[4]));
  const day = new Date(dayMs);
  const exists =
    match[4] === undefined
      ? day.getUTCMonth() === Number(match[2]) - 1 && Number(match[3]) > 0
      : day.getUTCFullYear() === year && Number(match[4]) > 0;
  const [hour, minute, second] = [Number(match[5]), Number(match[6]), Number(match[7])];
  if (!exists || hour > 23 || minute > 59 || second >= 61) {
    throw ommFault(entry.line, entry.column, `there is no such instant as ${entry.value}`);
  }
  return dayMs + hour * 3_600_000 + minute * 60_000 + second * 1000;
}
