import { MIN } from '../build-work.ts';
import { type Broken, must, shift } from '../broken.ts';

export const STRUCTURE: readonly Broken[] = [
  {
    name: 'the campaign has changed since it was planned',
    rule: 'replay/plan-is-of-this-document',
    says: 'planned for document aaaaaaaaaaaa, now bbbbbbbbbbbb',
    change: ({ campaign }) => {
      campaign.documentHash = 'b'.repeat(64);
    },
  },
  {
    name: 'the plan is of another campaign',
    rule: 'replay/plan-is-of-this-campaign',
    says: 'it was made for other',
    change: ({ timeline }) => {
      timeline.campaign = 'other';
    },
  },
  {
    name: 'the plan rests on another version of the library',
    rule: 'replay/plan-is-of-this-library',
    says: 'planned with standard 2; the campaign pins standard 1',
    change: ({ timeline }) => {
      timeline.library.version = '2';
    },
  },
  {
    name: 'the timeline is of a later format',
    rule: 'replay/format-is-known',
    says: 'it says handrail-timeline 2',
    change: ({ timeline }) => {
      (timeline as { version: number }).version = 2;
    },
  },
  {
    name: 'a stint is planned that the campaign does not have',
    rule: 'replay/names-exist',
    says: 'no stint has the id swap/polish',
    change: (_, find) => {
      find.eva().stints.push({ ...find.stint('photo/shoot'), stint: 'swap/polish' });
    },
  },
  {
    name: 'somebody unknown is assigned',
    rule: 'replay/names-exist',
    says: 'no person or arm has the id EV9',
    change: (_, find) => {
      find.stint('bond/load').assigned = ['EV9'];
    },
  },
  {
    name: 'a way leads by a place that the vehicle does not have',
    rule: 'replay/names-exist',
    says: 'no place has the id attic',
    change: (_, find) => {
      find.move('EV2', 14).path = ['porch', 'attic', 'mid'];
    },
  },
  {
    name: 'a start is not a whole number of seconds',
    rule: 'replay/times-are-whole-seconds',
    says: '3960.5 s',
    stint: 'bond/load',
    change: (_, find) => {
      find.stint('bond/load').startS += 0.5;
    },
  },
  {
    name: 'a step ends before the one before it',
    rule: 'replay/times-are-in-order',
    says: 'PET 0:10 comes after PET 0:14',
    stint: 'swap/open-up',
    change: (_, find) => {
      find.stint('swap/open-up').stepEndsS[0] = 10 * MIN;
    },
  },
  {
    name: 'a stint has fewer step ends than steps',
    rule: 'replay/steps-fill-the-stint',
    says: 'the timeline has 1 step ends, the stint has 2 steps',
    stint: 'swap/open-up',
    change: (_, find) => {
      find.stint('swap/open-up').stepEndsS = [26 * MIN];
    },
  },
  {
    name: 'the last step ends before the stint',
    rule: 'replay/steps-fill-the-stint',
    says: 'the last step ends at PET 0:31, the stint at PET 0:32',
    stint: 'swap/unplug',
    change: (_, find) => {
      find.stint('swap/unplug').stepEndsS = [31 * MIN];
    },
  },
  {
    name: 'a stint of a planned task is missing',
    rule: 'replay/every-stint-once',
    says: 'task swap is planned in EVA one and goes whole: each of its 5 stints once',
    stint: 'swap/replug',
    change: (_, find) => {
      find.eva().stints = find.eva().stints.filter((one) => one.stint !== 'swap/replug');
    },
  },
  {
    name: 'a stint is planned twice',
    rule: 'replay/every-stint-once',
    says: 'each of its 2 stints once',
    stint: 'bond/load',
    change: (_, find) => {
      const again = structuredClone(find.stint('bond/load'));
      shift(again, 5);
      find.eva().stints.push(again);
    },
  },
  {
    name: 'a stint is planned whose task is not',
    rule: 'replay/every-stint-once',
    says: 'EVA one does not list task photo',
    stint: 'photo/shoot',
    change: ({ timeline }, find) => {
      find.eva().tasks = ['swap', 'ride', 'bond'];
      timeline.leftOut.push({ task: 'photo', why: 'no room' });
    },
  },
  {
    name: 'a task is planned in an EVA that it may not fall in',
    rule: 'replay/task-is-in-an-eva-it-may-fall-in',
    says: 'it may fall in two',
    change: ({ campaign }) => {
      must(campaign.tasks.find((one) => one.id === 'ride')).evas = ['two'];
    },
  },
  {
    name: 'a task is listed in both EVAs',
    rule: 'replay/task-is-in-one-eva',
    says: 'in EVA one and in EVA two',
    change: (_, find) => {
      find.eva('two').tasks.push('photo');
    },
  },
  {
    name: 'a task is neither planned nor left out',
    rule: 'replay/every-task-is-planned-or-left-out',
    says: 'a plan accounts for every task',
    change: ({ timeline }) => {
      timeline.leftOut = [];
    },
  },
  {
    name: 'a task is planned and said to be left out',
    rule: 'replay/every-task-is-planned-or-left-out',
    says: 'a plan accounts for every task',
    change: ({ timeline }) => {
      timeline.leftOut.push({ task: 'photo', why: 'no room' });
    },
  },
  {
    name: 'an EVA is flown without its minimum success',
    rule: 'replay/minimum-success-is-in',
    says: 'it is left out: pinned out',
    change: ({ campaign }) => {
      must(campaign.evas[0]).minimumSuccess = ['swap', 'wipe'];
    },
  },
  {
    name: 'an earlier EVA is not in the timeline',
    rule: 'replay/earlier-evas-are-in',
    says: 'how EVA one leaves hardware and arms is not known',
    change: ({ timeline }) => {
      timeline.evas.shift();
    },
  },
  {
    name: 'work rests on what an EVA that is not in the timeline leaves',
    rule: 'replay/need-holds-at-the-start',
    says: 'it is place:bay (as stated at the start of the campaign); EVA one may change that',
    stint: 'bring-in/fetch',
    change: ({ timeline }) => {
      timeline.evas.shift();
    },
  },
  {
    name: 'an EVA is in the timeline twice',
    rule: 'replay/every-eva-once',
    says: 'an EVA is flown once',
    change: ({ timeline }, find) => {
      timeline.evas.push(structuredClone(find.eva('two')));
    },
  },
  {
    name: 'EV1 comes in before EV2, against the stated order',
    rule: 'replay/hatch-is-passed-in-order',
    says: 'stated: EV2, EV1; planned: EV1, EV2',
    change: (_, find) => {
      find.passage('ingress', 'EV2').person = 'EV1';
      must(find.eva().passages[3]).person = 'EV2';
    },
  },
  {
    name: 'EV2 never comes in',
    rule: 'replay/hatch-is-passed-in-order',
    says: 'stated: EV2, EV1; planned: EV1',
    change: (_, find) => {
      find.eva().passages.splice(2, 1);
    },
  },
  {
    name: 'both are in the hatch at once',
    rule: 'replay/one-in-the-hatch-at-once',
    says: 'PET 0:00 to 0:08 and PET 0:06 to 0:12',
    person: 'EV2',
    change: (_, find) => {
      const passage = find.passage('egress', 'EV2');
      passage.startS = 6 * MIN;
      passage.endS = 12 * MIN;
    },
  },
  {
    name: 'an egress is planned shorter than stated',
    rule: 'replay/passage-takes-its-time',
    says: 'planned 7 min; stated 8 min',
    person: 'EV1',
    change: (_, find) => {
      find.passage('egress', 'EV1').endS = 7 * MIN;
    },
  },
  {
    name: 'the egress starts after PET 0',
    rule: 'replay/egress-starts-at-pet-zero',
    says: 'the first passage starts at PET 0:01',
    change: (_, find) => {
      find.passage('egress', 'EV1').startS = MIN;
    },
  },
  {
    name: 'PET 0 is later than the egress may slip',
    rule: 'replay/pet-zero-is-as-stated',
    says: 'PET 0 is 20 min after the stated egress; it may slip by up to 15 min',
    change: (_, find) => {
      find.eva('two').petZeroUtcMs += 20 * MIN * 1000;
    },
  },
  {
    name: 'the hatch is never closed',
    rule: 'replay/hatch-is-closed',
    says: 'once',
    change: (_, find) => {
      find.eva().passages.pop();
    },
  },
  {
    name: 'the hatch is closed before the last person is in',
    rule: 'replay/hatch-is-closed-after-the-last-in',
    says: 'closing starts at PET 1:30, the last passage ends at PET 1:32',
    change: (_, find) => {
      find.passage('close-hatch', null).startS = 90 * MIN;
    },
  },
  {
    name: 'both are said to be in before the hatch is closed',
    rule: 'replay/both-in-is-the-hatch-closed',
    says: 'both in at PET 1:30; hatch closed at PET 1:39',
    change: (_, find) => {
      find.eva().bothInS = 90 * MIN;
    },
  },
  {
    name: 'work ends after the hatch is closed',
    rule: 'replay/nothing-after-the-hatch-is-closed',
    says: 'it ends at PET 1:50; the hatch is closed at PET 1:39',
    stint: 'bond/load',
    change: (_, find) => shift(find.stint('bond/load'), 40),
  },
  {
    name: 'both are in after the suit of one ends',
    rule: 'replay/both-are-in-before-the-wall',
    says: 'in at PET 1:39; the suit of EV2 ends at PET 1:30 (late by 9 min)',
    change: ({ campaign }) => {
      must(campaign.people[1]).suitLimitS = 90 * MIN;
    },
  },
  {
    name: 'the margin to the wall is smaller than wanted',
    rule: 'replay/margin-to-the-wall',
    says: '21 min between both in and the longest EVA stated for EVA one; wanted 30 min',
    change: ({ campaign }) => {
      campaign.limits.marginS = 30 * MIN;
    },
  },
  {
    name: 'the plan shows a later wall than is stated',
    rule: 'replay/the-wall-is-the-tightest-limit',
    says: 'shown PET 2:30',
    change: (_, find) => {
      find.eva().wall = { petS: 150 * MIN, cause: 'suit' };
    },
  },
  {
    name: 'nothing says by when both must be in',
    rule: 'replay/a-wall-is-stated',
    says: 'neither a longest EVA nor a suit limit is stated',
    change: ({ campaign }) => {
      for (const one of campaign.evas) one.longestS = null;
      for (const one of campaign.people) one.suitLimitS = null;
    },
  },
  {
    name: 'the second EVA starts before the first is over',
    rule: 'replay/one-eva-at-a-time',
    says: '39 min too early',
    change: ({ campaign, timeline }) => {
      const laterMs = must(timeline.evas[0]).petZeroUtcMs + 60 * MIN * 1000;
      must(timeline.evas[1]).petZeroUtcMs = laterMs;
      must(campaign.evas[1]).egressUtcMs = laterMs;
    },
  },
];
