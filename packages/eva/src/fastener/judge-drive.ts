import { Fault } from '@handrail/quantity/fault';
import { requireInRange } from '@handrail/quantity/in-range';
import { type Advice, adviceFor, type DriveVerdict } from './drive-advice.ts';
import type { DriveWindow } from './drive-window.ts';

/** What was logged after driving a fastener in. */
export interface DriveReading {
  readonly turns: number;
  /** Measured torque; or only whether the clutch or stop of the tool was reached; or nothing but the turns. */
  readonly torque:
    | { readonly kind: 'measured'; readonly torqueNm: number }
    | { readonly kind: 'clutch'; readonly reached: boolean }
    | { readonly kind: 'none' };
}

export interface DriveJudgement {
  readonly verdict: DriveVerdict;
  /** One sentence with the figures that decided it. */
  readonly why: string;
  /** In order: first thing first. Empty for `seated`. */
  readonly tryNext: readonly Advice[];
}

/**
 * Judges a logged drive against its window.
 *
 * | turns \ torque | below | within | above |
 * |---|---|---|---|
 * | too few | short | torque-reached-early | torque-reached-early |
 * | within | torque-not-reached | seated | over-torqued |
 * | too many | over-run | over-run | over-torqued |
 *
 * A clutch that was reached counts as within. Without any torque figure the turns alone never make a fastener seated: `torque-unknown`.
 * @throws Fault `input/out-of-range`, `fastener/window-out-of-order`
 * @checked tests/reference/fastener/judge-drive.test.ts
 */
export function judgeDrive(window: DriveWindow, reading: DriveReading): DriveJudgement {
  const { turns, torqueNm } = window;
  if (!(turns.low <= turns.high && torqueNm.low <= torqueNm.high)) {
    throw new Fault('fastener/window-out-of-order', 'a drive window must have low ≤ high in turns and in torque', {
      values: { turns, torqueNm },
    });
  }
  const counted = requireInRange('turns logged', reading.turns, { min: 0, max: 5000, unit: 'turns' });
  const count = counted < turns.low ? 'few' : counted > turns.high ? 'many' : 'within';
  const torque = torqueAgainst(reading.torque, torqueNm);
  const verdict = verdictOf(count, torque);
  return { verdict, why: reasonFor(window, reading), tryNext: adviceFor(verdict) };
}

type Against = 'below' | 'within' | 'above' | 'unknown';

function torqueAgainst(torque: DriveReading['torque'], window: DriveWindow['torqueNm']): Against {
  if (torque.kind === 'none') return 'unknown';
  if (torque.kind === 'clutch') return torque.reached ? 'within' : 'below';
  const measured = requireInRange('torque logged', torque.torqueNm, { min: 0, max: 5000, unit: 'N·m' });
  if (measured < window.low) return 'below';
  return measured > window.high ? 'above' : 'within';
}

function verdictOf(count: 'few' | 'within' | 'many', torque: Against): DriveVerdict {
  if (count === 'few') return torque === 'within' || torque === 'above' ? 'torque-reached-early' : 'short';
  if (torque === 'above') return 'over-torqued';
  if (count === 'many') return 'over-run';
  if (torque === 'unknown') return 'torque-unknown';
  return torque === 'within' ? 'seated' : 'torque-not-reached';
}

function reasonFor({ turns, torqueNm }: DriveWindow, reading: DriveReading): string {
  const count = `${figure(reading.turns)} turns logged, ${figure(turns.low)} to ${figure(turns.high)} expected`;
  const wanted = `${figure(torqueNm.low)} to ${figure(torqueNm.high)} N·m`;
  const { torque } = reading;
  if (torque.kind === 'none') return `${count}; no torque logged, ${wanted} expected`;
  if (torque.kind === 'clutch') {
    return `${count}; the tool's torque stop was ${torque.reached ? '' : 'not '}reached, set for ${wanted}`;
  }
  return `${count}; ${figure(torque.torqueNm)} N·m logged, ${wanted} expected`;
}

function figure(value: number): string {
  return String(Math.round(value * 10) / 10);
}
