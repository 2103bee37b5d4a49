/** What a constant of a suit means, its unit, and the range outside which it is surely a slip of the pen. No values: those are the operator's. */
interface ConstantMeaning {
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly about: string;
}

export const SUIT_CONSTANTS = {
  oxygenVolumeM3: { unit: 'm³', min: 1e-6, max: 1, about: 'volume of the primary oxygen bottles' },
  oxygenStartPressurePa: {
    unit: 'Pa',
    min: 0,
    max: 80e6,
    about: 'bottle pressure when leaving vehicle supplies, absolute',
  },
  oxygenReservePressurePa: { unit: 'Pa', min: 0, max: 80e6, about: 'bottle pressure that may not be used, absolute' },
  oxygenTemperatureK: { unit: 'K', min: 200, max: 320, about: 'temperature of the stored oxygen' },
  oxygenLeakageKgPerS: { unit: 'kg/s', min: 0, max: 1e-3, about: 'oxygen lost through the suit' },
  oxygenPurgeKg: { unit: 'kg', min: 0, max: 5, about: 'oxygen spent on purging after leaving vehicle supplies' },
  respiratoryQuotient: { unit: '1', min: 0.7, max: 1, about: 'CO2 given off per oxygen used, by volume' },
  carbonDioxideCapacityKg: { unit: 'kg', min: 1e-3, max: 20, about: 'CO2 that the absorber takes until it is spent' },
  carbonDioxideReserveKg: { unit: 'kg', min: 0, max: 20, about: 'absorber capacity that may not be used' },
  carbonDioxideBreakthroughShare: {
    unit: '1',
    min: 0.01,
    max: 1,
    about: 'share of the capacity after which CO2 starts to pass',
  },
  carbonDioxideWarningPa: { unit: 'Pa', min: 1, max: 10_000, about: 'breathed-in CO2 above which work must slow' },
  absorberHeatJPerKg: { unit: 'J/kg', min: 0, max: 5e6, about: 'heat given off per kg of CO2 absorbed' },
  waterStartKg: { unit: 'kg', min: 1e-3, max: 50, about: 'feed water for cooling' },
  waterReserveKg: { unit: 'kg', min: 0, max: 50, about: 'feed water that may not be used' },
  waterLatentHeatJPerKg: { unit: 'J/kg', min: 1e6, max: 4e6, about: 'heat carried off per kg of feed water' },
  heatFromSurroundingsW: {
    unit: 'W',
    min: -1000,
    max: 1000,
    about: 'heat that leaks in (negative: out) through the suit',
  },
  loadHeatShare: { unit: '1', min: 0, max: 1, about: 'share of the electrical power that heats the cooling loop' },
  heatRemovalMostW: { unit: 'W', min: 1, max: 5000, about: 'most that the cooling can carry off' },
  heatStorageLimitJPerKg: {
    unit: 'J/kg',
    min: 100,
    max: 50_000,
    about: 'body heat storage at which work must stop, per kg of person',
  },
  batteryStartJ: { unit: 'J', min: 1, max: 1e8, about: 'energy in the battery' },
  batteryUsableShare: { unit: '1', min: 0.05, max: 1, about: 'share of it that age and cold leave usable' },
  batteryReserveJ: { unit: 'J', min: 0, max: 1e8, about: 'energy that may not be used' },
} as const satisfies Readonly<Record<string, ConstantMeaning>>;

export type SuitConstant = keyof typeof SUIT_CONSTANTS;
