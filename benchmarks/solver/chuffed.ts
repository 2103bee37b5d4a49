import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';
import type { Model } from '@handrail/solver/model/model';
import { toMiniZinc } from './to-minizinc.ts';

export interface ChuffedOutcome {
  /** Value of the (first) objective in the sense of the model; null when no solution was found. */
  readonly value: number | null;
  /** Optimal, or proved to have no solution (`value` null). */
  readonly proved: boolean;
  /** Search and propagation as Chuffed reports it; the compilation is in `totalMs` only. */
  readonly solveMs: number;
  readonly totalMs: number;
  /** Values of the model's variables in the best solution, by MiniZinc name. */
  readonly assignment: Readonly<Record<string, number>> | null;
}

export interface MiniZincLimits {
  readonly timeS: number;
  /** Keep the search annotation alone, without the switches between it and activity. */
  readonly fixedSearch?: boolean;
}

interface Message {
  readonly type: string;
  readonly code?: number;
  readonly message?: string;
  readonly what?: string;
  readonly status?: string;
  readonly statistics?: Readonly<Record<string, unknown>>;
  readonly output?: { readonly json?: Readonly<Record<string, number>> };
  readonly value?: string;
}

/** The compiled module, the same for all workers. */
let module: Promise<WebAssembly.Module> | null = null;

/** All levels one after another, each with those before it held at what was proved. */
export interface ChuffedLevels {
  /** Best value of each level reached, in the sense of the model. */
  readonly values: readonly number[];
  /** How many levels are proved; with no value and `isClosed`, the model is proved to have no solution. */
  readonly proved: number;
  readonly isClosed: boolean;
  readonly solveMs: number;
  readonly totalMs: number;
}

/** Solves a model level by level with Chuffed within one time limit: an independent oracle, translated by `to-minizinc`. */
export async function solveWithChuffed(model: Model, limits: MiniZincLimits): Promise<ChuffedLevels> {
  const values: number[] = [];
  const spent = { solveMs: 0, totalMs: 0 };
  const levels = Math.max(1, model.objectives.length);
  for (let level = 0; level < levels; level++) {
    const leftS = limits.timeS - spent.solveMs / 1000;
    if (leftS <= 0) return { values, proved: level, isClosed: false, ...spent };
    const { value, proved, solveMs, totalMs } = await solveMiniZinc(toMiniZinc(model, values), {
      ...limits,
      timeS: leftS,
    });
    spent.solveMs += solveMs;
    spent.totalMs += totalMs;
    if (value !== null) values.push(value);
    if (!proved || value === null) return { values, proved: proved ? level + 1 : level, isClosed: proved, ...spent };
  }
  return { values, proved: levels, isClosed: true, ...spent };
}

/**
 * Runs a MiniZinc text through the WebAssembly build of Chuffed, in a fresh worker that is ended whatever happens. The text
 * should output by default; a variable `objective_value` gives `value`. Rejects on errors in the text.
 */
export async function solveMiniZinc(text: string, limits: MiniZincLimits): Promise<ChuffedOutcome> {
  module ??= WebAssembly.compile(readFileSync(createRequire(import.meta.url).resolve('minizinc/minizinc.wasm')));
  const worker = new Worker(new URL('./chuffed-worker.mjs', import.meta.url), { workerData: { module: await module } });
  try {
    return await run(worker, text, limits);
  } finally {
    await worker.terminate();
  }
}

function run(worker: Worker, text: string, limits: MiniZincLimits): Promise<ChuffedOutcome> {
  return new Promise((settle, reject) => {
    let assignment: Record<string, number> | null = null;
    let status = 'UNKNOWN';
    let solveMs = 0;
    let fault = '';
    let begin = 0;
    const finish = () => {
      clearTimeout(guard);
      const proved = status === 'OPTIMAL_SOLUTION' || status === 'UNSATISFIABLE' || status === 'ALL_SOLUTIONS';
      const value = assignment?.['objective_value'] ?? null;
      settle({ value, proved, solveMs, totalMs: performance.now() - begin, assignment });
    };
    // The time limit below stops the search; this guards against a compilation that does not end.
    const guard = setTimeout(finish, limits.timeS * 1000 + 60_000);
    worker.on('error', (error) => {
      clearTimeout(guard);
      reject(error);
    });
    worker.on('message', (message: Message) => {
      if (message.type === 'ready') {
        begin = performance.now();
        const search = limits.fixedSearch === true ? [] : ['-f'];
        const args = ['--solver', 'chuffed', ...search, '-i', '-s', '--output-mode', 'json'];
        args.push('--solver-time-limit', String(Math.round(limits.timeS * 1000)), 'model.mzn');
        // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker thread has no origin
        worker.postMessage({ jsonStream: true, files: { 'model.mzn': text }, args });
      } else if (message.type === 'solution') {
        assignment = { ...message.output?.json };
      } else if (message.type === 'status') {
        status = message.status ?? status;
      } else if (message.type === 'statistics') {
        const seconds = Number(message.statistics?.['solveTime']);
        if (Number.isFinite(seconds)) solveMs = seconds * 1000;
      } else if (message.type === 'error') {
        fault = `${message.what ?? 'error'}: ${message.message ?? ''}`;
      } else if (message.type === 'exit') {
        if (fault !== '' || message.code !== 0) {
          clearTimeout(guard);
          reject(new Error(`MiniZinc ended with ${message.code}: ${fault || message.message || 'no reason given'}`));
        } else {
          finish();
        }
      }
    });
  });
}
