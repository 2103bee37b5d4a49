import { bodyFromTeme, temeFromLvlh } from '@handrail/eva/sky/attitude';
import { eqjFromTeme } from '@handrail/eva/sky/frames';
import type { OrbitState } from '@handrail/eva/sky/propagate';
import { matrixOf, type Quaternion, quaternionOfYawPitchRoll, rotate, turnAbout } from '@handrail/eva/sky/rotation';
import type { Vector3 } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';

/** Over the equator at longitude 0 of the frame, moving east: forward is +y, down is −x, right (south) is −z of TEME. */
const EAST: OrbitState = { utcMs: Date.UTC(2031, 8, 14), positionTemeKm: [6793, 0, 0], velocityTemeKmS: [0, 7.66, 0] };
const [FORWARD, DOWN, SOUTH]: readonly [Vector3, Vector3, Vector3] = [
  [0, 1, 0],
  [-1, 0, 0],
  [0, 0, -1],
];
const close = (a: Vector3, b: Vector3): void => {
  for (const axis of [0, 1, 2] as const) expect(a[axis]).toBeCloseTo(b[axis], 9);
};
const QUARTER = Math.PI / 2;

describe('local vertical, local horizontal (common practice: x forward, y right, z down)', () => {
  it('has its axes along the track, to the right, and down', () => {
    const m = temeFromLvlh(EAST);
    close(rotate(m, [1, 0, 0]), FORWARD);
    close(rotate(m, [0, 1, 0]), SOUTH);
    close(rotate(m, [0, 0, 1]), DOWN);
  });

  it.each([
    { what: 'level', ypr: [0, 0, 0], nose: FORWARD, belly: DOWN },
    { what: 'yawed a quarter turn: the nose to the right', ypr: [QUARTER, 0, 0], nose: SOUTH, belly: DOWN },
    { what: 'pitched a quarter turn: the nose up', ypr: [0, QUARTER, 0], nose: [1, 0, 0], belly: FORWARD },
    {
      what: 'rolled a quarter turn: the right side down, the belly to the left',
      ypr: [0, 0, QUARTER],
      nose: FORWARD,
      belly: [0, 0, 1],
    },
    { what: 'yawed half round: tail first', ypr: [Math.PI, 0, 0], nose: [0, -1, 0], belly: DOWN },
  ] as const)('$what', ({ ypr, nose, belly }) => {
    const toBody = bodyFromTeme({
      kind: 'local-vertical',
      lvlhFromBody: quaternionOfYawPitchRoll(ypr[0], ypr[1], ypr[2]),
    })(EAST);
    close(rotate(toBody, nose as Vector3), [1, 0, 0]);
    close(rotate(toBody, belly as Vector3), [0, 0, 1]);
  });
});

describe('an inertial hold', () => {
  it('keeps a star where it is in body axes while the vehicle goes round', () => {
    const q = quaternionOfYawPitchRoll(0.3, -0.7, 1.1);
    const toBody = bodyFromTeme({ kind: 'inertial', frame: 'TEME', frameFromBody: q });
    const other: OrbitState = {
      utcMs: EAST.utcMs + 3_000_000,
      positionTemeKm: [0, 6793, 0],
      velocityTemeKmS: [-7.66, 0, 0],
    };
    close(rotate(toBody(EAST), [0, 0.6, 0.8]), rotate(toBody(other), [0, 0.6, 0.8]));
  });

  it('in J2000 sees a vector of J2000 as one in TEME that has been turned', () => {
    const q: Quaternion = [1, 0, 0, 0];
    const toBody = bodyFromTeme({ kind: 'inertial', frame: 'EQJ', frameFromBody: q })(EAST);
    close(rotate(toBody, [0.6, 0, 0.8]), rotate(eqjFromTeme(EAST.utcMs), [0.6, 0, 0.8]));
  });
});

describe('a table of attitudes', () => {
  const turned = quaternionOfYawPitchRoll(QUARTER, 0, 0);
  const rows = [
    { utcMs: EAST.utcMs - 60_000, frameFromBody: [1, 0, 0, 0] as const },
    // The same attitude as `turned` with all signs changed: the short way round must be taken.
    { utcMs: EAST.utcMs + 60_000, frameFromBody: turned.map((x) => -x) as unknown as Quaternion },
  ];
  it('is half way through a quarter turn half way between its rows', () => {
    const toBody = bodyFromTeme({ kind: 'table', frame: 'LVLH', rows })(EAST);
    const eighth = rotate(temeFromLvlh(EAST), rotate(turnAbout([0, 0, 1], Math.PI / 4), [1, 0, 0]));
    close(rotate(toBody, eighth), [1, 0, 0]);
  });
  it('meets its rows exactly and refuses instants outside, with the range', () => {
    const law = bodyFromTeme({ kind: 'table', frame: 'TEME', rows });
    close(rotate(law({ ...EAST, utcMs: EAST.utcMs + 60_000 }), rotate(matrixOf(turned), [1, 0, 0])), [1, 0, 0]);
    expect(() => law({ ...EAST, utcMs: EAST.utcMs + 60_001 })).toThrow(
      /runs from 2031-09-13T23:59:00.000Z to 2031-09-14T00:01:00.000Z/,
    );
  });
});
