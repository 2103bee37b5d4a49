/**
 * Who changes a state and who needs it, and between which events of the network: a stint from its first to its last change of it, a
 * request from verified to the call to clear, an outside event at its instant, a way over rails that are open only in some state
 * from its start to its end.
 */
import { REQUEST_IN_FORCE } from '../../hardware/state-variables.ts';
import { valueWords } from '../../hardware/value-words.ts';
import type { TemporalNetwork, WayEvents } from '../network/temporal-network.ts';
import { railsBetween } from '../replay/people/rails.ts';
import type { Placed, ReplayContext } from '../replay/replay-context.ts';

export interface Access {
  readonly variable: string;
  readonly kind: 'change' | 'need';
  /** Stint key, "event ID", "request ID", "way EVENT". */
  readonly by: string;
  /** In words. */
  readonly title: string;
  /** Who is at work in it. */
  readonly bodies: readonly string[];
  /** Events: from the first to the last moment of it. */
  readonly from: number;
  readonly to: number;
  readonly fromS: number;
  readonly toS: number;
  /** Steps [fromStep, toStep) of the stint; 0 and 0 for what is no stint. */
  readonly fromStep: number;
  readonly toStep: number;
  /** null: no stint. */
  readonly placed: Placed | null;
  readonly way: WayEvents | null;
  /** Values that a need is content with, roles filled; a change asks for itself alone. */
  readonly allowed: readonly string[] | null;
  /** What is needed or left, in words. */
  readonly words: string;
}

export function stateAccesses(
  context: ReplayContext,
  network: TemporalNetwork,
  placed: readonly Placed[],
): ReadonlyMap<string, readonly Access[]> {
  const found = new Map<string, Access[]>();
  const add = (access: Access): void => {
    const list = found.get(access.variable);
    if (list === undefined) found.set(access.variable, [access]);
    else list.push(access);
  };
  for (const one of placed) for (const access of ofStint(network, one)) add(access);
  for (const event of context.campaign.events) {
    const at = network.outside.get(event.id);
    if (at === undefined) continue;
    const petS = network.events[at]?.plannedS ?? 0;
    for (const { variable, value } of event.leaves) {
      const words = `"${event.title}" leaves it ${value}`;
      add({
        ...NO_STINT,
        variable,
        kind: 'change',
        by: `event ${event.id}`,
        title: `"${event.title}"`,
        from: at,
        to: at,
        fromS: petS,
        toS: petS,
        words,
      });
    }
  }
  for (const { request, verified, clearCall } of network.requestEvents) {
    const by = `request ${request}`;
    const title = context.campaign.requests.find(({ id }) => id === request)?.title ?? request;
    for (const at of [verified, clearCall]) {
      const petS = network.events[at]?.plannedS ?? 0;
      const words = at === verified ? 'it is in force' : 'it is given back';
      add({
        ...NO_STINT,
        variable: `request:${request}`,
        kind: 'change',
        by,
        title: `the request "${title}"`,
        from: at,
        to: at,
        fromS: petS,
        toS: petS,
        words,
      });
    }
  }
  for (const way of network.ways) for (const access of ofWay(context, network, way)) add(access);
  return found;
}

/**
 * Where two places have a rail without conditions, no state is needed; else the conditions of the first that is there: on the way,
 * and for as long as the tether lies over it.
 */
function ofWay(context: ReplayContext, network: TemporalNetwork, way: WayEvents): readonly Access[] {
  const found: Access[] = [];
  way.path.forEach((place, at) => {
    const last = way.path[at - 1];
    if (last === undefined) return;
    const rails = railsBetween(context.campaign, last, place);
    if (rails.some(({ openWhile }) => openWhile.length === 0)) return;
    const to = tetherOff(context, network, way, at);
    const lies = to === way.end ? '' : ', and the tether lies over it';
    for (const { variable, allowed } of rails[0]?.openWhile ?? []) {
      found.push({
        ...NO_STINT,
        variable,
        kind: 'need',
        by: `way ${way.start}`,
        title: `${way.who}'s way from ${way.path[0] ?? ''} to ${way.path.at(-1) ?? ''}`,
        bodies: [way.who],
        from: way.start,
        to,
        fromS: network.events[way.start]?.plannedS ?? 0,
        toS: network.events[to]?.plannedS ?? 0,
        way,
        allowed,
        words: `the rail from ${last} to ${place} is open while it is ${allowed.join(' or ')}${lies}`,
      });
    }
  });
  return found;
}

/**
 * The event from which on the tether no longer lies over the piece of a way that ends at path[at]: the end of the way itself where the
 * tether is moved to an anchor beyond it, or is not modelled; else of the way that crosses it again or moves the tether.
 */
function tetherOff(context: ReplayContext, network: TemporalNetwork, way: WayEvents, at: number): number {
  if (way.anchor === null) return way.end;
  const location = context.hardware.get(way.anchor)?.at;
  if (location?.kind === 'place' && way.path.slice(at).includes(location.id)) return way.end;
  const ends = new Set([way.path[at - 1], way.path[at]]);
  const crosses = ({ path }: WayEvents): boolean =>
    path.some((place, index) => index > 0 && ends.has(place) && ends.has(path[index - 1]));
  const later = network.ways.slice(network.ways.indexOf(way) + 1).filter(({ who }) => who === way.who);
  // A way back takes the tether off with it.
  const isBack = network.ways.slice(0, network.ways.indexOf(way)).some((one) => one.who === way.who && crosses(one));
  if (isBack) return way.end;
  return later.find((one) => crosses(one) || one.anchor !== way.anchor)?.end ?? network.bothIn;
}

const NO_STINT = { fromStep: 0, toStep: 0, placed: null, way: null, bodies: [], allowed: null } as const;

function ofStint(network: TemporalNetwork, placed: Placed): readonly Access[] {
  const { effects, steps, stint } = placed;
  const bodies = placed.planned.assigned;
  const events = network.boundaries.get(stint.key);
  if (effects === null || events === undefined) return [];
  const startOf = (step: number): number => events.get(step + 0.5) ?? (events.get(step) as number);
  const endOf = (mark: number): number => events.get(mark) as number;
  const petOf = (event: number): number => network.events[event]?.plannedS ?? 0;
  const access = (
    variable: string,
    kind: Access['kind'],
    [from, fromStep]: readonly [number, number],
    [to, toStep]: readonly [number, number],
    words: string,
    allowed: Access['allowed'],
  ): Access => {
    return {
      variable,
      kind,
      by: stint.key,
      title: `"${stint.title}" (${bodies.join(' and ')})`,
      bodies,
      way: null,
      from,
      to,
      fromS: petOf(from),
      toS: petOf(to),
      fromStep,
      toStep,
      placed,
      allowed,
      words,
    };
  };
  const found: Access[] = [];
  const spans = new Map<string, { fromStep: number; atStart: boolean; toStep: number; words: string }>();
  const cover = (variable: string, fromStep: number, atStart: boolean, toStep: number, words: string | null): void => {
    const span = spans.get(variable);
    if (span === undefined) {
      spans.set(variable, { fromStep, atStart, toStep, words: words ?? '' });
      return;
    }
    if (fromStep < span.fromStep || (fromStep === span.fromStep && !atStart))
      Object.assign(span, { fromStep, atStart });
    if (toStep >= span.toStep) Object.assign(span, { toStep, words: words ?? span.words });
  };
  for (const leave of effects.leaves) {
    const mark = leave.step < 0 ? 0 : Math.min(leave.step + 1, steps);
    cover(leave.variable, mark, false, mark, `${leave.origin.words} leaves it ${valueWords(leave.value, bodies)}`);
  }
  for (const hold of effects.holds) cover(hold.variable, hold.fromStep, true, hold.toStep, null);
  for (const [variable, { fromStep, atStart, toStep, words }] of spans) {
    const from = atStart ? startOf(fromStep) : endOf(fromStep);
    found.push(access(variable, 'change', [from, fromStep], [endOf(toStep), toStep], words, null));
  }
  for (const need of effects.needs) {
    const words = `${need.origin.words} needs it ${[...new Set(need.allowed.map((value) => valueWords(value, bodies)))].join(' or ')}`;
    const allowed = need.allowed.map((value) =>
      value.startsWith('role:') ? `person:${bodies[Number(value.slice('role:'.length))] ?? '?'}` : value,
    );
    if (need.when === 'during') {
      const toStep = Math.max(need.toStep, need.fromStep + 1);
      found.push(
        access(need.variable, 'need', [startOf(need.fromStep), need.fromStep], [endOf(toStep), toStep], words, allowed),
      );
    } else {
      const mark = need.when === 'start' ? 0 : steps;
      found.push(access(need.variable, 'need', [endOf(mark), mark], [endOf(mark), mark], words, allowed));
    }
  }
  for (const control of effects.controls) {
    const words = `${control.origin.words} needs it in force`;
    const [from, to] = [startOf(control.fromStep), endOf(control.toStep)];
    found.push(
      access(`request:${control.request}`, 'need', [from, control.fromStep], [to, control.toStep], words, [
        REQUEST_IN_FORCE,
      ]),
    );
  }
  return found;
}
