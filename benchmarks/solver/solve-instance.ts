import { KeptLines } from '@handrail/solver/proof/kept-lines';
import type { RunSettings } from '@handrail/solver/engine/run-settings';
import { solve } from '@handrail/solver/engine/solve';
import type { SolveResult } from '@handrail/solver/model/answer';
import type { Model } from '@handrail/solver/model/model';
import { checkProof } from '@handrail/solver-checker/check-proof';
import { checkResult } from '@handrail/solver-checker/check-result';
import { evaluateObjectives } from '@handrail/solver-checker/evaluate-objectives';
import { checkSolution } from '@handrail/solver-checker/check-solution';
import type { Instance } from './instances.ts';

export interface SolveLimits {
  readonly timeS: number;
  /** `cpu`: the limit, and the times told, are processor time of the process; for machines that are shared. */
  readonly clock: 'wall' | 'cpu';
  readonly seed: number;
  /** Absent: no limit but time. */
  readonly conflicts?: number;
  /** Have the engine write its proof, and replay it. */
  readonly withProof?: boolean;
  /** Parts of the engine to leave out. */
  readonly settings?: RunSettings;
}

export interface LevelRecord {
  readonly objective: string;
  readonly value: number | null;
  readonly bound: number;
  readonly proved: boolean;
  /** Milliseconds after the start at which the value was first reached; null without a value. */
  readonly reachedMs: number | null;
}

export interface Outcome {
  readonly status: SolveResult['status'];
  readonly levels: readonly LevelRecord[];
  /** Time in the engine, reading and building the model left out. */
  readonly ms: number;
  /** Processor time of the process over the same stretch, checks included: what `ms` would be at most on an idle machine. */
  readonly cpuMs: number;
  readonly readMs: number;
  /** When the first solution came; null without one. */
  readonly firstMs: number | null;
  readonly conflicts: number;
  readonly statistics: SolveResult['statistics'];
  /** Lines of the proof and the time its replay took; null when none was asked for. */
  readonly proof: { readonly lines: number; readonly checkMs: number } | null;
  /** What the independent checker has against the answer, or against any solution on the way. Must be empty. */
  readonly faults: readonly string[];
}

const BROKEN_OFF = {
  status: 'unknown',
  levels: [],
  conflicts: 0,
  statistics: { conflicts: 0, decisions: 0, propagations: 0, restarts: 0 },
  proof: null,
} as const;

/** Solves one instance within limits and has every solution on the way checked by other code than found it. */
export function solveInstance(instance: Instance, limits: SolveLimits): { outcome: Outcome; model: Model } {
  const readFrom = performance.now();
  const model = instance.load();
  const readMs = performance.now() - readFrom;
  const faults: string[] = [];
  const reached: { value: number; ms: number }[] = [];
  let firstMs: number | null = null;
  // Checking is not the engine's time: it is taken out of the clock that the limit and the report read.
  let asideMs = 0;
  const cpuBegin = process.cpuUsage();
  const cpuMs = () => {
    const { user, system } = process.cpuUsage(cpuBegin);
    return (user + system) / 1000;
  };
  const clock = () => (limits.clock === 'cpu' ? cpuMs() : performance.now());
  const begin = clock();
  const elapsed = () => clock() - begin - asideMs;
  const lines = new KeptLines();
  const options = {
    seed: limits.seed,
    ...(limits.withProof === true ? { proof: lines } : {}),
    shouldStop: () => elapsed() > limits.timeS * 1000,
    ...(limits.conflicts === undefined ? {} : { conflictBudget: limits.conflicts }),
  };
  const search = solve(model, options, limits.settings);
  let result: SolveResult | null = null;
  try {
    let step = search.next();
    while (step.done !== true) {
      const event = step.value;
      if (event.kind === 'incumbent') {
        const now = elapsed();
        const checkFrom = clock();
        firstMs ??= now;
        for (const violation of checkSolution(model, event.solution)) faults.push(`incumbent: ${violation.message}`);
        evaluateObjectives(model, event.solution).forEach((value, level) => {
          if (reached[level]?.value !== value) reached[level] = { value, ms: now };
        });
        asideMs += clock() - checkFrom;
      }
      step = search.next();
    }
    result = step.value;
  } catch (error) {
    faults.push(`the engine broke off: ${error instanceof Error ? error.message : String(error)}`);
  }
  const ms = elapsed();
  const cpu = cpuMs();
  if (result === null) return { model, outcome: { ...BROKEN_OFF, ms, cpuMs: cpu, readMs, firstMs, faults } };
  for (const violation of checkResult(model, result)) faults.push(violation.message);
  let proof: Outcome['proof'] = null;
  if (limits.withProof === true) {
    const checkFrom = performance.now();
    const { refusal, claim, closed } = checkProof(model, lines);
    proof = { lines: lines.length, checkMs: performance.now() - checkFrom };
    const isClaimed = result.status === 'optimal' || result.status === 'infeasible';
    if (refusal !== null) faults.push(`proof line ${refusal.line}: ${refusal.reason}`);
    else if (isClaimed && claim !== result.status)
      faults.push(`the proof claims ${claim}, the answer ${result.status}`);
    const proved = result.levels.filter((level) => level.proved).map(({ value }) => value);
    if (refusal === null && String(closed) !== String(proved))
      faults.push(`the proof closes ${String(closed)}, the answer ${String(proved)}`);
  }
  const levels = result.levels.map((level, i) => ({ ...level, reachedMs: reached[i]?.ms ?? null }));
  const { status, statistics } = result;
  return {
    model,
    outcome: {
      proof,
      status,
      levels,
      ms,
      cpuMs: cpu,
      readMs,
      firstMs,
      conflicts: statistics.conflicts,
      statistics,
      faults,
    },
  };
}
