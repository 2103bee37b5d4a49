import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { firstCampaign } from '@handrail/wire/list/first-campaign';
import { newFromList } from '@handrail/wire/list/new-from-list';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { campaignToList } from '@handrail/wire/list/campaign-to-list';

const EGRESS = '2031-09-14T11:40:00Z';
const read = (text: string) => readCampaign([{ name: 'c.kdl', text }], standardLibrary);
function campaignOf(list: string) {
  const { text, problems } = newFromList(list, 'Pasted list', EGRESS);
  expect(problems).toEqual([]);
  const reading = read(text ?? '');
  expect(reading.problems).toEqual([]);
  if (reading.campaign === null) throw new Error('no campaign');
  return reading.campaign;
}
const work = (list: string) =>
  campaignOf(list).tasks.map((task) => {
    const [stint] = task.stints;
    return [
      task.title,
      stint?.roles.map((role) => role.candidates.join('|')).join('+'),
      (stint?.duration.agreedS ?? 0) / 60,
      stint?.roles[0]?.at,
    ];
  });

describe('a pasted list', () => {
  const EXPECTED = [
    ['Open the cover', 'EV1', 10, 'outside'],
    ['Swap the pump', 'EV1+EV2', 65, 'outside'],
    ['Look around', 'EV1|EV2', 8.5, 'outside'],
  ];

  test.each([
    ['commas', 'order,who,what,minutes\n1,EV1,Open the cover,10\n2,both,Swap the pump,1:05\n3,any,Look around,8.5\n'],
    [
      'semicolons, and decimals with a comma',
      'who;what;minutes;order\nEV1;Open the cover;10;1\nEV1 + EV2;Swap the pump;65 min;2\nany;Look around;8,5;3\n',
    ],
    [
      'tabs, other words, other order',
      '\ufeffActivity\tDuration\tCrew\tNo.\r\nSwap the pump\t65\tEV1 and EV2\t2\r\nOpen the cover\t10\tev 1\t1\r\nLook around\t8.5 min\tany\t3\r\n',
    ],
    [
      'quotes and empty lines',
      'who,what,minutes\n"EV1","Open the cover","10"\n\nboth,"Swap the pump",65\n,,\nany,Look around,8.5\n',
    ],
  ])('with %s', (_, list) => {
    expect(work(list)).toEqual(EXPECTED);
  });

  test('keeps the order of each person, and only that', () => {
    const campaign = campaignOf('who,what,minutes\nEV1,A,10\nEV2,B,10\nboth,C,10\nEV2,D,10\nany,E,10\n');
    expect(campaign.tasks.map((task) => task.stints[0]?.after.map((one) => one.stint))).toEqual([
      [],
      [],
      ['a/work', 'b/work'],
      ['c/work'],
      [],
    ]);
  });

  test('with a place column becomes a skeleton with places and rails that are marked as a guess', () => {
    const list = 'who,what,minutes,place\nEV1,Open,10,Pump bay\nEV2,Look,10,\nEV1,Close,5,Pump bay\n';
    const campaign = campaignOf(list);
    expect(campaign.vehicle.places.map((place) => place.title)).toEqual(['Outside the hatch', 'Pump bay']);
    expect(campaign.tasks.map((task) => task.stints[0]?.roles[0]?.at)).toEqual(['pump-bay', 'porch', 'pump-bay']);
    expect(newFromList(list, 'L', EGRESS).text).toContain('is a guess');
  });

  test('names of people become people', () => {
    const campaign = campaignOf('who,what,minutes\nÉlodie Brun,Open,10\nTom,Close,5\n');
    expect(campaign.people.map((person) => [person.id, person.role])).toEqual([
      ['elodie-brun', 'outside'],
      ['tom', 'outside'],
    ]);
  });

  test.each([
    [
      'no header',
      'EV1,Open,10\n',
      [
        [1, 'no column says "who"'],
        [1, 'no column says "what"'],
        [1, 'no column says "minutes"'],
      ],
    ],
    ['two columns of one sort', 'who,person,what,minutes\nEV1,EV2,Open,10\n', [[1, 'two columns say "who"']]],
    ['nothing below the header', 'who,what,minutes\n', [[1, 'the list has a header and nothing below it']]],
    [
      'an empty file',
      '',
      [
        [1, 'no column says "who"'],
        [1, 'no column says "what"'],
        [1, 'no column says "minutes"'],
      ],
    ],
    [
      'mistakes in several rows',
      'who,what,minutes,order\nEV1,Open,ten,1\nIV,Read,10,2\nEV2,,5,x\n',
      [
        [2, '"ten" is not a time'],
        [3, '"IV" is nobody outside'],
        [4, 'nothing says what is done'],
        [4, '"x" is not a place in the order'],
      ],
    ],
    [
      'a quote that is not closed',
      'who,what,minutes\nEV1,"Open,10\n',
      [
        [2, 'a quote is opened and not closed'],
        [2, '"" is not a time'],
      ],
    ],
    [
      'absurd minutes',
      'who,what,minutes\nEV1,Open,0\nEV1,Close,5000\n',
      [
        [2, '"0" is not a time'],
        [3, '"5000" is not a time'],
      ],
    ],
    ['a binary file', '\0\x01\x02', [[1, 'this is not a list']]],
  ])('with %s is refused with its rows', (_, list, expected) => {
    const { text, problems } = newFromList(list, 'L', EGRESS);
    expect(text).toBeNull();
    expect(problems.map((problem) => [problem.row, problem.what])).toEqual(expected);
  });

  test('goes out as a table and comes back as the same work', () => {
    const list = readFileSync('examples/list.csv', 'utf8');
    const table = campaignToList(campaignOf(list))
      .map((row) =>
        row
          .slice(0, 5)
          .map((cell) => `"${cell}"`)
          .join(','),
      )
      .join('\n');
    expect(work(table)).toEqual(work(list));
  });
});

test('the first campaign that is written for a newcomer reads without a problem or a word left unexplained', () => {
  const text = firstCampaign(EGRESS);
  const { campaign, problems } = read(text);
  expect(problems).toEqual([]);
  expect(campaign?.tasks.map((task) => task.id)).toEqual(['free-cables', 'look-around']);
  expect(text.split('\n').filter((line) => line.startsWith('//')).length).toBeGreaterThanOrEqual(7);
});
