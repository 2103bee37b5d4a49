/**
 * Orbit rows: the second arrangement of the same plan. One row per revolution with sunrise at the left edge, so that work
 * that depends on light lines up in columns. Where no night windows are given, rows are 90 minutes long and say so.
 */
import { formatPet } from '@handrail/quantity/time';
import { elementId, type Markup, markup } from './markup.ts';
import type { HomeChartData } from './home-chart/home-chart-data.ts';

const PLAIN_ROW_S = 5400;
const WIDTH = 1040;
const LEFT = 96;
const RIGHT = WIDTH - 12;
const ROW = 62;

export function orbitRows(data: HomeChartData, numbers: ReadonlyMap<string, number>): Markup {
  const night = data.bands.find((band) => band.window.shownAs === 'night')?.pieces ?? [];
  const rows = rowsOf(data, night);
  const longest = Math.max(...rows.map((row) => row.endS - row.startS));
  const x = (row: OrbitRow, petS: number): number => LEFT + ((petS - row.startS) / longest) * (RIGHT - LEFT);
  const id = elementId('orbit-rows', data.eva.eva);
  return markup`<svg class="orbit-rows" viewBox="0 0 ${WIDTH} ${rows.length * ROW + 24}" role="group" aria-labelledby="${id}-title"><title id="${id}-title">Orbit rows of EVA ${data.title}: ${night.length === 0 ? 'rows of 90 minutes, no night is given' : 'one row a revolution, sunrise at the left'}</title>
${rows.map((row, index) => {
  const y = 8 + index * ROW;
  return markup`<g class="orbit-row"><text class="pet" x="${LEFT - 8}" y="${y + 16}" text-anchor="end">${formatPet(Math.max(row.startS, data.startS))}</text><text class="utc" x="${LEFT - 8}" y="${y + 30}" text-anchor="end">${night.length === 0 ? 'from' : 'sunrise'}</text>
<rect class="day" x="${LEFT}" y="${y}" width="${x(row, row.endS) - LEFT}" height="${ROW - 12}"/>
${night.filter(([from, to]) => to > row.startS && from < row.endS).map(([from, to]) => markup`<rect class="night-plain" x="${x(row, Math.max(from, row.startS))}" y="${y}" width="${x(row, Math.min(to, row.endS)) - x(row, Math.max(from, row.startS))}" height="${ROW - 12}"><title>night, PET ${formatPet(from)} to ${formatPet(to)}</title></rect>`)}
${data.lanes.map((lane, laneIndex) =>
  lane.course
    .filter((stretch) => stretch.endS > row.startS && stretch.startS < row.endS && stretch.kind !== 'wait')
    .map((stretch) => {
      const from = x(row, Math.max(stretch.startS, row.startS));
      const to = x(row, Math.min(stretch.endS, row.endS));
      const top = y + 5 + laneIndex * 23;
      const words = `${lane.person}: ${stretch.stint?.title ?? stretch.kind}, PET ${formatPet(stretch.startS)} to ${formatPet(stretch.endS)}`;
      const bar = markup`<title>${words}</title><rect class="bar ${stretch.kind} lane-${laneIndex}" x="${from}" y="${top}" width="${Math.max(1, to - from)}" height="18"/>`;
      if (stretch.stint === null) return markup`<g>${bar}</g>`;
      const number = numbers.get(stretch.stint.key);
      return markup`<a class="work" href="#${elementId('sheet', data.eva.eva, stretch.stint.key)}" data-stint="${stretch.stint.key}" aria-label="${words}">${bar}${to - from > 14 ? markup`<text class="number" x="${(from + to) / 2}" y="${top + 13}" text-anchor="middle">${number ?? ''}</text>` : null}</a>`;
    }),
)}<text class="who" x="4" y="${y + 18}">${data.lanes[0]?.person ?? ''}</text><text class="who" x="4" y="${y + 41}">${data.lanes[1]?.person ?? ''}</text></g>`;
})}</svg>`;
}

export interface OrbitRow {
  readonly startS: number;
  readonly endS: number;
}

/** One row a revolution; of 90 minutes where no night is given. */
export function rowsOf(data: HomeChartData, night: readonly (readonly [number, number])[]): readonly OrbitRow[] {
  const sunrises = night.map(([, to]) => to).filter((s) => s < data.endS);
  if (sunrises.length === 0) {
    const rows: OrbitRow[] = [];
    for (let s = 0; s < data.endS; s += PLAIN_ROW_S) rows.push({ startS: s, endS: s + PLAIN_ROW_S });
    return rows;
  }
  const typical = sunrises.length > 1 ? (sunrises[1] as number) - (sunrises[0] as number) : PLAIN_ROW_S;
  const edges = [...sunrises];
  while ((edges[0] as number) > data.startS) edges.unshift((edges[0] as number) - typical);
  return edges
    .map((startS, index) => ({ startS, endS: edges[index + 1] ?? startS + typical }))
    .filter((row) => row.endS > data.startS && row.startS < data.endS);
}
