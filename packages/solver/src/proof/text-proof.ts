import type { Block, Compilation } from '../engine/compilation.ts';
import { Explanation, LEARNED } from '../engine/explanation.ts';
import type { Kernel } from '../engine/kernel.ts';
import { REASON_DECISION } from '../engine/store.ts';
import type { ProofSink } from '../model/answer.ts';
import type { Point, Solution } from '../model/model.ts';
import { PROOF_VERSION } from '../model/proof-format.ts';
import type { ProofLog } from './proof-log.ts';

/** Writes the log described in model/proof-format.ts. */
export class TextProof implements ProofLog {
  private readonly sink: ProofSink;
  private readonly kernel: Kernel;
  private names = 0;
  private hints: number[] = [];
  private readonly reason = new Explanation();

  constructor(sink: ProofSink, at: Compilation, assumptions: readonly (readonly [number, number])[]) {
    this.sink = sink;
    this.kernel = at.kernel;
    sink.write(`handrail-proof ${PROOF_VERSION}`);
    for (const { variable, first, second } of at.orders)
      sink.write(`o ${variable} ${blockText(first)} ${blockText(second)}`);
    for (const { variable, constraint, need, writer } of at.supports) {
      sink.write(`w ${variable} ${constraint} ${need} ${writer}`);
    }
    for (const { variable, level } of at.objectiveVariables) sink.write(`z ${variable} ${level}`);
    for (const { variable, constraint } of at.totals) sink.write(`t ${variable} ${constraint}`);
    if (assumptions.length > 0) sink.write(`a ${assumptions.map(([s, k]) => atomText(s, k)).join(' ')}`);
  }

  inference(reason: Explanation, side: number, bound: number): void {
    if (reason.constraint === LEARNED) {
      this.hints.push(this.kernel.nogoods.arena[reason.nogood + 3] as number);
      return;
    }
    let line = `i ${reason.constraint} ${reason.label}`;
    for (let i = 0; i < reason.size; i++) line += ` ${atomText(reason.side[i] as number, reason.bound[i] as number)}`;
    this.sink.write(`${line} -> ${atomText(side, bound)}`);
  }

  conflict(kernel: Kernel): void {
    const { store } = kernel;
    if (store.conflictConstraint === LEARNED) {
      this.hints.push(kernel.nogoods.arena[kernel.nogoods.failed + 3] as number);
      return;
    }
    let line = `i ${store.conflictConstraint} ${store.conflictLabel}`;
    for (let i = 0; i < store.conflictSize; i++) {
      line += ` ${atomText(store.conflictSide[i] as number, store.conflictBound[i] as number)}`;
    }
    this.sink.write(`${line} ->`);
  }

  nogood(sides: readonly number[], bounds: readonly number[]): number {
    const name = ++this.names;
    let line = `n ${name}`;
    for (let i = 0; i < sides.length; i++) line += ` ${atomText(sides[i] as number, bounds[i] as number)}`;
    line += ' ;';
    for (let i = this.hints.length - 1; i >= 0; i--) line += ` ${this.hints[i]}`;
    this.sink.write(line);
    this.hints = [];
    return name;
  }

  drop(name: number): void {
    this.sink.write(`d ${name}`);
  }

  root(kernel: Kernel): void {
    const { store } = kernel;
    for (let t = 0; t < store.trailLength && store.trailLevel[t] === 0; t++) {
      if (store.trailReason[t] === REASON_DECISION) continue;
      const side = store.trailSide[t] as number;
      const bound = store.trailNew[t] as number;
      kernel.explain(t, side, bound, this.reason);
      this.inference(this.reason, side, bound);
      this.nogood([side ^ 1], [1 - bound]);
    }
  }

  solution(values: Solution): void {
    this.sink.write(`s ${values.join(' ')}`);
  }
  cut(level: number, bound: number): void {
    this.sink.write(`c ${level} ${bound}`);
  }
  closed(level: number, value: number): void {
    this.sink.write(`f ${level} ${value}`);
  }
  end(claim: 'optimal' | 'infeasible' | 'open'): void {
    this.sink.write(`end ${claim}`);
  }
}

function atomText(side: number, bound: number): string {
  return (side & 1) === 0 ? `${side >> 1}>=${bound}` : `${side >> 1}<=${-bound}`;
}

function blockText({ from, to }: Block): string {
  return `${from.map(pointText).join(',')}-${pointText(to)}`;
}
function pointText({ interval, of, offset }: Point): string {
  return `${interval}${of === 'start' ? 's' : 'e'}${offset}`;
}
