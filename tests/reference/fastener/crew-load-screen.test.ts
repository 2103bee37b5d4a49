import { describe, expect, it } from 'vitest';
import { type CrewLoad, PUBLISHED_CREW_LOADS, screenCrewLoad } from '@handrail/eva/fastener/crew-load-screen';

const load = (id: string): CrewLoad => {
  const found = PUBLISHED_CREW_LOADS.find((l) => l.id === id);
  if (found === undefined) throw new Error(`no load ${id}`);
  return found;
};
const INCH = 0.0254;

describe('loads that crew put on hardware', () => {
  // Accuracy 0.1, after conversion from lbf and lbf·in.
  it.each([
    ['kick', 556.0, null], // N, N·m [IC256F] Table 3.1.3-1
    ['handling', 200.2, null], // N, N·m [IC256F] Table 3.1.3-1
    ['connector-panel', null, 3.95], // N, N·m [IC256F] Table 3.1.3-1
    ['foot-restraint', 1218.8, 474.5], // N, N·m [IC256F] Table 3.1.3-1
    ['tool-tether', 333.6, null], // N, N·m [IC256F] Table 3.1.3-1
    ['hatch', 831.8, null], // N, N·m [IC256F] Table 3.1.3-1
  ])('%s is %s N and %s N·m', (id, forceN, torqueNm) => {
    const { forceN: force, torqueNm: torque } = load(id);
    if (forceN === null) expect(force).toBeNull();
    else expect(Math.abs((force ?? 0) - forceN)).toBeLessThan(0.1);
    if (torqueNm === null) expect(torque).toBeNull();
    else expect(Math.abs((torque ?? 0) - torqueNm)).toBeLessThan(0.1);
  });

  it('by a kick concerns what stands within 24 in of a path: 23.9 in does, 24.1 in does not', () => {
    const weak = { forceN: 500, torqueNm: null };
    expect(screenCrewLoad(load('kick'), weak, 23.9 * INCH).outcome).toBe('too-weak'); // [IC256F] Table 3.1.3-1
    expect(screenCrewLoad(load('kick'), weak, 24.1 * INCH).outcome).toBe('out-of-reach'); // [IC256F] Table 3.1.3-1
  });

  it('on a foot restraint act together: force and torque must both be borne', () => {
    expect(screenCrewLoad(load('foot-restraint'), { forceN: 1300, torqueNm: 500 }, 0).outcome).toBe('bears-it');
    expect(screenCrewLoad(load('foot-restraint'), { forceN: 1300, torqueNm: 400 }, 0)).toMatchObject({
      outcome: 'too-weak',
      lackingN: 0,
    });
  });

  it('against a strength that nobody stated are unknown, not borne', () => {
    expect(screenCrewLoad(load('foot-restraint'), { forceN: 1300, torqueNm: null }, 0)).toEqual({
      outcome: 'unknown',
      missing: ['torqueNm'],
    });
  });
});
