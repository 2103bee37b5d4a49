/** Whole plans that can be kept only by waiting: what is claimed of them, which holds are spoken, and that they do what they say. */
import { checkControllability } from '@handrail/eva/proof/control/check-controllability';
import { networkStnu } from '@handrail/eva/proof/control/network-stnu';
import { runStrategy } from '@handrail/eva/proof/control/run-strategy';
import { prove } from '@handrail/eva/proof/claim/prove';
import { flexiblePlan } from '@handrail/eva/proof/network/flexible-plan';
import { describe, expect, it } from 'vitest';
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { type Nominal, nominal } from '../../rejects/proof/nominal.ts';
import { MIN } from '../../rejects/replay/build-work.ts';
import { randomFrom } from '../../properties/proof/random-networks.ts';

/**
 * EV1 takes a heater off, which starts a clock of 30 min, works 10 to 12 min and puts it on again in 5, but only after EV2 has
 * brought the part, which takes from 10 to 60 min. Started at once, the clock would run 60 min: EV1 has to wait for EV2's call. The
 * clock has 30 − (12 + 5) = 13 min to spare, so EV1 may begin 13 min before the latest arrival of the part, less 30 s to hear it.
 */
const COLD: Nominal = {
  states: { heater: 'on' },
  joins: [['a/bring', 'a/on']],
  campaign: {
    clocks: [
      {
        id: 'cold',
        title: 'Cold',
        kind: 'difference',
        limitS: 30 * MIN,
        sense: 'most',
        onStop: 'reset',
        start: { variable: 'heater', values: ['off'], span: SPAN },
        stop: { variable: 'heater', values: ['on'], span: SPAN },
        span: SPAN,
      },
    ],
  },
  work: [
    { key: 'a/bring', who: 'EV2', at: 10, steps: [30], spread: [10, 60] },
    { key: 'a/off', who: 'EV1', at: 24, steps: [5], does: { changes: [['heater', 'on', 'off', 0]] } },
    { key: 'a/between', who: 'EV1', at: 29, steps: [11], spread: [10, 12] },
    { key: 'a/on', who: 'EV1', at: 41, steps: [5], does: { changes: [['heater', 'off', 'on', 0]] } },
  ],
};

describe('a plan that can be kept by waiting', () => {
  const { campaign, model, timeline } = nominal(COLD);
  const stamp = prove(campaign, model, timeline, { moveSpread: [1, 1] });
  const [eva] = stamp.evas;

  it('is checked against R within D, and never called safe', () => {
    expect(stamp.verdict).toBe('checked');
    expect(stamp.words).toMatch(
      /^checked against \d+ requirements \(R\) of replay, order and timing alone within the stated durations \(D\)/,
    );
    expect(JSON.stringify(stamp)).not.toMatch(/\bsafe\b/i);
  });

  it('says who waits for which call, and until when without it', () => {
    const words = eva?.holds.map((hold) => hold.words) ?? [];
    // 60 min at most − 12 in between − 5 + … : off ends no sooner than 60:30 + 5 − 30 = 35:30 after bring starts, so it starts 30:30 after.
    expect(words).toContain(
      'hold: the start of "off" not until EV2 calls the end of "bring"; without the call, not before 30 min 30 s after the start of "bring" (PET 0:40:30 as planned)',
    );
  });

  it('keeps everything in 500 executions that obey the spoken holds and nothing else, with calls heard 30 s late', () => {
    const network = flexiblePlan(campaign, model, timeline, 'one', {});
    if (network === null) throw new Error('no network');
    const stnu = networkStnu(network);
    const holds = eva?.holds.map(({ wait }) => wait) ?? [];
    expect(holds.length).toBeGreaterThan(0);
    // Without the holds some execution breaks: they are needed.
    const longest = stnu.contingents.map(({ mostS }) => mostS);
    expect(runStrategy(stnu, [], longest).ok).toBe(false);
    const random = randomFrom(11);
    for (let run = 0; run < 500; run++) {
      const lengths = stnu.contingents.map(({ leastS, mostS }) => {
        const pick = random(4);
        return pick === 0 ? leastS : pick === 1 ? mostS : leastS + random(mostS - leastS + 1);
      });
      const execution = runStrategy(stnu, holds, lengths);
      expect(execution.ok ? '' : execution.words).toBe('');
    }
  });

  it('bears no more spread than was found: a little more, and it cannot be kept', () => {
    const scale = eva?.scale ?? 0;
    expect(scale).toBeGreaterThanOrEqual(1);
    const at = (spreadScale: number): boolean => {
      const network = flexiblePlan(campaign, model, timeline, 'one', { spreadScale });
      return network !== null && checkControllability(networkStnu(network)).controllable;
    };
    expect(at(scale)).toBe(true);
    if (eva?.scaleIsMost === false) expect(at(scale + 0.02)).toBe(false);
  });

  it('has another stamp after any change, and none that outlives its egress', () => {
    const later = structuredClone(timeline) as unknown as { evas: { bothInS: number }[] };
    (later.evas[0] as { bothInS: number }).bothInS += 1;
    const other = prove(campaign, model, later as unknown as typeof timeline, { moveSpread: [1, 1] });
    expect(other.hash).not.toBe(stamp.hash);
    expect(prove(campaign, model, timeline, { moveSpread: [1, 1] }).hash).toBe(stamp.hash);
    expect(stamp.expiry.atUtcMs).toBe(campaign.evas[0]?.egressUtcMs);
  });

  it('cannot be kept where EV2 is never heard: without the call the clock runs out', () => {
    // A limit of 22:29 leaves no way: 12 + 5 in between, and 30 s to hear of the part, leave less than nothing to wait with.
    const tight = structuredClone(COLD) as unknown as { campaign: { clocks: { limitS: number }[] } };
    (tight.campaign.clocks[0] as { limitS: number }).limitS = 16 * MIN;
    const plan = nominal(tight as unknown as Nominal);
    expect(prove(plan.campaign, plan.model, plan.timeline, { mostScale: 1 }).evas[0]?.controllable).toBe(false);
  });
});

describe('a waiver of a proof finding', () => {
  it('is shown in the stamp, and ends it when it runs out before the egress', () => {
    const plan = nominal({
      states: { cover: 'closed' },
      work: [
        { key: 'a/open', who: 'EV1', at: 10, steps: [10], does: { changes: [['cover', 'closed', 'open', 0]] } },
        { key: 'a/look', who: 'EV2', at: 20, steps: [5], does: { looks: [['cover', 'open', 0, 1]] } },
      ],
    });
    const endUtcMs = (plan.campaign.evas[0]?.egressUtcMs ?? 0) + (plan.timeline.evas[0]?.bothInS ?? 0) * 1000;
    const waiver = {
      rule: 'proof/needs-and-changes-are-in-order',
      of: 'a/look',
      reason: 'they work hand in hand',
      by: 'lead',
      untilUtcMs: endUtcMs,
      span: SPAN,
    };
    const stamp = prove({ ...plan.campaign, waivers: [waiver] }, plan.model, plan.timeline, { moveSpread: [1, 1] });
    expect(stamp.verdict).toBe('checked');
    expect(stamp.waivers).toEqual([
      { rule: waiver.rule, of: 'a/look', reason: waiver.reason, by: 'lead', untilUtcMs: endUtcMs },
    ]);
    const late = prove(
      { ...plan.campaign, waivers: [{ ...waiver, untilUtcMs: endUtcMs - 1 }] },
      plan.model,
      plan.timeline,
    );
    expect(late.verdict).toBe('does not hold');
  });
});

describe('a plan that breaks two limits', () => {
  it('is told both, each with its own sum', () => {
    const plan = nominal({
      longest: 90,
      campaign: {
        gates: [
          {
            id: 'go',
            title: 'Go',
            before: 'a/second',
            caller: 'IV',
            latestPetS: 40 * MIN,
            conditions: [],
            onNo: 'hold',
            drops: [],
            span: SPAN,
          },
        ],
      },
      work: [
        { key: 'a/first', who: 'EV1', at: 5, steps: [30], spread: [20, 50] },
        { key: 'a/second', who: 'EV1', at: 35, steps: [10], spread: [5, 40] },
      ],
    });
    const stamp = prove(plan.campaign, plan.model, plan.timeline, { mostScale: 0 });
    const said = stamp.findings.map(({ rule, why }) => `${rule}: ${why}`).join('\n');
    // Out 5 + 50 = 55 against 40; out 5 + 50 + 40 + in 5 + 5 + hatch 5 = 110 against 90.
    expect(said).toMatch(/gates-hold-for-all-durations: .*55 min in 40 min: 15 min short/);
    expect(said).toMatch(/the-wall-holds-for-all-durations: .*1 h 50 min in 1 h 30 min: 20 min short/);
  });
});
