/** The commands supplies, prebreathe and fasteners as a person runs them. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { EXAMPLE_OPENING } from '@handrail/eva/rules/example-opening';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '@handrail/eva/rules/example-suit';
import { fasteners } from '@handrail/wire/answers/fasteners';
import { prebreathe } from '@handrail/wire/answers/prebreathe';
import { supplies } from '@handrail/wire/answers/supplies';
import { describe, expect, it } from 'vitest';
import { FULMAR } from '../../support/planned-fulmar.ts';
import { commandRunner } from '../../support/run-commands.ts';

const handrail = await commandRunner('supplies', 'prebreathe', 'fasteners');
const folder = mkdtempSync(join(tmpdir(), 'handrail-'));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const oneLine = (text: string): string => text.replaceAll(/\s+/g, ' ');
const good = file('good.kdl', EXAMPLE_OPENING + inSuit(exampleSuit('worn')));
const short = file('short.kdl', EXAMPLE_OPENING + inSuit(exampleSuit('worn', { 'battery-start': '"240 Wh"' })));
const bare = file(
  'bare.kdl',
  `${EXAMPLE_OPENING}task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }\n`,
);
const plan = file('plan.txt', SIX_HOURS_OUT);

describe('handrail supplies', () => {
  it('cannot tell without a timeline, and plans nothing', async () => {
    const { status, stdout, stderr } = await handrail('supplies', good);
    expect([status, stdout]).toEqual([4, '']);
    expect(oneLine(stderr)).toContain('handrail plan FILE -o TIMELINE.json');
  });

  it('cannot tell of people without a suit', async () => {
    const timeline = file('bare.txt', SIX_HOURS_OUT.replaceAll('EV3', 'EV1'));
    const { status, stdout } = await handrail('supplies', bare, timeline);
    expect(status).toBe(4);
    expect(stdout).toContain('EV1: cannot tell: no suit is stated for EV1');
  });

  it('says what is used by effort, what is left, and what stands beside it', async () => {
    const { status, stdout } = await handrail('supplies', good, plan);
    expect(status).toBe(0);
    const words = oneLine(stdout);
    expect(words).toContain('never replaces the suit maker');
    expect(words).toContain('battery, likely: electrical loads 247 Wh = 247 Wh used; 540 Wh − 247 Wh = 293 Wh left');
    expect(words).toContain('light │ 6 h 2 min │ 200 W');
  });

  it('ends with 1 where the likely case falls short', async () => {
    expect((await handrail('supplies', short, plan)).status).toBe(1);
  });

  it('answers as its schema says', async () => {
    const { stdout } = await handrail('supplies', good, plan, '--json');
    const answer = supplies.schema.parse(JSON.parse(stdout));
    const [person] = answer.evas[0]?.people ?? [];
    const battery = person?.known === true ? person.supplies.find(({ supply }) => supply === 'battery') : undefined;
    expect(battery?.end.likely.used).toBeCloseTo(40 * 370 * 60, 6);
    expect(answer.exitCode).toBe(0);
  });

  it('refuses an EVA that the timeline does not have', async () => {
    expect((await handrail('supplies', good, plan, '--eva', 'night')).status).toBe(2);
  });
});

const protocol = (minutes: number, more = ''): string => `${EXAMPLE_OPENING}
prebreathe in-suit "In the suit" suit-pressure="29.6 kPa" limit=1.65 half-time="360 min" start-nitrogen="80 kPa" vapour=dry source="invented; model after [E14]" {
    stage "in the suit" role=oxygen pressure="101.3 kPa" oxygen=1 minutes=${minutes}
}
${more}
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;

describe('handrail prebreathe', () => {
  it('shows four hours at rest above the limit, and how much is still needed', async () => {
    const { status, stdout } = await handrail('prebreathe', file('four.kdl', protocol(240)));
    expect(status).toBe(1);
    const words = oneLine(stdout);
    // 80 kPa × 2^(−240/360) = 50.4 kPa; 50.4 / 29.6 = 1.70 [E14] §B; 360 min × log2(1.7026 / 1.65) = 16.3 min.
    expect(words).toContain('50.4 kPa / 29.6 kPa in the suit = 1.703; limit 1.65: above by 0.053');
    expect(words).toContain('17 min more oxygen at rest would bring it to the limit');
    expect(words).toContain('Not medical advice: the flight surgeon decides.');
  });

  it('cannot tell where none is stated, or where an EVA states none', async () => {
    expect((await handrail('prebreathe', bare)).status).toBe(4);
    const { status, stdout } = await handrail('prebreathe', file('long.kdl', protocol(260)));
    expect(status).toBe(4);
    expect(stdout).toContain('no pre-breathe is stated for EVA day');
  });

  it('answers as its schema says', async () => {
    const { stdout } = await handrail('prebreathe', FULMAR, '--json');
    const answer = prebreathe.schema.parse(JSON.parse(stdout));
    expect(answer.protocols[0]?.holds).toBe(true);
    expect(answer.protocols[0]?.oxygenBlocks?.map(({ owedS }) => owedS)).toEqual([0, 8 * 60]);
  });
});

describe('handrail fasteners', () => {
  it('works out turns, torque and time from thread, friction and tool', async () => {
    const { status, stdout } = await handrail('fasteners', FULMAR, '--json');
    expect(status).toBe(0);
    const answer = fasteners.schema.parse(JSON.parse(stdout));
    const bolt = answer.drives.find(({ fastener }) => fastener === 'new-bolt-1');
    // M10, pitch 1.5 mm [ISO261]: 19.5 / 1.5 + 0.4 − 0.1 and 20.5 / 1.5 + 1 + 0.1 turns.
    expect(bolt?.window?.turns.low).toBeCloseTo(13.3, 6);
    expect(bolt?.window?.turns.high).toBeCloseTo(14.7667, 3);
    // T = K F d [SHIGLEY9] Eq. 8-27: 0.17 × 15 kN × 10 mm / 0.95 and 0.13 × 27 kN × 10 mm / 1.05.
    expect(bolt?.window?.torqueNm.low).toBeCloseTo(26.842, 3);
    expect(bolt?.window?.torqueNm.high).toBeCloseTo(33.429, 3);
    // (14.03 − 2) turns at 1 a second, 2 at one in six seconds, 12 s of handling.
    expect(bolt?.driveS).toBeCloseTo(12.0333 + 12 + 12, 3);
  });

  it('judges a reading and says what to try next', async () => {
    const { status, stdout } = await handrail(
      'fasteners',
      FULMAR,
      '--reading',
      'new-bolt-1',
      'turns=7.5',
      'torque=30 N·m',
    );
    expect(status).toBe(1);
    expect(oneLine(stdout)).toContain('torque reached early');
    expect(oneLine(stdout)).toContain('1. Stop: do not raise the torque');
    expect((await handrail('fasteners', FULMAR, '--reading', 'new-bolt-1', 'turns=14', 'torque=30')).status).toBe(0);
  });

  it('cannot judge a fastener whose window is not stated', async () => {
    const { status, stderr } = await handrail('fasteners', FULMAR, '--reading', 'camera-bolt-1', 'turns=6');
    expect(status).toBe(4);
    expect(stderr).toContain('no window for camera-bolt-1');
  });

  it.each([
    ['nothing-such', 'turns=6'],
    ['new-bolt-1', 'torque=30'],
    ['new-bolt-1', 'turns=many'],
    ['new-bolt-1', 'turns=14', 'torque=30 kg'],
    ['new-bolt-1', 'turns=14', 'clutch=perhaps'],
    ['new-bolt-1', 'turns=14', 'angle=3'],
  ])('refuses the reading %s %s', async (...words) => {
    expect((await handrail('fasteners', FULMAR, '--reading', ...words)).status).toBe(2);
  });
});
