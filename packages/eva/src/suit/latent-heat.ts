import { requireInRange } from '@handrail/quantity/in-range';

/**
 * Heat that a kilogram of feed water takes away, J/kg. Water fed as liquid and lost as vapour takes the vaporisation figure even
 * where it freezes first in a porous plate: freezing gives back what melting would take. `sublimation` is for ice that was stored as ice.
 * @param temperatureC of the water, −40 to 40 °C for vaporisation, −40 to 0 °C for sublimation
 * @source [RY89] fits: (25.00 − 0.02274 T)·10⁵ and (28.34 − 0.00149 T)·10⁵ J/kg
 */
export function latentHeatJPerKg(change: 'vaporisation' | 'sublimation', temperatureC: number): number {
  const temperature = requireInRange(`water temperature for ${change}`, temperatureC, {
    min: -40,
    max: change === 'vaporisation' ? 40 : 0,
    unit: '°C',
  });
  return change === 'vaporisation' ? (25.0 - 0.02274 * temperature) * 1e5 : (28.34 - 0.00149 * temperature) * 1e5;
}

/** Water used per second, kg/s, to carry `heatW` away. */
export function coolingWaterKgPerS(heatW: number, latentHeat: number): number {
  const heat = requireInRange('heat to carry away', heatW, { min: 0, max: 10_000, unit: 'W' });
  return heat / requireInRange('latent heat', latentHeat, { min: 1e6, max: 4e6, unit: 'J/kg' });
}
