/** What the text of a suit, a pre-breathe and a unit without power means, in SI. */
import { readFileSync } from 'node:fs';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { CONSTANT_WORDS } from '@handrail/eva/campaign/definition/suit-constant-words';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { SUIT_CONSTANTS } from '@handrail/eva/suit/suit-constants';
import { describe, expect, it } from 'vitest';
import { FULMAR } from '../../support/planned-fulmar.ts';

const { campaign, problems } = readCampaign([{ name: 'fulmar.kdl', text: readFileSync(FULMAR) }], standardLibrary);
const [suit] = campaign?.suits ?? [];
const constants = suit?.specification.constants;

describe('the suit of the demo', () => {
  it('reads without a problem', () => {
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(campaign?.suits.map(({ id }) => id)).toEqual(['suit-one']);
  });

  it('is in SI, band by band', () => {
    expect(constants?.oxygenVolumeM3.likely).toBeCloseTo(0.0086, 12); // 8.6 L
    expect(constants?.oxygenTemperatureK.high).toBeCloseTo(300.15, 9); // 27 °C
    expect(constants?.oxygenLeakageKgPerS.likely).toBeCloseTo(0.002 / 3600, 15); // 2 g/h
    expect(constants?.absorberHeatJPerKg.low).toBeCloseTo(1.8e6, 3); // 1.8 MJ/kg
    expect(constants?.heatStorageLimitJPerKg.likely).toBeCloseTo(4700, 9); // 4.7 kJ/kg
    expect(constants?.batteryStartJ.high).toBeCloseTo(620 * 3600, 3); // 620 Wh
    expect(constants?.heatFromSurroundingsW).toEqual({ low: -40, likely: 0, high: 30, source: 'invented' });
    expect(suit?.specification.secondaryOxygen?.flowKgPerS.likely).toBeCloseTo(2.4 / 3600, 12); // 2.4 kg/h
    expect(suit?.beforeEgressS).toBe(15 * 60);
  });

  it('tells what is always on from what a window switches on', () => {
    expect(suit?.specification.loads['fan-and-radio']?.always).toBe(true);
    expect(suit?.specification.loads['lamps']?.always).toBe(false);
    expect(suit?.loadUse).toEqual([
      { load: 'fan-and-radio', window: null },
      { load: 'lamps', window: 'night' },
    ]);
  });

  it("goes with each person's own factor and mass", () => {
    expect(
      campaign?.people
        .filter(({ suit: worn }) => worn !== null)
        .map((one) => [one.id, one.workFactor?.high, one.bodyMassKg]),
    ).toEqual([
      ['EV1', 1.1, 78],
      ['EV2', 1.12, 71],
    ]);
  });

  it('has a word for every constant that the engine knows, and for no other', () => {
    const primary = [...CONSTANT_WORDS.values()].filter(({ of }) => of.part === 'primary').map(({ of }) => of.constant);
    expect([...primary].sort()).toEqual(Object.keys(SUIT_CONSTANTS).sort());
    for (const word of CONSTANT_WORDS.keys()) expect(word).toMatch(/^[a-z]+(-[a-z]+)+$/);
  });
});

describe('the pre-breathe of the demo', () => {
  const [protocol] = campaign?.prebreathes ?? [];

  it('keeps stages and breaks in the order of the text', () => {
    expect(protocol?.stages.map(({ role, durationS }) => [role, durationS / 60])).toEqual([
      ['oxygen', 60],
      ['oxygen', 20],
      ['hold', 840],
      ['oxygen', 45],
      ['break', 4],
      ['oxygen', 55],
    ]);
    expect(protocol?.stages[1]?.endPressurePa).toBeCloseTo(70_300, 6);
  });

  it('belongs to every EVA that names it', () => {
    expect(campaign?.evas.map(({ prebreathe }) => prebreathe)).toEqual(['overnight', 'overnight', 'overnight']);
  });
});

describe('the units of the demo', () => {
  it('bear their time without power by the cooling law, worst start into the coldest surroundings', () => {
    const spare = campaign?.unitTemperatures.find(({ hardware }) => hardware === 'spare-pump');
    // −τ ln((T − Ts)/(T0 − Ts)) with 8 h, −20, −95 and 14 °C [INCROPERA7] §5.1.
    expect(spare?.limit.worstS).toBeCloseTo(-28_800 * Math.log(75 / 109), 3);
    expect(spare?.limit.meets).toBe('lowest');
    const clock = campaign?.clocks.find(({ id }) => id === spare?.clock);
    expect(clock?.limitS).toBeLessThan(spare?.limit.worstS ?? 0);
  });
});
