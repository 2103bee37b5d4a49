/** `handrail explain RULE`: what a rule demands, why, on what source, with its two examples. */
import { rules } from '@handrail/eva/rules/rules.generated';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { print, printJson } from '../terminal/output.ts';

export function register(program: Command): void {
  program
    .command('explain')
    .argument('[rule]', 'id of a rule, such as clock/clock-is-kept; absent: list them all')
    .option('--json', 'for programs')
    .description('what a rule demands and why')
    .action((id: string | undefined, options: { json?: boolean }) => {
      if (id === undefined) {
        if (options.json === true)
          printJson(rules.map(({ id, title, severity, source }) => ({ id, title, severity, source })));
        else print(rules.map((rule) => `${rule.id.padEnd(48)} ${rule.severity.padEnd(8)} ${rule.title}`).join('\n'));
        return;
      }
      const rule = rules.find((candidate) => candidate.id === id);
      if (rule === undefined) {
        const near = rules.filter(
          (candidate) => candidate.id.includes(id) || id.includes(candidate.id.split('/')[1] ?? '-'),
        );
        throw new ExitError(
          EXIT.badInput,
          `no rule is called ${id}${near.length === 0 ? '; "handrail explain" lists them' : `; did you mean ${near.map((candidate) => candidate.id).join(', ')}?`}`,
        );
      }
      if (options.json === true) {
        const { title, severity, why, source, examples } = rule;
        printJson({ id, title, severity, why, source, examples });
        return;
      }
      print(
        [
          `${rule.id}  (${rule.severity})`,
          '',
          `What must hold   ${rule.title}`,
          `Why              ${rule.why}`,
          `Source           ${rule.source}`,
          '',
          'Violated by',
          indent(rule.examples.violates.campaign),
          '',
          indent(rule.examples.violates.timeline),
          '',
          'Satisfied by',
          indent(rule.examples.satisfies.campaign),
          '',
          indent(rule.examples.satisfies.timeline),
        ].join('\n'),
      );
    });
}

function indent(text: string): string {
  return text
    .trim()
    .split('\n')
    .map((line) => `    ${line}`)
    .join('\n');
}
