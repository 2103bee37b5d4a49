/** `handrail explain ID`: what a rule or a check demands, why, on what source; what a problem of the text means. */
import { nearestName } from '@handrail/eva/campaign/problem/nearest-name';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { type Explanation, EXPLANATIONS } from '../explanations.ts';
import { print, printJson } from '../terminal/output.ts';

export function register(program: Command): void {
  program
    .command('explain')
    .argument('[id]', 'id as messages print it, such as clock/clock-is-kept; absent: list them all')
    .option('--json', 'answer as JSON')
    .description('what a rule or check demands and why; what a problem of a text means')
    .action((id: string | undefined, options: { json?: boolean }) => {
      if (id === undefined) {
        if (options.json === true)
          printJson(
            EXPLANATIONS.map(({ id: entry, of, severity, title, why, source }) => ({
              id: entry,
              of,
              severity,
              title,
              why,
              source,
            })),
          );
        else
          print(
            EXPLANATIONS.map((entry) => `${entry.id.padEnd(52)} ${entry.severity.padEnd(8)} ${entry.title}`).join('\n'),
          );
        return;
      }
      const found = EXPLANATIONS.find((entry) => entry.id === id);
      if (found === undefined) {
        const near =
          EXPLANATIONS.find((entry) => entry.id.endsWith(`/${id}`))?.id ??
          nearestName(
            id,
            EXPLANATIONS.map((entry) => entry.id),
          );
        throw new ExitError(
          EXIT.badInput,
          `nothing is called ${id}${near === null ? '; "handrail explain" lists everything' : `; did you mean ${near}?`}`,
        );
      }
      if (options.json === true) printJson(found);
      else print(pageOf(found));
    });
}

function pageOf(entry: Explanation): string {
  const lines = [
    `${entry.id}  (${entry.severity})`,
    '',
    `What must hold   ${entry.title}`,
    `Why              ${entry.why}`,
  ];
  if (entry.of === 'text') lines.splice(2, 2, `Meaning          ${entry.why}`);
  if (entry.source !== null) lines.push(`Source           ${entry.source}`);
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
