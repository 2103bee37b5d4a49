import { requireInRange } from '@handrail/quantity/in-range';

/**
 * How far stored oxygen is from an ideal gas: the compressibility factor from the reference equation of state for oxygen,
 * a reduced Helmholtz energy with 32 terms n δ^d τ^t exp(−δ^l).
 *
 * A cubic equation (Peng–Robinson) was tried first: at 293 K its density is 1.4 % high at 6 MPa and 4 % high at 41 MPa, about the size
 * of the correction it should make, so the reference equation is worth its table.
 * @source [SW85] coefficients as restated in [SJW91] Table 1
 */
interface Term {
  readonly n: number;
  readonly d: number;
  readonly t: number;
  readonly l: number;
}
const term = (n: number, d: number, t: number, l: number): Term => ({ n, d, t, l });

const TERMS: readonly Term[] = [
  term(0.3983768749, 1, 0, 0),
  term(-1.846157454, 1, 1.5, 0),
  term(0.4183473197, 1, 2.5, 0),
  term(0.02370620711, 2, -0.5, 0),
  term(0.09771730573, 2, 1.5, 0),
  term(0.03017891294, 2, 2, 0),
  term(0.02273353212, 3, 0, 0),
  term(0.01357254086, 3, 1, 0),
  term(-0.04052698943, 3, 2.5, 0),
  term(0.0005454628515, 6, 0, 0),
  term(0.0005113182277, 7, 2, 0),
  term(2.953466883e-7, 7, 5, 0),
  term(-8.687645072e-5, 8, 2, 0),
  term(-0.2127082589, 1, 5, 2),
  term(0.08735941958, 1, 6, 2),
  term(0.127550919, 2, 3.5, 2),
  term(-0.09067701064, 2, 5.5, 2),
  term(-0.03540084206, 3, 3, 2),
  term(-0.03623278059, 3, 7, 2),
  term(0.0132769929, 5, 6, 2),
  term(-0.0003254111865, 6, 8.5, 2),
  term(-0.008313582932, 7, 4, 2),
  term(0.002124570559, 8, 6.5, 2),
  term(-0.0008325206232, 10, 5.5, 2),
  term(-2.626173276e-5, 2, 22, 4),
  term(0.002599581482, 3, 11, 4),
  term(0.009984649663, 3, 18, 4),
  term(0.002199923153, 4, 11, 4),
  term(-0.02591350486, 4, 23, 4),
  term(-0.1259630848, 5, 17, 4),
  term(0.1478355637, 5, 18, 4),
  term(-0.01011251078, 5, 23, 4),
];

const CRITICAL_TEMPERATURE_K = 154.581;
const CRITICAL_DENSITY_MOL_PER_M3 = 13_630;
/** The gas constant that the equation was fitted with; not to be replaced by today's value. */
const GAS_CONSTANT = 8.314_34;

/** Below 200 K the isotherm may have more than one density; the fit ends at 300 K and is carried on to 320 K. */
export const OXYGEN_TEMPERATURE_RANGE = { min: 200, max: 320, unit: 'K' } as const;
export const OXYGEN_PRESSURE_RANGE = { min: 0, max: 80e6, unit: 'Pa' } as const;

/**
 * Compressibility factor Z = p / (ρ R T) of oxygen. 1 in the limit of zero pressure.
 * Range 200–320 K, 0–80 MPa; the source claims 0.1 % in density up to 300 K.
 * @checked tests/reference/suit/oxygen-bottle.test.ts
 */
export function oxygenCompressibility(pressurePa: number, temperatureK: number): number {
  const pressure = requireInRange('oxygen pressure', pressurePa, OXYGEN_PRESSURE_RANGE);
  const temperature = requireInRange('oxygen temperature', temperatureK, OXYGEN_TEMPERATURE_RANGE);
  if (pressure === 0) return 1;
  const weights = weightsAt(CRITICAL_TEMPERATURE_K / temperature);
  const ideal = pressure / (CRITICAL_DENSITY_MOL_PER_M3 * GAS_CONSTANT * temperature);
  // Above the critical temperature pressure rises with density, so bisection cannot land on a wrong root.
  let low = 0;
  let high = 2.5;
  for (let i = 0; i < 60; i++) {
    const delta = (low + high) / 2;
    if (delta * compressibilityAt(delta, weights) < ideal) low = delta;
    else high = delta;
  }
  return ideal / ((low + high) / 2);
}

/** Pressure in Pa of oxygen at a molar density, mol/m³. */
export function oxygenPressureAtDensityPa(densityMolPerM3: number, temperatureK: number): number {
  const temperature = requireInRange('oxygen temperature', temperatureK, OXYGEN_TEMPERATURE_RANGE);
  const density = requireInRange('oxygen density', densityMolPerM3, { min: 0, max: 31_000, unit: 'mol/m³' });
  const delta = density / CRITICAL_DENSITY_MOL_PER_M3;
  const z = compressibilityAt(delta, weightsAt(CRITICAL_TEMPERATURE_K / temperature));
  return z * density * GAS_CONSTANT * temperature;
}

/** n τ^t of every term: they stay as they are while the density is searched for. */
function weightsAt(tau: number): readonly number[] {
  return TERMS.map(({ n, t }) => n * tau ** t);
}

/** 1 + δ ∂α/∂δ. */
function compressibilityAt(delta: number, weights: readonly number[]): number {
  const powers = [1];
  for (let d = 1; d <= 10; d++) powers.push((powers[d - 1] as number) * delta);
  const decay2 = Math.exp(-(powers[2] as number));
  const decay4 = Math.exp(-(powers[4] as number));
  let z = 1;
  for (let i = 0; i < TERMS.length; i++) {
    const { d, l } = TERMS[i] as Term;
    const power = (weights[i] as number) * (powers[d] as number);
    if (l === 0) z += d * power;
    else z += power * (l === 2 ? decay2 : decay4) * (d - l * (powers[l] as number));
  }
  return z;
}
