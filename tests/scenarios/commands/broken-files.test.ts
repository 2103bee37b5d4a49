/** Files that are not what they should be: each is refused in words, with every mistake at its place. */
import { chmodSync, cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLES, isClean, PackedHandrail } from './packed-handrail.ts';

let handrail: PackedHandrail;

beforeAll(async () => {
  handrail = await PackedHandrail.packed();
  cpSync(join(EXAMPLES, 'first-campaign.kdl'), handrail.path('first.kdl'));
});
afterAll(() => handrail.remove());

/** Three mistakes of three sorts; lines and columns counted by hand in this text. */
const BROKEN = `handrail 1
campaign broken "Broken"
person EV1 role=outside
eva one egress="2031-02-30T11:40:00Z" longest="4 h"
task look "Look" {
  stint open-it who=EV7 { minutes 5; }
  stitn close-it who=EV1 { minutes 4; }
}
`;

describe('a broken campaign text', () => {
  it('is refused with all its mistakes in one run, each with file, line and column', () => {
    writeFileSync(handrail.path('broken.kdl'), BROKEN);
    const ended = handrail.run(['plan', 'broken.kdl']);
    expect([ended.code, ended.out]).toEqual([2, '']);
    const places = [...ended.err.matchAll(/^ {2}at {4}(\S+)$/gm)].map(([, place]) => place);
    expect(places).toEqual(expect.arrayContaining(['broken.kdl:4:16', 'broken.kdl:6:21', 'broken.kdl:7:3']));
    expect(ended.err).toContain('did you mean "stint"?');
    expect(ended.err).toMatch(/\d errors in broken\.kdl; nothing was planned or written\n$/);
    expect(ended.err.split('\n').every((line) => line.length <= 100)).toBe(true);
    expect(isClean(ended)).toBe(true);
  });

  it('says the same to a program, as JSON on stdout', () => {
    const ended = handrail.run(['check', 'broken.kdl', '--json']);
    expect(ended.code).toBe(2);
    const { failure, ...envelope } = JSON.parse(ended.out) as {
      failure: { problems: { span: { line: number; column: number } }[] };
    };
    expect(envelope).toEqual({ format: 'handrail-answer', version: 1, command: 'check', exitCode: 2 });
    expect(failure.problems.map(({ span }) => [span.line, span.column])).toEqual(
      expect.arrayContaining([
        [4, 16],
        [6, 21],
        [7, 3],
      ]),
    );
  });

  it.each([
    ['that is not there', 'none.kdl', /none\.kdl: there is no such file/],
    ['that is a folder', 'folder.kdl', /folder\.kdl: it is a folder, not a file/],
    ['that is empty', 'empty.kdl', /empty\.kdl:1:1/],
    ['that is binary', 'binary.kdl', /binary\.kdl:\d+:\d+/],
  ])('is refused when it is a file %s', (_, name, words) => {
    mkdirSync(handrail.path('folder.kdl'), { recursive: true });
    writeFileSync(handrail.path('empty.kdl'), '');
    // The first bytes of a picture, and bytes that are no text in UTF-8.
    writeFileSync(handrail.path('binary.kdl'), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0xff, 0xfe, 0xc0, 0x0a, 0x80]));
    const ended = handrail.run(['plan', name]);
    expect(ended.err).toMatch(words);
    expect([ended.code, ended.out]).toEqual([2, '']);
    expect(isClean(ended)).toBe(true);
  });

  it.skipIf(process.getuid?.() !== 0)('is refused when its owner does not let it be read', () => {
    chmodSync(handrail.folder, 0o755);
    cpSync(handrail.path('first.kdl'), handrail.path('locked.kdl'));
    chmodSync(handrail.path('locked.kdl'), 0o000);
    // Whoever may read everything would not notice: run as somebody who may not.
    const ended = handrail.run(['plan', 'locked.kdl'], { uid: 65_534 });
    expect([ended.code, ended.out]).toEqual([2, '']);
    expect(ended.err).toMatch(/locked\.kdl: it may not be read/);
  });
});

describe('output that nobody looks at in a terminal', () => {
  it('has no colour codes, whatever the environment says of the terminal', () => {
    handrail.run(['plan', 'first.kdl', '-o', 'first.json']);
    const ended = handrail.run(['check', 'first.kdl', 'first.json'], { env: { CI: '1', TERM: 'xterm-256color' } });
    expect(ended.out).toContain('error');
    expect(isClean(ended)).toBe(true);
  });
});
