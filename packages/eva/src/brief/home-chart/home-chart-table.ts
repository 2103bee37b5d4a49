/** The home chart's table twin: the same stretches in words, for screen readers, copying and grey prints. */
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { type Markup, markup } from '../markup.ts';
import type { HomeChartData } from './home-chart-data.ts';

export function homeChartTable(data: HomeChartData, numbers: ReadonlyMap<string, number>): Markup {
  const rows = data.lanes
    .flatMap((lane) => lane.course.map((stretch) => ({ person: lane.person, stretch, samples: lane.samples })))
    .sort((a, b) => a.stretch.startS - b.stretch.startS || (a.person < b.person ? -1 : 1));
  return markup`<table class="twin"><caption>${data.title}: where everybody is, minute by minute</caption>
<thead><tr><th scope="col">PET</th><th scope="col">UTC</th><th scope="col">Who</th><th scope="col">No.</th><th scope="col">What</th><th scope="col">Where</th><th scope="col">For</th><th scope="col">Way home, terminate</th></tr></thead>
<tbody>${rows.map(({ person, stretch, samples }) => {
    const sample = samples.find((candidate) => candidate.petS === stretch.startS && candidate.place === stretch.place);
    const home =
      sample === undefined
        ? 'unknown here'
        : sample.committed
          ? `no safe stop in reach: ${sample.words}`
          : `${sample.words}${sample.totalS === null || sample.shortest ? '' : ' (an upper bound)'}`;
    const number = stretch.stint === null ? null : (numbers.get(stretch.stint.key) ?? null);
    const place = stretch.place === stretch.to ? stretch.place : `${stretch.place} → ${stretch.to}`;
    return markup`<tr class="${stretch.kind}"><td>${formatPet(stretch.startS)}</td><td>${formatUtcClock(data.eva.petZeroUtcMs + stretch.startS * 1000)}</td><th scope="row">${person}</th><td>${number}</td><td>${stretchWords(stretch.kind, stretch.stint?.title ?? null, stretch.carrying)}</td><td>${place}${stretch.on === null ? null : markup` on ${stretch.on}`}</td><td>${formatDuration(stretch.endS - stretch.startS)}</td><td>${home}</td></tr>`;
  })}</tbody></table>`;
}

function stretchWords(kind: string, title: string | null, carrying: readonly string[]): string {
  if (title !== null) return title;
  if (kind === 'passage') return 'through the hatch';
  if (kind === 'wait') return 'wait';
  return carrying.length === 0 ? 'travel' : `travel with ${carrying.join(', ')}`;
}
