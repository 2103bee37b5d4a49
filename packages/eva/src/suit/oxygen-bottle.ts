import { requireInRange } from '@handrail/quantity/in-range';
import { OXYGEN_KG_PER_MOL } from './gas-exchange.ts';
import {
  OXYGEN_PRESSURE_RANGE,
  OXYGEN_TEMPERATURE_RANGE,
  oxygenCompressibility,
  oxygenPressureAtDensityPa,
} from './oxygen-compressibility.ts';

/** `ideal`: p V = n R T. `real`: the reference equation of state. At 6 MPa and 293 K ideal is 4 % short, at 41 MPa 6 % over. */
export type GasLaw = 'ideal' | 'real';

const GAS_CONSTANT = 8.314_462_618;
const VOLUME_RANGE = { min: 1e-6, max: 1, unit: 'm³' } as const;

/**
 * Mass of oxygen in a bottle, kg.
 * @param law stated by the suit specification, never chosen here
 * @param pressurePa absolute, 0 to 80 MPa
 * @param temperatureK of the gas, 200 to 320 K
 * @param volumeM3 of the bottle, 1e-6 to 1 m³
 * @source [SW85] for `real`
 */
export function oxygenMassKg(law: GasLaw, pressurePa: number, temperatureK: number, volumeM3: number): number {
  const pressure = requireInRange('oxygen pressure', pressurePa, OXYGEN_PRESSURE_RANGE);
  const temperature = requireInRange('oxygen temperature', temperatureK, OXYGEN_TEMPERATURE_RANGE);
  const volume = requireInRange('oxygen bottle volume', volumeM3, VOLUME_RANGE);
  const z = law === 'ideal' ? 1 : oxygenCompressibility(pressure, temperature);
  return (pressure * volume * OXYGEN_KG_PER_MOL) / (z * GAS_CONSTANT * temperature);
}

/** Absolute pressure in Pa that a gauge shows for a mass left: the inverse of `oxygenMassKg`. */
export function oxygenPressurePa(law: GasLaw, massKg: number, temperatureK: number, volumeM3: number): number {
  const temperature = requireInRange('oxygen temperature', temperatureK, OXYGEN_TEMPERATURE_RANGE);
  const volume = requireInRange('oxygen bottle volume', volumeM3, VOLUME_RANGE);
  const mass = requireInRange('oxygen mass', massKg, { min: 0, max: 1600 * volume, unit: 'kg' });
  const densityMolPerM3 = mass / OXYGEN_KG_PER_MOL / volume;
  return law === 'ideal'
    ? densityMolPerM3 * GAS_CONSTANT * temperature
    : oxygenPressureAtDensityPa(densityMolPerM3, temperature);
}
