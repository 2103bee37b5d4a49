/** The ranked list with the cut rule: what is in this EVA, what is in another, what was left out and why. */
import { type Markup, markup } from '../markup.ts';
import type { BriefInput } from '../brief-input.ts';

export function rankedList(input: BriefInput): Markup {
  const where = new Map(input.timeline.evas.flatMap((eva) => eva.tasks.map((task) => [task, eva.eva] as const)));
  const why = new Map(input.timeline.leftOut.map((entry) => [entry.task, entry.why] as const));
  const planned = input.campaign.tasks.filter((task) => where.has(task.id));
  const out = input.campaign.tasks.filter((task) => !where.has(task.id));
  const title = (id: string): string => input.campaign.evas.find((eva) => eva.id === id)?.title ?? id;
  const row = (task: (typeof planned)[number], words: string): Markup =>
    markup`<tr><td>${task.rank}</td><th scope="row">${task.title}</th><td>${task.insert ? 'insert' : 'task'}</td><td>${words}</td></tr>`;
  return markup`<table class="ranked"><caption>Ranked list</caption><thead><tr><th scope="col">Rank</th><th scope="col">Task</th><th scope="col">Sort</th><th scope="col">Where, or why not</th></tr></thead>
<tbody>${planned.map((task) => row(task, title(where.get(task.id) as string)))}</tbody>
${out.length === 0 ? null : markup`<tbody class="cut"><tr class="cut-rule"><td colspan="4">Cut: below this line nothing is planned</td></tr>${out.map((task) => row(task, why.get(task.id) ?? 'not planned'))}</tbody>`}</table>`;
}
