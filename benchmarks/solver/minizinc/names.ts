import type { IntervalId, LinearExpression, Literal, Model, Point } from '@handrail/solver/model/model';

/** MiniZinc expressions for the parts of a model. Variable 7 is `v7`, and `b7` as a truth value when it is a boolean. */
export class Names {
  readonly model: Model;

  constructor(model: Model) {
    this.model = model;
  }

  isBoolean(variable: number): boolean {
    const { min, max } = this.model.variables[variable] as Model['variables'][number];
    return min >= 0 && max <= 1;
  }

  literal({ variable, holds }: Literal): string {
    if (!this.isBoolean(variable)) return `(v${variable} = ${holds})`;
    return holds === 1 ? `b${variable}` : `(not b${variable})`;
  }

  interval(id: IntervalId): Model['intervals'][number] {
    return this.model.intervals[id] as Model['intervals'][number];
  }

  start(id: IntervalId): string {
    return `v${this.interval(id).start}`;
  }

  end(id: IntervalId): string {
    return `v${this.interval(id).end}`;
  }

  duration(id: IntervalId): string {
    const { duration } = this.interval(id);
    return typeof duration === 'number' ? String(duration) : `v${duration.variable}`;
  }

  shortest(id: IntervalId): number {
    const { duration } = this.interval(id);
    return typeof duration === 'number' ? duration : (this.model.variables[duration.variable]?.min ?? 0);
  }

  present(id: IntervalId): string {
    const { presence } = this.interval(id);
    return presence === null ? 'true' : this.literal(presence);
  }

  isOptional(id: IntervalId): boolean {
    return this.interval(id).presence !== null;
  }

  point({ interval, of, offset }: Point): string {
    const instant = of === 'start' ? this.start(interval) : this.end(interval);
    return offset === 0 ? instant : `(${instant} + ${offset})`;
  }

  sum({ terms, constant }: LinearExpression): string {
    const parts = terms.map(({ coefficient, variable }) => `${coefficient}*v${variable}`);
    return [...parts, constant].join(' + ').replaceAll('+ -', '- ');
  }

  /** `consequence` under conditions; conditions that are always true are left out. */
  when(conditions: readonly string[], consequence: string): string {
    const real = conditions.filter((condition) => condition !== 'true');
    return real.length === 0 ? `constraint ${consequence};` : `constraint (${real.join(' /\\ ')}) -> (${consequence});`;
  }
}
