/** A way home written out as a timeline, with its closing work as stints, holds in the independent replay; a minute less does not. */
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import type { WayHome } from '@handrail/eva/wayhome/way-home-plan';
import { describe, expect, test } from 'vitest';
import { smallCase, type SmallCase, wayAt } from './small-case.ts';

const CAMPAIGN = `
limits { restraint-egress "1 min"; restraint-ingress "1 min"; tether-swap "1 min"; home-within "30 min"; partner-within "30 min"; glove-check "4 h"; pad-check "4 h"; reaction "30 s"; margin "15 min" }
hardware line-tip "Line tip" kind=cable at=tip state=stowed { state retainer none }
hardware line-side "Line side" kind=cable at=side state=stowed { state retainer none }
task one rank=1 eva=day { stint lay who=EV1 at=tip { lay line-tip; minutes 8 } }
task two rank=2 eva=day { stint lay who=EV2 at=side { lay line-side; minutes 8 } }
task close-one rank=3 eva=day { stint close who=EV1 at=tip { gather line-tip; minutes 3 } }
task close-two rank=4 eva=day { stint close who=EV2 at=side { gather line-side; minutes 3 } }
`;
const START = `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:18 porch > bay > tip
EV2 0:10-0:15 porch > side
EV1 0:18-0:26 one/lay
EV2 0:18-0:26 two/lay
`;
const END = 'wall 6:00 longest EVA';
const pet = (s: number): string =>
  `${Math.floor(s / 3600)}:${String(Math.floor((s % 3600) / 60)).padStart(2, '0')}:${String(s % 60).padStart(2, '0')}`;
const NOW_S = 26 * 60;

function asPlanned(): SmallCase {
  return smallCase(
    CAMPAIGN,
    `${START}EV1 0:30-0:38 tip > bay > porch
EV2 0:30-0:35 side > porch
EV2 0:40-0:45 in
EV1 0:45-0:50 in
hatch 0:50-0:55
${END}`,
  );
}

/** The rest of the timeline as the way home says it, `shortS` seconds of travel taken away from EV1. */
function written(way: WayHome, shortS: number): string {
  const lines = way.people.flatMap(({ person, steps }) =>
    steps.flatMap((step) => {
      const range = `${pet(NOW_S + step.startS)}-${pet(NOW_S + step.endS)}`;
      if (step.kind === 'close')
        return [`${person} ${range} ${step.words.endsWith('Line tip') ? 'close-one' : 'close-two'}/close`];
      if (step.kind === 'hatch') return [`${person} ${range} in`];
      if (step.kind !== 'travel') return [];
      const path = step.from === 'tip' ? 'tip > bay > porch' : `${step.from} > ${step.to}`;
      const early = person === 'EV1' ? shortS : 0;
      return [`${person} ${pet(NOW_S + step.startS)}-${pet(NOW_S + step.endS - early)} ${path}`];
    }),
  );
  const closed = NOW_S + (way.totalS as number);
  return `${START}${lines.join('\n')}\nhatch ${pet(closed - way.closeHatchS)}-${pet(closed)}\n${END}`;
}

describe('a way home from PET 0:26, both with a line laid out', () => {
  const way = wayAt(asPlanned(), NOW_S);
  const errors = (text: string): string[] => {
    const { campaign, hardware, timeline } = smallCase(CAMPAIGN, text);
    return replayTimeline(campaign, hardware, timeline)
      .filter((finding) => finding.severity === 'error')
      .map((finding) => `${finding.rule}: ${finding.why}`);
  };

  test('closes both lines, each by whoever is there, and takes what can be added by hand', () => {
    // Gather 3 min (50th percentile of the kind); tip to porch 4 + 4 min, side to porch 5 min; passages 5 + 5, hatch 5 min.
    // EV2 is at the hatch after 8 min, EV1 after 11; EV2 is in at 13, EV1 at 18; the hatch is closed at 23 min.
    expect(way.totalS).toBe(23 * 60);
    expect(way.words).toBe('close 0:03 + travel 0:05 + hatch 0:15 = 0:23');
    expect(way.shortest).toBe(true);
  });
  test('holds in the replay', () => expect(errors(written(way, 0))).toEqual([]));
  test('does not hold with a minute of travel less', () => expect(errors(written(way, 60)).join()).toContain('moves'));
});
