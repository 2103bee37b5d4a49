/** `handrail explain ID`: what a rule or a check demands, why, on what source; what a problem of the text means. */
import { nearestName } from '@handrail/eva/campaign/problem/nearest-name';
import { explain } from '@handrail/wire/answers/explain';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { type Explanation, EXPLANATIONS } from '../explanations.ts';
import { print, printRaw } from '../terminal/output.ts';
import { printAnswer } from '../terminal/print-answer.ts';
import { textWidth, wrapText } from '../terminal/wrap-text.ts';

export function register(program: Command): void {
  program
    .command('explain')
    .argument('[id]', 'id as messages print it, such as clock/clock-is-kept; absent: list them all')
    .option('--json', 'answer as JSON')
    .description('what a rule or check demands and why; what a problem of a text means')
    .action((id: string | undefined, options: { json?: boolean }) => {
      const entries = id === undefined ? EXPLANATIONS : [entryOf(id)];
      if (options.json === true) {
        // The examples are for one entry; all of them are in docs/rules.
        const shown = id === undefined ? entries.map((entry) => ({ ...entry, examples: null })) : entries;
        printAnswer(explain, EXIT.fine, { entries: shown });
      } else if (id === undefined) printRaw(listOf(entries));
      else for (const entry of entries) print(pageOf(entry));
    });
}

/** @throws ExitError with code 2 when nothing is called so */
function entryOf(id: string): Explanation {
  const found = EXPLANATIONS.find((entry) => entry.id === id);
  if (found !== undefined) return found;
  const known = EXPLANATIONS.map((entry) => entry.id);
  const near = known.find((one) => one.endsWith(`/${id}`)) ?? nearestName(id, known) ?? nearestByLastPart(id, known);
  throw new ExitError(
    EXIT.badInput,
    `nothing is called ${id}${near === null ? '; "handrail explain" lists everything' : `; did you mean ${near}?`}`,
  );
}

/** Whoever remembers the name need not remember the subject. */
function nearestByLastPart(id: string, known: readonly string[]): string | null {
  const lastPart = (one: string): string => one.split('/').at(-1) ?? one;
  const near = nearestName(lastPart(id), known.map(lastPart));
  return known.find((one) => lastPart(one) === near) ?? null;
}

/** A line an entry, under what it is an entry of; not wrapped, so that a search for a word finds all of it. */
function listOf(entries: readonly Explanation[]): string {
  const longest = Math.max(...entries.map(({ id }) => id.length));
  const heads: Readonly<Record<Explanation['of'], string>> = {
    rule: 'Rules, which judge a timeline',
    replay: 'The independent replay of a timeline',
    proof: 'The proof of a timeline: every order of events, every duration within bounds',
    plan: 'Planning',
    text: 'Problems of a campaign text',
    fault: 'Input that a command cannot work with',
  };
  return Object.entries(heads)
    .map(([of, head]) => [of, head, entries.filter((entry) => entry.of === of)] as const)
    .filter(([, , list]) => list.length > 0)
    .map(([of, head, list]) => {
      const lines = list.map(({ id, severity, title, why }) => {
        // The name of a problem repeats its id; what it means does not.
        const [words, mark] = of === 'text' || of === 'fault' ? [why, ''] : [title, `${severity.padEnd(8)} `];
        return `  ${id.padEnd(longest)}  ${mark}${words}`;
      });
      return `${head}\n${lines.join('\n')}`;
    })
    .join('\n\n');
}

const LABEL = 17;

function pageOf(entry: Explanation): string {
  const line = (label: string, text: string): string => `${label.padEnd(LABEL)}${wrapText(text, textWidth(), LABEL)}`;
  const meaning =
    entry.of === 'text' || entry.of === 'fault'
      ? [line('Meaning', entry.why)]
      : [line('What must hold', entry.title), line('Why', entry.why)];
  const lines = [`${entry.id}  (${entry.severity})`, '', ...meaning];
  if (entry.source !== null) lines.push(line('Source', entry.source));
  if (entry.examples !== null) {
    const { violates, satisfies } = entry.examples;
    lines.push('', 'Violated by', indent(violates.campaign), '', indent(violates.timeline));
    lines.push('', 'Satisfied by', indent(satisfies.campaign), '', indent(satisfies.timeline));
  }
  return lines.join('\n');
}

function indent(text: string): string {
  return text
    .trim()
    .split('\n')
    .map((line) => `    ${line}`)
    .join('\n');
}
