import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { contentsOf, heldAt, inventory, minuteRows, outermostHolder } from '@handrail/eva/kit/inventory';
import { visitKit } from '@handrail/eva/kit/visit-kit';
import { toolBackups } from '@handrail/eva/kit/tool-backups';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { describe, expect, test } from 'vitest';
import { readText, STATION } from '../hardware/read-text.ts';

// Two EVAs: a tray goes home in a bag, a probe is left outside on the first and fetched on the second.
const TEXT = `
eva later egress="2031-05-05T10:00:00Z"
hardware sack kind=bag at=EV1
hardware pouch kind=bag at=sack
hardware probe kind=hand-tool at=pouch
response jam "Latch jams" trigger="it does not move" kind=latch { report; minutes 3; kit probe }
hardware tray-1 kind=tray at=bay state=fastened { state lid closed; state retainer none }
hardware l1 kind=latch of=tray-1 at=bay state=latched
task get rank=1 eva=day {
    stint tray who=EV1 at=bay { tether tray-1; unlatch l1; take tray-1; stow tray-1 in=sack }
    stint probe who=EV1 at=tip { take probe from=pouch; put probe }
}
task fetch rank=2 eva=later { stint back who=EV2 at=deck { take probe } }
`;
const PLAN = `
eva day
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV1 0:05-0:08 porch > bay
EV1 0:10-0:18 get/tray
steps 0:11 0:12 0:14 0:18
EV1 0:18-0:20 bay > tip
EV1 0:20-0:24 get/probe
steps 0:22 0:24
EV1 0:24-0:29 tip > bay > porch
EV2 0:30-0:35 in
EV1 0:35-0:40 in
hatch 0:40-0:45
eva later
EV1 0:00-0:05 out
EV2 0:05-0:10 out
EV2 0:10-0:15 porch > bay > deck
EV2 0:15-0:17 fetch/back
EV2 0:17-0:22 deck > bay > porch
EV1 0:22-0:27 in
EV2 0:27-0:32 in
hatch 0:32-0:37
`;

function kit(text = TEXT, plan = PLAN) {
  const { campaign, model } = readText(text, STATION);
  return { campaign, model, evas: inventory(campaign, model, readTimelineNotation(plan, campaign)) };
}

describe('who holds what', () => {
  const { evas } = kit();
  const [first, second] = evas;
  if (first === undefined || second === undefined) throw new Error('two EVAs');

  test('at the start: as the campaign says', () => {
    expect(Object.fromEntries(heldAt(first, 0))).toEqual({
      sack: 'person:EV1',
      pouch: 'hardware:sack',
      probe: 'hardware:pouch',
      'tray-1': 'place:bay',
    });
  });

  test('in the minute after each step, what the step did', () => {
    expect(heldAt(first, 14 * 60 - 1).get('tray-1')).toBe('place:bay');
    expect(heldAt(first, 14 * 60).get('tray-1')).toBe('person:EV1');
    expect(heldAt(first, 18 * 60).get('tray-1')).toBe('hardware:sack');
    expect(heldAt(first, 22 * 60).get('probe')).toBe('person:EV1');
    expect(heldAt(first, 24 * 60).get('probe')).toBe('place:tip');
  });

  test('bags in bags go with their person', () => {
    const held = heldAt(first, 18 * 60);
    expect(contentsOf(held, 'hardware:sack')).toEqual(['pouch', 'probe', 'tray-1']);
    expect(contentsOf(held, 'person:EV1')).toEqual(['sack', 'pouch', 'probe', 'tray-1']);
    expect(outermostHolder(held, 'probe')).toBe('person:EV1');
    expect(outermostHolder(heldAt(first, 24 * 60), 'probe')).toBe('place:tip');
  });

  test('row by row, a row a minute', () => {
    const rows = minuteRows(first, ['EV1', 'EV2'], 24 * 60);
    expect(rows).toHaveLength(25);
    expect(rows[13]?.carried).toEqual({ EV1: ['sack', 'pouch', 'probe'], EV2: [] });
    expect(rows[24]?.carried).toEqual({ EV1: ['sack', 'pouch', 'tray-1'], EV2: [] });
  });

  test('each visit: what comes along, what goes on', () => {
    const planned = (stint: string, startMin: number, endMin: number) => ({
      stint,
      startS: startMin * 60,
      endS: endMin * 60,
      assigned: ['EV1'],
      stepEndsS: [],
    });
    expect(visitKit(first, planned('get/tray', 10, 18), 'EV1')).toEqual({
      arrivesWith: ['sack', 'pouch', 'probe'],
      leavesWith: ['sack', 'pouch', 'probe', 'tray-1'],
      pickedUp: ['tray-1'],
      leftBehind: [],
    });
    expect(visitKit(first, planned('get/probe', 20, 24), 'EV1')).toEqual({
      arrivesWith: ['sack', 'pouch', 'probe', 'tray-1'],
      leavesWith: ['sack', 'pouch', 'tray-1'],
      pickedUp: [],
      leftBehind: ['probe'],
    });
  });

  test('the next EVA starts from where the last one left it', () => {
    expect(heldAt(second, 0).get('probe')).toBe('place:tip');
    expect(heldAt(second, 0).get('tray-1')).toBe('hardware:sack');
  });

  test('what went out is accounted for: the probe stays outside on the first EVA', () => {
    const account = first.accounts.find((one) => one.item === 'probe');
    expect(account).toEqual({
      item: 'probe',
      wentOutWith: 'EV1',
      comesInWith: null,
      left: 'place:tip',
      outermost: 'place:tip',
      mustComeHome: true,
      standsByFor: ['jam'],
    });
    expect(first.accounts.find((one) => one.item === 'tray-1')).toMatchObject({
      wentOutWith: null,
      comesInWith: 'EV1',
      mustComeHome: false,
    });
  });
});

describe('back-ups for tools', () => {
  const text = `
hardware b1 kind=bolt at=bay state=torqued torque="30 N·m" turns=8
hardware b2 kind=bolt at=bay state=torqued torque="50 N·m" turns=8
hardware strong kind=power-tool at=EV1 { property torque-most "60 N·m" }
hardware weak kind=ratchet at=EV2 { property torque-most "40 N·m" }
hardware snips kind=cutter at=EV2
`;

  test('a weaker wrench stands in for a driver where it gives enough', () => {
    const { campaign, model } = readText(`${text}
task turn rank=1 { stint it who=EV1 at=bay { release b1 with=strong } }`);
    expect(toolBackups(campaign, model, standardLibrary)).toEqual([
      { tool: 'strong', stints: ['turn/it'], backups: ['weak'] },
    ]);
  });

  test('and for none of its uses where one of them asks for more', () => {
    const { campaign, model } = readText(`${text}
task turn rank=1 { stint it who=EV1 at=bay { release b1 b2 with=strong } }`);
    expect(toolBackups(campaign, model, standardLibrary)).toEqual([
      { tool: 'strong', stints: ['turn/it'], backups: [] },
    ]);
  });
});

describe('outside events', () => {
  const event = (at: string): string =>
    `${TEXT}event wind "Knocked loose" at="${at}" agreed=#true { leaves probe.holder "place:deck" }\n`;

  test('one between two EVAs counts for the second only', () => {
    const [first, second] = kit(event('2031-05-03T10:00:00Z')).evas;
    expect(first?.atEnd.get('probe')).toBe('place:tip');
    expect(second?.atStart.get('probe')).toBe('place:deck');
  });

  test('one before both does not come back after the first', () => {
    const [first, second] = kit(event('2031-04-01T10:00:00Z')).evas;
    expect(first?.atStart.get('probe')).toBe('place:deck');
    expect(second?.atStart.get('probe')).toBe('place:tip');
  });
});
