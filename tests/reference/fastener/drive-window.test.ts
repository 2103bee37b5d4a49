import { describe, expect, it } from 'vitest';
import { between, exactly } from '@handrail/quantity/sourced-value';
import { reusablePreloadN } from '@handrail/eva/fastener/bolted-joint';
import { type FastenerJoint, statedWindow, windowFromJoint } from '@handrail/eva/fastener/drive-window';
import { proofLoadN, standardThread } from '@handrail/eva/fastener/thread-tables';

const m8: FastenerJoint = {
  thread: standardThread('M8'),
  engagementM: between(0.0095, 0.01, 0.0105, 'drawing'),
  joint: null,
  snugTurns: exactly(1 / 3, '[RCSC]'),
  nutFactor: between(0.162, 0.18, 0.198, 'test of ten'),
  preloadN: { least: 9000, most: reusablePreloadN(proofLoadN('M8', '8.8') ?? 0) },
  toolTorqueShare: 0.05,
  turnResolution: 0.25,
};

describe('the window of a good drive', () => {
  it('is 8.0 turns of run-down and the turns from snug, with the spread of both', () => {
    const { turns } = windowFromJoint(m8);
    expect(turns.likely).toBeCloseTo(8 + 1 / 3, 9); // 10 mm at 1.25 mm [ISO261], a third [RCSC]
    expect(turns.low).toBeCloseTo(7.6 + 1 / 3 - 0.25, 9);
    expect(turns.high).toBeCloseTo(8.4 + 1 / 3 + 0.25, 9);
  });

  it('holds a torque at which the preload is right whatever friction and tool do', () => {
    const { torqueNm } = windowFromJoint(m8);
    // Second way: sweep friction and tool error, keep the torques that never miss.
    let low = Number.POSITIVE_INFINITY;
    let high = 0;
    for (let torque = 5; torque < 40; torque += 0.01) {
      let good = true;
      for (const k of [0.162, 0.17, 0.18, 0.19, 0.198]) {
        for (const error of [-0.05, 0, 0.05]) {
          const preload = (torque * (1 + error)) / (k * 0.008);
          if (preload < 9000 || preload > 15_900) good = false;
        }
      }
      if (good) {
        low = Math.min(low, torque);
        high = Math.max(high, torque);
      }
    }
    expect(Math.abs(torqueNm.low - low)).toBeLessThan(0.011);
    expect(Math.abs(torqueNm.high - high)).toBeLessThan(0.011);
  });

  it('does not exist where friction is too uncertain, and says what to do', () => {
    const loose = { ...m8, nutFactor: between(0.1, 0.18, 0.3, 'guess') };
    expect(() => windowFromJoint(loose)).toThrow(
      'M8: 22.7 N·m is needed for 9000 N, but no more than 12.1 N·m may be put on',
    );
  });

  it('is worked out from the springs of the joint where they are given', () => {
    const springs = { boltStiffnessNPerM: 4e8, memberStiffnessNPerM: 1.2e9 };
    const { turns } = windowFromJoint({ ...m8, joint: springs, snugTurns: null });
    // 12 450 N over 3e8 N/m of both springs in series is 41.5 µm, over 1.25 mm of pitch
    expect(turns.likely).toBeCloseTo(8 + 41.5e-6 / 1.25e-3, 9);
    // The least and the most preload stretch the joint by 30 and 53 µm.
    expect(turns.low).toBeCloseTo(7.6 + 30e-6 / 1.25e-3 - 0.25, 9);
    expect(turns.high).toBeCloseTo(8.4 + 53e-6 / 1.25e-3 + 0.25, 9);
    expect(() => windowFromJoint({ ...m8, snugTurns: null })).toThrow('neither the joint');
  });

  it('as stated on a drawing is taken as it stands', () => {
    expect(statedWindow({ likely: 12, tolerance: 1 }, { likely: 34, toleranceShare: 0.1 })).toEqual({
      turns: { low: 11, likely: 12, high: 13 },
      torqueNm: { low: 34 * 0.9, high: 34 * 1.1 },
    });
  });
});
