import type { Campaign } from '../campaign/campaign.ts';
import type { Finding } from '../finding/finding.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { Kind } from '../kinds/kind.ts';
import type { SuppliesReading } from '../suit/eva-supplies.ts';
import type { PlaceLight } from '../sky/campaign/light-report.ts';
import type { EvaSlip } from '../slip/slip-table.ts';
import type { EvaTimeline, Timeline } from '../timeline/timeline.ts';
import type { WayHomeSurface } from '../wayhome/way-home-surface.ts';

/** Everything a briefing is made of. Nothing here is computed by the briefing itself but what it draws. */
export interface BriefInput {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly kinds: ReadonlyMap<string, Kind>;
  readonly timeline: Timeline;
  readonly findings: readonly Finding[];
  /** Supplies of everybody outside, by EVA id. Absent: not asked for, and the page does not speak of them. */
  readonly supplies?: ReadonlyMap<string, readonly SuppliesReading[]>;
  /** Light at the places that are visited, all EVAs. Absent: not asked for. */
  readonly light?: readonly PlaceLight[];
  /** What a late egress breaks, by EVA id. Absent: not asked for. */
  readonly slips?: readonly EvaSlip[];
  /** Shortest time to the hatch in the state in which that EVA starts; null: no way. */
  readonly homeSeconds: (eva: string, place: string, pace: number) => number | null;
  /** The way home over the whole of an EVA of this timeline: posts, wall, committed stretches. */
  readonly wayHome: (eva: EvaTimeline) => WayHomeSurface;
  /** Version of the program, for the footer. */
  readonly program: string;
  /** When the document and timeline were put together, UTC milliseconds: the age of the page's data. */
  readonly madeUtcMs: number;
}

export const CAUTION =
  "Planning aid, not flight-certified. The operator's flight rules, the suit maker's limits, the flight surgeon and range or local regulations prevail. Pre-breathe and supplies figures never replace medical or vendor data.";
