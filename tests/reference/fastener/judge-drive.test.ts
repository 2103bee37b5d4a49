import { describe, expect, it } from 'vitest';
import { adviceFor, type DriveVerdict } from '@handrail/eva/fastener/drive-advice';
import { statedWindow } from '@handrail/eva/fastener/drive-window';
import { judgeDrive } from '@handrail/eva/fastener/judge-drive';
import { judgeRelease } from '@handrail/eva/fastener/judge-release';

const window = statedWindow({ likely: 12, tolerance: 1 }, { likely: 34, toleranceShare: 0.1 });
const measured = (torqueNm: number) => ({ kind: 'measured', torqueNm }) as const;

describe('a logged drive of 12 ± 1 turns and 34 N·m ± 10 %', () => {
  it.each<[number, number, DriveVerdict]>([
    [12.0, 33, 'seated'],
    [11.0, 30.6, 'seated'],
    [13.0, 37.4, 'seated'],
    [7.5, 4, 'short'],
    [7.5, 34, 'torque-reached-early'],
    [7.5, 60, 'torque-reached-early'],
    [12.4, 20, 'torque-not-reached'],
    [12.4, 45, 'over-torqued'],
    [16.0, 6, 'over-run'],
    [16.0, 34, 'over-run'],
    [16.0, 45, 'over-torqued'],
  ])('of %f turns and %f N·m is %s', (turns, torqueNm, verdict) => {
    expect(judgeDrive(window, { turns, torque: measured(torqueNm) }).verdict).toBe(verdict);
  });

  it('with a clutch that was reached counts as torque within the window', () => {
    expect(judgeDrive(window, { turns: 12, torque: { kind: 'clutch', reached: true } }).verdict).toBe('seated');
    expect(judgeDrive(window, { turns: 12, torque: { kind: 'clutch', reached: false } }).verdict).toBe(
      'torque-not-reached',
    );
  });

  it('with turns alone is never called seated', () => {
    for (let turns = 0; turns < 20; turns += 0.5) {
      expect(judgeDrive(window, { turns, torque: { kind: 'none' } }).verdict).not.toBe('seated');
    }
  });

  it('says the figures that decided, and what to try in order', () => {
    const { why, tryNext } = judgeDrive(window, { turns: 7.5, torque: measured(34) });
    expect(why).toBe('7.5 turns logged, 11 to 13 expected; 34 N·m logged, 30.6 to 37.4 N·m expected');
    expect(tryNext[0]?.say).toBe('Stop: do not raise the torque');
    expect(tryNext.at(-1)?.asks).toBe(true);
    expect(judgeDrive(window, { turns: 12, torque: measured(34) }).tryNext).toEqual([]);
  });

  it('asks first for whatever raises torque, leaves a fastener, or reports it', () => {
    const verdicts = [
      'short',
      'over-run',
      'torque-reached-early',
      'torque-not-reached',
      'over-torqued',
      'torque-unknown',
    ] as const;
    const rungs = [
      ...verdicts.flatMap((verdict) => adviceFor(verdict)),
      ...[0, 6, 4].flatMap(
        (turns) => judgeRelease(window, 40, { turns, breakawayNm: null, runningNm: turns === 4 ? 45 : null }).tryNext,
      ),
    ];
    for (const { say, asks } of rungs) expect([say, asks]).toEqual([say, /agree|report|Tighten/i.test(say)]);
    expect(adviceFor('seated')).toEqual([]);
  });

  it('is refused where the log cannot be right', () => {
    expect(() => judgeDrive(window, { turns: -1, torque: { kind: 'none' } })).toThrow(
      'turns logged must be 0 to 5000 turns',
    );
    expect(() => judgeDrive(window, { turns: 1, torque: measured(Number.NaN) })).toThrow(
      'torque logged must be 0 to 5000 N·m',
    );
  });
});

describe('a logged release', () => {
  it.each([
    [12, null, 'released'],
    [6, null, 'not-yet-free'],
    [12, 5, 'not-yet-free'],
    [0, null, 'will-not-break-away'],
    [4, 45, 'binding'],
  ] as const)('of %f turns with %s N·m still felt is %s', (turns, runningNm, verdict) => {
    expect(judgeRelease(window, 40, { turns, breakawayNm: 30, runningNm }).verdict).toBe(verdict);
  });
});
