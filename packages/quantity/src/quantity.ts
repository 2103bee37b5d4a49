/**
 * Quantities as people write them: "34 N·m", "12 min", "82 kg", "1 h 20 min". Inside the program all numbers are SI with
 * the unit in the name (`durationS`, `torqueNm`); this file is the only door.
 */
export type Dimension =
  | 'time'
  | 'length'
  | 'mass'
  | 'torque'
  | 'force'
  | 'angle'
  | 'temperature'
  | 'pressure'
  | 'power'
  | 'energy'
  | 'charge'
  | 'electric-current'
  | 'voltage'
  | 'speed'
  | 'rotation-rate'
  | 'volume'
  | 'ratio'
  | 'magnetic-flux-density'
  | 'mass-flow'
  | 'specific-energy';

interface Unit {
  readonly dimension: Dimension;
  /** SI value = value × factor + shift. */
  readonly factor: number;
  readonly shift?: number;
}

/** Exact by definition of the unit (SI Brochure 9th ed.; NIST SP 811 App. B for the inch, pound, foot-pound and psi). */
const UNITS: Readonly<Record<string, Unit>> = {
  s: { dimension: 'time', factor: 1 },
  sec: { dimension: 'time', factor: 1 },
  min: { dimension: 'time', factor: 60 },
  h: { dimension: 'time', factor: 3600 },
  d: { dimension: 'time', factor: 86400 },
  m: { dimension: 'length', factor: 1 },
  km: { dimension: 'length', factor: 1000 },
  cm: { dimension: 'length', factor: 0.01 },
  mm: { dimension: 'length', factor: 0.001 },
  in: { dimension: 'length', factor: 0.0254 },
  ft: { dimension: 'length', factor: 0.3048 },
  kg: { dimension: 'mass', factor: 1 },
  g: { dimension: 'mass', factor: 0.001 },
  lb: { dimension: 'mass', factor: 0.45359237 },
  N·m: { dimension: 'torque', factor: 1 },
  'N*m': { dimension: 'torque', factor: 1 },
  Nm: { dimension: 'torque', factor: 1 },
  lbf·in: { dimension: 'torque', factor: 4.4482216152605 * 0.0254 },
  lbf·ft: { dimension: 'torque', factor: 4.4482216152605 * 0.3048 },
  N: { dimension: 'force', factor: 1 },
  kN: { dimension: 'force', factor: 1000 },
  lbf: { dimension: 'force', factor: 4.4482216152605 },
  deg: { dimension: 'angle', factor: Math.PI / 180 },
  '°': { dimension: 'angle', factor: Math.PI / 180 },
  rad: { dimension: 'angle', factor: 1 },
  turn: { dimension: 'angle', factor: 2 * Math.PI },
  turns: { dimension: 'angle', factor: 2 * Math.PI },
  K: { dimension: 'temperature', factor: 1 },
  '°C': { dimension: 'temperature', factor: 1, shift: 273.15 },
  degC: { dimension: 'temperature', factor: 1, shift: 273.15 },
  Pa: { dimension: 'pressure', factor: 1 },
  kPa: { dimension: 'pressure', factor: 1000 },
  MPa: { dimension: 'pressure', factor: 1e6 },
  bar: { dimension: 'pressure', factor: 1e5 },
  psi: { dimension: 'pressure', factor: 4.4482216152605 / 0.0254 ** 2 },
  mmHg: { dimension: 'pressure', factor: 133.322387415 },
  W: { dimension: 'power', factor: 1 },
  kW: { dimension: 'power', factor: 1000 },
  'BTU/h': { dimension: 'power', factor: 0.29307107 },
  'kcal/h': { dimension: 'power', factor: 4184 / 3600 },
  J: { dimension: 'energy', factor: 1 },
  kJ: { dimension: 'energy', factor: 1000 },
  MJ: { dimension: 'energy', factor: 1e6 },
  Wh: { dimension: 'energy', factor: 3600 },
  kWh: { dimension: 'energy', factor: 3.6e6 },
  Ah: { dimension: 'charge', factor: 3600 },
  A: { dimension: 'electric-current', factor: 1 },
  V: { dimension: 'voltage', factor: 1 },
  'm/s': { dimension: 'speed', factor: 1 },
  'cm/s': { dimension: 'speed', factor: 0.01 },
  'm/min': { dimension: 'speed', factor: 1 / 60 },
  rpm: { dimension: 'rotation-rate', factor: (2 * Math.PI) / 60 },
  'deg/s': { dimension: 'rotation-rate', factor: Math.PI / 180 },
  L: { dimension: 'volume', factor: 0.001 },
  'm³': { dimension: 'volume', factor: 1 },
  m3: { dimension: 'volume', factor: 1 },
  '%': { dimension: 'ratio', factor: 0.01 },
  nT: { dimension: 'magnetic-flux-density', factor: 1e-9 },
  'kg/s': { dimension: 'mass-flow', factor: 1 },
  'kg/h': { dimension: 'mass-flow', factor: 1 / 3600 },
  'g/s': { dimension: 'mass-flow', factor: 0.001 },
  'g/min': { dimension: 'mass-flow', factor: 0.001 / 60 },
  'g/h': { dimension: 'mass-flow', factor: 0.001 / 3600 },
  'J/kg': { dimension: 'specific-energy', factor: 1 },
  'kJ/kg': { dimension: 'specific-energy', factor: 1000 },
  'MJ/kg': { dimension: 'specific-energy', factor: 1e6 },
};

export type QuantityProblem =
  | { readonly kind: 'not-a-quantity' }
  | { readonly kind: 'unknown-unit'; readonly unit: string; readonly nearest: string | null }
  | { readonly kind: 'mixed-dimensions'; readonly units: readonly string[] };

export type QuantityResult =
  | { readonly ok: true; readonly dimension: Dimension; readonly si: number; readonly unit: string }
  | { readonly ok: false; readonly problem: QuantityProblem };

const PART = /([+-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?)\s*([^\s\d+-][^\s]*)/giy;

/** Reads one quantity; sums parts of one dimension ("1 h 20 min"). Never throws. */
export function parseQuantity(text: string): QuantityResult {
  const trimmed = text.trim();
  let at = 0;
  let total = 0;
  let dimension: Dimension | null = null;
  const units: string[] = [];
  if (trimmed.length === 0 || trimmed.length > 80) return { ok: false, problem: { kind: 'not-a-quantity' } };
  while (at < trimmed.length) {
    while (trimmed[at] === ' ') at++;
    PART.lastIndex = at;
    const match = PART.exec(trimmed);
    if (match === null) return { ok: false, problem: { kind: 'not-a-quantity' } };
    const name = match[2] as string;
    const unit = Object.hasOwn(UNITS, name) ? UNITS[name] : undefined;
    if (unit === undefined) {
      return { ok: false, problem: { kind: 'unknown-unit', unit: name, nearest: nearestUnit(name) } };
    }
    units.push(name);
    if (dimension !== null && dimension !== unit.dimension) {
      return { ok: false, problem: { kind: 'mixed-dimensions', units } };
    }
    dimension = unit.dimension;
    total += Number(match[1]) * unit.factor + (unit.shift ?? 0);
    at = PART.lastIndex;
  }
  if (dimension === null || !Number.isFinite(total)) return { ok: false, problem: { kind: 'not-a-quantity' } };
  return { ok: true, dimension, si: total, unit: units.join(' ') };
}

export function unitsOf(dimension: Dimension): readonly string[] {
  return Object.entries(UNITS)
    .filter(([, unit]) => unit.dimension === dimension)
    .map(([name]) => name);
}

function nearestUnit(name: string): string | null {
  const lower = name.toLowerCase();
  return Object.keys(UNITS).find((unit) => unit.toLowerCase() === lower) ?? null;
}
