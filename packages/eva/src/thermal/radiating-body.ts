import { requireInRange } from '@handrail/quantity/in-range';

/** Stefan–Boltzmann constant, W/m²/K⁴, exact to the digits given. @source [CODATA18] */
export const STEFAN_BOLTZMANN = 5.670_374_419e-8;

/** A body that only radiates to deep space. */
export interface RadiatingBody {
  readonly heatCapacityJPerK: number;
  readonly areaM2: number;
  readonly emissivity: number;
}

/**
 * Time constant in seconds of small changes about a temperature: C / (4 ε σ A T³). Where an owner states mass, finish and size but no time
 * constant.
 * @source [INCROPERA7] §1.2.3 radiation heat transfer coefficient
 */
export function radiatingTimeConstantS(body: RadiatingBody, temperatureK: number): number {
  const t = requireInRange('temperature', temperatureK, { min: 50, max: 600, unit: 'K' });
  return heatCapacity(body) / (4 * exchange(body) * t ** 3);
}

/**
 * Seconds for a body without power to cool from one temperature to another by radiation to deep space alone: C/(3 ε σ A) (1/T³ − 1/T₀³).
 * The shortest time that shade can give, since sunlight, planet and structure only add heat.
 * @source [INCROPERA7] Eq. 5.18
 * @checked tests/reference/thermal/unpowered-unit.test.ts
 */
export function radiativeCoolingS(body: RadiatingBody, startK: number, endK: number): number {
  const start = requireInRange('start temperature', startK, { min: 50, max: 600, unit: 'K' });
  const end = requireInRange('end temperature', endK, { min: 50, max: start, unit: 'K' });
  return (heatCapacity(body) / (3 * exchange(body))) * (1 / end ** 3 - 1 / start ** 3);
}

function heatCapacity(body: RadiatingBody): number {
  return requireInRange('heat capacity', body.heatCapacityJPerK, { min: 1, max: 1e9, unit: 'J/K' });
}
function exchange(body: RadiatingBody): number {
  const area = requireInRange('radiating area', body.areaM2, { min: 1e-4, max: 1e4, unit: 'm²' });
  return area * requireInRange('emissivity', body.emissivity, { min: 0.005, max: 1, unit: '1' }) * STEFAN_BOLTZMANN;
}
