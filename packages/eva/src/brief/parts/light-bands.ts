/**
 * Light at each worksite that is visited, coverage and weak field, a row each over the chart's own time axis, with a table
 * twin. Fill patterns say it, the words in the table and titles too; no colour is needed.
 */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { WindowSet } from '../../campaign/campaign.ts';
import type { PlaceLight, PlaceLightSpan } from '../../sky/campaign/light-report.ts';
import { chartScale } from '../home-chart/chart-scale.ts';
import type { HomeChartData } from '../home-chart/home-chart-data.ts';
import { elementId, type Markup, markup } from '../markup.ts';

interface Row {
  readonly title: string;
  readonly pieces: readonly Piece[];
}
interface Piece {
  readonly look: 'lit' | 'earth-shadow' | 'own-shadow' | 'facing-away' | 'gap' | 'weak';
  readonly startS: number;
  readonly endS: number;
  readonly words: string;
}

const WORDS: Readonly<Record<PlaceLightSpan['state'], string>> = {
  lit: 'sunlight',
  'earth-shadow': 'night',
  'own-shadow': "in the vehicle's own shadow",
  'facing-away': 'turned away from the Sun',
};
const ROW = 16;

/** Nothing where neither light nor a computed window is there. */
export function lightBands(data: HomeChartData, light: readonly PlaceLight[]): Markup | null {
  const rows = [...lightRows(data, light), ...windowRows(data)];
  if (rows.length === 0) return null;
  const scale = chartScale(data);
  const id = elementId('light', data.eva.eva);
  return markup`<h3>Light, coverage, weak field</h3><p class="legend">Sunlight is open, night is filled, own shadow is hatched, a surface turned away is dotted; coverage gaps are hatched. Weak field is a proxy: it measures no dose and knows no solar events. Edges are as sure as the age of the elements lets them be.</p>
<svg class="light-bands" viewBox="0 0 ${scale.width} ${rows.length * ROW + 6}" role="img" aria-label="Light at worksites, coverage gaps and weak field over the same time axis; the table below says the same">
<defs><pattern id="${id}-own" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="5" class="gap-line"/></pattern><pattern id="${id}-away" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="1.5" cy="1.5" r="0.8" class="dot"/></pattern></defs>
${rows.map((row, index) => {
  const y = 4 + index * ROW;
  return markup`<text class="place" x="${scale.left - 12}" y="${y + 9}" text-anchor="end">${row.title}</text>${row.pieces.map(
    (piece) =>
      markup`<rect class="light ${piece.look}" x="${scale.x(piece.startS)}" y="${y + 1}" width="${Math.max(0.5, scale.x(piece.endS) - scale.x(piece.startS))}" height="9"${fillOf(piece, id)}><title>${row.title}: ${piece.words}, PET ${formatPet(Math.round(piece.startS))} to ${formatPet(Math.round(piece.endS))}</title></rect>`,
  )}`;
})}</svg>
<details><summary>Light, coverage and weak field as a table</summary><table><caption>Light at the worksites, coverage gaps and weak field of ${data.title}</caption><thead><tr><th scope="col">Where</th><th scope="col">From PET</th><th scope="col">To PET</th><th scope="col">For</th><th scope="col">What</th></tr></thead>${rows.map(
    (row) =>
      markup`<tbody>${row.pieces.map((piece) => markup`<tr><th scope="row">${row.title}</th><td>${formatPet(Math.round(piece.startS))}</td><td>${formatPet(Math.round(piece.endS))}</td><td>${formatDuration(Math.round(piece.endS - piece.startS))}</td><td>${piece.words}</td></tr>`)}</tbody>`,
  )}</table></details>`;
}

function fillOf({ look }: Piece, id: string): Markup | null {
  if (look === 'own-shadow' || look === 'gap') return markup` fill="url(#${id}-own)"`;
  return look === 'facing-away' ? markup` fill="url(#${id}-away)"` : null;
}

function lightRows(data: HomeChartData, light: readonly PlaceLight[]): readonly Row[] {
  const visited = new Set(
    data.lanes.flatMap((lane) =>
      lane.course.flatMap((stretch) => (stretch.kind === 'work' ? [stretch.place, stretch.to] : [])),
    ),
  );
  return data.shelves.flatMap((shelf): Row[] => {
    const found = light.find(({ place, eva }) => place === shelf.place && eva === data.eva.eva);
    if (found === undefined || !visited.has(shelf.place)) return [];
    const pieces = found.spans.map(({ startUtcMs, endUtcMs, state, by }) => ({
      look: state,
      startS: (startUtcMs - data.eva.petZeroUtcMs) / 1000,
      endS: (endUtcMs - data.eva.petZeroUtcMs) / 1000,
      words: by === null ? WORDS[state] : `${WORDS[state]}, by ${by}`,
    }));
    return [{ title: shelf.title, pieces: clipped(data, pieces) }];
  });
}

/** Coverage gaps, and the weak field where it is computed: each set with its name at the left. */
function windowRows(data: HomeChartData): readonly Row[] {
  return data.bands.flatMap(({ window }): Row[] => {
    const look = lookOf(window);
    if (look === null || window.intervals.length === 0) return [];
    const words = look === 'gap' ? 'no coverage' : 'weak field, a proxy';
    const pieces = window.intervals.map(([from, to]) => ({
      look,
      startS: (from - data.eva.petZeroUtcMs) / 1000,
      endS: (to - data.eva.petZeroUtcMs) / 1000,
      words: `${words}, ±${formatDuration(window.padS)}`,
    }));
    return [{ title: window.title, pieces: clipped(data, pieces) }];
  });
}

function lookOf({ shownAs, computed }: WindowSet): 'gap' | 'weak' | null {
  if (computed?.what === 'field-region') return 'weak';
  return shownAs === 'gap' ? 'gap' : null;
}

function clipped(data: HomeChartData, pieces: readonly Piece[]): readonly Piece[] {
  return pieces
    .map((piece) => ({
      ...piece,
      startS: Math.max(piece.startS, data.startS),
      endS: Math.min(piece.endS, data.endS),
    }))
    .filter(({ startS, endS }) => endS > startS);
}
