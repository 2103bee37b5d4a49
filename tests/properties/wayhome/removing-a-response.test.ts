/**
 * A response is something that the crew has beside its plan. Taking one away never shortens the way home: over the whole surface, in every
 * mode, for random sets of responses with states that they leave, kit, and things that they put down elsewhere.
 */
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { type WayHomeSurface, wayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { MODES } from '@handrail/eva/wayhome/way-home-state';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { smallCase } from './small-case.ts';

const CAMPAIGN = `
limits { restraint-egress "1 min" }
hardware tray-bag "Bag" kind=bag at=EV1
hardware unit "Unit" kind=box at=tip load=large state=seated { state retainer none; property soft-capture #true }
hardware lid "Lid" kind=cover at=tip state=closed
hardware line "Line" kind=cable at=side state=stowed { state retainer none }
hardware b1 "Bolt 1" kind=bolt at=tip state=torqued torque="20 N·m" turns=8
hardware crank "Crank" kind=ratchet at=EV1 { property torque-most "60 N·m" }
hardware crank-two "Second crank" kind=ratchet at=bay { property torque-most "60 N·m" }
hardware heater "Heater plug" kind=data-connector at=tip state=mated
clock cold "Unit without heat" limit="50 min" kind=difference sense=most on-stop=reset { starts heater demated; stops heater mated }
task one rank=1 eva=day {
    stint lay who=EV1 at=tip { open lid; demate heater; release b1 with=crank; minutes low=8 likely=10 high=15 }
    stint tidy who=EV1 at=tip { drive b1 with=crank; mate heater; close lid; minutes low=6 likely=8 high=12 }
}
task two rank=2 eva=day {
    stint lay who=EV2 at=side { lay line; route line; minutes low=5 likely=8 high=12 }
    stint tidy who=EV2 at=side { secure line; minutes low=3 likely=5 high=9 }
}
`;
const TIMELINE = `eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:10-0:18 porch > bay > tip
EV2 0:10-0:15 porch > side
EV2 0:15-0:23 two/lay
EV1 0:18-0:28 one/lay
EV2 0:23-0:28 two/tidy
EV1 0:28-0:36 one/tidy
EV1 0:36-0:44 tip > bay > porch
EV2 0:28-0:33 side > porch
EV2 0:44-0:49 in
EV1 0:49-0:54 in
hatch 0:54-0:59
wall 6:00 longest EVA`;

const surfaceOf = (responses: readonly string[]): WayHomeSurface => {
  const small = smallCase(`${CAMPAIGN}\n${responses.join('\n')}`, TIMELINE);
  return wayHomeSurface(small.campaign, small.hardware, standardLibrary, small.timeline, small.eva);
};

const LEAVES = [
  'leaves lid open',
  'leaves line laid',
  'leaves b1 stuck',
  'leaves heater demated',
  'leaves crank.holder bay',
  'leaves crank-two.holder EV2',
  'leaves unit.holder bay',
];
const response = fc
  .record({
    id: fc.constantFrom('odd', 'jam', 'snarl', 'suit-leak', 'partner-silent', 'arm-stops-with-rider'),
    where: fc.constantFrom('', ' kind=bolt', ' kind=cable', ' stint="one/lay"'),
    leadsTo: fc.constantFrom('', ' leads-to=go-on', ' leads-to=terminate', ' leads-to=abort'),
    high: fc.integer({ min: 2, max: 40 }),
    kit: fc.constantFrom('', '; kit crank', '; kit crank-two'),
    leaves: fc.subarray(LEAVES, { maxLength: 3 }),
  })
  .map(({ id, where, leadsTo, high, kit, leaves }) => ({
    id,
    text: `response ${id} "Trouble" trigger="seen"${where}${leadsTo} { report; minutes low=1 likely=2 high=${high}${kit}${leaves.map((one) => `; ${one}`).join('')} }`,
  }));

test('taking a response away never shortens the way home', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(response, { minLength: 1, maxLength: 4, selector: ({ id }) => id }),
      fc.nat(),
      (list, pick) => {
        const kept = list.filter((_, at) => at !== pick % list.length);
        const [whole, less] = [surfaceOf(list.map(({ text }) => text)), surfaceOf(kept.map(({ text }) => text))];
        expect(less.samples.map(({ petS }) => petS)).toEqual(whole.samples.map(({ petS }) => petS));
        whole.samples.forEach((sample, at) => {
          for (const mode of MODES) {
            for (const [before, after] of [
              [sample.worst[mode].totalS, less.samples[at]?.worst[mode].totalS ?? null],
              [sample.planned[mode].totalS, less.samples[at]?.planned[mode].totalS ?? null],
            ] as const) {
              // Not known before stays not known; known before is at least as long, or not known any more.
              if (before === null) expect(after).toBeNull();
              else if (after !== null) expect(after).toBeGreaterThanOrEqual(before - 1e-6);
            }
          }
        });
        expect(less.committed.length).toBeGreaterThanOrEqual(whole.committed.length);
      },
    ),
    { numRuns: 25, seed: 11 },
  );
});
