/** Windows computed from campaign text, against closed forms that share no code with the engines. */
import { describe, expect, test } from 'vitest';
import type { WindowSet } from '@handrail/eva/campaign/campaign';
import { fillComputedWindows } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { CIRCLE, skyCampaign } from '../../support/sky-campaign.ts';

const RAD = Math.PI / 180;
const ATTITUDE = 'attitude law=local-vertical yaw="0 deg" pitch="0 deg" roll="180 deg"\n';
const windowOf = (text: string, evas?: string): WindowSet => {
  const [window] = fillComputedWindows(skyCampaign(CIRCLE + text, evas)).windows;
  if (window === undefined) throw new Error('no window');
  return window;
};
/** Lengths of the whole intervals, s: the first and last may be cut by the span that was asked for. */
const lengthsS = (window: WindowSet): readonly number[] =>
  window.intervals.slice(1, -1).map(([from, to]) => (to - from) / 1000);

/**
 * Low-precision Sun: mean longitude and anomaly, ±0.01°. @source [ALMANAC] The Astronomical Almanac, section C, "Low-precision
 * formulas for the Sun" (from memory; the figures agree with those that Vallado prints in section 5.1.1)
 */
function sun(utcMs: number): { readonly rightAscensionRad: number; readonly declinationRad: number } {
  const n = utcMs / 86_400_000 - 10_957.5;
  const g = (357.528 + 0.9856003 * n) * RAD;
  const l = (280.46 + 0.9856474 * n + 1.915 * Math.sin(g) + 0.02 * Math.sin(2 * g)) * RAD;
  const e = (23.439 - 0.0000004 * n) * RAD;
  return {
    rightAscensionRad: Math.atan2(Math.cos(e) * Math.sin(l), Math.cos(l)),
    declinationRad: Math.asin(Math.sin(e) * Math.sin(l)),
  };
}

/** Beta of a plane whose node has drifted by J2 (Ω' = −1.5 n J2 (R/a)² cos i), and the share in a cylinder's shadow, by hand. */
function byHand(utcMs: number): { readonly periodS: number; readonly nightS: number } {
  const [a, i] = [6793.137, 44 * RAD];
  const n = Math.sqrt(398_600.4418 / a ** 3);
  const rate = -1.5 * n * 1.08262668e-3 * (6378.137 / a) ** 2 * Math.cos(i);
  const node = 30 * RAD + (rate * (utcMs - Date.UTC(2031, 4, 1))) / 1000;
  const { rightAscensionRad, declinationRad } = sun(utcMs);
  const sine =
    Math.cos(declinationRad) * Math.sin(i) * Math.sin(node - rightAscensionRad) +
    Math.sin(declinationRad) * Math.cos(i);
  const cosBeta = Math.sqrt(1 - sine * sine);
  const periodS = (2 * Math.PI) / n;
  return { periodS, nightS: (periodS * Math.acos(Math.sqrt(a * a - 6378.137 ** 2) / (a * cosBeta))) / Math.PI };
}

describe('night from the text', () => {
  test('each night lasts as long as the closed form of a circular orbit says, to 40 s', () => {
    const hand = byHand(Date.UTC(2031, 4, 1, 13));
    const lengths = lengthsS(windowOf('window night computed=night\n'));
    expect(lengths.length).toBeGreaterThan(3);
    // A cone and a flattened Earth take up to some 30 s from the cylinder over a sphere of the equator's radius.
    for (const length of lengths) expect(Math.abs(length - hand.nightS)).toBeLessThan(40);
  });

  test('nights follow one another by the period, to 10 s', () => {
    const { periodS } = byHand(Date.UTC(2031, 4, 1, 13));
    const starts = windowOf('window night computed=night\n')
      .intervals.slice(1)
      .map(([from]) => from);
    // J2 shortens the time from night to night by some seconds.
    for (const [k, start] of starts.slice(1).entries())
      expect(Math.abs((start - (starts[k] as number)) / 1000 - periodS)).toBeLessThan(10);
  });
});

describe('light at a place from the text', () => {
  // A face that looks away from the Earth is lit from the rise of the Sun over the local horizontal to its set: half of each
  // revolution for any beta, and that half is never night.
  test('a face to the zenith without bodies is lit half of each revolution, to 5 s', () => {
    const { periodS } = byHand(Date.UTC(2031, 4, 1, 13));
    for (const length of lengthsS(windowOf(`${ATTITUDE}window lit computed=lit place=bay\n`)))
      expect(Math.abs(length - periodS / 2)).toBeLessThan(5);
  });

  // The Sun passes the direction of flight once each revolution. In the plane of the orbit it stays within 20° of it for
  // 2·acos(cos 20° / cos β)/360° of the period (spherical triangle); the Earth hides it while it is more than 20.1° below.
  test('the Sun is in the eyes of somebody who looks forward for as long as the spherical triangle says, to 25 s', () => {
    const utcMs = Date.UTC(2031, 4, 1, 13);
    const { periodS, nightS } = byHand(utcMs);
    const cosBeta = cosBetaOf(nightS, periodS);
    const halfRad = Math.acos(Math.cos(20 * RAD) / cosBeta);
    const lengths = lengthsS(windowOf(`${ATTITUDE}window glare computed=sun-in-eyes place=bay\n`));
    expect(lengths.length).toBeGreaterThan(2);
    for (const length of lengths) expect(Math.abs(length - (halfRad / Math.PI) * periodS)).toBeLessThan(25);
  });
});

function cosBetaOf(nightS: number, periodS: number): number {
  const a = 6793.137;
  return Math.sqrt(a * a - 6378.137 ** 2) / (a * Math.cos((nightS / periodS) * Math.PI));
}

describe('coverage from the text', () => {
  // One geostationary relay: out of view while the Earth is between. For an equatorial circle the arc out of view is
  // 360° − 2·(acos(R/a) + acos(R/r)), and the vehicle laps the relay in 1/(1/T − 1/86164 s).
  test('a relay over an equatorial orbit is lost for as long as plane geometry says, to 20 s', () => {
    const equatorial =
      'orbit { kepler model=two-body epoch="2031-05-01T00:00:00Z" semi-major-axis="6793.137 km" eccentricity=0 inclination="0 deg" node="0 deg" perigee="0 deg" anomaly="0 deg" frame=teme half-rate=0 }\n';
    const campaign = skyCampaign(
      `${equatorial}relay east longitude="60 deg"\nwindow gap computed=coverage-gap shown-as=gap\n`,
    );
    const [window] = fillComputedWindows(campaign).windows;
    const [a, r, R] = [6793.137, 42_164.17, 6378.137];
    const periodS = 2 * Math.PI * Math.sqrt(a ** 3 / 398_600.4418);
    const lapS = 1 / (1 / periodS - 1 / 86_164.0905);
    const hiddenRad = 2 * Math.PI - 2 * (Math.acos(R / a) + Math.acos(R / r));
    const expectedS = (hiddenRad / (2 * Math.PI)) * lapS;
    const lengths = window === undefined ? [] : lengthsS(window);
    expect(lengths.length).toBeGreaterThan(2);
    for (const length of lengths) expect(Math.abs(length - expectedS)).toBeLessThan(20);
  });
});
