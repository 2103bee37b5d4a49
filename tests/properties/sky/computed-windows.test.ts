import { describe, expect, test } from 'vitest';
import type { WindowSet } from '@handrail/eva/campaign/campaign';
import { fillComputedWindows } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { fulmarCampaign } from '../../support/planned-fulmar.ts';
import { CIRCLE, skyCampaign } from '../../support/sky-campaign.ts';

const filledOf = (text: string, evas?: string): readonly WindowSet[] =>
  fillComputedWindows(skyCampaign(text, evas)).windows;
const egress = (day: number): string =>
  `eva day egress="2031-05-${String(day).padStart(2, '0')}T10:00:00Z" longest="6 h" { out EV1 "5 min"; in EV1 "5 min"; close-hatch "5 min" }`;

describe('computed windows', () => {
  test('a campaign without any is given back as it is', () => {
    const campaign = skyCampaign('window night { interval "2031-05-01T10:00:00Z" "2031-05-01T10:30:00Z" }\n');
    expect(fillComputedWindows(campaign)).toBe(campaign);
  });

  test('are declared without intervals and say that they are not filled', () => {
    const [window] = skyCampaign(`${CIRCLE}window night computed=night pad="30 s"\n`).windows;
    expect([window?.intervals, window?.computed?.filled, window?.padS]).toEqual([[], false, 30]);
  });

  test('the pad is the stated one and the timing error, which grows with the age of the elements', () => {
    const text = `${CIRCLE}window night computed=night pad="30 s"\n`;
    const pads = [1, 3, 9, 20].map((day) => filledOf(text, egress(day))[0]?.padS ?? 0);
    // 17 km at the epoch is 2.2 s at 7.66 km/s; 2 km a day more (half-rate 0: no drag).
    expect(pads[0]).toBeGreaterThan(32.2);
    expect(pads[0]).toBeLessThan(33);
    for (const [k, pad] of pads.slice(1).entries()) expect(pad).toBeGreaterThan(pads[k] as number);
    expect((pads[3] ?? 0) - (pads[0] ?? 0)).toBeCloseTo((19 * 2) / 7.66, 1);
  });

  test('night and day part each span between them, with the penumbra left over', () => {
    const [night, day] = filledOf(`${CIRCLE}window n computed=night\nwindow d computed=day\n`);
    const total = (window: WindowSet | undefined): number =>
      (window?.intervals ?? []).reduce((sum, [from, to]) => sum + (to - from) / 1000, 0);
    const overlap = (night?.intervals ?? []).some(([a, b]) => (day?.intervals ?? []).some(([c, d]) => a < d && c < b));
    expect(overlap).toBe(false);
    const spanS = 9 * 3600;
    expect(total(night) + total(day)).toBeLessThan(spanS);
    // Two penumbras a revolution of some 10 s each.
    expect(spanS - total(night) - total(day)).toBeLessThan(2 * 6 * 15);
  });

  test('at-least leaves short intervals out and no others', () => {
    const attitude = 'attitude law=local-vertical yaw="0 deg" pitch="0 deg" roll="180 deg"\n';
    const [all, long] = filledOf(
      `${CIRCLE}${attitude}window a computed=lit place=bay\nwindow b computed=lit place=bay at-least="40 min"\n`,
    );
    const kept = (all?.intervals ?? []).filter(([from, to]) => to - from >= 2_400_000);
    expect(kept.length).toBeGreaterThan(3);
    expect(long?.intervals).toEqual(kept);
  });

  test('a parked wing over a place keeps it dark; the same wing elsewhere does not', () => {
    const attitude = 'attitude law=local-vertical yaw="0 deg" pitch="0 deg" roll="180 deg"\n';
    const roof = (z: string): string =>
      `body roof { box x="0 m" y="0 m" z="${z}" along-x="60 m" along-y="60 m" along-z="5 cm" }\nwindow lit computed=lit place=shade\n`;
    const litS = (text: string): number =>
      (filledOf(CIRCLE + attitude + text)[0]?.intervals ?? []).reduce((sum, [from, to]) => sum + (to - from) / 1000, 0);
    expect(litS(roof('-2 m'))).toBeGreaterThan(3 * 2700);
    expect(litS(roof('2 m'))).toBeLessThan(litS(roof('-2 m')) / 5);
  });

  test('the source names the engine, the epoch and the age of the elements', () => {
    const [window] = filledOf(`${CIRCLE}window night computed=night source="flight dynamics"\n`, egress(4));
    expect(window?.source).toContain('flight dynamics; computed: Keplerian elements with J2 drift');
    expect(window?.source).toContain('elements of 2031-05-01 00:00:00Z, 3.8 d old');
  });

  test('what was not stated of links, beams and surfaces is said', () => {
    const attitude = 'attitude law=local-vertical yaw="0 deg" pitch="0 deg" roll="180 deg"\n';
    const campaign = skyCampaign(
      `${CIRCLE}${attitude}relay east longitude="60 deg"\nwindow gap computed=coverage-gap\nwindow lit computed=lit place=porch\n`,
    );
    expect(campaign.defaults.map(({ what }) => what)).toEqual(
      expect.arrayContaining(['how one radio link follows another', 'grazing height of the beam to east']),
    );
    const [gap, lit] = fillComputedWindows(campaign).windows;
    expect(gap?.source).toContain('links: not stated');
    expect(lit?.source).toContain('no facing is stated: light from any side counts');
    expect(lit?.source).toContain('no bodies are stated, so nothing casts shadow');
  });

  test('an attitude table that ends before the EVA is refused with the place of the orbit', () => {
    const table =
      'attitude law=table frame=lvlh { row at="2031-05-01T00:00:00Z" w=1 x=0 y=0 z=0; row at="2031-05-01T11:00:00Z" w=1 x=0 y=0 z=0 }\nwindow lit computed=lit place=bay\n';
    expect(() => filledOf(CIRCLE + table)).toThrow(/sky\.kdl:\d+:\d+: .*attitude table runs from/);
  });

  test('the demo is filled throughout, and the same both times', () => {
    const { campaign } = fulmarCampaign();
    expect(campaign.windows.every((window) => window.computed?.filled === true && window.intervals.length > 5)).toBe(
      true,
    );
    expect(fillComputedWindows(campaign).windows.map((window) => window.intervals)).toEqual(
      campaign.windows.map((window) => window.intervals),
    );
  });
});
