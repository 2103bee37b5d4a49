/** Writes docs/rules/<subject>.md from the rules themselves; `--check` fails when a page is out of date. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Rule } from '@handrail/eva/rules/define-rule';
import { rules } from '@handrail/eva/rules/rules.generated';

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'rules');

export function rulePages(): ReadonlyMap<string, string> {
  const subjects = new Map<string, Rule[]>();
  for (const rule of rules) {
    const subject = rule.id.split('/')[0] as string;
    subjects.set(subject, [...(subjects.get(subject) ?? []), rule]);
  }
  const pages = new Map<string, string>();
  const index = [
    '# Rules',
    '',
    'Written from the rules; `handrail explain RULE` shows the same.',
    '',
    '| rule | weight | what must hold |',
    '|---|---|---|',
  ];
  for (const [subject, list] of subjects) {
    for (const rule of list)
      index.push(`| [${rule.id}](${subject}.md#${anchor(rule.id)}) | ${rule.severity} | ${rule.title} |`);
    pages.set(`${subject}.md`, [`# Rules: ${subject}`, '', ...list.flatMap(section)].join('\n'));
  }
  pages.set('README.md', `${index.join('\n')}\n`);
  return pages;
}

function section(rule: Rule): readonly string[] {
  return [
    `## ${rule.id}`,
    '',
    `${rule.title}. (${rule.severity})`,
    '',
    rule.why,
    '',
    `Source: ${rule.source}.`,
    '',
    'A plan that violates it:',
    '',
    '```kdl',
    rule.examples.violates.campaign.trim(),
    '```',
    '',
    '```text',
    rule.examples.violates.timeline.trim(),
    '```',
    '',
    'A plan that satisfies it:',
    '',
    '```kdl',
    rule.examples.satisfies.campaign.trim(),
    '```',
    '',
    '```text',
    rule.examples.satisfies.timeline.trim(),
    '```',
    '',
  ];
}

function anchor(id: string): string {
  return id.replaceAll('/', '');
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const check = process.argv.includes('--check');
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, text] of rulePages()) {
    const path = join(FOLDER, name);
    if (existsSync(path) && readFileSync(path, 'utf8') === text) continue;
    if (check) {
      console.error(`${path} is out of date: run npx tsx tools/generate.ts`);
      process.exitCode = 1;
    } else {
      writeFileSync(path, text);
      console.log(`wrote ${path}`);
    }
  }
}
