import { MIN } from '../build-work.ts';
import { type Broken, must, shift } from '../broken.ts';

export const ORDERS: readonly Broken[] = [
  {
    name: 'work starts too soon after other work',
    rule: 'replay/least-lag-holds',
    says: '4 min after it ends; the least is 5 min',
    stint: 'bond/load',
    change: (_, find) => shift(find.stint('bond/load'), -7),
  },
  {
    name: 'work starts too late after other work',
    rule: 'replay/most-lag-holds',
    says: '11 min after it ends; the most is 10 min',
    stint: 'bond/load',
    change: (_, find) => {
      must(find.written('bond/load').after[0]).mostS = 10 * MIN;
    },
  },
  {
    name: 'work does not wait for its join',
    rule: 'replay/joins-hold',
    says: 'it starts at PET 0:42; "park box" ends at PET 0:43',
    stint: 'bond/apply',
    change: (_, find) => shift(find.stint('bond/apply'), -8),
  },
  {
    name: 'the plan does not show a join',
    rule: 'replay/joins-are-told',
    says: '"park box" ends at PET 0:43, "apply" starts at PET 0:50',
    stint: 'bond/apply',
    change: (_, find) => {
      find.eva().joins = [];
    },
  },
  {
    name: 'the plan shows a join at another time',
    rule: 'replay/joins-are-told',
    says: 'shown: released PET 0:41, waits until PET 0:50',
    stint: 'bond/apply',
    change: (_, find) => {
      must(find.eva().joins[0]).releasedS = 41 * MIN;
    },
  },
  {
    name: 'the order of the text is not kept',
    rule: 'replay/written-order-is-kept',
    says: 'EV1 starts it at PET 0:26; the one written before ends at PET 0:32',
    stint: 'swap/lift-out',
    change: (_, find) => {
      find.stint('swap/lift-out').startS = 26 * MIN;
    },
  },
  {
    name: 'pinned work is done by somebody else',
    rule: 'replay/pins-are-obeyed',
    says: 'pinned as lead: EV2; planned: EV1',
    stint: 'bond/apply',
    change: (_, find) => {
      find.stint('bond/apply').assigned = ['EV1'];
    },
  },
  {
    name: 'pinned work starts at another time',
    rule: 'replay/pins-are-obeyed',
    says: 'pinned to PET 0:20; planned PET 0:14',
    stint: 'swap/open-up',
    change: ({ campaign }) => {
      const pin = must(campaign.pins.find((one) => one.kind === 'start'));
      if (pin.kind === 'start') pin.petS = 20 * MIN;
    },
  },
  {
    name: 'a pinned order is not kept',
    rule: 'replay/pins-are-obeyed',
    says: 'it starts at PET 0:46; the other ends at PET 0:47',
    stint: 'bond/apply',
    change: (_, find) => shift(find.stint('bond/apply'), -4),
  },
  {
    name: 'a task is not in the EVA that it is pinned to',
    rule: 'replay/pins-are-obeyed',
    says: 'pinned to two; planned in one',
    change: ({ campaign }) => {
      const pin = must(campaign.pins.find((one) => one.kind === 'eva'));
      if (pin.kind === 'eva') pin.eva = 'two';
    },
  },
  {
    name: 'a task is planned that is pinned out',
    rule: 'replay/pins-are-obeyed',
    says: 'planned in EVA two',
    change: ({ campaign }) => {
      const pin = must(campaign.pins.find((one) => one.kind === 'out'));
      if (pin.kind === 'out') pin.task = 'wing';
    },
  },
  {
    name: 'gated work starts after the gate may be called',
    rule: 'replay/gated-work-starts-by-the-latest',
    says: 'planned PET 0:26; gate unplug-go is called by PET 0:25',
    stint: 'swap/unplug',
    change: ({ campaign }) => {
      must(campaign.gates[0]).latestPetS = 25 * MIN;
    },
  },
  {
    name: 'two stints are talked through at once',
    rule: 'replay/one-voice-at-a-time',
    says: 'PET 0:26 to 0:32 and PET 0:29 to 0:39; the reader has one voice',
    stint: 'ride/look',
    change: (_, find) => {
      find.written('swap/unplug').voice = true;
    },
  },
  {
    name: 'a stint is planned shorter than was signed',
    rule: 'replay/stints-take-their-figures',
    says: 'planned 10 min; 15 min agreed',
    stint: 'photo/shoot',
    change: (_, find) => {
      const { duration } = find.written('photo/shoot');
      duration.agreedS = 15 * MIN;
      duration.stepsS = [15 * MIN];
    },
  },
  {
    name: 'a stint is planned for a quicker person than is assigned',
    rule: 'replay/stints-take-their-figures',
    says: 'planned 10 min; 10 min agreed, 12 min 30 s at the pace of those assigned',
    stint: 'wing/check',
    change: ({ campaign }) => {
      must(campaign.people[1]).pace = 1.25;
    },
  },
  {
    name: 'a step ends at another time than its figures say',
    rule: 'replay/steps-take-their-figures',
    says: '5 min into the stint; the figures up to it add up to 3 min',
    stint: 'swap/open-up',
    change: (_, find) => {
      find.stint('swap/open-up').stepEndsS[0] = 19 * MIN;
    },
  },
];
