/** The second opinion and the rules, together: every finding on a timeline, worst first within its place. */
import type { Finding } from '@handrail/eva/finding/finding';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { runRules } from '@handrail/eva/rules/run-rules';
import { slipFindings } from '@handrail/eva/slip/slip-findings';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import type { LoadedCampaign } from './load-campaign.ts';

export function judgeTimeline(loaded: LoadedCampaign, timeline: Timeline, nowUtcMs: number): readonly Finding[] {
  const { campaign, hardware, library } = loaded;
  const replayed = replayTimeline(campaign, hardware, timeline);
  const judged = runRules(ruleFacts(campaign, hardware, library, timeline), nowUtcMs);
  const late = slipFindings({ ...loaded, timeline });
  const weight = { error: 0, unknown: 1, warning: 2, note: 3 };
  return [...replayed, ...judged, ...late].sort((a, b) => weight[a.severity] - weight[b.severity]);
}
