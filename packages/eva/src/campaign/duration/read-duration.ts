/**
 * How long a stint takes: the three figures kept apart. Written minutes come first, then timed runs, then the sum of the
 * kinds' figures; which of them it was is kept as `basis`.
 */
import { type StepTime, stepTimeS } from '../../kinds/step-time.ts';
import type { DurationSample, Hardware, Step, StintDuration } from '../campaign.ts';
import { type CheckedNode, child, childrenOf, number, numberAt, text } from '../check/checked-node.ts';
import type { ReadContext } from '../read/read-context.ts';
import { sampleQuantile } from './sample-quantile.ts';
import { GRID_S, splitOverSteps } from './split-over-steps.ts';

/** Fewer timed runs than this say nothing of a spread. */
export const LEAST_SAMPLES_FOR_SPREAD = 3;

const toSeconds = (minutes: number): number => Math.round(minutes * 60);

export function readDuration(
  node: CheckedNode,
  key: string,
  steps: readonly Step[],
  hardware: ReadonlyMap<string, Hardware>,
  context: ReadContext,
): StintDuration {
  const evidence = childrenOf(node, 'sample').map(readSample);
  const times = steps.map((step) => stepTimeS(step, hardware, context.library));
  const typicalS = averageOf(times);
  const written = child(node, 'minutes');
  const span = written?.span ?? node.span;
  const build = (
    basis: StintDuration['basis'],
    agreedS: number,
    spread: StintDuration['spread'],
    boundsS: readonly [number, number],
  ): StintDuration => ({
    agreedS,
    spread,
    boundsS,
    basis,
    stepsS: splitOverSteps(
      agreedS,
      times.map((time) => time?.likely ?? typicalS),
    ),
    evidence,
    span,
  });

  if (written !== null) {
    const percentiles = readPercentiles(written, context);
    const agreed = numberAt(written, 0) ?? number(written, 'agreed');
    if (numberAt(written, 0) !== null && number(written, 'agreed') !== null) {
      context.problems.add('two-ends', written.span, 'the agreed figure is given twice', {
        expected: 'minutes 18, or agreed=18',
      });
    }
    if (percentiles !== null) {
      const spread = { lowS: percentiles.lowS, likelyS: percentiles.likelyS, highS: percentiles.highS };
      return build('three-figures', agreed === null ? spread.likelyS : toSeconds(agreed), spread, [
        spread.lowS,
        spread.highS,
      ]);
    }
    if (agreed !== null) return build('stated', toSeconds(agreed), null, [toSeconds(agreed), toSeconds(agreed)]);
    if (written.properties.size === 0 && written.source.entries.length === 0) {
      context.problems.add('missing-argument', written.nameSpan, 'minutes without a figure', {
        expected: 'minutes 18, or minutes low=14 likely=18 high=27',
      });
    }
    return build('stated', 0, null, [0, 0]);
  }
  if (evidence.length > 0) {
    const sorted = evidence.map((sample) => sample.durationS).sort((a, b) => a - b);
    const at = (p: number): number => Math.round(sampleQuantile(sorted, p));
    const spread =
      sorted.length < LEAST_SAMPLES_FOR_SPREAD ? null : { lowS: at(0.1), likelyS: at(0.5), highS: at(0.9) };
    return build('samples', toGrid(at(0.5)), spread, [sorted[0] ?? 0, sorted.at(-1) ?? 0]);
  }
  const unknown = steps.filter((_, at) => times[at] === null);
  if (steps.length === 0 || unknown.length > 0) {
    if (steps.length === 0 || !context.problems.hasErrors) {
      const names = unknown.map((step) => `"${[step.verb, ...step.objects].join(' ')}"`);
      context.problems.add(
        'no-time',
        node.nameSpan,
        steps.length === 0
          ? `nothing says how long ${key} takes`
          : `nothing says how long ${names.slice(0, 3).join(', ')} takes`,
        { expected: 'minutes 18 inside the stint, or on the sentence; or turns= where the kind counts turns' },
      );
    }
    return build('steps', 0, null, [0, 0]);
  }
  const sum = (figure: keyof StepTime): number =>
    Math.round(times.reduce((total, time) => total + (time?.[figure] ?? 0), 0));
  const spread = { lowS: sum('low'), likelyS: sum('likely'), highS: sum('high') };
  return build('steps', toGrid(spread.likelyS), spread, [spread.lowS, spread.highS]);
}

/** low, likely and high of a `minutes` node, seconds; null when none is given. */
export function readPercentiles(
  node: CheckedNode,
  context: ReadContext,
): { readonly lowS: number; readonly likelyS: number; readonly highS: number } | null {
  const keys = ['low', 'likely', 'high'] as const;
  const figures = keys.map((key) => number(node, key));
  const written = keys.filter((key) => node.source.entries.some((entry) => entry.name === key));
  if (written.length === 0) return null;
  const [low, likely, high] = figures;
  if (written.length < 3) {
    const missing = keys.filter((key) => !written.includes(key));
    context.problems.add(
      'missing-property',
      node.nameSpan,
      `minutes says ${written.join(' and ')}, and not ${missing.join(' and ')}`,
      {
        expected: 'low=, likely= and high= together, or one agreed figure',
      },
    );
    return null;
  }
  if (
    low === null ||
    likely === null ||
    high === null ||
    low === undefined ||
    likely === undefined ||
    high === undefined
  ) {
    return null;
  }
  if (!(low <= likely && likely <= high)) {
    context.problems.add(
      'range-backwards',
      node.span,
      `minutes low=${low} likely=${likely} high=${high} are not in order`,
      {
        expected: 'low ≤ likely ≤ high',
      },
    );
  }
  return { lowS: toSeconds(low), likelyS: toSeconds(likely), highS: toSeconds(high) };
}

function readSample(node: CheckedNode): DurationSample {
  return {
    durationS: toSeconds(numberAt(node, 0) ?? 0),
    where: (text(node, 'where') ?? 'rig') as DurationSample['where'],
    who: text(node, 'who'),
    when: text(node, 'when'),
    conditions: text(node, 'conditions'),
    span: node.span,
  };
}

/** Planning figures that the program makes lie on the grid; nobody signed a second. */
function toGrid(durationS: number): number {
  return Math.max(GRID_S, Math.round(durationS / GRID_S) * GRID_S);
}

function averageOf(times: readonly (StepTime | null)[]): number {
  const known = times.flatMap((time) => (time === null ? [] : [time.likely]));
  return known.length === 0 ? 60 : known.reduce((a, b) => a + b, 0) / known.length;
}
