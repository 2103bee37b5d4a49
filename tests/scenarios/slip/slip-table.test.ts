/** Late egress on a plan small enough to be followed by hand: one stint of 20 min that must lie in a window. */
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { EXAMPLE_OPENING, OUT } from '@handrail/eva/rules/example-opening';
import { SLIP_CHECKS, slipFindings } from '@handrail/eva/slip/slip-findings';
import { type EvaSlip, slipTable } from '@handrail/eva/slip/slip-table';
import { countWords, slipLines, slipSentence, wallWords } from '@handrail/eva/slip/slip-words';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { describe, expect, test } from 'vitest';

const MIN = 60;
/** PET 0 is 10:00. The windows are PET 0:10 to 0:40 and 1:40 to 2:10 on time; the work is PET 0:14 to 0:34. */
const CAMPAIGN = `
window dark source="example" { interval "2031-05-01T10:10:00Z" "2031-05-01T10:40:00Z"; interval "2031-05-01T11:40:00Z" "2031-05-01T12:10:00Z" }
hardware plug kind=data-connector at=bay state=mated
task open rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; mate plug; inside dark part=whole; minutes 20 } }
task see rank=2 eva=day { stint look who=EV1 at=bay { inspect bay; minutes 15 } }
cut-order day { drop see }
`;
const TIMELINE = (wall: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:34 open/pull
EV1 0:34-0:49 see/look
EV1 0:49-0:53 bay > porch
EV2 0:53-0:58 in
EV1 0:58-1:03 in
hatch 1:03-1:08
wall ${wall}`;

function slipOf(more: string, wall: string, lateMin: readonly number[]): EvaSlip {
  const { campaign, problems } = readCampaign(
    [{ name: 'slip.kdl', text: EXAMPLE_OPENING + CAMPAIGN + more }],
    standardLibrary,
  );
  if (campaign === null) throw new Error(problems.map((one) => one.what).join('\n'));
  const timeline = readTimelineNotation(TIMELINE(wall), campaign);
  const hardware = inferHardware(campaign, standardLibrary);
  const [slip] = slipTable(
    { campaign, hardware, library: standardLibrary, timeline },
    lateMin.map((minutes) => minutes * MIN),
  );
  if (slip === undefined) throw new Error('no EVA');
  return slip;
}
const rowAt = (slip: EvaSlip, lateMin: number) => slip.rows.find(({ lateS }) => lateS === lateMin * MIN);

describe('a late egress on one window', () => {
  test('6 min late is kept: the work ends with the window, PET 0:34 = 10:40', () => {
    const slip = slipOf('', '6:00 longest EVA', [6]);
    expect(rowAt(slip, 6)?.breaks).toEqual([]);
    expect([slip.cleanUntilS, slip.lastAcceptableS]).toEqual([6 * MIN, 6 * MIN]);
  });

  test('7 min late breaks it; the next window opens at PET 1:33, so the work waits 79 min and all are in 79 min later', () => {
    const slip = slipOf('', '6:00 longest EVA', [6, 7]);
    const row = rowAt(slip, 7);
    expect(row?.breaks.map(({ rule, where }) => [rule, where.stint])).toEqual([
      ['replay/work-is-inside-its-window', 'open/pull'],
    ]);
    expect(row?.waits).toEqual([
      { stint: 'open/pull', window: 'dark', waitS: 79 * MIN, startS: 93 * MIN, intervalS: [93 * MIN, 123 * MIN] },
    ]);
    expect(row?.bothInS).toBe((68 + 79) * MIN);
    expect(row?.beforeTheWallS).toBe((360 - 147) * MIN);
    expect([row?.acceptable, row?.cut]).toEqual([true, []]);
    expect([slip.cleanUntilS, slip.lastAcceptableS]).toEqual([6 * MIN, 7 * MIN]);
  });

  test('with a wall at 2:20 the wait of 79 min is 7 min too long; the cut order gives the 15 min of the look', () => {
    const slip = slipOf('', '2:20 example', [6, 7, 15]);
    const row = rowAt(slip, 7);
    expect(row?.beforeTheWallS).toBe(-7 * MIN);
    expect(row?.acceptable).toBe(false);
    expect(row?.cut.map(({ task }) => task)).toEqual(['see']);
    expect(row?.cut[0]?.why).toContain('15 min');
    // 15 min late the window opens at PET 1:25: a wait of 71 min, both in at 2:19, 1 min before the wall.
    expect(rowAt(slip, 15)?.beforeTheWallS).toBe(MIN);
    expect(rowAt(slip, 15)?.acceptable).toBe(true);
    // The row before it is not acceptable, so the last acceptable egress stays before that.
    expect(slip.lastAcceptableS).toBe(6 * MIN);
  });

  test('a clock that would run through the wait is found by the replay', () => {
    const clock = `hardware lamp kind=data-connector at=bay state=mated
clock cold "Lamp without power" limit="1 h" kind=difference sense=most on-stop=reset { starts other demated; stops plug mated }
hardware other kind=data-connector at=porch state=demated
event cut-off "Other goes off" at="2031-05-01T10:20:00Z" agreed=#true { leaves other demated }
`;
    // "other" is demated from the start, so this clock does not start: nothing is left.
    expect(rowAt(slipOf(clock, '6:00 longest EVA', [7]), 7)?.left).toEqual([]);
    const running = clock.replace('at=porch state=demated', 'at=porch state=mated');
    // Started at 10:20, stopped by the mating: PET 0:34 on time (14 min), after 12:00 with the wait (over 1 h).
    const row = rowAt(slipOf(running, '6:00 longest EVA', [7]), 7);
    expect(row?.left.map(({ rule }) => rule).some((rule) => /clock/.test(rule))).toBe(true);
    expect(row?.acceptable).toBe(false);
  });

  test('when the last window is gone the task is cut', () => {
    const slip = slipOf('', '6:00 longest EVA', [115]);
    const row = rowAt(slip, 115);
    expect(row?.waits).toEqual([]);
    expect(row?.cut).toEqual([{ task: 'open', why: 'no later interval of its window fits it in this EVA' }]);
    expect(row?.acceptable).toBe(false);
  });

  test('an event that falls among the steps only when PET 0 is late is found', () => {
    // At 10:35 the plug is taken off from inside: on time the work has ended (PET 0:34), 3 min late it goes on to 10:37.
    const event =
      'event meddle "Plug is taken off from inside" at="2031-05-01T10:35:00Z" agreed=#true { leaves plug demated }\n';
    const slip = slipOf(event, '6:00 longest EVA', [3, 6]);
    expect(rowAt(slip, 0)?.breaks).toEqual([]);
    expect(rowAt(slip, 3)?.breaks.filter(({ severity }) => severity === 'error')).not.toEqual([]);
    expect(slip.cleanUntilS).toBe(0);
  });
});

describe('the table in words', () => {
  test('joins neighbouring late egresses and counts what breaks', () => {
    const slip = slipOf('', '2:20 example', [5, 7, 8, 9]);
    expect(slipLines(slip)).toMatchObject([{ severity: 'error', late: '7 min to 9 min' }]);
    expect(slip.rows.map(countWords)).toEqual(['nothing', 'nothing', '1 error', '1 error', '1 error']);
    expect(slip.rows.map(wallWords).slice(1, 3)).toEqual(['1 h 12 min before', '7 min past']);
    expect(slipSentence(slip)).toBe(
      'nothing breaks up to 5 min late; last acceptable egress 5 min late, 2031-05-01 10:05:00Z; the text states a slip of 0 min',
    );
  });
});

describe('a stated slip as a finding', () => {
  const findingsOf = (slipMin: number, wall: string) => {
    const text = (EXAMPLE_OPENING + CAMPAIGN).replace('longest="6 h"', `longest="6 h" slip="${slipMin} min"`);
    const { campaign } = readCampaign([{ name: 'slip.kdl', text }], standardLibrary);
    if (campaign === null) throw new Error('does not read');
    const timeline = readTimelineNotation(TIMELINE(wall), campaign);
    return slipFindings({
      campaign,
      hardware: inferHardware(campaign, standardLibrary),
      library: standardLibrary,
      timeline,
    });
  };

  test('no slip and a slip of 6 min give none', () => {
    expect([findingsOf(0, '6:00 longest EVA'), findingsOf(6, '6:00 longest EVA')]).toEqual([[], []]);
  });

  test('a slip of 8 min is a warning where the wait of 78 min fits before the wall', () => {
    const [finding] = findingsOf(8, '6:00 longest EVA');
    expect(finding).toMatchObject({ rule: SLIP_CHECKS[0]?.id, severity: 'warning', where: { eva: 'day' } });
    expect(finding?.mend).toContain('1 h 18 min');
  });

  test('it is an error where it does not', () => {
    // 8 min late: both in at 1:08 + 1:18 = 2:26, past a wall at 2:20.
    const [finding] = findingsOf(8, '2:20 example');
    expect(finding?.severity).toBe('error');
    expect(finding?.why).toContain('both in 6 min past the wall');
  });
});
