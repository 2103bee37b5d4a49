/** What a logged drive says of the fastener. */
export type DriveVerdict =
  | 'seated'
  | 'short'
  | 'over-run'
  | 'torque-reached-early'
  | 'torque-not-reached'
  | 'over-torqued'
  | 'torque-unknown';

/** One thing to try, as it would be read out. `asks`: it needs a word from the ground or the systems people first. */
export interface Advice {
  readonly say: string;
  readonly asks: boolean;
}

const advice = (say: string, asks = false): Advice => ({ say, asks });

/**
 * Ladders of what to try, mildest first. Common practice; a campaign's own response for a fastener stands before them. Figures (torque
 * above the usual, turns back) belong to that response and are not invented here.
 */
const LADDERS: Readonly<Record<DriveVerdict, readonly Advice[]>> = {
  seated: [],
  short: [
    advice('Check that the tool sits fully on the head and its turn limit is not in the way'),
    advice('Drive on at the same setting and count the turns from here'),
    advice('If it stalls: back off the turns just made, look for debris, drive again'),
    advice('Report turns and torque, leave it as it is, go on with the next fastener', true),
  ],
  'torque-reached-early': [
    advice('Stop: do not raise the torque'),
    advice('Back off two or three turns, look at the thread and the gap under the head'),
    advice('Check alignment: take load off the box, loosen the neighbours, start this one by hand'),
    advice('Drive again at slow speed and compare the turns'),
    advice('If it comes at the same count: report it; a higher torque or leaving it needs agreement', true),
  ],
  'torque-not-reached': [
    advice('Check the tool: torque setting, battery, socket turning on the head'),
    advice('Drive once more at the same setting and watch whether it still turns'),
    advice('If it turns without torque: stop, count the turns past the window, report it', true),
    advice('Check the seat of the box and the neighbours before agreeing that it holds', true),
  ],
  'over-run': [
    advice('Stop driving'),
    advice('Look whether the box is down, and whether nut or insert turns with the screw'),
    advice('Check the count: was the screw already started, or the counter not set to zero'),
    advice('Pull gently outward while backing off slowly to see if the thread picks up'),
    advice('Report it: hold the box with the other fasteners or with a retainer', true),
  ],
  'over-torqued': [
    advice('Stop: do not drive or back off further'),
    advice('Check the tool setting and read the peak off the tool log'),
    advice('Report the peak: the fastener may be past its proof load, others carry until it is cleared', true),
  ],
  'torque-unknown': [
    advice('Read the peak off the tool log, or set a torque tool on the head at the low end of the window'),
    advice('If it does not move, log that torque; if it moves, drive to the window and log turns and torque'),
  ],
};

/** What to try after a verdict, in order; empty for `seated`. */
export function adviceFor(verdict: DriveVerdict): readonly Advice[] {
  return LADDERS[verdict];
}
