import { describe, expect, it } from 'vitest';
import { type TouchLimit, touchVerdicts } from '@handrail/eva/thermal/touch-temperature';

const fahrenheit = (f: number): number => ((f - 32) * 5) / 9 + 273.15;
const celsius = (c: number): number => c + 273.15;

/** Recalled figures, here as an operator's input: −45 to 145 °F for any time, −180 to 235 °F for half a minute. MEMORY */
const LIMITS: readonly TouchLimit[] = [
  { contactS: null, lowestK: fahrenheit(-45), highestK: fahrenheit(145), source: '[SSP50005] MEMORY' },
  { contactS: 30, lowestK: fahrenheit(-180), highestK: fahrenheit(235), source: '[SSP50005] MEMORY' },
];
const touch = (lowC: number, highC: number, contactS: number) =>
  touchVerdicts(LIMITS, [{ of: 'rail', surfaceK: { low: celsius(lowC), high: celsius(highC) }, contactS }])[0];

describe('touching hot and cold hardware', () => {
  it('is free between −43 and 63 °C', () => {
    expect(fahrenheit(-45) - 273.15).toBeCloseTo(-43, 0); // °C [SSP50005] MEMORY
    expect(fahrenheit(145) - 273.15).toBeCloseTo(63, 0); // °C [SSP50005] MEMORY
    expect(touch(-42, 62, 3600)).toMatchObject({ holds: true, allowedS: null });
  });

  it('is allowed for half a minute between −118 and 113 °C', () => {
    expect(fahrenheit(-180) - 273.15).toBeCloseTo(-118, 0); // °C [SSP50005] MEMORY
    expect(fahrenheit(235) - 273.15).toBeCloseTo(113, 0); // °C [SSP50005] MEMORY
    expect(touch(-100, 20, 30)).toMatchObject({ holds: true, allowedS: 30 });
    expect(touch(-100, 20, 31)).toMatchObject({ holds: false, allowedS: 30, because: 'too-cold' });
    expect(touch(0, 100, 60)).toMatchObject({ holds: false, allowedS: 30, because: 'too-hot' });
    expect(touch(-100, 100, 60)).toMatchObject({ holds: false, because: 'too-hot-and-too-cold' });
  });

  it('is not allowed at all beyond, unless nothing is touched', () => {
    expect(touch(-150, 20, 1)).toMatchObject({ holds: false, allowedS: 0, because: 'too-cold' });
    expect(touch(-150, 20, 0)).toMatchObject({ holds: true });
  });

  it('is refused without limits, and with limits that cross', () => {
    expect(() => touchVerdicts([], [])).toThrow('no touch-temperature limits are stated');
    const absurd = [{ contactS: null, lowestK: -45, highestK: 63, source: 'operator, in the wrong unit' }];
    expect(() => touchVerdicts(absurd, [])).toThrow('lowest touch temperature must be 3 to 1000 K, got -45 K');
    const crossed = [
      { contactS: 30, lowestK: 250, highestK: 320, source: 'operator' },
      { contactS: null, lowestK: 240, highestK: 310, source: 'operator' },
    ];
    expect(() => touchVerdicts(crossed, [])).toThrow('a longer touch may not have a wider band');
    const short = [{ contactS: 30, lowestK: 200, highestK: 400, source: 'operator' }];
    expect(touchVerdicts(short, [{ of: 'rail', surfaceK: { low: 290, high: 300 }, contactS: 60 }])[0]).toMatchObject({
      holds: false,
      because: 'too-long',
      allowedS: 30,
    });
  });
});
