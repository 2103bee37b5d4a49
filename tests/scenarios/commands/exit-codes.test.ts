/** What a script learns from the exit code, each with a cause that really occurs. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLES, isClean, PackedHandrail } from './packed-handrail.ts';

let handrail: PackedHandrail;

beforeAll(async () => {
  handrail = await PackedHandrail.packed();
  cpSync(EXAMPLES, handrail.folder, { recursive: true });
});
afterAll(() => handrail.remove());

/** Two people, two places; every limit that a rule asks for is stated, so that nothing is left open. */
const QUIET = `handrail 1
campaign quiet "Quiet"
person EV1 role=outside suit-limit="6 h" anchor=ring tether="20 m"
person EV2 role=outside suit-limit="6 h" anchor=ring tether="20 m"
person IV role=inside
limits {
  home-within "30 min"; partner-within "30 min"; glove-check "3 h"; pad-check "3 h"; tether-swap "1 min"
  restraint-ingress "1 min"; restraint-egress "1 min"; reaction "30 s"; margin "15 min"
}
vehicle small hatch=porch {
  place porch
  place bay
  rail porch bay minutes="3 min" length="6 m"
}
eva one egress="2031-09-14T11:40:00Z" longest="4 h"
hardware ring kind=anchor at=porch
hardware cover-1 kind=cover at=bay state=closed
task look "Look behind the cover" {
  stint open-it who=EV1 at=bay { open cover-1; minutes 5 }
  stint close-it who=EV1 at=bay { close cover-1; minutes 4 }
}
`;

describe('the exit code', () => {
  it('is 0 for a plan that is found and kept, with the next step said', () => {
    const planned = handrail.run(['plan', 'first-campaign.kdl', '-o', 'first.json']);
    expect(planned.code).toBe(0);
    expect(planned.out).toContain('wrote first.json: next, handrail check first-campaign.kdl first.json');
    expect(isClean(planned)).toBe(true);
  });

  it('is 1 when the second opinion finds an error: a tether that is not stated', () => {
    const checked = handrail.run(['check', 'first-campaign.kdl', 'first.json']);
    expect(checked.code).toBe(1);
    expect(checked.out).toMatch(/^error {3}\S.* tether\/start-anchor-is-stated$/m);
    expect(isClean(checked)).toBe(true);
  });

  it('is 1 for a timeline of another campaign: it is read and judged, and that is the first thing found', () => {
    writeFileSync(handrail.path('quiet.kdl'), QUIET);
    const checked = handrail.run(['check', 'quiet.kdl', 'first.json']);
    expect(checked.code).toBe(1);
    expect(checked.out).toMatch(/^error {3}\S.*campaign/);
    expect(isClean(checked)).toBe(true);
  });

  it('is 3 when what an EVA is flown for cannot be in any plan, with the cheapest way out', () => {
    const planned = handrail.run(['plan', 'cannot-fit.kdl']);
    expect(planned.code).toBe(3);
    expect(planned.out.replaceAll(/\s+/g, ' ')).toContain(
      'There is a plan with it again with the clock "Box without power" at 32 min instead of 20 min',
    );
  });

  it('is 4 when a figure that is asked for cannot be told: no sky without an orbit, no supplies without a timeline', () => {
    const sky = handrail.run(['sky', 'first-campaign.kdl']);
    expect([sky.code, sky.out]).toEqual([4, '']);
    expect(sky.err).toContain('no orbit is stated');
    const supplies = handrail.run(['supplies', 'first-campaign.kdl']);
    expect([supplies.code, supplies.out]).toEqual([4, '']);
    expect(supplies.err).toContain('handrail plan FILE -o TIMELINE.json');
  });

  it.each([
    ['a command that is none', ['plann', 'first-campaign.kdl'], /unknown command 'plann'[^]*did you mean plan\?/i],
    ['an option that is none', ['plan', 'first-campaign.kdl', '--bugdet', '5'], /unknown option '--bugdet'[^]*budget/],
    ['a number that is none', ['plan', 'first-campaign.kdl', '--budget', 'much'], /"much" is not a whole number/],
    ['an EVA that is none', ['plan', 'first-campaign.kdl', '--eva', 'two'], /no EVA "two"; the campaign has one/],
    ['no file', ['check'], /missing required argument 'files'/],
    ['a folder that is not there', ['plan', 'first-campaign.kdl', '-o', 'none/x.json'], /there is no folder none/],
    ['a folder as a file', ['plan', 'first-campaign.kdl', '-o', '.'], /it is a folder, not a file/],
    [
      'a place that is none',
      ['routes', 'quiet.kdl', 'porch', 'moon'],
      /moon[^]*handrail explain routes\/unknown-place/,
    ],
    ['an id that is none', ['explain', 'clock-is-kep'], /did you mean clock\/clock-is-kept\?/],
  ])('is 2 for %s, in one sentence, with nothing on stdout', (_, args, words) => {
    const ended = handrail.run(args);
    expect(ended.err).toMatch(words);
    expect([ended.code, ended.out]).toEqual([2, '']);
    expect(isClean(ended)).toBe(true);
  });

  it('is 0 for help, which names every command, every exit code and where to begin', () => {
    const help = handrail.run(['help']);
    expect(help.code).toBe(0);
    const registered = readFileSync(join(EXAMPLES, '../apps/cli/src/commands.ts'), 'utf8');
    for (const [, name = ''] of registered.matchAll(/commands\/([a-z-]+)\.ts'/g))
      expect(help.out).toContain(`\n  ${name} `);
    for (const words of ['1 findings at error level', '3 no plan exists', 'Begin with'])
      expect(help.out).toContain(words);
    expect(help.out.split('\n').every((line) => line.length <= 110)).toBe(true);
  });

  it('is the same from the sources as from the packed program', () => {
    const main = join(EXAMPLES, '../apps/cli/src/main.ts');
    const run = spawnSync(process.execPath, ['--import', 'tsx', main, 'routes', handrail.path('quiet.kdl')], {
      cwd: join(EXAMPLES, '..'),
      encoding: 'utf8',
    });
    expect([run.status, run.stdout]).toEqual([0, handrail.run(['routes', handrail.path('quiet.kdl')]).out]);
  });
});

describe('a timeline written by hand', () => {
  const OUT = 'eva one\nEV1 0:00-0:00 out\nEV2 0:00-0:00 out\n';

  it('is judged like any other', () => {
    const lines = [
      'EV1 0:00-0:03 porch > bay',
      'EV1 0:03-0:08 look/open-it',
      'EV1 0:08-0:12 look/close-it',
      'EV1 0:12-0:15 bay > porch',
      'EV1 0:15-0:15 in',
      'EV2 0:15-0:15 in',
      'hatch 0:15-0:15',
      'wall 4:00 longest EVA stated for one',
    ];
    writeFileSync(handrail.path('hand.txt'), `${OUT}${lines.join('\n')}\n`);
    const good = handrail.run(['check', 'quiet.kdl', 'hand.txt']);
    expect(good.out).toContain('2 stints in 1 EVA replayed');
    expect(good.out).not.toMatch(/^error/m);
    // The cover is opened before anyone can be there: 3 min of rail in 1 min.
    writeFileSync(handrail.path('fast.txt'), `${OUT}${lines.join('\n').replace('0:00-0:03', '0:02-0:03')}\n`);
    const fast = handrail.run(['check', 'quiet.kdl', 'fast.txt']);
    expect(fast.code).toBe(1);
    expect(fast.out).toMatch(/^error /m);
  });

  it('that does not read is refused with its line and what was expected', () => {
    writeFileSync(handrail.path('bad.txt'), `${OUT}EV1 ten past till twenty look/open-it\n`);
    const bad = handrail.run(['check', 'quiet.kdl', 'bad.txt']);
    expect([bad.code, bad.out]).toEqual([2, '']);
    expect(bad.err).toMatch(/bad\.txt is not a timeline written by hand.*line 4/);
  });
});
