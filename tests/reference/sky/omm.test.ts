import { propagate } from '@handrail/eva/sky/propagate';
import { readOmmJson } from '@handrail/eva/sky/read-omm-json';
import { readOmmKvn } from '@handrail/eva/sky/read-omm-kvn';
import { readOrbit } from '@handrail/eva/sky/read-orbit';
import { readTwoLineElements } from '@handrail/eva/sky/read-two-line-elements';
import { norm, subtract } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';

/** The example of the standard, once as a message and once as the two lines that it is said to equal. @source [CCSDS-502] section 4, figures 4-1 and 4-2 */
const MESSAGE = `CCSDS_OMM_VERS = 2.0
CREATION_DATE = 2007-065T16:00:00
ORIGINATOR = NOAA/USA
OBJECT_NAME = GOES 9
OBJECT_ID = 1995-025A
CENTER_NAME = EARTH
REF_FRAME = TEME
TIME_SYSTEM = UTC
MEAN_ELEMENT_THEORY = SGP/SGP4
COMMENT the epoch is the day 64.44075725 of the two lines
EPOCH = 2007-064T10:34:41.4264
MEAN_MOTION = 1.00273272 [rev/day]
ECCENTRICITY = 0.0005013
INCLINATION = 3.0539 [deg]
RA_OF_ASC_NODE = 81.7939 [deg]
ARG_OF_PERICENTER = 249.2363 [deg]
MEAN_ANOMALY = 150.1602 [deg]
GM = 398600.8
EPHEMERIS_TYPE = 0
CLASSIFICATION_TYPE = U
NORAD_CAT_ID = 23581
ELEMENT_SET_NO = 0925
REV_AT_EPOCH = 4316
BSTAR = 0.0001
MEAN_MOTION_DOT = -0.00000113
MEAN_MOTION_DDOT = 0.0
USER_DEFINED_EARTH_MODEL = WGS-84
`;
const LINES = `GOES 9 [P]
1 23581U 95025A   07064.44075725 -.00000113  00000-0  10000-3 0  9250
2 23581   3.0539  81.7939 0005013 249.2363 150.1602  1.00273272 43169`;

describe('the example of the orbit data standard', () => {
  it('says the same as a message and as two lines', () => {
    const [message, lines] = [readOmmKvn(MESSAGE), readTwoLineElements(LINES)];
    for (const key of [
      'meanMotionRevPerDay',
      'eccentricity',
      'inclinationDeg',
      'raanDeg',
      'argPerigeeDeg',
      'meanAnomalyDeg',
      'bstarPerEarthRadius',
      'halfMeanMotionRateRevPerDay2',
    ] as const) {
      expect(message[key], key).toBeCloseTo(lines[key] ?? Number.NaN, 12);
    }
    // Day 64.44075725 is 10:34:41.4264.
    expect(Math.abs(message.epochUtcMs - lines.epochUtcMs)).toBeLessThan(1e-3);
    expect(message.name).toBe('GOES 9');
    expect(message.assumptions).toEqual([]);
  });

  it('flies the same within a metre over a day in either form', () => {
    const [message, lines] = [readOmmKvn(MESSAGE), readTwoLineElements(LINES)];
    for (const hours of [0, 6, 24]) {
      const utcMs = lines.epochUtcMs + hours * 3_600_000;
      const [[a], [b]] = [propagate(message, [utcMs]), propagate(lines, [utcMs])];
      expect(
        norm(subtract((a as NonNullable<typeof a>).positionTemeKm, (b as NonNullable<typeof b>).positionTemeKm)),
      ).toBeLessThan(1e-3);
    }
  });

  it('reads the same from JSON, whether numbers are numbers or text, and says what it had to assume', () => {
    const fields = Object.fromEntries(
      MESSAGE.split('\n')
        .filter((row) => row.includes(' = '))
        .map((row) => row.replace(/ \[.*\]/, '').split(' = ') as [string, string]),
    );
    const asText = readOmmJson(JSON.stringify(fields, null, 2));
    expect({ ...asText, source: 'OMM KVN' }).toEqual(readOmmKvn(MESSAGE));
    const { CENTER_NAME: _c, REF_FRAME: _f, TIME_SYSTEM: _t, MEAN_ELEMENT_THEORY: _m, ...short } = fields;
    const asNumbers = readOmmJson(JSON.stringify([{ ...short, MEAN_MOTION: 1.00273272, ECCENTRICITY: 0.0005013 }]));
    expect(asNumbers.meanMotionRevPerDay).toBe(asText.meanMotionRevPerDay);
    expect(asNumbers.assumptions).toHaveLength(4);
    expect(asNumbers.assumptions[1]).toContain('TEME');
  });

  it('is recognised in any of its three forms', () => {
    const json = JSON.stringify({
      OBJECT_NAME: 'GOES 9',
      EPOCH: '2007-064T10:34:41.4264',
      MEAN_MOTION: 1.00273272,
      ECCENTRICITY: 0.0005013,
      INCLINATION: 3.0539,
      RA_OF_ASC_NODE: 81.7939,
      ARG_OF_PERICENTER: 249.2363,
      MEAN_ANOMALY: 150.1602,
      BSTAR: 0.0001,
    });
    expect([MESSAGE, LINES, json].map((text) => readOrbit(text).source)).toEqual([
      'OMM KVN',
      'two-line elements',
      'OMM JSON',
    ]);
    expect(readOrbit(json).halfMeanMotionRateRevPerDay2).toBeNull();
    expect(readOrbit(json).assumptions.join(' ')).toContain('MEAN_MOTION_DOT is not given');
    expect(() => readOrbit('a letter')).toThrow(/neither an orbit mean-elements message nor two-line elements/);
  });
});
