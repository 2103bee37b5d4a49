import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between } from '@handrail/quantity/sourced-value';
import { handDrive, runDownTurns, toolDriveS } from '@handrail/eva/fastener/drive-time';
import { adviceFor } from '@handrail/eva/fastener/drive-advice';
import { statedWindow } from '@handrail/eva/fastener/drive-window';
import { judgeDrive } from '@handrail/eva/fastener/judge-drive';
import { metricThread, threadGeometry } from '@handrail/eva/fastener/thread-geometry';
import { preloadFromTorqueN, torqueForPreloadNm } from '@handrail/eva/fastener/torque-preload';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('fasteners', () => {
  it('of any in-range thread have diameters in order and an area between those of root and pitch circle', () => {
    fc.assert(
      fc.property(real(0.0016, 0.1), real(0.05, 0.33), (diameter, share) => {
        const pitch = Math.min(0.01, diameter * share);
        fc.pre(pitch >= 0.0002);
        const g = threadGeometry(metricThread('drawn', diameter, pitch));
        expect(g.rootDiameterM).toBeLessThan(g.minorDiameterM);
        expect(g.minorDiameterM).toBeLessThan(g.pitchDiameterM);
        expect(g.pitchDiameterM).toBeLessThan(diameter);
        expect(g.stressAreaM2).toBeGreaterThan((Math.PI / 4) * g.rootDiameterM ** 2);
        expect(g.stressAreaM2).toBeLessThan((Math.PI / 4) * g.pitchDiameterM ** 2);
      }),
    );
  });

  it('doubled in preload need double the torque, doubled in length double the turns', () => {
    fc.assert(
      fc.property(real(1, 1e5), real(0.003, 0.05), real(0.05, 0.4), (preload, diameter, k) => {
        expect(torqueForPreloadNm(2 * preload, diameter, k) / torqueForPreloadNm(preload, diameter, k)).toBeCloseTo(
          2,
          9,
        );
        expect(runDownTurns(0.04, 0.001) / runDownTurns(0.02, 0.001)).toBeCloseTo(2, 12);
        const band = preloadFromTorqueN(
          torqueForPreloadNm(preload, diameter, k),
          diameter,
          between(k * 0.8, k, k * 1.25, 'drawn'),
        );
        expect(band.likely / preload).toBeCloseTo(1, 9);
        expect(band.low).toBeLessThan(band.likely);
        expect(band.high).toBeGreaterThan(band.likely);
      }),
    );
  });

  it('take longer for more turns, by tool and by hand', () => {
    fc.assert(
      fc.property(real(0, 900), real(0, 900), real(1, 60), (turns, more, spell) => {
        const run = { speedRevPerS: 1, slowTurns: 2, slowSpeedRevPerS: 0.2, handlingS: 5 };
        expect(toolDriveS(turns + more, run)).toBeGreaterThanOrEqual(toolDriveS(turns, run));
        const hand = {
          perTurnS: { low: 1, likely: 2, high: 3 },
          turnsPerSpell: spell,
          restS: 10,
          noteFromTurns: 50,
          source: 'drawn',
        };
        expect(handDrive(turns + more, hand).likelyS).toBeGreaterThanOrEqual(handDrive(turns, hand).likelyS);
      }),
    );
  });

  it('always get exactly one verdict; seated only inside the window; advice for all others', () => {
    fc.assert(
      fc.property(
        real(1, 200),
        real(0, 5),
        real(1, 100),
        real(0, 0.3),
        real(0, 300),
        real(0, 200),
        (turns, tol, torque, share, n, t) => {
          const window = statedWindow({ likely: turns, tolerance: tol }, { likely: torque, toleranceShare: share });
          const { verdict, tryNext, why } = judgeDrive(window, { turns: n, torque: { kind: 'measured', torqueNm: t } });
          const inside =
            n >= window.turns.low && n <= window.turns.high && t >= window.torqueNm.low && t <= window.torqueNm.high;
          expect(verdict === 'seated').toBe(inside);
          expect(tryNext.length > 0).toBe(!inside);
          expect(tryNext).toEqual(adviceFor(verdict));
          expect(why).not.toContain('NaN');
        },
      ),
      { numRuns: 500 },
    );
  });
});
