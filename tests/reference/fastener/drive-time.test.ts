import { describe, expect, it } from 'vitest';
import { type HandTurning, handDrive, runDownTurns, toolDriveS } from '@handrail/eva/fastener/drive-time';
import { standardThread } from '@handrail/eva/fastener/thread-tables';

describe('turns to run a thread down', () => {
  it.each([
    ['M8', 0.01, 8], // m, turns: definition of pitch [ISO261]
    ['1/4-28', 0.5 * 0.0254, 14], // m, turns: definition of pitch [B1.1]
    ['7/16-20', 0.75 * 0.0254, 15], // m, turns: definition of pitch [B1.1]
  ])('for %s over %f m are %f', (size, engagementM, turns) => {
    expect(runDownTurns(engagementM, standardThread(size).pitchM)).toBeCloseTo(turns, 9);
  });
});

describe('time with a tool', () => {
  const run = (rpm: number) => ({ speedRevPerS: rpm / 60, slowTurns: 0, slowSpeedRevPerS: 1, handlingS: 0 });

  it.each([
    [60, 20], // rpm, s: 60 rev/min is the published top speed of such a tool [PGT]
    [30, 40], // rpm, s
    [10, 120], // rpm, s
  ])('for 20 turns at %f rpm is %f s', (rpm, seconds) => {
    expect(toolDriveS(20, run(rpm))).toBeCloseTo(seconds, 9);
  });

  it('drives the last turns slowly and adds the handling', () => {
    // 17 turns at 1 rev/s, 3 at 0.5 rev/s, 20 s of handling
    expect(toolDriveS(20, { speedRevPerS: 1, slowTurns: 3, slowSpeedRevPerS: 0.5, handlingS: 20 })).toBeCloseTo(43, 9);
    expect(toolDriveS(2, { speedRevPerS: 1, slowTurns: 3, slowSpeedRevPerS: 0.5, handlingS: 0 })).toBeCloseTo(4, 9);
  });
});

describe('time by hand', () => {
  const hand: HandTurning = {
    perTurnS: { low: 2, likely: 3, high: 5 },
    turnsPerSpell: 30,
    restS: 20,
    noteFromTurns: 50,
    source: 'drawn for tests',
  };

  it('for a latch of 127 turns is four rests and a note on tired hands', () => {
    const drive = handDrive(127, hand); // 127 turns by hand on a latch: common practice
    expect(drive.rests).toBe(4); // spells of 30, 30, 30, 30, 7
    expect(drive.likelyS).toBe(127 * 3 + 4 * 20);
    expect(drive.lowS).toBe(127 * 2 + 4 * 20);
    expect(drive.highS).toBe(127 * 5 + 4 * 20);
    expect(drive.note).toContain('127 turns by hand');
    expect(drive.note).toContain('rest 4 times');
  });

  it('for a few turns has neither rest nor note', () => {
    expect(handDrive(30, hand)).toEqual({ lowS: 60, likelyS: 90, highS: 150, rests: 0, note: null });
  });
});
