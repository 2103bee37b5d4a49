import type { AttitudeLaw } from '@handrail/eva/sky/attitude';
import { bodyFromTeme } from '@handrail/eva/sky/attitude';
import { coveragePlan } from '@handrail/eva/sky/coverage-plan';
import { EARTH_EQUATORIAL_RADIUS_KM, GEOSTATIONARY_RADIUS_KM } from '@handrail/eva/sky/earth';
import { geodeticOf, positionEcefKm, positionTemeKm } from '@handrail/eva/sky/frames';
import { periodMs, propagator } from '@handrail/eva/sky/propagate';
import { type OwnVehicle, partnerEcefKm, radioContacts, type RadioPartner } from '@handrail/eva/sky/radio-contact';
import { rotate } from '@handrail/eva/sky/rotation';
import { contains, totalS } from '@handrail/eva/sky/window-set';
import { add, scale, unit } from '@handrail/eva/sky/vector-algebra';
import { sunInBody } from '@handrail/eva/sky/sun-in-body';
import type { Joint } from '@handrail/eva/sky/vehicle-shape';
import { norm, subtract } from '@handrail/quantity/vector';
import { describe, expect, it } from 'vitest';
import { plateTriangles } from '@handrail/eva/sky/shape-primitives';
import { circularOrbit } from './circular-orbit.ts';

const DEGREE = Math.PI / 180;
const START = Date.UTC(2031, 8, 14);
const DAY = 86_400_000;
/** Turn of the Earth against the stars. @source [WGS84], rad/s */
const EARTH_RATE = 7.292115e-5;
const relay = (longitudeDeg: number, grazingHeightKm = 100): RadioPartner => ({
  kind: 'relay',
  name: `relay ${longitudeDeg}`,
  longitudeRad: longitudeDeg * DEGREE,
  grazingHeightKm,
});

describe('the geostationary radius', () => {
  it('is (μ/ω²)^⅓', () => {
    expect(Math.abs(GEOSTATIONARY_RADIUS_KM - Math.cbrt(398_600.4418 / EARTH_RATE ** 2))).toBeLessThan(0.02);
  });
});

describe('contact over the equator against plane geometry', () => {
  // All in one plane: the vehicle runs over the turning Earth at n − ω, and a contact is an angle at the Earth's centre.
  const orbit = circularOrbit(415, 0, 0, START, 'two-body');
  const r = 6378.137 + 415;
  const rate = (2000 * Math.PI) / periodMs(orbit) - EARTH_RATE;

  it('with a relay lasts 2(acos(R/r) + acos(R/r_relay)) of angle, R the radius that the beam may graze', () => {
    const grazed = EARTH_EQUATORIAL_RADIUS_KM + 100;
    const expectedS = (2 * (Math.acos(grazed / r) + Math.acos(grazed / GEOSTATIONARY_RADIUS_KM))) / rate;
    const { contacts } = radioContacts(orbit, relay(40), null, START, START + DAY);
    const whole = contacts.filter((contact) => contact.aosUtcMs !== null && contact.losUtcMs !== null);
    expect(whole.length).toBeGreaterThan(12);
    for (const contact of whole) {
      expect(Math.abs((contact.endUtcMs - contact.startUtcMs) / 1000 - expectedS)).toBeLessThan(0.2);
      expect(contact.losCause).toBe('earth');
    }
  });

  it('with a ground station on the equator lasts 2(acos(R cos ε / r) − ε) of angle, ε the mask', () => {
    const mask = 7 * DEGREE;
    const expectedS = (2 * (Math.acos((EARTH_EQUATORIAL_RADIUS_KM * Math.cos(mask)) / r) - mask)) / rate;
    const station: RadioPartner = {
      kind: 'ground',
      name: 'station',
      latitudeRad: 0,
      longitudeRad: -1.2,
      heightM: 0,
      maskRad: mask,
    };
    const { contacts } = radioContacts(orbit, station, null, START, START + DAY);
    const whole = contacts.filter((contact) => contact.aosUtcMs !== null && contact.losUtcMs !== null);
    expect(whole.length).toBeGreaterThan(12);
    for (const contact of whole) {
      expect(Math.abs((contact.endUtcMs - contact.startUtcMs) / 1000 - expectedS)).toBeLessThan(0.2);
      expect(contact.losCause).toBe('mask');
    }
  });

  it('with three relays a third of a turn apart is never lost at this height', () => {
    const partners = [0, 120, 240].map((longitude) => radioContacts(orbit, relay(longitude), null, START, START + DAY));
    const { gaps } = coveragePlan(partners, START, START + DAY, 0, 0);
    expect(gaps).toEqual([]);
  });
});

describe('contact with a relay from a nearly polar orbit', () => {
  it('holds exactly where no point of the line is lower than the grazing height over the ellipsoid', () => {
    const orbit = circularOrbit(500, 86, 20, START);
    const partner = relay(75, 60);
    const { inView } = radioContacts(orbit, partner, null, START, START + DAY / 4);
    const state = propagator(orbit);
    let [free, cut] = [0, 0];
    for (let t = START; t < START + DAY / 4; t += 14_000) {
      const from = positionEcefKm(state(t).positionTemeKm, t);
      const way = subtract(partnerEcefKm(partner), from);
      let lowest = Number.POSITIVE_INFINITY;
      // The lowest point lies within 5000 km of the vehicle; 5 km apart, a sample is at most 1 m too high.
      for (let k = 0; k <= 1000; k++) {
        const at = add(from, scale(way, (k / 1000) * (5000 / norm(way))));
        if (norm(at) < 6300) lowest = 0;
        else lowest = Math.min(lowest, geodeticOf(at).heightKm);
      }
      // Within 0.3 km of the limit the figure of the grown ellipsoid counts (0.02 km) and the 50 ms of the search.
      if (Math.abs(lowest - 60) < 0.5) continue;
      expect(contains(inView, t), `${lowest} km`).toBe(lowest > 60);
      if (lowest > 60) free++;
      else cut++;
    }
    expect(free).toBeGreaterThan(200);
    expect(cut).toBeGreaterThan(100);
  });
});

describe('the vehicle in the way of its own antenna', () => {
  const orbit = circularOrbit(415, 44, 57, START);
  const attitude: AttitudeLaw = { kind: 'local-vertical', lvlhFromBody: [1, 0, 0, 0] };
  const roof = { name: 'roof', trianglesM: plateTriangles([0, 0, -2], [12, 0, 0], [0, 9, 0], 3), joint: null };
  const own: OwnVehicle = {
    attitude,
    shape: { bodies: [roof], joints: [] },
    antennas: [{ name: 'low', positionM: [0, 0, 0], joint: null, cone: null, clearanceM: 0.05 }],
  };
  const partner = relay(-30);

  it('hides the partner exactly where the line to it meets the rectangle', () => {
    const { hiddenByVehicle, inView, contacts } = radioContacts(orbit, partner, own, START, START + DAY / 2);
    const state = propagator(orbit);
    const toBody = bodyFromTeme(attitude);
    let [hidden, seen] = [0, 0];
    for (let t = START; t < START + DAY / 2; t += 20_000) {
      if (!contains(inView, t)) continue;
      const now = state(t);
      const [x, y, z] = rotate(
        toBody(now),
        unit(subtract(positionTemeKm(partnerEcefKm(partner), t), now.positionTemeKm)),
      );
      const inside = z < 0 ? Math.max(Math.abs((-2 * x) / z) / 6, Math.abs((-2 * y) / z) / 4.5) : 2;
      // A sample within 1 % of the edge may fall either way by the 50 ms of the search.
      if (Math.abs(inside - 1) < 0.01) continue;
      expect(contains(hiddenByVehicle, t)).toBe(inside < 1);
      if (inside < 1) hidden++;
      else seen++;
    }
    expect(hidden).toBeGreaterThan(50);
    expect(seen).toBeGreaterThan(50);
    expect(contacts.some((contact) => contact.losCause === 'own-vehicle')).toBe(true);
  });

  it('hides it with a wing where the Sun has turned that wing', () => {
    const joint: Joint = {
      name: 'wing',
      parent: null,
      pivotM: [0, 0, -3],
      axis: [0, 1, 0],
      motion: { kind: 'tracks-sun', facing: [0, 0, -1], biasRad: 0, limitsRad: null },
    };
    const wing = { name: 'wing', trianglesM: plateTriangles([0, 0, -3], [8, 0, 0], [0, 10, 0]), joint: 'wing' };
    const winged: OwnVehicle = { ...own, shape: { bodies: [wing], joints: [joint] } };
    const { hiddenByVehicle, inView } = radioContacts(orbit, partner, winged, START, START + DAY / 4);
    const sun = sunInBody(orbit, attitude, START, START + DAY / 4);
    const state = propagator(orbit);
    const toBody = bodyFromTeme(attitude);
    let [hidden, seen] = [0, 0];
    for (let t = START; t < START + DAY / 4; t += 20_000) {
      if (!contains(inView, t)) continue;
      const now = state(t);
      const to = rotate(toBody(now), unit(subtract(positionTemeKm(partnerEcefKm(partner), t), now.positionTemeKm)));
      const [sx, , sz] = sun(t);
      // The wing's normal is the Sun's direction across the axis; its width runs along `wide`.
      const length = Math.hypot(sx, sz);
      const normal = [sx / length, 0, sz / length] as const;
      const wide = [normal[2], 0, -normal[0]] as const;
      const along = (-3 * normal[2]) / (to[0] * normal[0] + to[2] * normal[2]);
      const hit = [to[0] * along, to[1] * along, to[2] * along + 3] as const;
      const inside =
        along > 0.05 ? Math.max(Math.abs(hit[0] * wide[0] + hit[2] * wide[2]) / 4, Math.abs(hit[1]) / 5) : 2;
      if (Math.abs(inside - 1) < 0.02) continue;
      expect(contains(hiddenByVehicle, t)).toBe(inside < 1);
      if (inside < 1) hidden++;
      else seen++;
    }
    expect(hidden).toBeGreaterThan(10);
    expect(seen).toBeGreaterThan(50);
  });

  it('hides nothing once a second antenna stands on the roof', () => {
    const both: OwnVehicle = {
      ...own,
      antennas: [...own.antennas, { name: 'high', positionM: [0, 0, -2.5], joint: null, cone: null, clearanceM: 0.05 }],
    };
    const { hiddenByVehicle } = radioContacts(orbit, partner, both, START, START + DAY / 2);
    const alone = radioContacts(orbit, partner, own, START, START + DAY / 2).hiddenByVehicle;
    expect(totalS(hiddenByVehicle)).toBeLessThan(totalS(alone) / 5);
  });

  it('an antenna with a narrow cone hears less than one without', () => {
    const cone = { boresight: [0, 0, -1] as const, halfAngleRad: 40 * DEGREE };
    const narrow: OwnVehicle = {
      attitude,
      shape: { bodies: [], joints: [] },
      antennas: [{ name: 'dish', positionM: [0, 0, 0], joint: null, cone, clearanceM: 0 }],
    };
    const { contacts, inView } = radioContacts(orbit, partner, narrow, START, START + DAY / 2);
    const heardS = contacts.reduce((sum, contact) => sum + (contact.endUtcMs - contact.startUtcMs) / 1000, 0);
    expect(heardS).toBeGreaterThan(0);
    expect(heardS).toBeLessThan(totalS(inView));
  });
});

describe('one link after another', () => {
  const contact = (partner: string, from: number, to: number) => ({
    partner,
    startUtcMs: from,
    endUtcMs: to,
    aosUtcMs: from,
    losUtcMs: to,
    losCause: 'earth' as const,
  });
  const partner = (name: string, ...spans: readonly (readonly [number, number])[]) => ({
    partner: name,
    contacts: spans.map(([a, b]) => contact(name, a, b)),
    inView: spans,
    hiddenByVehicle: [],
  });

  it('loses the time of the handover and names the cause of every gap', () => {
    // East is heard 0 to 100 s, west 60 to 200 s, then nothing, then east again from 300 s; 10 s to take up a link.
    const plan = coveragePlan(
      [partner('east', [0, 100_000], [300_000, 400_000]), partner('west', [60_000, 200_000])],
      0,
      500_000,
      10,
      0,
    );
    expect(plan.links.map((link) => [link.partner, link.startUtcMs / 1000, link.endUtcMs / 1000])).toEqual([
      ['east', 0, 100],
      ['west', 110, 200],
      ['east', 310, 400],
    ]);
    expect(plan.gaps.map((gap) => [gap.startUtcMs / 1000, gap.endUtcMs / 1000, gap.cause])).toEqual([
      [100, 110, 'handover'],
      [200, 310, 'none-in-view'],
      [400, 500, 'none-in-view'],
    ]);
    expect(plan.gaps[1]).toMatchObject({ handoverS: 10, hiddenS: 0, noneS: 100 });
    expect(plan.gaps[2]).toMatchObject({ losUtcMs: 400_000, aosUtcMs: null });
  });

  it('takes the partner that lasts longest and leaves scraps aside', () => {
    const plan = coveragePlan(
      [partner('brief', [0, 30_000]), partner('long', [0, 90_000]), partner('scrap', [95_000, 99_000])],
      0,
      100_000,
      0,
      10,
    );
    expect(plan.links.map((link) => link.partner)).toEqual(['long']);
  });
});
