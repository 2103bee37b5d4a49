import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { exactInterval, wilsonInterval } from '@handrail/eva/odds/proportion-interval';
import { windowFromJoint } from '@handrail/eva/fastener/drive-window';
import { standardThread } from '@handrail/eva/fastener/thread-tables';
import { torqueFromFrictionNm } from '@handrail/eva/fastener/torque-preload';
import { runPrebreathe } from '@handrail/eva/prebreathe/run-prebreathe';
import { oxygenMassKg } from '@handrail/eva/suit/oxygen-bottle';
import { completeSuit } from '@handrail/eva/suit/suit-specification';
import { petOfLimit } from '@handrail/eva/suit/supply-curve';
import { supplyUse } from '@handrail/eva/suit/supply-use';
import { radiativeCoolingS } from '@handrail/eva/thermal/radiating-body';
import { unpoweredLimit } from '@handrail/eva/thermal/unpowered-unit';
import { between, exactly } from '@handrail/quantity/sourced-value';
import { SLOW_TISSUE, stage } from '../../reference/prebreathe/psia.ts';
import { INVENTED_PERSON, INVENTED_SUIT } from '../../reference/suit/invented-suit.ts';

/**
 * Drift pins: our own last output, to 1e-12. A red line here says that an answer changed, not that it is wrong; the values that say what is
 * right stand in tests/reference with their sources and their wider accuracy.
 */
const figures = (): Record<string, number | null> => {
  const use = supplyUse(
    completeSuit(INVENTED_SUIT),
    { ...INVENTED_PERSON, effortFactor: between(0.9, 1, 1.2, 'drawn') },
    [
      { startS: 600, endS: 7200, effort: 'steady', loads: ['lamps'] },
      { startS: 7200, endS: 9000, effort: 'hard' },
      { startS: 9600, endS: 20_000, effort: 'spread' },
    ],
    { startS: 0, endS: 22_000, idleEffort: 'spread', beyondS: 40_000, beyondEffort: 'steady' },
  );
  const staged = runPrebreathe(
    [stage('oxygen', 10.2, 1, 60), stage('hold', 10.2, 0.265, 720), stage('oxygen', 10.2, 1, 50)],
    SLOW_TISSUE,
  );
  const window = windowFromJoint({
    thread: standardThread('M8'),
    engagementM: exactly(0.01, 'drawn'),
    joint: { boltStiffnessNPerM: 4e8, memberStiffnessNPerM: 1.2e9 },
    snugTurns: null,
    nutFactor: between(0.16, 0.18, 0.2, 'drawn'),
    preloadN: { least: 9000, most: 15_900 },
    toolTorqueShare: 0.05,
    turnResolution: 0.25,
  });
  return {
    oxygenLeftWorstKg: use.end.oxygen.worst.left,
    carbonDioxideUsedLikelyKg: use.end['carbon-dioxide'].likely.used,
    waterLeftBestKg: use.end.water.best.left,
    batteryLimitLikelyS: petOfLimit(use.curves.battery, 'likely'),
    limitingWorstS: use.limiting.worst?.petS ?? null,
    heatPeakWorstJ: use.heatStorage.worst.peakJ,
    oxygenReal41MPaKg: oxygenMassKg('real', 4.1e7, 285, 0.002),
    stagedRatio: staged.ratio,
    stagedStillNeededS: staged.stillNeededS,
    m8TurnsLow: window.turns.low,
    m8TorqueHighNm: window.torqueNm.high,
    m10FrictionTorqueNm: torqueFromFrictionNm(20_000, standardThread('M10'), { thread: 0.12, collar: 0.14 }, 0.013),
    radiativeS: radiativeCoolingS({ heatCapacityJPerK: 45_000, areaM2: 1.2, emissivity: 0.8 }, 293, 250),
    unpoweredWorstS: unpoweredLimit({
      kind: 'lumped',
      id: 'unit',
      startK: between(288, 293, 298, 'drawn'),
      surroundingsK: between(150, 200, 240, 'drawn'),
      timeConstantS: between(5400, 7200, 9000, 'drawn'),
      lowestK: 253,
      highestK: 323,
    }).worstS,
    wilsonHigh: wilsonInterval(7, 31, 0.9).high,
    exactLow: exactInterval(7, 31, 0.9).low,
  };
};

const pins = JSON.parse(readFileSync(new URL('./drift.json', import.meta.url), 'utf8')) as Record<string, number>;

describe('the suit, pre-breathe, fastener and thermal figures', () => {
  it('are all pinned', () => {
    expect(Object.keys(figures())).toEqual(Object.keys(pins));
  });

  it.each(Object.keys(pins))('%s is what it was', (name) => {
    const now = figures()[name];
    const then = pins[name];
    expect(Math.abs((now ?? Number.NaN) / (then ?? Number.NaN) - 1)).toBeLessThan(1e-12);
  });
});
