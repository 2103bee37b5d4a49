/** What pulls at each minute: clocks that run, requests in force, window edges. A row each, over the chart's own time axis, with a table twin. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import { clockRuns } from '../../timeline/clock-runs.ts';
import { stateWrites } from '../../timeline/state-writes.ts';
import { type Markup, markup } from '../markup.ts';
import type { BriefInput } from '../brief-input.ts';
import type { HomeChartData } from '../home-chart/home-chart-data.ts';
import { chartScale } from '../home-chart/chart-scale.ts';

/** Something that runs or is in force over a stretch of an EVA. */
export interface Pull {
  readonly title: string;
  readonly kind: 'clock' | 'request';
  readonly startS: number;
  readonly endS: number;
  readonly words: string;
}

export function strip(input: BriefInput, data: HomeChartData): Markup {
  const pulls = pullsOf(input, data);
  if (pulls.length === 0) return markup`<p class="empty">No clock runs and no request is in force in this EVA.</p>`;
  const scale = chartScale(data);
  const row = 20;
  return markup`<svg class="strip" viewBox="0 0 ${scale.width} ${pulls.length * row + 6}" role="img" aria-label="What pulls: clocks and requests over the same time axis; the table below says the same">
${pulls.map((pull, index) => {
  const y = 4 + index * row;
  return markup`<text class="place" x="${scale.left - 12}" y="${y + 11}" text-anchor="end"><title>${pull.title}</title>${shortened(pull.title)}</text><rect class="pull ${pull.kind}" x="${scale.x(pull.startS)}" y="${y + 2}" width="${Math.max(2, scale.x(pull.endS) - scale.x(pull.startS))}" height="11"><title>${pull.words}</title></rect>`;
})}</svg>
<details><summary>What pulls, as a table</summary><table><caption>Clocks and requests</caption><thead><tr><th scope="col">From PET</th><th scope="col">To PET</th><th scope="col">What</th></tr></thead><tbody>${pulls.map(
    (pull) => markup`<tr><td>${formatPet(pull.startS)}</td><td>${formatPet(pull.endS)}</td><td>${pull.words}</td></tr>`,
  )}</tbody></table></details>`;
}

/** What fits left of the chart at its type size; the whole title stands in the tooltip and in the table. */
function shortened(title: string): string {
  return title.length <= 27 ? title : `${title.slice(0, 26).trimEnd()}…`;
}

/** Clocks that run and requests in force, by their start. */
export function pullsOf(
  { campaign, hardware }: Pick<BriefInput, 'campaign' | 'hardware'>,
  data: HomeChartData,
): readonly Pull[] {
  const pulls: Pull[] = [];
  for (const run of clockRuns(campaign, hardware, data.eva, stateWrites(campaign, hardware, data.eva))) {
    const endS = run.stopS ?? data.eva.bothInS;
    pulls.push({
      title: run.clock.title,
      kind: 'clock',
      startS: run.startS,
      endS,
      words: `${run.clock.title}: ${formatDuration(endS - run.startS)} of ${run.clock.sense === 'most' ? 'at most' : 'at least'} ${formatDuration(run.clock.limitS)}${run.stopS === null ? ', nothing in this EVA stops it' : ''}`,
    });
  }
  for (const hold of data.eva.holds) {
    const request = campaign.requests.find((candidate) => candidate.id === hold.request);
    if (request === undefined) continue;
    pulls.push({
      title: request.title,
      kind: 'request',
      startS: hold.askS,
      endS: hold.clearedS,
      words: `${request.title} (${request.owner}): asked, verified by ${formatPet(hold.verifiedS)}, used ${formatPet(hold.firstUseS)} to ${formatPet(hold.lastUseS)}, cleared by ${formatPet(hold.clearedS)}`,
    });
  }
  return pulls.sort((a, b) => a.startS - b.startS);
}
