/** Supplies of the demo as planned: what must hold of any plan. */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { evaSupplies, type PersonSupplies } from '@handrail/eva/suit/eva-supplies';
import { SUPPLY_CASES } from '@handrail/eva/suit/supply-case';
import { amountLeft, petOfLimit, SUPPLY_NAMES } from '@handrail/eva/suit/supply-curve';
import { describe, expect, it } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const { campaign, timeline } = plannedFulmar(100);
const readings = timeline.evas.flatMap((eva) =>
  evaSupplies(campaign, standardLibrary, eva).map(
    (reading) => [`${reading.person} on ${eva.eva}`, eva, reading] as const,
  ),
);

function known(reading: (typeof readings)[number][2]): PersonSupplies {
  if (!reading.known) throw new Error(reading.reason);
  return reading;
}

describe.each(readings)('%s', (_, eva, reading) => {
  it('is accounted for every second from leaving vehicle supplies to both in', () => {
    const { work, span } = known(reading);
    expect([work[0]?.startS, work.at(-1)?.endS]).toEqual([span.startS, eva.bothInS]);
    work.slice(1).forEach((stretch, at) => expect(stretch.startS).toBe(work[at]?.endS));
  });

  it('has parts that add up to what is used, by cause and by effort', () => {
    const { use, sums, byEffort } = known(reading);
    for (const supply of SUPPLY_NAMES) {
      for (const supplyCase of SUPPLY_CASES) {
        const total = sums[supplyCase][supply].reduce((sum, { amount }) => sum + amount, 0);
        expect(total / use.end[supply][supplyCase].used).toBeCloseTo(1, 9);
      }
    }
    const battery = byEffort.reduce((sum, { batteryJ }) => sum + batteryJ, 0);
    expect(battery / use.end.battery.likely.used).toBeCloseTo(1, 9);
    const oxygen = byEffort.reduce((sum, { oxygenKg }) => sum + oxygenKg, 0);
    expect(oxygen / use.end.oxygen.likely.used).toBeCloseTo(1, 9);
  });

  it('has its cases in order, and curves that end where the sums do', () => {
    const { use } = known(reading);
    for (const supply of SUPPLY_NAMES) {
      const { worst, likely, best } = use.end[supply];
      expect(worst.margin).toBeLessThanOrEqual(likely.margin);
      expect(likely.margin).toBeLessThanOrEqual(best.margin);
      expect(amountLeft(use.curves[supply], 'worst', eva.bothInS) - worst.left).toBeCloseTo(0, 6);
      const [first, later] = [petOfLimit(use.curves[supply], 'worst'), petOfLimit(use.curves[supply], 'likely')];
      if (first !== null && later !== null) expect(first).toBeLessThanOrEqual(later);
    }
  });

  it('does not change when egress and every window move together by an hour', () => {
    const hourMs = 3_600_000;
    const moved = {
      ...campaign,
      windows: campaign.windows.map((window) => ({
        ...window,
        intervals: window.intervals.map(([from, to]) => [from + hourMs, to + hourMs] as const),
      })),
    };
    const again = evaSupplies(moved, standardLibrary, { ...eva, petZeroUtcMs: eva.petZeroUtcMs + hourMs });
    const same = again.find(({ person }) => person === reading.person);
    expect(same?.known === true ? same.use.end : null).toEqual(known(reading).use.end);
  });
});
