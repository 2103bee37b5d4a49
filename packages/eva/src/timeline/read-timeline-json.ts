/**
 * A timeline from JSON that somebody else may have written: every field has the shape of timeline.ts, or the problem is named with
 * its path. Whether the names and times make sense is the replay's question.
 */
import type { Timeline } from './timeline.ts';

export interface TimelineJsonProblem {
  /** "evas[0].stints[3].startS"; "" for the whole. */
  readonly path: string;
  readonly words: string;
}

export type TimelineJsonReading =
  | { readonly ok: true; readonly timeline: Timeline }
  /** At most MOST_PROBLEMS, in order of the text. */
  | { readonly ok: false; readonly problems: readonly TimelineJsonProblem[] };

const MOST_PROBLEMS = 20;

type Shape = (value: unknown, path: string, tell: (path: string, words: string) => void) => void;

export function readTimelineJson(value: unknown): TimelineJsonReading {
  const problems: TimelineJsonProblem[] = [];
  TIMELINE(value, '', (path, words) => {
    if (problems.length < MOST_PROBLEMS) problems.push({ path, words });
  });
  return problems.length === 0 ? { ok: true, timeline: value as Timeline } : { ok: false, problems };
}

const text: Shape = (value, path, tell) => {
  if (typeof value !== 'string') tell(path, `should be text, is ${nameOf(value)}`);
};
const number: Shape = (value, path, tell) => {
  if (typeof value !== 'number' || !Number.isFinite(value)) tell(path, `should be a number, is ${nameOf(value)}`);
};
const within =
  (least: number, most: number, unit: string): Shape =>
  (value, path, tell) => {
    if (typeof value === 'number' && value >= least && value <= most) return;
    tell(path, `should be a number of ${unit} from ${least} to ${most}, is ${nameOf(value)}`);
  };
/** PET: more than any EVA, and small enough that every instant made of it is a day that exists. */
const seconds = within(-10_000_000, 10_000_000, 'seconds');
const instant = within(0, 10_000_000_000_000, 'milliseconds');
const flag: Shape = (value, path, tell) => {
  if (typeof value !== 'boolean') tell(path, `should be true or false, is ${nameOf(value)}`);
};
const exactly =
  (...allowed: readonly (string | number)[]): Shape =>
  (value, path, tell) => {
    if (!allowed.some((one) => one === value)) tell(path, `should be ${allowed.join(' or ')}, is ${nameOf(value)}`);
  };
const orNull =
  (shape: Shape): Shape =>
  (value, path, tell) => {
    if (value !== null) shape(value, path, tell);
  };
const list =
  (shape: Shape): Shape =>
  (value, path, tell) => {
    if (!Array.isArray(value)) tell(path, `should be a list, is ${nameOf(value)}`);
    else value.forEach((one, index) => shape(one, `${path}[${index}]`, tell));
  };
const fields =
  (shapes: Readonly<Record<string, Shape>>): Shape =>
  (value, path, tell) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      tell(path, `should be an object, is ${nameOf(value)}`);
      return;
    }
    for (const [name, shape] of Object.entries(shapes)) {
      const at = path === '' ? name : `${path}.${name}`;
      if (Object.hasOwn(value, name)) shape((value as Record<string, unknown>)[name], at, tell);
      else tell(at, 'is missing');
    }
  };

function nameOf(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return `"${value.slice(0, 40)}"`;
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : 'something else';
}

const STINT = fields({ stint: text, startS: seconds, endS: seconds, assigned: list(text), stepEndsS: list(seconds) });
const PASSAGE = fields({
  kind: exactly('egress', 'ingress', 'close-hatch'),
  person: orNull(text),
  startS: seconds,
  endS: seconds,
});
const MOVE = fields({
  who: text,
  from: text,
  to: text,
  startS: seconds,
  endS: seconds,
  path: list(text),
  anchor: orNull(text),
  carrying: list(text),
});
const HOLD = fields({
  request: text,
  askS: seconds,
  verifiedS: seconds,
  firstUseS: seconds,
  lastUseS: seconds,
  clearedS: seconds,
});
const CLAIM = fields({
  status: exactly('optimal for these durations', 'best found', 'written by hand'),
  levels: list(
    fields({ name: text, unit: exactly('weight', 's'), value: orNull(number), bound: orNull(number), proved: flag }),
  ),
  seed: number,
  conflicts: number,
});
const TIMELINE = fields({
  format: exactly('handrail-timeline'),
  version: exactly(1),
  campaign: text,
  documentHash: text,
  library: fields({ id: text, version: text }),
  evas: list(
    fields({
      eva: text,
      petZeroUtcMs: instant,
      tasks: list(text),
      stints: list(STINT),
      passages: list(PASSAGE),
      moves: list(MOVE),
      holds: list(HOLD),
      joins: list(fields({ join: text, releasedS: seconds, waitsUntilS: seconds })),
      bothInS: seconds,
      wall: orNull(fields({ petS: seconds, cause: text })),
      claim: CLAIM,
    }),
  ),
  leftOut: list(fields({ task: text, why: text })),
});
