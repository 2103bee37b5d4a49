import type { Block, Compilation } from '../engine/compilation.ts';
import { Explanation, LEARNED } from '../engine/explanation.ts';
import type { Kernel } from '../engine/kernel.ts';
import { REASON_DECISION } from '../engine/store.ts';
import type { ProofSink } from '../model/answer.ts';
import type { Point, Solution } from '../model/model.ts';
import { PROOF_VERSION } from '../model/proof-format.ts';
import { LineWriter } from './line-writer.ts';
import type { ProofLog } from './proof-log.ts';

/** Writes the log described in model/proof-format.ts. */
export class TextProof implements ProofLog {
  private readonly out: LineWriter;
  private readonly kernel: Kernel;
  private names = 0;
  private readonly hints: number[] = [];
  private readonly reason = new Explanation();

  constructor(sink: ProofSink, at: Compilation, assumptions: readonly (readonly [number, number])[]) {
    const out = new LineWriter(sink);
    this.out = out;
    this.kernel = at.kernel;
    this.line(`handrail-proof ${PROOF_VERSION}`);
    for (const { variable, first, second } of at.orders)
      this.line(`o ${variable} ${blockText(first)} ${blockText(second)}`);
    for (const { variable, constraint, need, writer } of at.supports) {
      this.line(`w ${variable} ${constraint} ${need} ${writer}`);
    }
    for (const { variable, level } of at.objectiveVariables) this.line(`z ${variable} ${level}`);
    for (const { variable, constraint } of at.totals) this.line(`t ${variable} ${constraint}`);
    if (assumptions.length === 0) return;
    out.text('a');
    for (const [side, bound] of assumptions) out.atom(side, bound);
    out.endLine();
  }

  inference(reason: Explanation, side: number, bound: number): void {
    if (reason.constraint === LEARNED) {
      this.hints.push(this.kernel.nogoods.arena[reason.nogood + 3] as number);
      return;
    }
    const { out } = this;
    this.beginInference(reason.constraint, reason.label);
    const { records } = this.kernel.store;
    for (let i = 0; i < reason.argumentCount; i++) out.argument(records[reason.argumentsAt + i] as number);
    for (let i = 0; i < reason.size; i++) out.atom(reason.side[i] as number, reason.bound[i] as number);
    out.text(' ->');
    out.atom(side, bound);
    out.endLine();
  }

  conflict(kernel: Kernel): void {
    const { store } = kernel;
    if (store.conflictConstraint === LEARNED) {
      this.hints.push(kernel.nogoods.arena[kernel.nogoods.failed + 3] as number);
      return;
    }
    const { out } = this;
    this.beginInference(store.conflictConstraint, store.conflictLabel);
    for (const value of store.conflictArguments) out.argument(value);
    for (let i = 0; i < store.conflictSize; i++) {
      out.atom(store.conflictSide[i] as number, store.conflictBound[i] as number);
    }
    out.text(' ->');
    out.endLine();
  }

  nogood(sides: readonly number[], bounds: readonly number[]): number {
    const { out, hints } = this;
    const name = ++this.names;
    out.text('n');
    out.word(name);
    for (let i = 0; i < sides.length; i++) out.atom(sides[i] as number, bounds[i] as number);
    out.text(' ;');
    for (let i = hints.length - 1; i >= 0; i--) out.word(hints[i] as number);
    out.endLine();
    hints.length = 0;
    return name;
  }

  drop(name: number): void {
    this.numbers('d', [name]);
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
    this.numbers('s', values);
  }
  cut(level: number, bound: number): void {
    this.numbers('c', [level, bound]);
  }
  closed(level: number, value: number): void {
    this.numbers('f', [level, value]);
  }
  end(claim: 'optimal' | 'infeasible' | 'open'): void {
    this.line(`end ${claim}`);
    this.out.flush();
  }

  private beginInference(constraint: number, label: string): void {
    const { out } = this;
    out.text('i');
    out.word(constraint);
    out.text(' ');
    out.text(label);
  }
  private numbers(head: string, values: readonly number[]): void {
    this.out.text(head);
    for (const value of values) this.out.word(value);
    this.out.endLine();
  }
  private line(text: string): void {
    this.out.text(text);
    this.out.endLine();
  }
}

function blockText({ from, to }: Block): string {
  return `${from.map(pointText).join(',')}-${pointText(to)}`;
}
function pointText({ interval, of, offset }: Point): string {
  return `${interval}${of === 'start' ? 's' : 'e'}${offset}`;
}
