/** Supplies of each person: curves of what is left above the reserve over the chart's own time axis, a table, and the sums behind it. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { PersonSupplies, SuppliesReading } from '../../suit/eva-supplies.ts';
import { SUPPLY_CASES, type SupplyCase } from '../../suit/supply-case.ts';
import { SUPPLY_NAMES, type SupplyName } from '../../suit/supply-curve.ts';
import {
  breakthroughSentence,
  firstReserveSentence,
  heatSentence,
  inspiredSentences,
  reservePetWords,
  secondaryOxygenSentence,
  suppliesSum,
  sumSentence,
} from '../../suit/supplies-in-words.ts';
import { amountWords, supplyWords } from '../../suit/supply-words.ts';
import { chartScale } from '../home-chart/chart-scale.ts';
import type { HomeChartData } from '../home-chart/home-chart-data.ts';
import { type Markup, markup } from '../markup.ts';

/** Nothing where no reading was asked for. */
export function supplies(readings: readonly SuppliesReading[]): Markup | null {
  if (readings.length === 0) return null;
  return markup`<section class="supplies" aria-label="Supplies"><h3>Supplies</h3>
<p>From the suits as stated, for these durations, in three cases: worst and best take every constant at the same end, so they are wider than chance. The suit maker's and the flight surgeon's figures prevail.</p>
${readings.map((reading) => (reading.known ? person(reading) : markup`<p class="unknown">${reading.person}: supplies cannot be told: ${reading.reason}.</p>`))}</section>`;
}

function person(reading: PersonSupplies): Markup {
  const { span } = reading;
  return markup`<table><caption>${reading.person}, ${reading.suit.title}: from PET ${formatPet(span.startS)} to both in at ${formatPet(span.endS)}</caption><thead><tr><th scope="col">Supply</th><th scope="col">Case</th><th scope="col">Start</th><th scope="col">Used</th><th scope="col">Left</th><th scope="col">Reserve</th><th scope="col">Above the reserve</th><th scope="col">Reserve at PET</th></tr></thead>
${SUPPLY_NAMES.map((supply) => markup`<tbody>${SUPPLY_CASES.map((supplyCase) => row(reading, supply, supplyCase))}</tbody>`)}</table>
<details><summary>Sums and efforts of ${reading.person}</summary><ul>${SUPPLY_NAMES.map((supply) => markup`<li>${sumSentence(reading, supply, 'likely')}</li>`)}${[
    firstReserveSentence(reading),
    breakthroughSentence(reading),
    ...inspiredSentences(reading),
    heatSentence(reading),
    secondaryOxygenSentence(reading),
  ].map((sentence) => markup`<li>${sentence}</li>`)}</ul>
<table><caption>By effort, likely</caption><thead><tr><th scope="col">Effort</th><th scope="col">Time</th><th scope="col">Rate</th><th scope="col">Oxygen</th><th scope="col">CO2</th><th scope="col">Heat</th><th scope="col">Battery</th></tr></thead><tbody>${reading.byEffort.map(
    (line) =>
      markup`<tr><th scope="row">${line.effort}</th><td>${formatDuration(line.durationS)}</td><td>${String(Math.round(line.metabolicW))} W</td><td>${amountWords('oxygen', line.oxygenKg)}</td><td>${amountWords('carbon-dioxide', line.carbonDioxideKg)}</td><td>${String(Math.round(line.heatJ / 1000))} kJ</td><td>${amountWords('battery', line.batteryJ)}</td></tr>`,
  )}</tbody></table></details>`;
}

function row(reading: PersonSupplies, supply: SupplyName, supplyCase: SupplyCase): Markup {
  const words = suppliesSum(reading, supply, supplyCase);
  const short = reading.use.end[supply][supplyCase].margin < 0;
  const name = supplyCase === 'worst' ? markup`<th scope="rowgroup" rowspan="3">${supplyWords(supply)}</th>` : null;
  return markup`<tr>${name}<th scope="row">${supplyCase}</th><td>${words.start}</td><td>${words.used}</td><td>${words.left}</td><td>${words.reserve}</td><td>${short ? markup`<strong>short: ${words.margin}</strong>` : words.margin}</td><td>${reservePetWords(reading, supply, supplyCase)}</td></tr>`;
}

/** Line styles double the words at the lines' ends; no colour is needed. */
const DASHES: Readonly<Record<SupplyName, string>> = {
  oxygen: '',
  'carbon-dioxide': '7 3',
  water: '2 3',
  battery: '9 3 2 3',
};
const HEIGHT = 78;
const LABEL = 12;

/** Shares left above the reserve, worst case, one small plot a person under the strip. */
export function supplyCurves(readings: readonly SuppliesReading[], data: HomeChartData): Markup | null {
  const known = readings.filter((reading) => reading.known);
  if (known.length === 0) return null;
  const scale = chartScale(data);
  return markup`<svg class="strip supply-curves" viewBox="0 0 ${scale.width} ${known.length * (HEIGHT + 18) + 4}" role="img" aria-label="Share of each supply left above its reserve, worst case, over the same time axis; the supplies table says the same">
${known.map((reading, index) => plot(reading, index * (HEIGHT + 18) + 10, data, scale))}</svg>`;
}

function plot(reading: PersonSupplies, top: number, data: HomeChartData, scale: ReturnType<typeof chartScale>): Markup {
  const y = (share: number): number => top + HEIGHT * (1 - Math.max(0, Math.min(1, share)));
  const ends = SUPPLY_NAMES.map((supply) => endOf(reading, supply, data)).sort((a, b) => b.share - a.share);
  // Labels keep a line's distance from each other, and the last stays above the foot.
  const labels = ends.map(({ share }) => y(share) + 3);
  labels.forEach((at, index) => {
    labels[index] = Math.max(at, (labels[index - 1] ?? Number.NEGATIVE_INFINITY) + LABEL);
  });
  const over = Math.max(0, (labels.at(-1) ?? 0) - (top + HEIGHT - 3));
  return markup`<text class="place" x="${scale.left - 12}" y="${top + 10}" text-anchor="end">${reading.person}: left above reserve</text><text class="place" x="${scale.left - 12}" y="${top + 24}" text-anchor="end">worst case, all to none</text><path d="M ${scale.left} ${top} H ${scale.right} M ${scale.left} ${top + HEIGHT} H ${scale.right}" fill="none" stroke="currentColor" stroke-width="0.5"/>
${ends.map(({ supply, points }) => {
  const path = points
    .map(({ petS, share }, at) => `${at === 0 ? 'M' : 'L'} ${scale.x(petS).toFixed(1)} ${y(share).toFixed(1)}`)
    .join(' ');
  return markup`<path d="${path}" fill="none" stroke="currentColor" stroke-width="1.4"${DASHES[supply] === '' ? null : markup` stroke-dasharray="${DASHES[supply]}"`}><title>${supplyWords(supply)} of ${reading.person}</title></path>`;
})}${ends.map(
  ({ supply, share, petS }, index) =>
    markup`<text class="place" x="${scale.x(petS) + 4}" y="${(labels[index] ?? 0) - over}">${supplyWords(supply)} ${String(Math.round(share * 100))} %</text>`,
)}`;
}

interface CurveEnd {
  readonly supply: SupplyName;
  readonly points: readonly { readonly petS: number; readonly share: number }[];
  /** At both in. */
  readonly petS: number;
  readonly share: number;
}

function endOf(reading: PersonSupplies, supply: SupplyName, data: HomeChartData): CurveEnd {
  const { start, reserve, points } = reading.use.curves[supply].traces.worst;
  const share = (left: number): number => (left - reserve) / (start - reserve);
  const shown = points
    .filter(({ atS }) => atS >= data.startS && atS <= reading.span.endS)
    .map(({ atS, left }) => ({ petS: atS, share: share(left) }));
  return { supply, points: shown, petS: reading.span.endS, share: share(reading.use.end[supply].worst.left) };
}
