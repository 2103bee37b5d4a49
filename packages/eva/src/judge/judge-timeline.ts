/** The second opinion and the rules, together: every finding on a timeline, worst first within its place. */
import type { Finding } from '../finding/finding.ts';
import { replayTimeline } from '../proof/replay/replay-timeline.ts';
import { runRules } from '../rules/run-rules.ts';
import { slipFindings } from '../slip/slip-findings.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { factsOf } from './facts-of.ts';
import type { OpenedCampaign } from './open-campaign.ts';

const WEIGHT = { error: 0, unknown: 1, warning: 2, note: 3 };

export function judgeTimeline(opened: OpenedCampaign, timeline: Timeline, nowUtcMs: number): readonly Finding[] {
  const { campaign, hardware, library } = opened;
  const replayed = replayTimeline(campaign, hardware, timeline);
  const judged = runRules(factsOf(opened, timeline), nowUtcMs);
  const late = slipFindings({ campaign, hardware, library, timeline });
  return [...replayed, ...judged, ...late].sort((a, b) => WEIGHT[a.severity] - WEIGHT[b.severity]);
}
