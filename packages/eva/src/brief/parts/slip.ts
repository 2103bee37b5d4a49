/** The slip table of one EVA: what breaks for each late egress, which waits mend it, and the last acceptable egress. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { EvaSlip } from '../../slip/slip-table.ts';
import { countWords, leftWords, slipLines, slipSentence, waitWords, wallWords } from '../../slip/slip-words.ts';
import { type Markup, markup } from '../markup.ts';

/** Nothing where no table was asked for. */
export function slip(table: EvaSlip | undefined): Markup | null {
  if (table === undefined) return null;
  const lines = slipLines(table);
  return markup`<section class="slip" aria-label="Late egress"><h3>If egress is late</h3>
<p>${upper(slipSentence(table))}. The plan keeps its PET times; night, coverage, events and granted times stay where they are. Waiting is one way out, planning again may find a better one.</p>
<table><caption>Late egress, step by step</caption><thead><tr><th scope="col">Late by</th><th scope="col">Breaks</th><th scope="col">Waits that mend it</th><th scope="col">Both in</th><th scope="col">To the wall</th><th scope="col">Cut, or left broken</th><th scope="col">Acceptable</th></tr></thead><tbody>${table.rows.map(
    (row) =>
      markup`<tr class="${row.acceptable ? 'kept' : 'short'}"><th scope="row">${row.lateS === 0 ? 'on time' : formatDuration(row.lateS)}</th><td>${countWords(row)}</td><td>${listOf(row.waits.map(waitWords))}</td><td>${formatPet(Math.ceil(row.bothInS / 60) * 60)}</td><td>${wallWords(row)}</td><td>${listOf(leftWords(row))}</td><td>${row.acceptable ? 'yes' : markup`<strong>no</strong>`}</td></tr>`,
  )}</tbody></table>
${lines.length === 0 ? null : markup`<details><summary>What breaks, and when</summary><ul>${lines.map((line) => markup`<li class="${line.severity}">${line.severity}, ${line.late} late: ${line.words}</li>`)}</ul></details>`}</section>`;
}

function listOf(words: readonly string[]): Markup | string {
  return words.length === 0 ? '' : markup`<ul class="inline">${words.map((word) => markup`<li>${word}</li>`)}</ul>`;
}

function upper(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
