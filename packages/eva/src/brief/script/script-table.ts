import { formatPet, formatUtcClock } from '@handrail/quantity/time';
import type { EvaTimeline } from '../../timeline/timeline.ts';
import { elementId, type Markup, markup } from '../markup.ts';
import type { ScriptRow } from './script-rows.ts';

/** The script as a printable table with room for the times as they happen. */
export function scriptTable(
  eva: EvaTimeline,
  title: string,
  rows: readonly ScriptRow[],
  numbers: ReadonlyMap<string, number>,
): Markup {
  return markup`<table class="script"><caption>Script for IV, EVA ${title}</caption>
<thead><tr><th scope="col">PET</th><th scope="col">UTC</th><th scope="col">Happened</th><th scope="col">Who</th><th scope="col">What</th><th scope="col">Say / hear</th></tr></thead>
<tbody>${rows.map((row) => {
    if (row.kind === 'safe-stop') {
      return markup`<tr class="safe-stop"><td>${formatPet(row.petS)}</td><td colspan="5"><span class="cut">${row.words}</span></td></tr>`;
    }
    const number = row.kind === 'begin' && row.stint !== null ? numbers.get(row.stint) : undefined;
    const words =
      row.kind === 'begin' && row.stint !== null
        ? markup`<a href="#${elementId('sheet', eva.eva, row.stint)}">${number === undefined ? null : `${number} · `}${row.words}</a>`
        : markup`${row.words}`;
    return markup`<tr class="${row.kind}"><td>${formatPet(row.petS)}</td><td>${formatUtcClock(eva.petZeroUtcMs + row.petS * 1000)}</td><td class="box"><span class="hidden-words">room for the time</span></td><th scope="row">${row.who}</th><td>${row.caution === null ? null : markup`<strong class="caution">Caution: ${row.caution}</strong><br>`}${words}${row.note === null ? null : markup` <span class="note">${row.note}</span>`}</td><td>${row.say === null ? null : markup`say “${row.say}”`}${row.hear === null ? null : markup` hear “${row.hear}”`}</td></tr>`;
  })}</tbody></table>`;
}
