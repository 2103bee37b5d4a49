/** What a hand edit of a timeline stands on, and what it gives. */
import type { Campaign } from '../../campaign/campaign.ts';
import type { HardwareModel } from '../../hardware/effects.ts';
import type { Timeline } from '../timeline.ts';

export interface EditGround {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
}

/** A pure edit: the same timeline in gives the same out. The replay judges the result; an edit never hides what it breaks. */
export type TimelineEdit = (ground: EditGround, timeline: Timeline) => Timeline;
