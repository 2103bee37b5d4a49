import { MIN } from '../build-work.ts';
import { type Broken, must, shift } from '../broken.ts';

export const PEOPLE: readonly Broken[] = [
  {
    name: 'a role is not filled',
    rule: 'replay/every-role-is-filled',
    says: 'assigned: EV2',
    stint: 'ride/mount',
    change: (_, find) => {
      find.stint('ride/mount').assigned = ['EV2'];
    },
  },
  {
    name: 'work is given to somebody whose work it is not',
    rule: 'replay/assigned-is-a-candidate',
    says: 'it may be EV1',
    stint: 'photo/shoot',
    person: 'EV2',
    change: (_, find) => {
      find.stint('photo/shoot').assigned = ['EV2'];
    },
  },
  {
    name: 'work is given to somebody who does not go out',
    rule: 'replay/assigned-is-outside',
    says: 'the egress lists EV1',
    stint: 'wing/check',
    person: 'EV2',
    change: ({ campaign }) => {
      must(campaign.evas[1]).egress = must(campaign.evas[1]).egress.filter((one) => one.person === 'EV1');
    },
  },
  {
    name: 'EV1 does two things at once',
    rule: 'replay/one-thing-at-a-time',
    says: '"open up" PET 0:14 to 0:26 and "unplug" PET 0:25 to 0:31',
    stint: 'swap/unplug',
    person: 'EV1',
    change: (_, find) => shift(find.stint('swap/unplug'), -1),
  },
  {
    name: 'EV2 works while on the way',
    rule: 'replay/one-thing-at-a-time',
    says: '"load" PET 1:06 to 1:10 and the way from mid to porch PET 1:09 to 1:11',
    person: 'EV2',
    change: (_, find) => {
      const move = find.move('EV2', 70);
      move.startS -= MIN;
      move.endS -= MIN;
    },
  },
  {
    name: 'one operator works two arms at once',
    rule: 'replay/one-operator-moves-one-arm',
    says: 'the way from boom-in to boom-out PET 0:08 to 0:10 and the way from park to at-mid PET 0:08 to 0:11',
    person: 'IV',
    change: (_, find) => {
      find.eva('two').moves.push({ ...find.move('crane', 14), startS: 8 * MIN, endS: 11 * MIN });
    },
  },
  {
    name: 'a way is missing before work elsewhere',
    rule: 'replay/each-thing-starts-where-the-last-ended',
    says: 'it starts at far at PET 1:00; they are at bay',
    stint: 'photo/shoot',
    person: 'EV1',
    change: (_, find) => {
      const { moves } = find.eva();
      moves.splice(moves.indexOf(find.move('EV1', 53)), 1);
    },
  },
  {
    name: 'work comes before the egress',
    rule: 'replay/each-thing-starts-where-the-last-ended',
    says: 'it starts at mid at PET 0:00; they are inside',
    stint: 'bring-in/fetch',
    person: 'EV1',
    change: (_, find) => shift(find.stint('bring-in/fetch'), -10),
  },
  {
    name: 'nobody is at the hatch to come in',
    rule: 'replay/each-thing-starts-where-the-last-ended',
    says: 'it starts at porch at PET 1:20; they are at mid',
    person: 'EV2',
    change: (_, find) => {
      const { moves } = find.eva();
      moves.splice(moves.indexOf(find.move('EV2', 70)), 1);
    },
  },
  {
    name: 'work from the plate comes before anybody boards it',
    rule: 'replay/the-plate-is-boarded-and-left-by-work',
    says: 'a plate is boarded and left by work of its own',
    stint: 'ride/over',
    person: 'EV2',
    change: (_, find) => {
      find.role('ride/mount').endOn = null;
    },
  },
  {
    name: 'EV1 has no time to get into the restraint',
    rule: 'replay/restraints-take-their-time',
    says: 'out of none 0 min + into r1 2 min = 2 min; the plan leaves 1 min beside the way',
    stint: 'swap/replug',
    person: 'EV1',
    change: (_, find) => shift(find.stint('swap/replug'), -1),
  },
  {
    name: 'EV1 has no time to get out of the restraint',
    rule: 'replay/restraints-take-their-time',
    says: 'out of r1 1 min + into none 0 min = 1 min; the plan leaves 30 s beside the way',
    stint: 'swap/lift-out',
    person: 'EV1',
    change: (_, find) => shift(find.stint('swap/lift-out'), -0.5),
  },
  {
    name: 'two stand in one restraint',
    rule: 'replay/one-person-in-a-restraint',
    says: '"unplug" PET 0:26 to 0:32, "look" PET 0:29 to 0:39',
    person: 'EV2',
    change: (_, find) => {
      find.role('ride/look').restraint = 'r1';
    },
  },
  {
    name: 'EV1 carries the box without the plan saying so',
    rule: 'replay/moves-are-laden-as-carried',
    says: 'box is in hand, the move does not say so',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 37).carrying = [];
    },
  },
  {
    name: 'the plan says something is carried that is not in hand',
    rule: 'replay/moves-are-laden-as-carried',
    says: 'the move says driver is carried, it is not in hand',
    person: 'EV1',
    change: (_, find) => {
      find.move('EV1', 43).carrying = ['driver'];
    },
  },
  {
    name: 'the box fills both hands and another load is in them',
    rule: 'replay/hands-suffice',
    says: 'box fills both hands; beside it: camera',
    person: 'EV1',
    change: ({ campaign }) => {
      must(campaign.hardware.find((one) => one.id === 'camera')).loadClass = 'large';
    },
  },
  {
    name: 'EV1 has more loose pieces than hooks',
    rule: 'replay/carried-pieces-have-hooks',
    says: '3 pieces (box, bag-1, camera); there are hooks for 2',
    person: 'EV1',
    change: ({ campaign }) => {
      must(campaign.people[0]).carryMost = 2;
    },
  },
  {
    name: 'a load is said to be in hand and is not',
    rule: 'replay/loads-are-in-hand-at-the-start',
    says: 'it is place:bay',
    stint: 'photo/shoot',
    change: ({ model }, find) => {
      find.effects('photo/shoot').carriesIn = [{ role: 0, item: 'panel' }];
      model.variables.set('panel.holder', {
        ...must(model.variables.get('box.holder')),
        id: 'panel.holder',
        of: 'panel',
      });
    },
  },
];
