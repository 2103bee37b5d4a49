/** From two-line elements in the text to a plan: work that may only be done at night is planned at night, pad kept, and judged so. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { planCampaign } from '@handrail/eva/schedule/plan-campaign';
import { fillComputedWindows } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { isNight, dayNight } from '@handrail/eva/sky/day-night';
import { readTwoLineElements } from '@handrail/eva/sky/read-two-line-elements';
import { describe, expect, test } from 'vitest';

// Invented elements of an invented station, 12 h before the day of the EVA.
const LINES = [
  '1 90001U 31001A   31256.50000000  .00010000  00000-0  20000-3 0  9993',
  '2 90001  44.0000 120.0000 0005000   0.0000   0.0000 15.50000000    09',
] as const;
const text = (use: string): string => `handrail 1
campaign c "C"
orbit { elements "${LINES[0]}" "${LINES[1]}" }
eva one egress="2031-09-14T11:40:00Z" longest="3 h"
window night "Eclipse" computed=night pad="30 s" shown-as=night
task t { stint s who=EV1 { minutes 20; ${use} } }
`;

function planned(use: string): { readonly campaign: Campaign; readonly fromMs: number; readonly toMs: number } {
  const { campaign: read } = readCampaign([{ name: 'c.kdl', text: text(use) }], standardLibrary);
  if (read === null) throw new Error('does not read');
  const campaign = fillComputedWindows(read);
  const hardware = inferHardware(campaign, standardLibrary);
  const running = planCampaign(campaign, hardware, { seed: 1, conflictBudget: 200 });
  let next = running.next();
  while (next.done !== true) next = running.next();
  const { timeline } = next.value;
  const findings = replayTimeline(campaign, hardware, timeline).filter(({ severity }) => severity === 'error');
  expect(findings.map(({ rule }) => rule)).toEqual([]);
  const [eva] = timeline.evas;
  const [stint] = eva?.stints ?? [];
  if (eva === undefined || stint === undefined) throw new Error('nothing is planned');
  return { campaign, fromMs: eva.petZeroUtcMs + stint.startS * 1000, toMs: eva.petZeroUtcMs + stint.endS * 1000 };
}

describe('work inside and outside a computed night', () => {
  const orbit = readTwoLineElements(LINES.join('\n'));
  const start = Date.UTC(2031, 8, 14, 11, 40);
  const table = dayNight(orbit, start, start + 3 * 3_600_000);

  test('inside: it begins with the first night, 30 s and the timing error after it is dark', () => {
    const { fromMs, toMs } = planned('inside night part=whole');
    const [dark] = table.umbra;
    expect(dark).toBeDefined();
    const waitS = (fromMs - (dark?.[0] ?? 0)) / 1000;
    // SGP4, 1 d old: about 3 km at 7.66 km/s is under half a second; the grid of planning is 10 s.
    expect(waitS).toBeGreaterThan(30);
    expect(waitS).toBeLessThan(30 + 1 + 10);
    expect(toMs).toBeLessThan((dark?.[1] ?? 0) - 30_000);
  });

  test('outside: no minute of it is at night', () => {
    const { fromMs, toMs } = planned('outside night part=whole');
    for (let t = fromMs; t < toMs; t += 60_000) expect(isNight(table, t)).toBe(false);
  });
});
