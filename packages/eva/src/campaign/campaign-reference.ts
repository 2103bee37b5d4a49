/** The reference of the campaign text, as Markdown, read off the node definitions. */
import { templates } from '../kinds/templates.generated.ts';
import { describeType } from './check/describe-type.ts';
import type { NodeDefinition, PropertyDefinition } from './definition/define-node.ts';
import { STEP_PROPERTIES, STEP_SHAPE } from './definition/step-shape.ts';
import { nodes } from './nodes.generated.ts';
import { PROBLEM_CODES } from './problem/problem-codes.ts';

const INTRODUCTION = `# The campaign text

A campaign is one or more text files in [KDL 2](https://kdl.dev), an open document language. Every line is a node: a name, then
values, then properties (\`key=value\`), then inner nodes in braces. Each file begins with \`handrail 1\`.

- **Ids** begin with a letter and go on with letters, digits and hyphens. People, arms, hardware and places share one set of ids;
  tasks, objectives, EVAs, requests, events, clocks, windows, gates and responses have sets of their own.
- **A stint** is named by its id inside its task and as \`"task/stint"\` elsewhere, in quotes because of the slash.
- **Quantities** are texts with a unit: \`"34 N·m"\`, \`"12 min"\`, \`"1 h 20 min"\`. \`minutes\` and \`sample\` take bare numbers of minutes.
- **Instants** are UTC, \`"2031-09-14T11:40:00Z"\`; phase elapsed time is \`"2:10"\`.
- **Flags** are \`#true\` and \`#false\`. **Comments** are \`// …\`, \`/* … */\`, and \`/-\` before a node that is not to count.
- **A title** is the last value, in quotes, where a node takes one; without it the id is read as words.
- What is not stated stays unknown, or is filled in and listed among the campaign's defaults. Nothing that can hurt is filled in.
`;

export function campaignReference(): string {
  const top = nodes.filter((node) => node.parents.includes('document'));
  const parts = [INTRODUCTION, '## Nodes at the top of a file\n'];
  const done = new Set<string>();
  for (const node of top) parts.push(...nodeWithInner(node, 3, done));
  parts.push(
    '## Sentences of work\n',
    `${STEP_SHAPE.about} \`demate j1 j2\`, \`release b1 b2 with=driver\`, \`stow tie-1 in=bag-1\`. The verbs of each kind stand in the reference of kinds.\n`,
    propertyTable(STEP_PROPERTIES),
    '## Templates\n',
    ...templates.map(
      (template) =>
        `### use ${template.name}\n\n${template.about}\n\n| argument | what it is |\n| --- | --- |\n${template.arguments
          .map((one) => `| \`${one.id}\`${one.required ? '' : ' (optional)'} | ${cell(one.about)} |`)
          .join(
            '\n',
          )}\n\n\`\`\`kdl\n${template.example.use}\n\`\`\`\n\nstands for\n\n\`\`\`kdl\n${template.example.expands}\n\`\`\`\n`,
    ),
    '## What can be wrong\n',
    '| code | what to do |\n| --- | --- |',
    Object.entries(PROBLEM_CODES)
      .map(([code, advice]) => `| \`campaign/${code}\` | ${cell(advice)} |`)
      .join('\n'),
    '',
  );
  return parts.join('\n');
}

function nodeWithInner(node: NodeDefinition, level: number, done: Set<string>): readonly string[] {
  if (done.has(node.name)) return [];
  done.add(node.name);
  const inner = nodes.filter((one) => one.parents.includes(node.name));
  return [nodeSection(node, level), ...inner.flatMap((one) => nodeWithInner(one, Math.min(6, level + 1), done))];
}

function nodeSection(node: NodeDefinition, level: number): string {
  const inner = nodes.filter((one) => one.parents.includes(node.name)).map((one) => `\`${one.name}\``);
  const often = {
    once: 'exactly once',
    'at-most-once': 'at most once',
    'at-least-once': 'at least once',
    any: 'any number of times',
  }[node.repeat];
  const where = node.parents
    .map((parent) => (parent === 'document' ? 'at the top of a file' : `in \`${parent}\``))
    .join(', ');
  const lines = [`${'#'.repeat(level)} ${node.name}\n`, `${node.about}\n`, `Stands ${where}, ${often}.\n`];
  if (node.arguments.length > 0 || node.title) {
    lines.push('| value | what | |\n| --- | --- | --- |');
    for (const one of node.arguments) {
      lines.push(
        `| ${one.name}${one.rest ? ' …' : ''}${one.required ? '' : ' (optional)'} | ${cell(describeType(one.type))} | ${cell(one.about)} |`,
      );
    }
    if (node.title) lines.push('| title (optional) | text in quotes | For people. |');
    lines.push('');
  }
  if (Object.keys(node.properties).length > 0) lines.push(propertyTable(node.properties));
  if (inner.length > 0) lines.push(`Inside: ${inner.join(', ')}${node.steps ? ', and sentences of work' : ''}.\n`);
  lines.push('```kdl', ...node.examples.valid, '```\n');
  return lines.join('\n');
}

function propertyTable(properties: Readonly<Record<string, PropertyDefinition>>): string {
  const rows = Object.entries(properties).map(
    ([name, one]) =>
      `| \`${name}\`${one.required ? '' : ' (optional)'} | ${cell(describeType(one.type))} | ${cell(one.about)} |`,
  );
  return `| property | what | |\n| --- | --- | --- |\n${rows.join('\n')}\n`;
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
