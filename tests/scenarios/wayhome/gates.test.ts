/** Gates before stretches without a safe stop: proposed where none is written, called in the script in order, with a latest "go" by hand. */
import { scriptRows } from '@handrail/eva/brief/script/script-rows';
import { gateCalls } from '@handrail/eva/gate/propose-gates';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { describe, expect, test } from 'vitest';
import { smallCase } from '../../properties/wayhome/small-case.ts';

const MIN = 60;
const text = (gate: string): string => `
request power-off "Power off" owner=power inhibits=2 lead="2 min" verify="1 min" clear="1 min" longest="3 h" status=agreed
hardware plug "Plug" kind=power-connector at=bay state=mated controls=power-off
task look rank=1 eva=day { stint see who=EV2 at=side { inspect side; minutes 5 } }
task half rank=2 eva=day { stint half who=EV1 at=bay { demate plug; safe-stop #false; mate plug; report; minutes 20 } }
gate first "Go to look" before="look/see" caller=IV latest="3:00" on-no="come in" { condition "both well" }
${gate}`;
const TIMELINE = `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
request power-off 0:17 0:20 0:20-0:37:50 0:38:50
EV2 0:15-0:20 look/see
EV1 0:20-0:40 half/half
steps 0:28:10 0:37:50 0:40
EV1 0:40-0:44 bay > porch
EV2 0:40-0:45 side > porch
EV2 0:45-0:50 in
EV1 0:50-0:55 in
hatch 0:55-1:00
wall 6:00 longest EVA`;

function callsOf(gate: string) {
  const small = smallCase(text(gate), TIMELINE);
  const surface = wayHomeSurface(small.campaign, small.hardware, standardLibrary, small.timeline, small.eva);
  return { small, surface, calls: gateCalls(small.campaign, small.eva, surface) };
}

describe('a step that the text calls no safe stop', () => {
  const { small, surface, calls } = callsOf('');
  test('is committed while it is done, and until the next step has ended', () => {
    expect(surface.committed).toMatchObject([
      { person: 'EV1', startS: 20 * MIN, endS: 37 * MIN + 50, causes: ['said'], entry: 'half/half', ifArmStops: false },
    ]);
  });
  test('gets a gate proposed at its entry, after the one that is written', () => {
    expect(calls.map((call) => [call.before, call.proposed, call.petS])).toEqual([
      ['look/see', false, 15 * MIN],
      ['half/half', true, 20 * MIN],
    ]);
    expect(calls[1]?.caller).toBe('IV');
    expect(calls[1]?.conditions[0]).toBe('Power off, verified');
  });
  test('may be entered until the wall less the stretch and the way home after it', () => {
    // At 0:37:50 the plug is mated, its share of 20 min. EV1 travel 4, EV2 travel 5: EV1 in at 9, EV2 at 14, closed at 19. 6:00 − 0:17:50 − 0:19 = 5:23:10.
    expect(calls[1]?.latestPetS).toBe(5 * 3600 + 23 * MIN + 10);
  });
  test('stands in the script as a proposal', () => {
    const rows = scriptRows(
      {
        campaign: small.campaign,
        hardware: small.hardware,
        kinds: standardLibrary.kinds,
        timeline: small.timeline,
        findings: [],
        homeSeconds: () => 0,
        wayHome: () => surface,
        program: 'test',
        madeUtcMs: 0,
      },
      small.eva,
    ).filter((row) => row.kind === 'gate');
    expect(rows.map((row) => row.words.startsWith('Proposed gate, not agreed'))).toEqual([false, true]);
    expect(rows[1]?.note).toContain('latest go PET 5:23');
  });
});

test('a gate that is written there takes the place of the proposal', () => {
  const { calls } = callsOf(
    'gate second "Go for half" before="half/half" caller=IV on-no="leave it mated" { condition "both well" }',
  );
  expect(calls.map((call) => call.proposed)).toEqual([false, false]);
  expect(calls[1]?.stretch?.person).toBe('EV1');
});
