/**
 * Ways home whose sums are done by hand here, from the rails, passages and closing figures that stand in the text and in the
 * kinds library (50th / 90th percentile): gather a cable 3 min / 7 min, put a box 1 min / 2 min, make a box fast 4 min / 8 min,
 * out of a restraint 1 min / 2 min, off a plate 2 min 30 s / 5 min. Invented hardware.
 */
import { describe, expect, test } from 'vitest';
import { smallCase, wayAt } from '../../properties/wayhome/small-case.ts';

const MIN = 60;
const BACK = `EV2 0:50-0:55 in
EV1 0:55-1:00 in
hatch 1:00-1:05
wall 6:00 longest EVA`;
const OUT = 'eva day\nEV1 0:00-0:05 out\nEV2 0:05-0:10 out\n';

describe('one holds a large box, the other has a line laid out', () => {
  const small = smallCase(
    `
limits { restraint-egress "1 min"; restraint-ingress "1 min" }
hardware guides kind=bay at=bay
hardware unit "Unit" kind=box at=guides load=large state=seated { state retainer none; property soft-capture #true }
hardware line "Line" kind=cable at=side state=stowed { state retainer none }
task take rank=1 eva=day { stint out who=EV1 at=bay { unseat unit from=guides; report; seat unit in=guides; make-fast unit } }
task lay rank=2 eva=day { stint lay who=EV2 at=side { lay line; report; gather line } }
`,
    `${OUT}EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV1 0:14-0:34 take/out
steps 0:18 0:24 0:28 0:34
EV2 0:15-0:30 lay/lay
steps 0:18 0:24 0:30
EV1 0:40-0:44 bay > porch
EV2 0:40-0:45 side > porch
${BACK}`,
  );
  test('terminate: the box is put down where it is, the line gathered, both go', () => {
    // EV1: put 1 + travel 4 = 5. EV2: gather 3 + travel 5 = 8. EV1 in at 10, EV2 in at 15, closed at 20.
    expect(wayAt(small, 20 * MIN).totalS).toBe(20 * MIN);
    // 90 %: EV1: 2 + 4 = 6, in at 11. EV2: 7 + 5 = 12, in at 17, closed at 22.
    const high = wayAt(small, 20 * MIN, { basis: 'high' });
    expect(high.totalS).toBe(22 * MIN);
    expect(high.words).toBe('close 0:07 + travel 0:05 + hatch 0:10 = 0:22');
  });
  test('seated on its guides the box is made fast first', () => {
    // At 0:29 it is seated. 50 %: make-fast 4 + travel 4 = 8; the line is closed again at 0:30: gather 3 + travel 5 = 8. 8 + 5 + 5 + 5.
    expect(wayAt(small, 29 * MIN).totalS).toBe(23 * MIN);
    expect(
      wayAt(small, 29 * MIN)
        .jobs.map((job) => job.words)
        .sort(),
    ).toEqual(['gather Line', 'make-fast Unit']);
    // At 0:31 only the box is open: EV2 is at the hatch after 5 and in at 10, EV1 comes after 8 and is in at 15, closed at 20.
    expect(wayAt(small, 31 * MIN).totalS).toBe(20 * MIN);
  });
  test('abort: a tether takes the place of two fasteners; the line has none, so it is gathered', () => {
    // EV1: tether 0:30 + travel 4 = 4:30, in at 9:30. EV2: gather 3 + travel 5 = 8, in after EV1 at 14:30, closed at 19:30.
    const abort = wayAt(small, 29 * MIN, { mode: 'abort' });
    expect(abort.jobs.map((job) => job.words).sort()).toEqual(['gather Line', 'tether Unit']);
    expect(abort.totalS).toBe(19.5 * MIN);
  });
  test('assist: the partner goes there, frees, tows at the pace of a large load, passes both in alone', () => {
    // EV2 cannot move: EV1 puts 1, side is 4 + 5 = 9 away; free 1; tow 5 x 1.5 = 7.5; passages 5 x 1.5 + 5; close 5: 36 min.
    // EV1 cannot move: EV2 9 there; free 1; put down what EV1 holds 1; tow 4 x 1.5 = 6; 7.5 + 5 + 5: 34.5 min.
    const assist = wayAt(small, 20 * MIN, { mode: 'assist' });
    expect(assist.totalS).toBe(36 * MIN);
    expect(assist.words.startsWith('EV2 cannot move')).toBe(true);
    expect(assist.assumptions.join()).toContain('1.5 times');
  });
});

describe('where the operator says how slow a way may be', () => {
  const small = smallCase(
    `
limits { travel-spread least=0.8 most=1.5 }
hardware line "Line" kind=cable at=side state=stowed { state retainer none }
task look rank=1 eva=day { stint out who=EV1 at=bay { inspect bay } }
task lay rank=2 eva=day { stint lay who=EV2 at=side { lay line; report; gather line } }
`,
    `${OUT}EV1 0:10-0:14 porch > bay
EV2 0:10-0:15 porch > side
EV1 0:14-0:34 look/out
EV2 0:15-0:30 lay/lay
steps 0:18 0:24 0:30
EV1 0:40-0:44 bay > porch
EV2 0:40-0:45 side > porch
${BACK}`,
  );
  test('as planned nothing is slower', () => {
    // EV1: travel 4, in at 9. EV2: gather 3 + travel 5 = 8, in at 14 after EV1, closed at 19.
    const way = wayAt(small, 20 * MIN);
    expect(way.totalS).toBe(19 * MIN);
    expect(way.assumptions).toContain('travel, hatch passages and closing the hatch at their planning figures');
  });
  test('the 90 % way home takes every way, passage and the hatch at the slowest', () => {
    // EV1: travel 6, in at 13.5. EV2: gather 7 + travel 7.5 = 14.5, in at 22, closed at 29.5.
    const high = wayAt(small, 20 * MIN, { basis: 'high' });
    expect(high.totalS).toBe(29.5 * MIN);
    expect(high.words).toBe('close 0:07 + travel 0:07:30 + hatch 0:15 = 0:29:30');
    expect(high.assumptions.join()).toContain('1.5 times their planning figures, the slowest stated');
  });
});

describe('on an arm', () => {
  const onCrane = (down: string) =>
    smallCase(
      `
person operator role=arm
arm crane operator=operator start=near {
    pose near place=bay { climb-down bay "3 min" }
    pose far place=tip
    transfer near far empty="2 min" loaded="4 min" ${down}
}
task ride rank=1 eva=day {
    stint get-on who=EV1 at=bay end-on=crane arm=crane pose=near { mount crane; safe crane by=arm }
    stint over who=EV1 on=crane arm=crane pose=near to-pose=far { ride crane; safe crane by=arm }
    stint get-off who=EV1 start-on=crane arm=crane pose=far { dismount crane }
}
`,
      `${OUT}EV1 0:10-0:14 porch > bay
EV1+crane 0:15-0:20 ride/get-on
EV1+crane 0:20-0:26 ride/over
EV1+crane 0:26-0:30 ride/get-off
EV1 0:40-0:48 tip > bay > porch
${BACK}`,
    );
  const small = onCrane('');
  const withWayDown = onCrane('{ climb-down bay "12 min" }');
  test('the rider gets off where the arm stands', () => {
    // EV2 waits at the porch: in at 5. EV1: off the plate 2:30 + travel 4 = 6:30; in at 11:30, closed at 16:30.
    expect(wayAt(small, 18 * MIN).totalS).toBe(16.5 * MIN);
  });
  test('with the arm dead by the climb-down that the pose names', () => {
    // 3 + 4 = 7; in at 12, closed at 17.
    expect(wayAt(small, 18 * MIN, { arm: 'dead' }).totalS).toBe(17 * MIN);
  });
  test('between two poses by the climb-down that the transfer names, whose length is counted once and whole', () => {
    const way = wayAt(withWayDown, 22 * MIN, { arm: 'dead', mode: 'abort' });
    // 12 + travel 4 = 16; in at 21, closed at 26.
    expect(way.totalS).toBe(26 * MIN);
    expect(way.words).toBe('let go 0:12 + travel 0:04 + hatch 0:10 = 0:26');
  });
  test('between two poses, or at one without a climb-down, a dead arm leaves no way', () => {
    for (const at of [22, 28]) {
      const way = wayAt(small, at * MIN, { arm: 'dead', mode: 'abort' });
      expect(way.totalS).toBeNull();
      expect(way.blocked.map((one) => one.cause)).toEqual(['arm']);
    }
    expect(wayAt(small, 22 * MIN, { mode: 'abort' }).totalS).not.toBeNull();
  });
});

describe('clocks', () => {
  const text = (limit: string): string => `
hardware unit "Unit" kind=box at=bay load=large state=fastened { state retainer none }
hardware plug "Plug" kind=data-connector at=bay of=unit state=mated
hardware new-plug "New plug" kind=data-connector at=tip of=unit state=demated
hardware screw kind=bolt at=bay of=unit state=torqued torque="10 N·m" turns=5
clock cold "Unit without heat" limit="${limit}" kind=difference sense=most on-stop=reset { starts plug demated; stops new-plug mated }
task off rank=1 eva=day { stint pull who=EV1 at=bay { demate plug; report; report } }
`;
  const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:44 off/pull
steps 0:15 0:30 0:44
EV1 0:44-0:48 bay > porch
${BACK}`;
  test('a running clock is stopped by mating again what started it', () => {
    const way = wayAt(smallCase(text('2 h'), timeline), 20 * MIN);
    expect(way.jobs.map((job) => job.verbs)).toEqual([['mate']]);
  });
  test('one that runs out before that can be done leaves no safe stop', () => {
    const way = wayAt(smallCase(text('5 min 10 s'), timeline), 20 * MIN);
    expect(way.totalS).toBeNull();
    expect(way.blocked.map((one) => one.cause)).toEqual(['clock']);
  });
});

test('what a kind does not know is unknown, never nothing', () => {
  const small = smallCase(
    `
hardware lid "Lid" kind=cover at=bay state=closed
task look rank=1 eva=day { stint see who=EV1 at=bay { open lid; report } }
`,
    `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:24 look/see
EV1 0:40-0:44 bay > porch
${BACK}`,
  );
  expect(wayAt(small, 20 * MIN).totalS).not.toBeNull();
  const cover = small.ground.library.kinds.get('cover');
  if (cover === undefined) throw new Error('the library has covers');
  const silent = { ...cover, aspects: cover.aspects.map((aspect) => ({ ...aspect, safe: {} })) };
  const kinds = new Map(small.ground.library.kinds).set('cover', silent);
  const library = { ...small.ground.library, kinds };
  const ground = { ...small.ground, library, facts: { ...small.ground.facts, library } };
  for (const mode of ['terminate', 'abort'] as const) {
    const way = wayAt({ ...small, ground }, 20 * MIN, { mode });
    expect(way.totalS).toBeNull();
    expect(way.unknown.join()).toContain('Lid');
  }
});

test('until the next EVA more must be closed than for a night', () => {
  const small = smallCase(
    `
hardware lid "Lid" kind=cover at=bay state=closed
task look rank=1 eva=day { stint see who=EV1 at=bay { open lid; report } }
`,
    `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:24 look/see
EV1 0:40-0:44 bay > porch
${BACK}`,
  );
  expect(wayAt(small, 20 * MIN).jobs).toEqual([]);
  expect(wayAt(small, 20 * MIN, {}, 'next-eva').jobs.map((job) => job.words)).toEqual(['close Lid']);
});
