import { Fault } from '@handrail/quantity/fault';
import { DAY_MS } from './earth.ts';
import { checkedSgp4Orbit, type Sgp4Orbit } from './orbit.ts';

/**
 * Reads two-line elements: two lines of 69 columns, with or without a name line before them.
 * Everything that can be checked is: line numbers, length, the modulo-10 checksum, that both lines speak of one object, and
 * each field at its own columns.
 * @param text two or three lines
 * @throws Fault `sky/bad-elements` with line and column; `sky/out-of-range` for a field that is a number but cannot be
 * @source [STR3] F. R. Hoots, R. L. Roehrich, Spacetrack Report No. 3 (1980); [VALLADO2006] AIAA 2006-6753, appendix B
 * @checked tests/reference/sky/sgp4.test.ts, tests/rejects/sky
 */
export function readTwoLineElements(text: string): Sgp4Orbit {
  const rows = text
    .split(/\r?\n/)
    .map((content, index) => ({ content: content.trimEnd(), number: index + 1 }))
    .filter((row) => row.content !== '');
  if (rows.length !== 2 && rows.length !== 3) {
    throw bad(
      rows[0]?.number ?? 1,
      1,
      `expected two element lines, with or without a name line before them; found ${rows.length}`,
    );
  }
  const name = rows.length === 3 ? (rows[0] as Row).content.replace(/^0 /, '').trim() : '';
  const first = lineOf(rows.at(-2) as Row, '1');
  const second = lineOf(rows.at(-1) as Row, '2');
  const number = first.content.slice(2, 7);
  if (second.content.slice(2, 7) !== number) {
    throw bad(
      second.number,
      3,
      `the second line is of object "${second.content.slice(2, 7)}", the first of "${number}"`,
    );
  }
  return checkedSgp4Orbit({
    kind: 'sgp4',
    name: name === '' ? `object ${number.trim()}` : name,
    catalogueNumber: number.trim(),
    epochUtcMs: epoch(first),
    halfMeanMotionRateRevPerDay2: field(
      first,
      34,
      43,
      /^ *[-+ ]?\.?\d*\.\d+$/,
      'half the rate of the mean motion, rev/day²',
    ),
    bstarPerEarthRadius: exponentField(first, 54, 61, 'drag term B*, 1/Earth radii'),
    inclinationDeg: field(second, 9, 16, /^ *\d{1,3}\.\d+$/, 'inclination, °'),
    raanDeg: field(second, 18, 25, /^ *\d{1,3}\.\d+$/, 'right ascension of the ascending node, °'),
    eccentricity: field(second, 27, 33, /^\d{7}$/, 'eccentricity, seven digits with the point understood') / 1e7,
    argPerigeeDeg: field(second, 35, 42, /^ *\d{1,3}\.\d+$/, 'argument of perigee, °'),
    meanAnomalyDeg: field(second, 44, 51, /^ *\d{1,3}\.\d+$/, 'mean anomaly, °'),
    meanMotionRevPerDay: field(second, 53, 63, /^ *\d{1,2}\.\d+$/, 'mean motion, rev/day'),
    lines: [first.content, second.content],
    source: 'two-line elements',
    assumptions: [],
  });
}

interface Row {
  readonly content: string;
  readonly number: number;
}

function bad(line: number, column: number, what: string): Fault {
  return new Fault('sky/bad-elements', `line ${line}, column ${column}: ${what}`, { values: { line, column } });
}

/** The sum of the digits of the first 68 columns, a minus counting as one, modulo ten. */
export function checksum(line: string): number {
  let sum = 0;
  for (const letter of line.slice(0, 68)) {
    if (letter === '-') sum += 1;
    else if (letter >= '0' && letter <= '9') sum += Number(letter);
  }
  return sum % 10;
}

function lineOf(row: Row, digit: '1' | '2'): Row {
  if (!row.content.startsWith(`${digit} `)) {
    throw bad(row.number, 1, `expected "${digit} " at the start; found "${row.content.slice(0, 2)}"`);
  }
  if (row.content.length !== 69) {
    throw bad(
      row.number,
      Math.min(row.content.length, 69) + 1,
      `an element line has 69 columns; this one has ${row.content.length}`,
    );
  }
  const strange = /[^\x20-\x7e]/.exec(row.content);
  if (strange !== null) throw bad(row.number, strange.index + 1, 'only plain ASCII may stand in an element line');
  const given = row.content.slice(68, 69);
  const sum = checksum(row.content);
  if (given !== String(sum)) {
    throw bad(
      row.number,
      69,
      `the checksum is "${given}" but the digits of the line add up to ${sum}: some column was changed or mistyped`,
    );
  }
  return row;
}

function field(row: Row, from: number, to: number, form: RegExp, what: string): number {
  const raw = row.content.slice(from - 1, to);
  if (!form.test(raw)) throw bad(row.number, from, `expected the ${what} in columns ${from} to ${to}; found "${raw}"`);
  return Number(raw.trim().replace(/^([-+]?) */, '$1'));
}

/** " 28098-4" is 0.28098e-4. */
function exponentField(row: Row, from: number, to: number, what: string): number {
  const raw = row.content.slice(from - 1, to);
  const match = /^([-+ ]?)(\d{5})([-+ ]\d)$/.exec(raw);
  if (match === null) throw bad(row.number, from, `expected the ${what} in columns ${from} to ${to}; found "${raw}"`);
  const size = Number(`0.${match[2]}e${(match[3] as string).replace(' ', '+')}`);
  return match[1] === '-' ? -size : size;
}

function epoch(row: Row): number {
  const year = field(row, 19, 20, /^\d\d$/, 'two-digit year of the epoch');
  const day = field(row, 21, 32, /^[ \d]{3}\.\d{1,8}$/, 'day of the year of the epoch');
  const fullYear = year < 57 ? 2000 + year : 1900 + year;
  const length = new Date(Date.UTC(fullYear, 1, 29)).getUTCMonth() === 1 ? 366 : 365;
  if (!(day >= 1 && day < length + 1)) {
    throw bad(row.number, 21, `day ${day} does not exist in ${fullYear}; it must lie between 1 and ${length + 1}`);
  }
  return Date.UTC(fullYear, 0, 1) + (day - 1) * DAY_MS;
}
