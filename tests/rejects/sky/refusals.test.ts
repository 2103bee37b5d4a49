import { circularEclipseFraction } from '@handrail/eva/sky/beta-angle';
import { bodyFromTeme } from '@handrail/eva/sky/attitude';
import { dayNight } from '@handrail/eva/sky/day-night';
import { propagate } from '@handrail/eva/sky/propagate';
import { rayCaster } from '@handrail/eva/sky/ray-caster';
import { readOmmJson } from '@handrail/eva/sky/read-omm-json';
import { readOmmKvn } from '@handrail/eva/sky/read-omm-kvn';
import { readTwoLineElements } from '@handrail/eva/sky/read-two-line-elements';
import { windowSet } from '@handrail/eva/sky/window-set';
import { worksiteLight } from '@handrail/eva/sky/worksite-light';
import { Fault } from '@handrail/quantity/fault';
import { describe, expect, it } from 'vitest';
import { inventedStation } from '../../reference/sky/invented-station.ts';
import { circularOrbit } from '../../reference/sky/circular-orbit.ts';

const ONE = '1 06251U 62025E   06176.82412014  .00008885  00000-0  12808-3 0  3985';
const TWO = '2 06251  58.0579  54.0425 0030035 139.1568 221.1854 15.56387291  6774';
const MESSAGE = `CCSDS_OMM_VERS = 3.0
CREATION_DATE = 2031-09-14T00:00:00
ORIGINATOR = FULMAR
OBJECT_NAME = FULMAR STATION
OBJECT_ID = 2029-001A
CENTER_NAME = EARTH
REF_FRAME = TEME
TIME_SYSTEM = UTC
MEAN_ELEMENT_THEORY = SGP4
EPOCH = 2031-09-14T11:40:00.123456
MEAN_MOTION = 15.52
ECCENTRICITY = 0.0005
INCLINATION = 44
RA_OF_ASC_NODE = 57
ARG_OF_PERICENTER = 10
MEAN_ANOMALY = 20
BSTAR = 0.0001
MEAN_MOTION_DOT = 0.0001
`;

function refusal(attempt: () => unknown): Fault {
  try {
    attempt();
  } catch (fault) {
    if (fault instanceof Fault) return fault;
    throw fault;
  }
  throw new Error('it was accepted');
}

describe('two-line elements that must be refused', () => {
  it.each([
    {
      what: 'a changed digit',
      text: `${ONE}\n${TWO.replace('58.0579', '58.0578')}`,
      line: 2,
      column: 69,
      says: 'the checksum is "4" but the digits of the line add up to 3',
    },
    {
      what: 'a line cut short',
      text: `${ONE.slice(0, 60)}\n${TWO}`,
      line: 1,
      column: 61,
      says: '69 columns; this one has 60',
    },
    {
      what: 'lines in the wrong order',
      text: `${TWO}\n${ONE}`,
      line: 1,
      column: 1,
      says: 'expected "1 " at the start',
    },
    {
      what: 'lines of two objects',
      text: `${ONE}\n2 06252  58.0579  54.0425 0030035 139.1568 221.1854 15.56387291  6775`,
      line: 2,
      column: 3,
      says: 'of object "06252"',
    },
    { what: 'only one line', text: ONE, line: 1, column: 1, says: 'expected two element lines' },
    {
      what: 'a letter in a number, with its checksum right',
      text: `${ONE}\n2 06251  5x.0579  54.0425 0030035 139.1568 221.1854 15.56387291  6776`,
      line: 2,
      column: 9,
      says: 'inclination',
    },
    {
      what: 'a day that the year has not',
      text: `1 06251U 62025E   06376.82412014  .00008885  00000-0  12808-3 0  3987\n${TWO}`,
      line: 1,
      column: 21,
      says: 'does not exist in 2006',
    },
  ])('$what: line $line, column $column', ({ text, line, column, says }) => {
    const fault = refusal(() => readTwoLineElements(text));
    expect(fault.code).toBe('sky/bad-elements');
    expect(fault.message).toContain(`line ${line}, column ${column}: `);
    expect(fault.message).toContain(says);
    expect(fault.values).toMatchObject({ line, column });
  });
});

describe('orbit messages that must be refused', () => {
  it('reads the sound one', () => {
    expect(readOmmKvn(MESSAGE).epochUtcMs).toBeCloseTo(Date.UTC(2031, 8, 14, 11, 40) + 123.456, 3);
  });

  it.each([
    {
      what: 'a misspelt keyword',
      from: 'ECCENTRICITY',
      to: 'ECENTRICITY',
      line: 12,
      column: 1,
      says: 'the nearest is ECCENTRICITY',
    },
    {
      what: 'a word for a number',
      from: '= 15.52',
      to: '= many',
      line: 11,
      column: 15,
      says: 'MEAN_MOTION must be a number in rev/day; found "many"',
    },
    {
      what: 'a wrong unit',
      from: 'INCLINATION = 44',
      to: 'INCLINATION = 0.77 [rad]',
      line: 13,
      column: 15,
      says: 'must be in deg; the message says [rad]',
    },
    {
      what: 'another theory',
      from: '= SGP4',
      to: '= DSST',
      line: 9,
      column: 23,
      says: 'must be SGP4 or SGP/SGP4; found "DSST"',
    },
    { what: 'another frame', from: '= TEME', to: '= ICRF', line: 7, column: 13, says: 'REF_FRAME must be TEME' },
    { what: 'another scale of time', from: '= UTC', to: '= TAI', line: 8, column: 15, says: 'TIME_SYSTEM must be UTC' },
    {
      what: 'a value twice',
      from: 'BSTAR = 0.0001',
      to: 'BSTAR = 0.0001\nMEAN_MOTION = 15',
      line: 18,
      column: 1,
      says: 'a second time; it is first on line 11',
    },
    {
      what: 'a missing value',
      from: 'MEAN_ANOMALY = 20\n',
      to: '',
      line: 17,
      column: 25,
      says: 'ends without MEAN_ANOMALY',
    },
    {
      what: 'a day that does not exist',
      from: '2031-09-14T11',
      to: '2031-02-30T11',
      line: 10,
      column: 9,
      says: 'no such instant',
    },
    {
      what: 'a line that is no pair',
      from: 'CENTER_NAME = EARTH',
      to: 'CENTER_NAME EARTH',
      line: 6,
      column: 1,
      says: 'expected "KEYWORD = value"',
    },
    { what: 'another version', from: '= 3.0', to: '= 1.0', line: 1, column: 18, says: 'version "1.0" is not known' },
  ])('$what: line $line, column $column', ({ from, to, line, column, says }) => {
    const fault = refusal(() => readOmmKvn(MESSAGE.replace(from, to)));
    expect(fault.code).toBe('sky/bad-elements');
    expect(fault.message).toContain(`line ${line}, column ${column}: `);
    expect(fault.message).toContain(says);
  });

  it('a number out of range, with the range', () => {
    expect(refusal(() => readOmmKvn(MESSAGE.replace('INCLINATION = 44', 'INCLINATION = 204'))).message).toBe(
      'inclination is 204 °; it must lie between 0 and 180 °',
    );
  });

  it('JSON that is broken, empty, of another theory, or of two objects', () => {
    expect(refusal(() => readOmmJson('{\n  "EPOCH": "2031-09-14T00:00:00"\n  "BSTAR": 1\n}')).message).toContain(
      'line 3, column 3: this is not JSON',
    );
    expect(refusal(() => readOmmJson('[]')).message).toContain('the list holds 0');
    expect(refusal(() => readOmmJson('{\n "OBJECT_NAME": "X",\n "MEAN_ELEMENT_THEORY": "DSST"\n}')).message).toContain(
      'line 3, column 2: MEAN_ELEMENT_THEORY must be SGP4',
    );
    expect(refusal(() => readOmmJson('{"EPOC": 1}')).message).toContain('the nearest is EPOCH');
  });
});

describe('questions out of range, refused with the range in the message', () => {
  const orbit = circularOrbit(415, 44, 57, Date.UTC(2031, 8, 14));
  it.each([
    {
      what: 'an eccentricity of a fall',
      ask: () => propagate({ ...orbit, eccentricity: 0.95 }, [orbit.epochUtcMs]),
      says: 'eccentricity is 0.95; it must lie between 0 and 0.9',
    },
    {
      what: 'an orbit under ground',
      ask: () => propagate({ ...orbit, semiMajorAxisKm: 6000 }, [orbit.epochUtcMs]),
      says: 'between 6478 and 100000 km',
    },
    {
      what: 'not a number',
      ask: () => propagate({ ...orbit, inclinationRad: Number.NaN }, [orbit.epochUtcMs]),
      says: 'inclination is NaN rad',
    },
    {
      what: 'two years after the elements',
      ask: () => propagate(orbit, [orbit.epochUtcMs + 730 * 86_400_000]),
      says: 'the age of the elements is 730 d; it must lie between -400 and 400 d',
    },
    {
      what: 'a century away',
      ask: () => propagate(orbit, [Date.UTC(2150, 0, 1)]),
      says: '2150-01-01T00:00:00.000Z; it must lie between 1957-10-04 and 2057-01-01',
    },
    {
      what: 'an interval that runs backwards',
      ask: () => dayNight(orbit, orbit.epochUtcMs + 1000, orbit.epochUtcMs),
      says: 'the length of the interval',
    },
    {
      what: 'a table of a year',
      ask: () => dayNight(orbit, orbit.epochUtcMs, orbit.epochUtcMs + 365 * 86_400_000),
      says: '31 d',
    },
    {
      what: 'a height in the air',
      ask: () => circularEclipseFraction(50, 0),
      says: 'height is 50 km; it must lie between 100 and 50000 km',
    },
    {
      what: 'steps of an hour for light',
      ask: () => worksiteLight({ ...inventedStation(), stepS: 3600 }),
      says: 'the step is 3600 s; it must lie between 1 and 60 s',
    },
  ])('$what', ({ ask, says }) => {
    const fault = refusal(ask);
    expect(fault.code).toBe('sky/out-of-range');
    expect(fault.message).toContain(says);
  });
});

describe('shapes, attitudes and windows that must be refused', () => {
  const triangle = [0, 0, 0, 1, 0, 0, 0, 1, 0];
  it('name what is wrong with them', () => {
    expect(
      refusal(() => rayCaster({ bodies: [{ name: 'fin', trianglesM: triangle.slice(1), joint: null }], joints: [] }))
        .message,
    ).toContain('body fin has 8 numbers');
    expect(
      refusal(() => rayCaster({ bodies: [{ name: 'fin', trianglesM: triangle, joint: 'hub' }], joints: [] })).message,
    ).toContain('"hub", which is not a joint');
    expect(
      refusal(() =>
        rayCaster({ bodies: [{ name: 'fin', trianglesM: triangle.with(4, Number.NaN), joint: null }], joints: [] }),
      ).message,
    ).toContain('body fin, triangle 1');
    const held = { kind: 'held', angleRad: 0 } as const;
    const loop = [
      { name: 'a', parent: 'b', pivotM: [0, 0, 0], axis: [1, 0, 0], motion: held },
      { name: 'b', parent: 'a', pivotM: [0, 0, 0], axis: [1, 0, 0], motion: held },
    ] as const;
    expect(refusal(() => rayCaster({ bodies: [], joints: loop })).message).toContain(
      'joint a carries itself: a > b > a',
    );
    const along = { kind: 'tracks-sun', facing: [1, 0, 0], biasRad: 0, limitsRad: null } as const;
    expect(
      refusal(() => rayCaster({ bodies: [], joints: [{ ...loop[0], parent: null, motion: along }] })).message,
    ).toContain('faces along its own axis');
  });

  it('a quaternion that is no rotation, a table out of order, a window that ends before it starts', () => {
    expect(refusal(() => bodyFromTeme({ kind: 'local-vertical', lvlhFromBody: [1, 1, 0, 0] })).message).toContain(
      'has length 1.414',
    );
    const row = (utcMs: number) => ({ utcMs, frameFromBody: [1, 0, 0, 0] as const });
    expect(refusal(() => bodyFromTeme({ kind: 'table', frame: 'LVLH', rows: [row(10), row(5)] })).message).toContain(
      'not in order of time at row 2',
    );
    expect(refusal(() => windowSet([[5, 4]])).message).toContain('found 5 to 4');
  });
});
