import { between, exactly } from '@handrail/quantity/sourced-value';
import { latentHeatJPerKg } from '@handrail/eva/suit/latent-heat';
import { PUBLISHED_INSPIRED_CURVE } from '@handrail/eva/suit/published-inspired-curve';
import type { SuitDraft } from '@handrail/eva/suit/suit-specification';

export const BTU_PER_H_IN_W = 0.293_071_07;
export const PA_PER_MMHG = 133.322_387_415;
const INVENTED = 'invented for tests';

/** A suit of no real maker: round figures that hold seven hours of work at 293 W. Every figure exact, so that cases coincide. */
export const INVENTED_SUIT: SuitDraft = {
  id: 'test-suit',
  gasLaw: 'real',
  energyEquivalent: 'lusk-1924',
  constants: {
    oxygenVolumeM3: exactly(0.0075, INVENTED),
    oxygenStartPressurePa: exactly(6.2e6, INVENTED),
    oxygenReservePressurePa: exactly(0.4e6, INVENTED),
    oxygenTemperatureK: exactly(293.15, INVENTED),
    oxygenLeakageKgPerS: exactly(0, INVENTED),
    oxygenPurgeKg: exactly(0, INVENTED),
    respiratoryQuotient: exactly(0.85, INVENTED),
    carbonDioxideCapacityKg: exactly(0.7, INVENTED),
    carbonDioxideReserveKg: exactly(0.05, INVENTED),
    carbonDioxideBreakthroughShare: exactly(0.9, INVENTED),
    carbonDioxideWarningPa: exactly(1500, INVENTED),
    absorberHeatJPerKg: exactly(0, INVENTED),
    waterStartKg: exactly(4.2, INVENTED),
    waterReserveKg: exactly(0.3, INVENTED),
    waterLatentHeatJPerKg: exactly(latentHeatJPerKg('vaporisation', 0), '[RY89]'),
    heatFromSurroundingsW: exactly(0, INVENTED),
    loadHeatShare: exactly(1, INVENTED),
    heatRemovalMostW: exactly(586, INVENTED),
    heatStorageLimitJPerKg: exactly(4700, INVENTED),
    batteryStartJ: exactly(1.6e6, INVENTED),
    batteryUsableShare: exactly(1, INVENTED),
    batteryReserveJ: exactly(0.1e6, INVENTED),
  },
  effortsW: {
    steady: exactly(1000 * BTU_PER_H_IN_W, INVENTED),
    brisk: exactly(2000 * BTU_PER_H_IN_W, INVENTED),
    hard: exactly(3000 * BTU_PER_H_IN_W, INVENTED),
    spread: between(200, 293, 400, INVENTED),
  },
  loads: {
    fan: { powerW: exactly(40, INVENTED), always: true },
    lamps: { powerW: exactly(20, INVENTED), always: false },
  },
  inspiredCurve: PUBLISHED_INSPIRED_CURVE,
  secondaryOxygen: null,
};

export const INVENTED_PERSON = { id: 'EV1', bodyMassKg: 80, effortFactor: exactly(1, INVENTED) };
