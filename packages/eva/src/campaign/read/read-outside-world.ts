/** What stands outside the plan: limits, requests, events, clocks, windows. */
import type { Clock, Limits, OutsideEvent, Request, StateChange, WindowSet } from '../campaign.ts';
import {
  type CheckedNode,
  child,
  childrenOf,
  flag,
  number,
  numberAt,
  text,
  textAt,
  wordsFrom,
} from '../check/checked-node.ts';
import { filledIn, type ReadContext, titleOf } from './read-context.ts';
import { readComputed } from './read-computed-window.ts';
import { readCondition } from './read-state.ts';

export function readLimits(node: CheckedNode | null): Limits {
  const figure = (name: string): number | null => {
    const one = node === null ? null : child(node, name);
    return one === null ? null : numberAt(one, 0);
  };
  const spread = node === null ? null : child(node, 'travel-spread');
  return {
    homeWithinS: figure('home-within'),
    partnerWithinS: figure('partner-within'),
    gloveCheckEveryS: figure('glove-check'),
    padCheckEveryS: figure('pad-check'),
    tetherSwapS: figure('tether-swap'),
    restraintIngressS: figure('restraint-ingress'),
    restraintEgressS: figure('restraint-egress'),
    reactionS: figure('reaction'),
    travelSpread: spread === null ? null : [number(spread, 'least') ?? 1, number(spread, 'most') ?? 1],
    marginS: figure('margin'),
    span: node?.span ?? null,
  };
}

export function readRequest(node: CheckedNode, context: ReadContext): Request {
  const id = textAt(node, 0) ?? '';
  return {
    id,
    title: node.title ?? titleOf(id),
    owner: text(node, 'owner') ?? '',
    inhibits: number(node, 'inhibits') ?? 0,
    setLeadS: number(node, 'lead') ?? 0,
    verifyS: number(node, 'verify') ?? 0,
    clearS: number(node, 'clear') ?? 0,
    longestHoldS: number(node, 'longest'),
    status: (text(node, 'status') ??
      filledIn(context, 'draft', node.span, `status of request ${id}`, 'draft', 'format')) as Request['status'],
    window: text(node, 'window'),
    span: node.span,
  };
}

export function readEvent(node: CheckedNode, context: ReadContext): OutsideEvent {
  const id = textAt(node, 0) ?? '';
  return {
    id,
    title: node.title ?? titleOf(id),
    atUtcMs: number(node, 'at') ?? 0,
    agreed: flag(node, 'agreed') ?? filledIn(context, false, node.span, `event ${id}`, 'not agreed', 'format'),
    leaves: readLeaves(node, context),
    span: node.span,
  };
}

export function readLeaves(node: CheckedNode, context: ReadContext): OutsideEvent['leaves'] {
  return childrenOf(node, 'leaves').map((one) => {
    const { variable, values } = readCondition(one, wordsFrom(one, 1), context);
    return { variable, value: values[0] ?? '', span: one.span };
  });
}

export function readClock(node: CheckedNode, context: ReadContext): Clock {
  const id = textAt(node, 0) ?? '';
  const change = (name: string): StateChange => {
    const one = child(node, name);
    if (one === null) return { variable: '', values: [], span: node.span };
    return { ...readCondition(one, wordsFrom(one, 1), context), span: one.span };
  };
  const kind = (text(node, 'kind') ?? 'difference') as Clock['kind'];
  const onStop = (text(node, 'on-stop') ?? (kind === 'budget' ? 'accumulate' : 'reset')) as Clock['onStop'];
  return {
    id,
    title: node.title ?? titleOf(id),
    kind,
    limitS: number(node, 'limit') ?? 0,
    sense: (text(node, 'sense') ??
      filledIn(context, 'most', node.span, `clock ${id}`, 'at most', 'format')) as Clock['sense'],
    onStop,
    start: change('starts'),
    stop: change('stops'),
    span: node.span,
  };
}

export function readWindow(node: CheckedNode, context: ReadContext): WindowSet {
  const id = textAt(node, 0) ?? '';
  const read = childrenOf(node, 'interval').flatMap((one) => {
    const from = numberAt(one, 0);
    const to = numberAt(one, 1);
    if (from === null || to === null) return [];
    if (to <= from) {
      context.problems.add('interval-backwards', one.span, 'this interval ends before it begins', {
        expected: 'the earlier instant first',
      });
      return [];
    }
    return [{ from, to, node: one }];
  });
  read.sort((a, b) => a.from - b.from);
  for (const [at, one] of read.entries()) {
    const before = read[at - 1];
    if (before !== undefined && before.to > one.from) {
      context.problems.add(
        'intervals-overlap',
        one.node.span,
        `this interval overlaps that of line ${before.node.span.line}`,
        {
          expected: 'intervals that do not overlap',
        },
      );
    }
  }
  const padS = number(node, 'pad') ?? filledIn(context, 0, node.span, `pad of window ${id}`, '0 s', 'format');
  const computed = readComputed(node, padS, context);
  return {
    id,
    title: node.title ?? titleOf(id),
    intervals: read.map(({ from, to }) => [from, to] as const),
    padS,
    shownAs: (text(node, 'shown-as') ?? 'band') as WindowSet['shownAs'],
    source: text(node, 'source'),
    ...(computed === null ? {} : { computed }),
    span: node.span,
  };
}
