import { MIN } from '../build-work.ts';
import { type Broken, must, shift } from '../broken.ts';

export const MOVES: readonly Broken[] = [
  {
    name: 'a path leads elsewhere than the move says',
    rule: 'replay/path-leads-where-the-move-says',
    says: 'the path is porch → mid',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 8).path = ['porch', 'mid'];
    },
  },
  {
    name: 'a path has a piece without a rail',
    rule: 'replay/each-piece-of-a-path-is-a-rail',
    says: 'from rail to rail',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 53).path = ['bay', 'wing', 'far'];
    },
  },
  {
    name: 'a path leads through a place that is kept out of',
    rule: 'replay/nobody-enters-a-keep-out',
    says: 'path far → den → mid → porch',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 70).path = ['far', 'den', 'mid', 'porch'];
    },
  },
  {
    name: 'a way is planned shorter than its rails take',
    rule: 'replay/moves-take-their-time',
    says: 'planned 3 min; porch → mid → bay takes 4 min',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 8).endS = 11 * MIN;
    },
  },
  {
    name: 'a way is planned as if the box were not in hand',
    rule: 'replay/moves-take-their-time',
    says: 'planned 2 min; bay → mid takes 3 min with a load factor of 1.5',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 37).endS = 39 * MIN;
    },
  },
  {
    name: 'a way is planned for a quicker person than is assigned',
    rule: 'replay/moves-take-their-time',
    says: 'planned 2 min; porch → mid takes 2 min 30 s',
    person: 'EV2',
    change: ({ campaign }) => {
      must(campaign.people[1]).pace = 1.25;
    },
  },
  {
    name: 'a rail is closed while somebody is on it',
    rule: 'replay/rails-are-open',
    says: 'rail mid-wing is open while joint is parked; it is turning',
    person: 'EV2',
    change: ({ campaign }) => {
      // PET 0:17 of EVA two: EV2 is on the way to the wing.
      must(campaign.events[0]).atUtcMs = Date.parse('2031-09-17T12:17:00Z');
    },
  },
  {
    name: 'a rail depends on something that nobody has stated',
    rule: 'replay/rails-are-open',
    says: 'nobody has said how it stands',
    person: 'EV2',
    change: ({ model }) => {
      must(model.variables.get('joint')).initial = 'unknown';
    },
  },
  {
    name: 'the box is taken over a rail that refuses it',
    rule: 'replay/rails-take-the-load',
    says: 'rail mid-bay refuses Large box',
    person: 'EV1',
    change: ({ campaign }) => {
      must(campaign.vehicle.rails.find((one) => one.id === 'mid-bay')).refuses = ['large'];
    },
  },
  {
    name: 'a walk within a stint takes longer than the stint',
    rule: 'replay/walks-in-a-stint-have-a-way',
    says: 'the way takes 4 min, the stint 3 min',
    stint: 'bring-in/fetch',
    change: (_, find) => {
      find.role('bring-in/fetch').to = 'wing';
      find.role('bring-in/fetch').at = 'bay';
    },
  },
  {
    name: 'the reel is too short for where EV1 goes',
    rule: 'replay/tether-reaches',
    says: 'with 8 m of reel along porch → mid → bay, to end on a-lock',
    person: 'EV1',
    change: ({ campaign }) => {
      must(campaign.people[0]).tetherLengthM = 8;
    },
  },
  {
    name: 'EV1 stays on the first anchor beyond its reach',
    rule: 'replay/tether-reaches',
    says: 'with 16 m of reel along bay → far, to end on a-lock',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 53).anchor = 'a-lock';
    },
  },
  {
    name: 'EV1 has no time to move the tether',
    rule: 'replay/tether-swaps-take-their-time',
    says: 'rails and swaps take 4 min; planned 3 min 30 s',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 53).startS += 30;
    },
  },
  {
    name: 'EV1 goes home by another way than the tether was led',
    rule: 'replay/tether-is-led-back-as-it-was-led-out',
    says: 'led out through mid and not back through it',
    person: 'EV1',
    change: ({ campaign }, find) => {
      must(campaign.vehicle.rails.find((one) => one.id === 'porch-mid')).fairlead = 'mid';
      campaign.hardware = campaign.hardware.filter((one) => one.id !== 'a-bay');
      find.move('EV1', 13, 'two').path = ['mid', 'bay', 'porch'];
    },
  },
  {
    name: 'the joint under a tether starts to turn',
    rule: 'replay/no-tether-over-a-joint-that-turns',
    says: 'rail mid-wing is open while joint is parked; it is turning',
    person: 'EV2',
    change: ({ campaign }) => {
      // PET 0:25 of EVA two: EV2 is at the wing, the tether lies over the joint.
      must(campaign.events[0]).atUtcMs = Date.parse('2031-09-17T12:25:00Z');
    },
  },
  {
    name: 'the arm starts where it is not',
    rule: 'replay/arm-starts-where-it-ended',
    says: 'it starts at at-mid at PET 0:20; the arm is at park',
    person: 'crane',
    change: (_, find) => {
      const { moves } = find.eva();
      moves.splice(moves.indexOf(find.move('crane', 14)), 1);
    },
  },
  {
    name: 'the arm goes faster than its transfer takes',
    rule: 'replay/arm-transfers-take-their-time',
    says: 'planned 2 min; park → at-mid takes 3 min empty',
    person: 'crane',
    change: (_, find) => {
      find.move('crane', 14).endS = 16 * MIN;
    },
  },
  {
    name: 'a ride is planned at the speed of an empty arm',
    rule: 'replay/arm-transfers-take-their-time',
    says: 'planned 4 min; at-mid → at-far takes 6 min loaded',
    person: 'crane',
    change: (_, find) => {
      find.stint('ride/over').endS = 27 * MIN;
    },
  },
  {
    name: 'the arm moves with EV2 on its plate and no ride',
    rule: 'replay/arm-carries-a-rider-only-by-work',
    says: 'the way from at-far to at-mid PET 0:30 to 0:34',
    person: 'crane',
    change: (_, find) => {
      find.eva().moves.push({
        ...find.move('crane', 14),
        from: 'at-far',
        to: 'at-mid',
        path: ['at-far', 'at-mid'],
        startS: 30 * MIN,
        endS: 34 * MIN,
      });
    },
  },
  {
    name: 'the arm is elsewhere when EV2 steps off',
    rule: 'replay/plate-is-where-the-rider-is',
    says: 'EV2 is at mid; the arm is at at-far (far)',
    stint: 'ride/step-off',
    person: 'EV2',
    change: (_, find) => {
      const role = find.role('ride/step-off', 1);
      role.at = 'at-far';
      role.to = 'at-far';
    },
  },
  {
    name: 'the arm moves while EV2 works from it',
    rule: 'replay/plate-is-where-the-rider-is',
    says: 'the arm moves PET 0:29 to 0:33',
    stint: 'ride/look',
    person: 'EV2',
    change: (_, find) => {
      find.eva().moves.push({
        ...find.move('crane', 14),
        from: 'at-far',
        to: 'at-mid',
        path: ['at-far', 'at-mid'],
        startS: 29 * MIN,
        endS: 33 * MIN,
      });
    },
  },
  {
    name: 'EV2 boards an arm that is moving',
    rule: 'replay/plate-is-where-the-rider-is',
    says: 'an arm does not move while somebody boards or leaves it',
    stint: 'ride/over',
    person: 'EV2',
    change: (_, find) => {
      find.role('ride/over').startOn = null;
    },
  },
  {
    name: 'a ride starts before the boarding is over',
    rule: 'replay/one-thing-at-a-time',
    says: '"mount" PET 0:20 to 0:23 and "over" PET 0:22 to 0:28',
    person: 'EV2',
    change: (_, find) => shift(find.stint('ride/over'), -1),
  },
];
