import { describe, expect, it } from 'vitest';
import { Fault } from '@handrail/quantity/fault';
import { between, exactly } from '@handrail/quantity/sourced-value';
import { SUIT_CONSTANTS, type SuitConstant } from '@handrail/eva/suit/suit-constants';
import { completeSuit } from '@handrail/eva/suit/suit-specification';
import { secondaryOxygenS } from '@handrail/eva/suit/secondary-oxygen';
import { INVENTED_SUIT } from './invented-suit.ts';

const faultOf = (run: () => unknown): Fault => {
  try {
    run();
  } catch (error) {
    if (error instanceof Fault) return error;
  }
  throw new Error('no fault was thrown');
};

describe('a suit specification', () => {
  it.each(Object.keys(SUIT_CONSTANTS) as SuitConstant[])(
    'without %s is refused by that name, never filled in',
    (name) => {
      const { [name]: _left, ...rest } = INVENTED_SUIT.constants ?? {};
      const fault = faultOf(() => completeSuit({ ...INVENTED_SUIT, constants: rest }));
      expect(fault.code).toBe('suit/constant-missing');
      expect(fault.values['missing']).toEqual([name]);
      expect(fault.message).toContain(name);
      expect(fault.message).toContain(SUIT_CONSTANTS[name].about);
    },
  );

  it('without anything names everything that is missing', () => {
    const fault = faultOf(() => completeSuit({ id: 'empty' }));
    expect(fault.values['missing']).toEqual([
      ...Object.keys(SUIT_CONSTANTS),
      'gasLaw',
      'energyEquivalent',
      'effortsW',
      'loads',
      'inspiredCurve',
      'secondaryOxygen',
    ]);
  });

  it('with a slip of the pen is refused, with the range in the message', () => {
    const constants = { ...INVENTED_SUIT.constants, oxygenTemperatureK: exactly(20, 'operator') };
    expect(() => completeSuit({ ...INVENTED_SUIT, constants })).toThrow(
      'oxygenTemperatureK must be 200 to 320 K, got 20 K',
    );
  });

  it('with a reserve above what it starts with is refused', () => {
    const constants = { ...INVENTED_SUIT.constants, waterReserveKg: exactly(4.5, 'operator') };
    expect(faultOf(() => completeSuit({ ...INVENTED_SUIT, constants })).code).toBe('suit/reserve-above-start');
  });

  it('with a reserve that may lie above what it may start with is refused, even where the likely figures are in order', () => {
    const constants = {
      ...INVENTED_SUIT.constants,
      waterStartKg: between(3.5, 4.2, 4.4, 'operator'),
      waterReserveKg: between(0.3, 0.5, 3.5, 'operator'),
    };
    expect(() => completeSuit({ ...INVENTED_SUIT, constants })).toThrow(
      'the water reserve (up to 3.5 kg) must lie below',
    );
    const apart = { ...constants, waterReserveKg: between(0.3, 0.5, 3.4, 'operator') };
    expect(completeSuit({ ...INVENTED_SUIT, constants: apart }).id).toBe('test-suit');
  });

  it('with a curve of CO2 breathed in needs two points that rise', () => {
    const point = (metabolicW: number) => ({ metabolicW, meanPa: 1000, deviationPa: 100 });
    const curve = (...at: number[]) => ({
      ...INVENTED_SUIT,
      inspiredCurve: { points: at.map(point), source: 'operator' },
    });
    expect(faultOf(() => completeSuit(curve())).code).toBe('suit/curve-too-short');
    expect(faultOf(() => completeSuit(curve(300))).code).toBe('suit/curve-too-short');
    expect(faultOf(() => completeSuit(curve(300, 300))).code).toBe('suit/curve-not-rising');
    expect(completeSuit(curve(300, 301)).id).toBe('test-suit');
  });

  it('without a source for a figure, or with a band out of order, is refused', () => {
    const figure = { low: 4, likely: 4, high: 4, source: ' ' };
    const unsourced = { ...INVENTED_SUIT.constants, waterStartKg: figure };
    expect(faultOf(() => completeSuit({ ...INVENTED_SUIT, constants: unsourced })).code).toBe('input/source-missing');
    const crossed = {
      ...INVENTED_SUIT.constants,
      waterStartKg: { low: 4, likely: 3.9, high: 4.1, source: 'operator' },
    };
    expect(faultOf(() => completeSuit({ ...INVENTED_SUIT, constants: crossed })).code).toBe('input/band-out-of-order');
    expect(faultOf(() => between(2, 1, 3, 'operator')).code).toBe('input/band-out-of-order');
    expect(faultOf(() => exactly(2, '')).code).toBe('input/source-missing');
  });

  it('with a second oxygen pack gives the time it lasts: 30 min at the flow that empties it in 30 min', () => {
    const operator = 'operator';
    const ideal = (pressurePa: number) => (pressurePa * 0.001 * 0.031998) / (8.314462618 * 293.15);
    const suit = completeSuit({
      ...INVENTED_SUIT,
      gasLaw: 'ideal',
      secondaryOxygen: {
        volumeM3: exactly(0.001, operator),
        startPressurePa: exactly(4.1e7, operator),
        reservePressurePa: exactly(1e6, operator),
        temperatureK: exactly(293.15, operator),
        flowKgPerS: exactly(ideal(4e7) / 1800, operator),
      },
    });
    expect(secondaryOxygenS(suit)?.likely).toBeCloseTo(1800, 6); // s: a pack of half an hour is common practice
    expect(secondaryOxygenS(completeSuit(INVENTED_SUIT))).toBeNull();
  });
});
