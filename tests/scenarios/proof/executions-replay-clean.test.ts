/**
 * The network against the replay: executions of the Fulmar plan with other durations than planned, each written out as a timeline
 * of its own and replayed. What the network keeps in order must be enough for everything that the replay looks at.
 */
import { checkControllability } from '@handrail/eva/proof/control/check-controllability';
import { networkStnu } from '@handrail/eva/proof/control/network-stnu';
import { runStrategy } from '@handrail/eva/proof/control/run-strategy';
import { proveEva } from '@handrail/eva/proof/claim/prove-eva';
import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import type { TemporalNetwork } from '@handrail/eva/proof/network/temporal-network';
import { replayContext } from '@handrail/eva/proof/replay/replay-context';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { formatFindings } from '@handrail/eva/finding/format-finding';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../properties/proof/random-networks.ts';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, hardware, timeline } = plannedFulmar();

/** About planned figures, times as told and pinned starts: an execution with other durations is not the plan, and need not be. */
const OF_THE_PLAN = new Set([
  'replay/stints-take-their-figures',
  'replay/steps-take-their-figures',
  'replay/passage-takes-its-time',
  'replay/joins-are-told',
  'replay/pins-are-obeyed',
]);

function executed(network: TemporalNetwork, plan: EvaTimeline, times: readonly number[]): EvaTimeline {
  const zero = times[network.petZero] as number;
  const pet = (event: number): number => (times[event] as number) - zero;
  const find = (words: string, plannedS: number): number => {
    const event = network.events.findIndex((one) => one.words === words && one.plannedS === plannedS);
    if (event < 0) throw new Error(`no event ${words} at ${plannedS}`);
    return pet(event);
  };
  return {
    ...plan,
    petZeroUtcMs: plan.petZeroUtcMs + (zero - (times[1] as number)) * 1000,
    stints: plan.stints
      .map((planned) => {
        const marks = network.boundaries.get(planned.stint) as ReadonlyMap<number, number>;
        const known = [...marks.keys()].filter(Number.isInteger).sort((a, b) => a - b);
        const at = (mark: number): number => pet(marks.get(mark) as number);
        const count = planned.stepEndsS.length;
        const stepEndsS = planned.stepEndsS.map((_, index) => {
          const mark = index + 1;
          if (marks.has(mark)) return pet(marks.get(mark + 0.5) ?? (marks.get(mark) as number));
          const before = known.findLast((one) => one < mark) as number;
          const after = known.find((one) => one > mark) as number;
          const from = pet(marks.get(before + 0.5) ?? (marks.get(before) as number));
          return Math.round(from + ((at(after) - from) * (mark - before)) / (after - before));
        });
        return { ...planned, startS: at(0), endS: at(Math.max(1, count)), stepEndsS };
      })
      .sort((a, b) => a.startS - b.startS),
    passages: plan.passages.map((passage) => {
      const name = passage.kind === 'close-hatch' ? 'closing the hatch' : `${passage.kind} of ${passage.person ?? ''}`;
      return {
        ...passage,
        startS: find(`the start of ${name}`, passage.startS),
        endS: find(`the end of ${name}`, passage.endS),
      };
    }),
    moves: plan.moves.map((move) => {
      const way = `${move.who}'s way from ${move.from} to ${move.to}`;
      return { ...move, startS: find(`the start of ${way}`, move.startS), endS: find(`the end of ${way}`, move.endS) };
    }),
    holds: plan.holds.map((hold) => {
      const title = campaign.requests.find(({ id }) => id === hold.request)?.title ?? '';
      const verifiedS = find(`"${title}" is verified`, hold.verifiedS);
      const lastUseS = find(`the call to clear "${title}"`, hold.lastUseS);
      const clearedS = find(`"${title}" is cleared`, hold.clearedS);
      const request = campaign.requests.find(({ id }) => id === hold.request);
      const leadS = (request?.setLeadS ?? 0) + (request?.verifyS ?? 0);
      // A quick verification is no late asking.
      const askS = Math.min(find(`asking for "${title}"`, hold.askS), verifiedS - leadS);
      return { ...hold, askS, verifiedS, firstUseS: verifiedS, lastUseS, clearedS };
    }),
    bothInS: pet(network.bothIn),
  };
}

describe('executions of the Fulmar plan', () => {
  const context = replayContext(campaign, hardware, timeline);
  const own = new Set(replayTimeline(campaign, hardware, timeline).map(({ rule }) => rule));

  it.each(timeline.evas.map(({ eva }) => eva))('of EVA %s replay clean, 8 of them with other durations', (eva) => {
    // The replay takes the planning figures of moves as their least, so moves run late here and never early.
    const moveSpread = [1, campaign.limits.travelSpread?.[1] ?? 1] as const;
    const proof = proveEva(campaign, hardware, timeline, context, eva, { mostScale: 1, moveSpread });
    if (proof === null || proof.scale === null) throw new Error('nothing to execute');
    const options = { spreadScale: proof.scale, holds: proof.proposedHolds, moveSpread };
    const network = flexiblePlan(campaign, hardware, timeline, eva, options);
    if (network === null) throw new Error('no network');
    const stnu = networkStnu(network);
    const decided = checkControllability(stnu);
    if (!decided.controllable) throw new Error('not controllable');
    const random = randomFrom(21);
    for (let run = 0; run < 8; run++) {
      const lengths = stnu.contingents.map(({ leastS, mostS }) =>
        run === 0 ? mostS : run === 1 ? leastS : leastS + random(mostS - leastS + 1),
      );
      const execution = runStrategy(stnu, decided.strategy, lengths);
      if (!execution.ok) throw new Error(execution.words);
      const other: Timeline = {
        ...timeline,
        evas: timeline.evas.map((plan) => (plan.eva === eva ? executed(network, plan, execution.timesS) : plan)),
      };
      const findings = replayTimeline(campaign, hardware, other).filter(
        ({ rule, severity, where }) =>
          severity === 'error' && (where.eva === eva || where.eva === null) && !OF_THE_PLAN.has(rule) && !own.has(rule),
      );
      expect(formatFindings(findings), `run ${run}`).toBe('');
    }
  });

  it('do not replay clean where the durations go beyond what the plan bears', () => {
    const network = flexiblePlan(campaign, hardware, timeline, 'harvest', { spreadScale: 1.5 });
    if (network === null) throw new Error('no network');
    const stnu = networkStnu(network);
    const lengths = stnu.contingents.map(({ mostS }) => mostS);
    const { timesS } = runStrategy(stnu, [], lengths);
    const other: Timeline = {
      ...timeline,
      evas: timeline.evas.map((plan) => (plan.eva === 'harvest' ? executed(network, plan, timesS) : plan)),
    };
    const rules = replayTimeline(campaign, hardware, other)
      .filter(({ severity, where }) => severity === 'error' && where.eva === 'harvest')
      .map(({ rule }) => rule)
      .filter((rule) => !OF_THE_PLAN.has(rule));
    expect(rules).toContain('replay/work-is-inside-its-window');
  });
});
