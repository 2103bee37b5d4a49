/** The first hour of somebody who has never seen the program: each command does what the one before told to do next. */
import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isClean, PackedHandrail } from './packed-handrail.ts';

let handrail: PackedHandrail;

beforeAll(async () => {
  handrail = await PackedHandrail.packed();
});
afterAll(() => handrail.remove());

/** "… next, handrail check a.kdl" → ["check", "a.kdl"]; the sentence may be wrapped. */
function nextOf(out: string): readonly string[] {
  const [, words = ''] = /next, handrail ([^]*)$/.exec(out.trim()) ?? [];
  return words.split(/\s+/);
}

describe('the first hour', () => {
  it('leads from an empty folder to a judged timeline, each step named by the one before', () => {
    const made = handrail.run(['new', 'first.kdl', '--egress', '2031-09-14T11:40:00Z']);
    expect(made.code).toBe(0);
    const read = handrail.run(nextOf(made.out));
    expect([read.code, nextOf(read.out)]).toEqual([0, ['plan', 'first.kdl', '-o', 'plan.json']]);
    const planned = handrail.run(nextOf(read.out));
    expect([planned.code, nextOf(planned.out)]).toEqual([0, ['check', 'first.kdl', 'plan.json']]);
    const judged = handrail.run(nextOf(planned.out));
    expect(judged.out.replaceAll(/\s+/g, ' ')).toContain('replayed for these durations, independently of planning');
    expect([made, read, planned, judged].every(isClean)).toBe(true);
  });

  it('does not write over what is there, nor where nothing can be written', () => {
    writeFileSync(handrail.path('kept.kdl'), 'mine');
    const over = handrail.run(['new', 'kept.kdl']);
    expect([over.code, over.err]).toEqual([2, 'kept.kdl is there already; name another file, or say --force\n']);
    expect(readFileSync(handrail.path('kept.kdl'), 'utf8')).toBe('mine');
    const nowhere = handrail.run(['new', 'none/first.kdl']);
    expect([nowhere.code, nowhere.err]).toEqual([2, 'none/first.kdl cannot be written: there is no folder none\n']);
    const inFile = handrail.run(['import', 'kept.kdl', '--into', 'kept.kdl']);
    expect([inFile.code, inFile.err.split('\n')[0]]).toEqual([
      2,
      expect.stringMatching(/^kept\.kdl: this is not JSON/),
    ]);
  });

  it('takes a campaign to another program and back: the text that comes back makes the same plan', () => {
    handrail.run(['new', 'mine.kdl', '--egress', '2031-09-14T11:40:00Z']);
    expect(handrail.run(['export', 'mine.kdl', '-o', 'mine.json']).out).toBe('wrote mine.json\n');
    const back = handrail.run(['import', 'mine.json', '--into', 'back']);
    expect([back.code, back.out]).toEqual([0, 'wrote back/mine.kdl\nnext, handrail check back/mine.kdl\n']);
    const plans = ['mine.kdl', 'back/mine.kdl'].map((file) => {
      const answer = JSON.parse(handrail.run(['plan', file, '--json']).out) as { timeline: { evas: unknown[] } };
      return answer.timeline.evas;
    });
    expect(plans[0]?.length).toBe(1);
    expect(plans[1]).toEqual(plans[0]);
  });
});
