/**
 * Responses as writers: what one leaves when it has not worked is a change of state that nobody plans. Each stint in which it can come
 * up may make that change while it is worked on; where it can come up anywhere, any instant may.
 *
 * What keeps a foreign need or change from it: the need is content with the value, or is over before the trouble can come up, or other
 * work that is ordered in between restores the state. The rest breaks: `at once`, under the hands of somebody at work, where
 * nothing orders the two; `after` where the need follows.
 *
 * @checked tests/properties/proof/responses-by-every-execution.test.ts, tests/rejects/proof
 */
import { allResponses, type AnyResponse } from '../../response/any-response.ts';
import { piecesOf } from '../../response/concerned.ts';
import type { TemporalNetwork } from '../network/temporal-network.ts';
import type { Placed, ReplayContext } from '../replay/replay-context.ts';
import type { RaceResult } from './find-races.ts';
import type { Access } from './state-accesses.ts';

export interface ResponseWrite {
  readonly response: AnyResponse;
  readonly variable: string;
  readonly value: string;
  /** The stint in which it comes up; null: anywhere. */
  readonly placed: Placed | null;
  /** Events between which it happens. */
  readonly from: number;
  readonly to: number;
  readonly fromStep: number;
  readonly toStep: number;
}
export interface BrokenByResponse {
  readonly write: ResponseWrite;
  readonly other: Access;
  readonly when: 'at once' | 'after';
}

/** What every response of the campaign and of the stock set may leave in this EVA. Those that lead home are the way home's. */
export function responseWrites(
  context: ReplayContext,
  network: TemporalNetwork,
  placed: readonly Placed[],
): readonly ResponseWrite[] {
  const found: ResponseWrite[] = [];
  for (const response of allResponses(context.campaign)) {
    if (response.leadsTo !== null) continue;
    const named = response.leaves.map(({ variable, value }) => ({ variable, value }));
    if (named.length > 0 && response.stint === null && response.kinds.length === 0) {
      const whole = { placed: null, from: network.petZero, to: network.bothIn, fromStep: 0, toStep: 0 };
      found.push(...named.map((one) => ({ response, ...one, ...whole })));
      continue;
    }
    for (const one of placed) {
      const events = network.boundaries.get(one.stint.key);
      if (events === undefined || (response.stint !== null && response.stint !== one.stint.key)) continue;
      for (let step = 0; step < one.steps; step++) {
        const sentence = one.stint.steps[step];
        const pieces = sentence === undefined ? [] : piecesOf(context.campaign, response, sentence);
        if (response.stint === null && pieces.length === 0) continue;
        const own = response.leavesIt === null ? [] : pieces;
        const [from, to] = [events.get(step + 0.5) ?? events.get(step), events.get(step + 1)];
        if (from === undefined || to === undefined) continue;
        const where = { placed: one, from, to, fromStep: step, toStep: step + 1 };
        const values = [...named, ...own.map(({ id }) => ({ variable: id, value: response.leavesIt as string }))];
        found.push(...values.map((value) => ({ response, ...value, ...where })));
      }
    }
  }
  // Where a response of the campaign leaves the same at the same work, the stock one adds nothing.
  const own = new Set(found.filter(({ response }) => response.from === 'campaign').map(writeKey));
  return found.filter((write) => write.response.from === 'campaign' || !own.has(writeKey(write)));
}

function writeKey({ placed, variable, value, fromStep }: ResponseWrite): string {
  return `${placed?.stint.key ?? ''}|${fromStep}|${variable}|${value}`;
}

export function brokenByResponses(
  writes: readonly ResponseWrite[],
  accesses: ReadonlyMap<string, readonly Access[]>,
  { net, races }: Pick<RaceResult, 'net' | 'races'>,
): readonly BrokenByResponse[] {
  // Orders that contradict each other have no execution: the races say so.
  if (!net.consistent) return [];
  const found: BrokenByResponse[] = [];
  for (const write of writes) {
    const list = accesses.get(write.variable) ?? [];
    const key = write.placed?.stint.key ?? null;
    for (const other of list) {
      if (other.by === key || other.by.startsWith('event ')) continue;
      if (other.kind === 'need' && other.allowed?.includes(write.value) === true) continue;
      if (key !== null && net.least(other.to, write.from) >= 0) continue;
      const follows = key !== null && net.least(write.to, other.from) >= 0;
      // Who changes it later asks for what they need of it by a need of its own.
      if (follows && other.kind === 'change') continue;
      const restored =
        follows &&
        list.some(
          (one) =>
            one.kind === 'change' &&
            one.by !== key &&
            net.least(write.to, one.from) >= 0 &&
            net.least(one.to, other.from) >= 0,
        );
      const raced = races.some(
        ({ variable, first, second }) =>
          variable === write.variable &&
          [first.by, second.by].includes(other.by) &&
          [first.by, second.by].includes(key ?? ''),
      );
      if (!restored && !(raced && !follows)) found.push({ write, other, when: follows ? 'after' : 'at once' });
    }
  }
  return found;
}
