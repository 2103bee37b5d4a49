/**
 * What has to be closed before the crew may go, as jobs with a place, hands and a time: one per piece that is open, one per
 * clock that would run out. What no verb, no tool or no way closes is said in `unreachable`, and never counted as nothing.
 */
import type { Hardware } from '../campaign/campaign.ts';
import { kindOf } from '../hardware/campaign-facts.ts';
import type { Verb } from '../kinds/kind.ts';
import { closePiece, RETAINER } from './close-piece.ts';
import { type Horizon, lastsUntil } from './horizon.ts';
import { locatePiece, type ValueOf, type Whereabouts } from './locate-piece.ts';
import { type OpenPiece, type SafeUntil, valueIn, valuesNow, type WayHomeGround } from './safe-until.ts';
import type { Basis } from './step-time.ts';
import type { RunningClock, WayHomeState } from './way-home-state.ts';

export interface Job {
  readonly id: string;
  /** Hardware ids that are closed with it: one, or all that are taken together at one place. */
  readonly pieces: readonly string[];
  /** null: with whoever holds it, wherever they are. */
  readonly place: string | null;
  /** Persons who hold what it takes. */
  readonly by: readonly string[];
  /** At pace 1. */
  readonly durationS: number;
  /** Not before: a request must be asked, set and verified first. */
  readonly releaseS: number;
  /** Not after; Infinity: whenever. */
  readonly deadlineS: number;
  /** Clocks that it stops: it must be done before they run out. */
  readonly clocks: readonly string[];
  /** "make-fast Old pump". */
  readonly words: string;
  readonly verbs: readonly string[];
  /** Stints that opened it. */
  readonly openedBy: readonly string[];
}

export interface ClosingWork {
  readonly unknown: readonly string[];
  readonly jobs: readonly Job[];
  /** In words, with who opened it. */
  readonly unreachable: readonly { readonly words: string; readonly by: readonly string[]; readonly clock: boolean }[];
}

/** `abort`: only what may never be left; a piece that comes off its seat may also be left tethered. */
export function closingJobs(
  ground: WayHomeGround,
  state: WayHomeState,
  found: SafeUntil,
  horizon: Horizon,
  mode: 'terminate' | 'abort',
  basis: Basis,
): ClosingWork {
  const jobs: Job[] = [];
  const unreachable: { words: string; by: readonly string[]; clock: boolean }[] = [];
  const valueOf = valueIn(ground, state);
  for (const open of found.open) {
    const seat = open.kind.seating === undefined ? null : open.kind.aspects[0]?.id;
    const done = (values: ReadonlyMap<string, string>): boolean =>
      open.kind.aspects.every((aspect) => {
        const value = values.get(aspect.id) ?? 'unknown';
        if (aspect.id === RETAINER) return value !== 'gripped';
        if (mode === 'abort' && aspect.id === seat && values.get(RETAINER) === 'tethered') return true;
        const before = open.values.get(aspect.id) ?? 'unknown';
        const safe = aspect.safe[value];
        // What was not judged unsafe stays as it is.
        return safe === undefined ? value === before : lastsUntil(safe, horizon);
      });
    const job = jobFor(ground, state, valueOf, open, done, basis);
    if (typeof job === 'string') unreachable.push({ words: `${open.words}: ${job}`, by: open.by, clock: false });
    else if (job.durationS > 0) jobs.push(job);
  }
  if (mode === 'terminate') {
    for (const running of found.clocks) {
      const job = clockJob(ground, state, valueOf, running, basis);
      const by = state.writtenBy.get(running.clock.start.variable);
      if (job === null) {
        unreachable.push({
          words: `${running.clock.title}: nothing that can be done from here stops it or undoes its start`,
          by: by === undefined ? [] : [by],
          clock: true,
        });
      } else {
        // What is closed anyway may stop the clock as well.
        const same = jobs.findIndex((other) => other.id === job.id);
        const before = jobs[same];
        if (before === undefined) jobs.push(job);
        else jobs[same] = { ...before, clocks: [...before.clocks, ...job.clocks] };
      }
    }
  }
  return { jobs, unreachable, unknown: found.unknown };
}

type Done = (values: ReadonlyMap<string, string>) => boolean;

/** The job, or in words why there is none. */
function jobFor(
  ground: WayHomeGround,
  state: WayHomeState,
  valueOf: ValueOf,
  open: Omit<OpenPiece, 'words'>,
  done: Done,
  basis: Basis,
): Job | string {
  const { piece, kind } = open;
  const at = locatePiece(ground.facts, piece, valueOf);
  if (at === null) return 'where it is cannot be told';
  if (at.kind === 'arm') return `it hangs on ${at.id}, and nothing says whether it may stay there`;
  const stowing = (verb: Verb): boolean => verb.carry !== 'stow' || at.kind === 'person';
  const sequence = closePiece(
    kind,
    piece,
    open.values,
    done,
    basis,
    (verb) => stowing(verb) && fits(ground, piece, verb, valueOf),
  );
  if (sequence === null) return 'no verb of its kind closes it from here';
  const hands = handsFor(ground, state, piece, sequence.verbs, at, valueOf);
  if (hands.length === 0) return 'nobody outside holds the tool that closes it';
  const releaseS = sequence.verbs.some((verb) => verb.underControl) ? requestDelayS(ground, state, piece) : 0;
  if (releaseS === null) return 'a request that it needs is refused';
  return {
    id: piece.id,
    pieces: [piece.id],
    place: at.kind === 'person' ? null : at.id,
    by: hands,
    durationS: sequence.durationS,
    releaseS,
    deadlineS: Number.POSITIVE_INFINITY,
    clocks: [],
    words: sequence.verbs.map((verb) => `${verb.id} ${piece.title}`).join(', '),
    verbs: sequence.verbs.map((verb) => verb.id),
    openedBy: open.by,
  };
}

/** A line or fastener is made fast only on a piece that is in its seat at the same place. */
function fits(ground: WayHomeGround, piece: Hardware, verb: Verb, valueOf: ValueOf): boolean {
  const attaches = kindOf(ground.facts, piece)?.attaches;
  if (attaches === undefined || piece.of === null || verb.leaves === null || attaches.free.includes(verb.leaves))
    return true;
  if (verb.aspect !== kindOf(ground.facts, piece)?.aspects[0]?.id) return true;
  const whole = ground.facts.hardware.get(piece.of);
  const kind = whole === undefined ? null : kindOf(ground.facts, whole);
  if (whole === undefined || kind?.seating === undefined) return true;
  const first = kind.aspects[0]?.id ?? '';
  const value = valuesNow(ground, whole, kind, valueOf).get(first) ?? 'unknown';
  const [here, there] = [locatePiece(ground.facts, piece, valueOf), locatePiece(ground.facts, whole, valueOf)];
  return (
    kind.seating.inPlace.includes(value) && here?.kind === 'place' && there?.kind === 'place' && here.id === there.id
  );
}

/** Who can do it: whoever holds the piece, and of the others those who hold a tool of each kind that the verbs ask. */
function handsFor(
  ground: WayHomeGround,
  state: WayHomeState,
  piece: Hardware,
  verbs: readonly Verb[],
  at: Whereabouts,
  valueOf: ValueOf,
): readonly string[] {
  const people = state.people.map(({ person }) => person).filter((person) => at.kind !== 'person' || at.id === person);
  const asked = verbs.filter((verb) => verb.toolKinds.length > 0);
  if (asked.length === 0) return people;
  const tools = ground.campaign.hardware.flatMap((tool) => {
    const kinds = asked.flatMap((verb) => verb.toolKinds);
    if (!kinds.includes(tool.kind)) return [];
    if (piece.toolFits.length > 0 && !piece.toolFits.includes(tool.id) && !piece.toolFits.includes(tool.kind))
      return [];
    const where = locatePiece(ground.facts, tool, valueOf);
    return where?.kind === 'person' ? [{ kind: tool.kind, person: where.id }] : [];
  });
  return people.filter((person) =>
    asked.every((verb) => tools.some((tool) => tool.person === person && verb.toolKinds.includes(tool.kind))),
  );
}

/** Until every request that the piece's hazardous verbs need is set and verified; null: one is refused. */
function requestDelayS(ground: WayHomeGround, state: WayHomeState, piece: Hardware): number | null {
  let delayS = 0;
  for (const id of piece.controls) {
    if (state.inForce.has(id)) continue;
    const request = ground.campaign.requests.find((candidate) => candidate.id === id);
    if (request === undefined || request.status === 'refused') return null;
    delayS = Math.max(delayS, request.setLeadS + request.verifyS);
  }
  return delayS;
}

/**
 * Stops a clock by its own stop; one that counts how long a line is open (and does not add its runs up) also by making that
 * line fast again, since what it counts has then ended. No other start can be undone: a box put back is not one with power.
 */
function clockJob(
  ground: WayHomeGround,
  state: WayHomeState,
  valueOf: ValueOf,
  running: RunningClock,
  basis: Basis,
): Job | null {
  const { clock } = running;
  const ways: Job[] = [];
  const attempt = (variable: string, isDone: (value: string) => boolean): void => {
    const about = ground.hardware.variables.get(variable);
    const piece = about === undefined || about.about !== 'aspect' ? undefined : ground.facts.hardware.get(about.of);
    const kind = piece === undefined ? null : kindOf(ground.facts, piece);
    if (piece === undefined || kind === null) return;
    const aspect = variable === piece.id ? kind.aspects[0]?.id : variable.slice(piece.id.length + 1);
    const values = valuesNow(ground, piece, kind, valueOf);
    const by = state.writtenBy.get(clock.start.variable);
    const open = { piece, kind, values, by: by === undefined ? [] : [by] };
    const job = jobFor(ground, state, valueOf, open, (at) => isDone(at.get(aspect ?? '') ?? 'unknown'), basis);
    if (typeof job !== 'string')
      ways.push({ ...job, clocks: [clock.id], words: `${job.words} (stops ${clock.title})` });
  };
  attempt(clock.stop.variable, (value) => clock.stop.values.includes(value));
  const line = ground.facts.hardware.get(clock.start.variable);
  const attaches = line === undefined ? undefined : kindOf(ground.facts, line)?.attaches;
  if (clock.kind === 'difference' && clock.onStop === 'reset' && attaches?.as === 'line') {
    attempt(clock.start.variable, (value) => attaches.fast.includes(value) && !clock.start.values.includes(value));
  }
  return ways.sort((a, b) => a.durationS + a.releaseS - (b.durationS + b.releaseS))[0] ?? null;
}
