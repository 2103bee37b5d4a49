/**
 * The self-contained page of a campaign: verdict, home chart, orbit rows, ranked list, strip, sheets, findings, script, for
 * every EVA. Works from a file without a network; everything is in the markup, the script only makes it handier.
 */
import { formatUtc } from '@handrail/quantity/time';
import { inputLevel, inputLevelSentence } from '../campaign/input-level.ts';
import { bindingChain, bindings } from '../timeline/binding-chain.ts';
import { margins } from '../timeline/margins.ts';
import { stintsByKey } from '../timeline/person-course.ts';
import type { EvaTimeline } from '../timeline/timeline.ts';
import { type BriefInput, CAUTION } from './brief-input.ts';
import { homeChart } from './home-chart/home-chart.ts';
import { homeChartData } from './home-chart/home-chart-data.ts';
import { homeChartTable } from './home-chart/home-chart-table.ts';
import { elementId, Markup, markup } from './markup.ts';
import { orbitRows } from './orbit-rows.ts';
import { findingsTable } from './parts/findings-table.ts';
import { lightBands } from './parts/light-bands.ts';
import { rankedList } from './parts/ranked-list.ts';
import { sheet } from './parts/sheet.ts';
import { slip } from './parts/slip.ts';
import { strip } from './parts/strip.ts';
import { supplies, supplyCurves } from './parts/supplies.ts';
import { marginWords, verdictSentence } from './parts/verdict.ts';
import { scriptRows } from './script/script-rows.ts';
import { scriptTable } from './script/script-table.ts';

export interface PageAssets {
  /** Text of the style sheet and of the script that go into the page. */
  readonly style: string;
  readonly script: string;
}

export function page(input: BriefInput, assets: PageAssets): string {
  const { campaign, timeline } = input;
  const baseline = `${campaign.title} · baseline ${timeline.documentHash.slice(0, 12)} · kinds ${timeline.library.id} ${timeline.library.version} · made ${formatUtc(input.madeUtcMs)} · Handrail ${input.program}`;
  const general = input.findings.filter((finding) => finding.where.eva === null);
  const body = markup`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><title>${campaign.title} · Handrail</title><style>${new Markup(assets.style)}${new Markup(printFoot(`${baseline}. ${CAUTION}`))}</style></head>
<body><a class="skip" href="#main">Skip to the plan</a>
<header class="top"><h1>${campaign.title}</h1><p class="caution-banner" role="note">${CAUTION}</p>
<p class="level">${inputLevelSentence(inputLevel(campaign, input.hardware))}</p>
<nav aria-label="EVAs"><ul>${timeline.evas.map((eva) => markup`<li><a href="#${elementId('eva', eva.eva)}">${evaTitle(input, eva)}</a></li>`)}<li><a href="#ranked">Ranked list</a></li><li><a href="#open">Findings on the campaign</a></li></ul></nav>
<div class="controls" hidden><button type="button" data-control="arrangement" aria-pressed="false">Orbit rows</button><button type="button" data-control="theme" aria-pressed="false">Dark</button><button type="button" data-control="print">Print</button></div></header>
<main id="main">
${timeline.evas.map((eva) => evaSection(input, eva))}
<section id="ranked"><h2>What is in, what is out</h2>${rankedList(input)}</section>
<section id="open"><h2>Findings on the campaign as a whole</h2>${findingsTable(general, 'Findings that belong to no single EVA')}</section>
</main>
<footer class="foot"><p>${baseline}</p><p>${CAUTION}</p></footer>
<script>${new Markup(assets.script)}</script></body></html>`;
  return body.text;
}

/** The foot of every printed page, as a margin box: the only way that reaches each sheet without covering what stands on it. */
function printFoot(words: string): string {
  const quoted = words.replace(/[\\"<>\n]/g, (character) => `\\${character.charCodeAt(0).toString(16)} `);
  return `@page { @bottom-left { content: "${quoted}"; font: 7pt/1.25 sans-serif; width: 88%; } @bottom-right { content: counter(page); font: 8pt sans-serif; } }`;
}

function evaTitle(input: BriefInput, eva: EvaTimeline): string {
  return input.campaign.evas.find((candidate) => candidate.id === eva.eva)?.title ?? eva.eva;
}

function evaSection(input: BriefInput, eva: EvaTimeline): Markup {
  const { campaign } = input;
  const title = evaTitle(input, eva);
  const data = homeChartData(input, eva);
  const why = bindings(campaign, input.hardware, eva);
  const stints = stintsByKey(campaign);
  const numbers = new Map(eva.stints.map((planned, index) => [planned.stint, index + 1] as const));
  const findings = input.findings.filter((finding) => finding.where.eva === eva.eva);
  const readings = input.supplies?.get(eva.eva) ?? [];
  const homeSeconds = (place: string, pace: number): number | null => input.homeSeconds(eva.eva, place, pace);
  const least = margins(campaign, input.hardware, eva, homeSeconds, readings).slice(0, 3);
  return markup`<section class="eva" id="${elementId('eva', eva.eva)}" tabindex="-1"><h2>EVA ${title} <span class="date">${formatUtc(eva.petZeroUtcMs)} = PET 0:00</span></h2>
<p class="verdict">${verdictSentence(eva, title, findings)}</p>
<ul class="margins" aria-label="The three least margins">${least.map((margin) => markup`<li class="${margin.marginS < 0 ? 'short' : 'kept'}">${marginWords(margin)}</li>`)}</ul>
<div class="work-area"><figure class="chart"><figcaption>Home chart: minutes to the hatch over time. ${data.lanes[0]?.person ?? ''} one line, ${data.lanes[1]?.person ?? ''} double line; numbers name the stints; thin posts are the way home from there in terminate mode, a joint plan that was found and walked, and that holds nine times in ten (closing times of the kinds; travel and hatch at the slowest stated); dashed posts: unknown here; a thick line: no safe stop is in reach. To the right of the wall nobody gets in by the limit.</figcaption>
<div class="arrangement home" tabindex="0" role="region" aria-label="Home chart of ${title}, can be scrolled">${homeChart(data, numbers)}</div><div class="arrangement orbits" tabindex="0" role="region" aria-label="Orbit rows of ${title}, can be scrolled"><h3>Orbit rows</h3>${orbitRows(data, numbers)}</div>
<h3>What pulls</h3><div class="pulls" tabindex="0" role="region" aria-label="What pulls during ${title}, can be scrolled">${strip(input, data)}${supplyCurves(readings, data)}${lightBands(data, input.light ?? [])}</div></figure>
<aside class="sheets" aria-label="Stints of EVA ${title}"><h3>Stints</h3>${eva.stints.map((planned) => {
    const stint = stints.get(planned.stint);
    return stint === undefined
      ? null
      : sheet(input, eva, stint, planned, numbers.get(planned.stint) ?? 0, bindingChain(why, planned.stint));
  })}</aside></div>
<details class="twin-of-chart"><summary>The chart as a table</summary>${homeChartTable(data, numbers)}</details>
${supplies(readings)}
${slip(input.slips?.find((one) => one.eva === eva.eva))}
<h3>Findings</h3>${findingsTable(findings, `Findings on EVA ${title}`)}
<h3>Script</h3>${scriptTable(eva, title, scriptRows(input, eva), numbers)}</section>`;
}
