/**
 * The second opinion: replays a timeline against the campaign, minute by minute, and tells everything that does not hold. It
 * shares no code with planning, so that one mistake cannot hide in both: it walks the rails itself, keeps its own history of
 * every state, and takes from the plan only what the plan says.
 *
 * It answers for this one execution, with planning durations. Whether other executions hold too is the question of the order
 * proofs; whether the crew could stop and come home, of the way home.
 *
 * @checked tests/rejects/replay
 */
import type { Campaign } from '../../campaign/campaign.ts';
import type { Finding } from '../../finding/finding.ts';
import type { HardwareModel } from '../../hardware/effects.ts';
import type { Timeline } from '../../timeline/timeline.ts';
import { lagsAndJoinsHold } from './orders/lags-and-joins-hold.ts';
import { oneVoiceAtATime } from './orders/one-voice-at-a-time.ts';
import { pinsAreObeyed } from './orders/pins-are-obeyed.ts';
import { stintsTakeTheirFigures } from './orders/stints-take-their-figures.ts';
import { armsGoAsTheyCan } from './people/arms-go-as-they-can.ts';
import { assignedMayDoIt } from './people/assigned-may-do-it.ts';
import { handsSuffice } from './people/hands-suffice.ts';
import { lanesOf } from './people/lane.ts';
import { movesFollowTheRails } from './people/moves-follow-the-rails.ts';
import { oneThingAtATime } from './people/one-thing-at-a-time.ts';
import { peopleAreWhereTheySay } from './people/people-are-where-they-say.ts';
import { restraintsTakeTheirTime } from './people/restraints-take-their-time.ts';
import { tetherReaches } from './people/tether-reaches.ts';
import { replayContext } from './replay-context.ts';
import { clocksHold } from './states/clocks-hold.ts';
import { effectsAreKnown } from './states/effects-are-known.ts';
import { itemsAreHeld } from './states/items-are-held.ts';
import { needsHold } from './states/needs-hold.ts';
import { oneWriterAtATime } from './states/one-writer-at-a-time.ts';
import { requestsHold } from './states/requests-hold.ts';
import { StateHistory } from './states/state-history.ts';
import { toolsAreThere } from './states/tools-are-there.ts';
import { windowsHold } from './states/windows-hold.ts';
import { bothAreInBeforeTheWall } from './structure/both-are-in-before-the-wall.ts';
import { earlierEvasAreIn, withoutEarlierEvas } from './structure/earlier-evas-are-in.ts';
import { hatchIsPassedInOrder } from './structure/hatch-is-passed-in-order.ts';
import { minimumSuccessIsIn } from './structure/minimum-success-is-in.ts';
import { namesExist } from './structure/names-exist.ts';
import { planIsOfThisDocument } from './structure/plan-is-of-this-document.ts';
import { tasksAreWhole } from './structure/tasks-are-whole.ts';
import { timesAreInOrder } from './structure/times-are-in-order.ts';
import { waiveFindings } from './waive-findings.ts';

/**
 * @param model what stints need and leave, as inferred from the same campaign
 * @returns findings in order of EVA and time; empty: everything that was checked holds. Broken names or times never stop the
 * replay: the rest is checked as far as it can be told.
 */
export function replayTimeline(campaign: Campaign, model: HardwareModel, timeline: Timeline): Finding[] {
  const context = replayContext(campaign, model, timeline);
  const history = new StateHistory(context);
  const lanes = lanesOf(context);
  const findings = [
    ...planIsOfThisDocument(context),
    ...namesExist(context),
    ...timesAreInOrder(context),
    ...earlierEvasAreIn(context),
    ...tasksAreWhole(context),
    ...minimumSuccessIsIn(context),
    ...hatchIsPassedInOrder(context),
    ...bothAreInBeforeTheWall(context),
    ...assignedMayDoIt(context),
    ...oneThingAtATime(context, lanes),
    ...peopleAreWhereTheySay(context, lanes),
    ...movesFollowTheRails(context, history, lanes),
    ...restraintsTakeTheirTime(context, lanes),
    ...tetherReaches(context, history, lanes),
    ...handsSuffice(context, history, lanes),
    ...armsGoAsTheyCan(context, history, lanes),
    ...effectsAreKnown(context),
    ...needsHold(context, history),
    ...oneWriterAtATime(context, history),
    ...itemsAreHeld(context, history),
    ...toolsAreThere(context, history),
    ...requestsHold(context),
    ...windowsHold(context),
    ...clocksHold(context, history),
    ...lagsAndJoinsHold(context),
    ...pinsAreObeyed(context),
    ...oneVoiceAtATime(context),
    ...stintsTakeTheirFigures(context),
  ];
  const ends = new Map(context.flown.map(({ plan }) => [plan.eva, plan.petZeroUtcMs + plan.bothInS * 1000]));
  const order = new Map(context.flown.map(({ eva }, at) => [eva.id, at]));
  return waiveFindings(withoutEarlierEvas(findings, context), campaign, ends)
    .map((finding, at) => ({ finding, at }))
    .sort((a, b) => {
      const [x, y] = [a.finding.where, b.finding.where];
      return (
        (order.get(x.eva ?? '') ?? -1) - (order.get(y.eva ?? '') ?? -1) ||
        (x.petS ?? Number.MIN_SAFE_INTEGER) - (y.petS ?? Number.MIN_SAFE_INTEGER) ||
        a.at - b.at
      );
    })
    .map(({ finding }) => finding);
}
