import { MIN } from '../build-work.ts';
import { type Broken, must, shift } from '../broken.ts';

export const STATES: readonly Broken[] = [
  {
    name: 'the box is lifted before its bolts are released',
    rule: 'replay/need-holds-throughout',
    says: 'the work needs b1 released; at PET 0:33 it is torqued (as stated at the start of the campaign)',
    stint: 'swap/lift-out',
    change: (_, find) => {
      const effects = find.effects('swap/open-up');
      effects.leaves = effects.leaves.filter((one) => one.variable !== 'b1');
      effects.holds = effects.holds.filter((one) => one.variable !== 'b1');
    },
  },
  {
    name: 'a connector is opened that is open already',
    rule: 'replay/need-holds-at-the-start',
    says: 'the work needs j1 mated; at PET 0:26 it is demated (as stated at the start of the campaign)',
    stint: 'swap/unplug',
    change: ({ model }) => {
      must(model.variables.get('j1')).initial = 'demated';
    },
  },
  {
    name: 'nobody has said how the cover stands',
    rule: 'replay/need-holds-at-the-start',
    says: 'at PET 0:14 nothing says how it stands',
    stint: 'swap/open-up',
    change: ({ model }) => {
      must(model.variables.get('cover')).initial = 'unknown';
    },
  },
  {
    name: 'unknown is not taken for an answer even where it is listed',
    rule: 'replay/need-holds-at-the-start',
    says: 'nothing says how it stands',
    stint: 'swap/open-up',
    change: ({ model }, find) => {
      must(model.variables.get('cover')).initial = 'unknown';
      for (const need of find.effects('swap/open-up').needs) need.allowed.push('unknown');
    },
  },
  {
    name: 'the cover is still in work when somebody needs it open',
    rule: 'replay/need-holds-throughout',
    says: 'at PET 0:14 it is in work (swap/open-up is working on it)',
    stint: 'bond/apply',
    change: (_, find) => {
      find.effects('bond/apply').needs.push({
        ...must(find.effects('swap/unplug').needs.find((one) => one.variable === 'cover')),
      });
      shift(find.stint('bond/apply'), -36);
    },
  },
  {
    name: 'somebody closes the cover while it must be open',
    rule: 'replay/need-holds-throughout',
    says: 'at PET 0:30 it is closed (left so by event shut)',
    stint: 'swap/unplug',
    change: ({ campaign }) => {
      const event = must(campaign.events[0]);
      campaign.events.push({
        ...event,
        id: 'shut',
        atUtcMs: Date.parse('2031-09-14T12:30:00Z'),
        leaves: [{ ...must(event.leaves[0]), variable: 'cover', value: 'closed' }],
      });
    },
  },
  {
    name: 'a stint does not leave what it must find at its end',
    rule: 'replay/need-holds-at-the-end',
    says: 'the work needs j1 mated; at PET 0:52 it is loose (left so by swap/replug)',
    stint: 'swap/replug',
    change: (_, find) => {
      must(find.effects('swap/replug').leaves[0]).value = 'loose';
    },
  },
  {
    name: 'as left by EVA one the box is not where EVA two takes it from',
    rule: 'replay/need-holds-at-the-start',
    says: 'the work needs box.holder place:mid; at PET 0:10 it is place:bay',
    stint: 'bring-in/fetch',
    change: (_, find) => {
      must(find.effects('swap/park-box').leaves[0]).value = 'place:bay';
    },
  },
  {
    name: 'the box is in the other person’s hands',
    rule: 'replay/need-holds-at-the-start',
    says: 'the work needs box.holder person:EV2; at PET 0:40 it is person:EV1 (left so by swap/lift-out)',
    stint: 'swap/park-box',
    change: (_, find) => {
      find.stint('swap/park-box').assigned = ['EV2'];
    },
  },
  {
    name: 'the joint is not parked while EV2 works on the wing',
    rule: 'replay/need-holds-throughout',
    says: 'at PET 0:20 it is turning (left so by event wing-turns)',
    stint: 'wing/check',
    change: ({ campaign }) => {
      must(campaign.events[0]).atUtcMs = Date.parse('2031-09-17T12:20:00Z');
    },
  },
  {
    name: 'the restraint is not in its socket',
    rule: 'replay/need-holds-throughout',
    says: 'the work needs r1.holder hardware:socket-bay; at PET 0:14 it is place:porch',
    stint: 'swap/open-up',
    change: ({ model }) => {
      must(model.variables.get('r1.holder')).initial = 'place:porch';
    },
  },
  {
    name: 'two stints change one piece at the same time',
    rule: 'replay/one-writer-at-a-time',
    says: 'PET 0:29 to 0:32 both have j1 in work',
    stint: 'ride/look',
    change: (_, find) => {
      const { leaves, holds } = structuredClone(find.effects('swap/unplug'));
      Object.assign(find.effects('ride/look'), { leaves, holds });
    },
  },
  {
    name: 'an outside event changes what is in work',
    rule: 'replay/one-writer-at-a-time',
    says: 'PET 0:16 to 0:17 both have cover in work',
    stint: 'swap/open-up',
    change: ({ campaign }) => {
      const event = must(campaign.events[0]);
      event.atUtcMs = Date.parse('2031-09-14T12:16:00Z');
      event.leaves = [{ ...must(event.leaves[0]), variable: 'cover', value: 'closed' }];
    },
  },
  {
    name: 'the box is let go to nobody',
    rule: 'replay/loose-pieces-are-held',
    says: 'after swap/park-box it is said to be with place:nowhere, which does not exist',
    stint: 'swap/park-box',
    change: (_, find) => {
      must(find.effects('swap/park-box').leaves[0]).value = 'place:nowhere';
    },
  },
  {
    name: 'nobody knows where a loose piece is',
    rule: 'replay/loose-pieces-are-held',
    says: 'nobody knows where it is',
    change: ({ model }) => {
      must(model.variables.get('camera.holder')).initial = 'unknown';
    },
  },
  {
    name: 'a bag is inside itself',
    rule: 'replay/loose-pieces-are-held',
    says: 'it is inside itself',
    change: ({ model }) => {
      must(model.variables.get('bag-1.holder')).initial = 'hardware:driver';
    },
  },
  {
    name: 'the driver has been left inside',
    rule: 'replay/tools-are-there',
    says: 'step 2 needs it; it is at hardware:locker',
    stint: 'swap/open-up',
    change: ({ model }) => {
      must(model.variables.get('driver.holder')).initial = 'hardware:locker';
    },
  },
  {
    name: 'the bag with the driver is with the other person',
    rule: 'replay/tools-are-there',
    says: 'step 2 needs it; it is at hardware:bag-1, in person:EV2',
    stint: 'swap/open-up',
    change: ({ model }) => {
      must(model.variables.get('bag-1.holder')).initial = 'person:EV2';
    },
  },
  {
    name: 'two use one tool at once',
    rule: 'replay/one-user-of-a-tool',
    says: 'swap/open-up PET 0:17 to 0:26, ride/mount PET 0:20 to 0:23',
    stint: 'ride/mount',
    change: (_, find) => {
      find.effects('ride/mount').tools = [{ ...must(find.effects('swap/open-up').tools[0]), steps: [0] }];
    },
  },
  {
    name: 'a sentence could not be understood',
    rule: 'replay/effects-are-known',
    says: 'nothing is called q7',
    stint: 'photo/shoot',
    change: (_, find) => {
      const { span } = find.written('photo/shoot');
      find.effects('photo/shoot').unknowns = [{ words: 'nothing is called q7', span }];
    },
  },
  {
    name: 'nothing was inferred for a stint',
    rule: 'replay/effects-are-known',
    says: 'nothing was inferred for it',
    stint: 'photo/shoot',
    change: ({ model }) => {
      model.effects.delete('photo/shoot');
    },
  },
  {
    name: 'the pump is without power too long',
    rule: 'replay/clock-does-not-run-out',
    says: 'swap/unplug starts it, swap/replug stops it 20 min later; the limit is 19 min (over by 1 min)',
    stint: 'swap/unplug',
    change: ({ campaign }) => {
      must(campaign.clocks[0]).limitS = 19 * MIN;
    },
  },
  {
    name: 'nothing gives the pump its power back',
    rule: 'replay/clock-is-stopped',
    // From PET 0:32 of EVA one (12:32 on the 14th) to both in of EVA two (12:51 on the 17th): 3 days and 19 min.
    says: 'nothing in the plan makes j1 mated: it runs 72 h 19 min to the end of the plan and on',
    stint: 'swap/unplug',
    change: (_, find) => {
      find.effects('swap/replug').leaves = [];
      find.effects('swap/replug').holds = [];
    },
  },
  {
    name: 'runs of a clock that adds up pass its limit together',
    rule: 'replay/clock-does-not-run-out',
    // 20 min from 0:32 to 0:52, then from the event at 1:10 to the one at 1:25: 35 min.
    says: 'event on stops it 15 min later (35 min with the runs before); the limit is 30 min (over by 5 min)',
    change: ({ campaign }) => {
      must(campaign.clocks[0]).onStop = 'accumulate';
      const event = must(campaign.events[0]);
      for (const [id, minute, value] of [
        ['off', '13:10', 'demated'],
        ['on', '13:25', 'mated'],
      ] as const) {
        campaign.events.push({
          ...event,
          id,
          atUtcMs: Date.parse(`2031-09-14T${minute}:00Z`),
          leaves: [{ ...must(event.leaves[0]), variable: 'j1', value }],
        });
      }
    },
  },
  {
    name: 'the glue is loaded before it has cured',
    rule: 'replay/clock-runs-long-enough',
    says: 'bond/apply starts it, bond/load stops it 15 min later; the least is 20 min (short by 5 min)',
    stint: 'bond/apply',
    change: ({ campaign }) => {
      must(campaign.clocks[1]).limitS = 20 * MIN;
    },
  },
  {
    name: 'a request is not held at all',
    rule: 'replay/request-is-in-force-over-its-use',
    says: 'the work needs it PET 0:26 to 0:32; the plan has it verified and in use at no time',
    stint: 'swap/unplug',
    change: (_, find) => {
      find.eva().holds = [];
    },
  },
  {
    name: 'a request is cleared before its last use',
    rule: 'replay/request-is-in-force-over-its-use',
    says: 'the whole stint needs it PET 0:47 to 0:52; the plan has it verified and in use PET 0:26 to 0:50',
    stint: 'swap/replug',
    change: (_, find) => {
      find.hold().lastUseS = 50 * MIN;
    },
  },
  {
    name: 'a request is verified after its first use',
    rule: 'replay/request-is-verified-before-use',
    says: 'first use at PET 0:26, verified at PET 0:28',
    change: (_, find) => {
      find.hold().verifiedS = 28 * MIN;
    },
  },
  {
    name: 'a request is asked too late',
    rule: 'replay/request-is-asked-in-time',
    says: 'asked at PET 0:16, verified at PET 0:26: 10 min; setting takes 10 min and verifying 2 min',
    change: (_, find) => {
      find.hold().askS = 16 * MIN;
    },
  },
  {
    name: 'a request is cleared faster than clearing takes',
    rule: 'replay/request-is-cleared-in-time',
    says: 'last use ends at PET 0:52, cleared at PET 0:55; clearing takes 5 min',
    change: (_, find) => {
      find.hold().clearedS = 55 * MIN;
    },
  },
  {
    name: 'a request is held too long',
    rule: 'replay/request-is-not-held-too-long',
    // Set at 0:24 (verified 0:26, verifying takes 2 min), cleared at 0:57.
    says: '33 min from set to cleared; the longest is 30 min',
    change: ({ campaign }) => {
      must(campaign.requests[0]).longestHoldS = 30 * MIN;
    },
  },
  {
    name: 'a request has been refused',
    rule: 'replay/request-is-not-refused',
    says: 'its status is refused',
    change: ({ campaign }) => {
      must(campaign.requests[0]).status = 'refused';
    },
  },
  {
    name: 'a request is used outside its window',
    rule: 'replay/request-is-in-its-window',
    says: 'used PET 0:26 to 0:52',
    change: ({ campaign }) => {
      must(campaign.windows.find((one) => one.id === 'bus-quiet')).padS = 9 * MIN;
    },
  },
  {
    name: 'a request is asked again before it is cleared',
    rule: 'replay/request-is-held-once-at-a-time',
    says: 'cleared at PET 0:57, asked again at PET 0:55',
    change: (_, find) => {
      find.eva().holds.push({
        request: 'pump-off',
        askS: 55 * MIN,
        verifiedS: 67 * MIN,
        firstUseS: 67 * MIN,
        lastUseS: 68 * MIN,
        clearedS: 73 * MIN,
      });
    },
  },
  {
    name: 'the photographs are taken when it is dark',
    rule: 'replay/work-is-inside-its-window',
    // Daylight is 12:58 to 13:30, PET 0:58 to 1:30, less 3 min at each end: from PET 1:01.
    says: 'all of it, PET 1:00 to 1:10 (13:00–13:10 UTC), should be inside; near it: 12:58–13:30 UTC, pad 3 min',
    stint: 'photo/shoot',
    change: ({ campaign }) => {
      must(campaign.windows.find((one) => one.id === 'daylight')).padS = 3 * MIN;
    },
  },
  {
    name: 'work falls into a gap that it should be outside of',
    rule: 'replay/work-is-outside-the-window',
    // The gap ends at 12:45, PET 0:45; with a pad of 22 min at PET 1:07.
    says: 'all of it, PET 1:06 to 1:10 (13:06–13:10 UTC), should be outside; near it: 12:30–12:45 UTC, pad 22 min',
    stint: 'bond/load',
    change: ({ campaign }) => {
      must(campaign.windows.find((one) => one.id === 'gap')).padS = 22 * MIN;
    },
  },
];
