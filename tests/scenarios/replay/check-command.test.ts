/** `handrail check` and `handrail routes` as a script sees them: what they print and how they end. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'handrail-check-'));
const CAMPAIGN = `handrail 1
campaign two "Two tasks"
person EV1 role=outside pace=1.0 suit-limit="3 h" anchor=ring tether="20 m" carries=6
person EV2 role=outside pace=1.0 suit-limit="3 h" anchor=ring tether="20 m" carries=6
person IV role=inside
limits {
  home-within "30 min"; partner-within "30 min"; glove-check "3 h"; pad-check "3 h"; tether-swap "1 min"
  restraint-ingress "1 min"; restraint-egress "1 min"; reaction "30 s"; margin "15 min"
}
vehicle station "Station" hatch=porch {
  place porch
  place bay
  rail porch bay minutes="3 min" length="6 m"
}
eva one "First EVA" egress="2031-09-14T11:40:00Z" longest="2 h" {
  out EV1 "8 min"; out EV2 "6 min"
  in EV2 "6 min"; in EV1 "6 min"; close-hatch "7 min"
}
hardware ring kind=anchor at=porch
hardware bag-1 kind=bag at=EV1
hardware cover-1 kind=cover at=bay state=closed
task look "Look behind the cover" {
  stint open-it who=EV1 at=bay { open cover-1; minutes 5 }
  stint close-it who=EV1 at=bay { close cover-1; minutes 4 }
}
`;

function handrail(...args: string[]): { code: number | null; out: string; err: string } {
  const run = spawnSync(process.execPath, ['--import', 'tsx', join(ROOT, 'apps/cli/src/main.ts'), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

const file = (name: string): string => join(folder, name);
const campaign = file('two.kdl');
const plan = file('plan.json');

beforeAll(() => writeFileSync(campaign, CAMPAIGN));
afterAll(() => rmSync(folder, { recursive: true }));

describe('handrail check', () => {
  beforeAll(() => {
    const planned = handrail('plan', campaign, '-o', plan, '--budget', '100');
    expect(planned.err + planned.out).toContain('open-it');
  });
  it('ends with 0 and says how much was replayed when all holds', () => {
    const { code, out } = handrail('check', campaign, plan);
    expect(out).not.toMatch(/^error/m);
    expect(out).toContain('2 stints in 1 EVA replayed');
    expect(code).toBe(0);
  });

  it('ends with 1 and names the place, the reason and the way out when something does not', () => {
    const timeline = JSON.parse(readFileSync(plan, 'utf8')) as {
      evas: { stints: { stint: string; startS: number; endS: number; stepEndsS: number[] }[] }[];
    };
    const stint = timeline.evas[0]?.stints.find((one) => one.stint === 'look/open-it');
    if (stint === undefined) throw new Error('the plan has no look/open-it');
    for (const key of ['startS', 'endS'] as const) stint[key] -= 60;
    stint.stepEndsS = stint.stepEndsS.map((endS) => endS - 60);
    writeFileSync(file('early.json'), JSON.stringify(timeline));
    const { code, out } = handrail('check', campaign, file('early.json'));
    expect(code).toBe(1);
    expect(out).toMatch(/^error {3}EV1 does two things at once +replay\/one-thing-at-a-time$/m);
    expect(out).toMatch(/^ {2}at +EV1 · look\/open-it · EVA one · PET 0:10 +\S*two\.kdl:\d+:\d+$/m);
    expect(out).toMatch(/^ {2}why +the way from porch to bay PET 0:08 to 0:11 and "Open it" PET 0:10 to 0:15$/m);
    const json = handrail('check', '--json', campaign, file('early.json'));
    const answer = JSON.parse(json.out) as { exitCode: number; findings: { rule: string }[] };
    expect(json.code).toBe(1);
    expect(answer.exitCode).toBe(1);
    expect(answer.findings.map((one) => one.rule)).toContain('replay/one-thing-at-a-time');
  });

  it('says that a plan has expired when the campaign has changed', () => {
    writeFileSync(file('changed.kdl'), CAMPAIGN.replace('minutes 4', 'minutes 6'));
    const { code, out } = handrail('check', file('changed.kdl'), plan);
    expect(code).toBe(1);
    expect(out).toContain('The campaign has changed since this was planned: what the plan claims has expired');
    expect(out).toContain('planned 4 min; 6 min agreed');
  });

  it('ends with 2 when a file is not there, not JSON, or not a timeline', () => {
    writeFileSync(file('broken.json'), '{ "format": ');
    writeFileSync(file('other.json'), JSON.stringify({ format: 'handrail-timeline', version: 1, evas: [{ eva: 7 }] }));
    expect(handrail('check', campaign, file('none.json'))).toMatchObject({ code: 2 });
    expect(handrail('check', campaign, file('broken.json')).err).toMatch(
      /broken\.json is not a timeline as "handrail plan -o" writes it: .*JSON/,
    );
    const other = handrail('check', campaign, file('other.json'));
    expect(other.code).toBe(2);
    expect(other.err).toMatch(/other\.json is not a timeline as "handrail plan -o" writes it: at /);
  });

  it('ends with 4 when the text leaves open what a plan would rest on', () => {
    writeFileSync(file('open.kdl'), CAMPAIGN.replace('close cover-1', 'close cover-1; stow bag-1'));
    const { code, out } = handrail('check', file('open.kdl'));
    expect(out).toMatch(/^ {2}why +"stow bag-1": into what is not said \(in=\)$/m);
    expect(out).toContain('No timeline was given, so no plan was checked');
    expect(code).toBe(4);
  });
});

describe('handrail routes', () => {
  it('prints the way between two places and ends with 1 where there is none', () => {
    expect(handrail('routes', campaign, 'porch', 'bay').out).toContain('porch to bay: 3 min\n  porch → bay');
    const turning = 'hardware joint-1 kind=rotating-joint at=porch state=turning';
    const cut = CAMPAIGN.replace('length="6 m"', 'length="6 m" { open-while joint-1 parked; }');
    writeFileSync(file('cut.kdl'), `${cut}${turning}\n`);
    const closed = handrail('routes', file('cut.kdl'), 'porch', 'bay');
    expect([closed.code, closed.out]).toEqual([1, 'no way from porch to bay, as the hardware stands\n']);
    const parked = handrail('routes', file('cut.kdl'), 'porch', 'bay', '--state', 'joint-1=parked');
    expect([parked.code, parked.out]).toEqual([0, 'porch to bay: 3 min\n  porch → bay\n']);
  });
  it('prints the sums of the way home', () => {
    expect(handrail('routes', campaign).out).toMatch(/bay +│ 3 min +│ to porch 3 min = 3 min/);
  });
});
