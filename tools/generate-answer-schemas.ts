/**
 * Writes docs/schemas/<command>.schema.json, one for each answer that `--json` prints, and docs/reference/answers.md, which lists
 * them. `--check` writes nothing and fails when one is out of date.
 *
 *   npx tsx tools/generate-answer-schemas.ts [--check]
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { answerJsonSchema } from '@handrail/wire/answer/define-answer';
import { failure } from '@handrail/wire/answer/failure';
import { answers } from '@handrail/wire/answers.generated';

const DOCS = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs');

/** Path below docs → text. */
export function answerSchemas(): ReadonlyMap<string, string> {
  const text = (schema: unknown): string => `${JSON.stringify(schema, null, 2)}\n`;
  return new Map([
    ...answers.map((answer) => [`schemas/${answer.command}.schema.json`, text(answerJsonSchema(answer))] as const),
    ['schemas/failure.schema.json', text(answerJsonSchema(failure))] as const,
    ['reference/answers.md', page()] as const,
  ]);
}

function page(): string {
  return [
    '# Answers as JSON',
    '',
    'With `--json` a command prints one JSON object on stdout and nothing else there; progress and complaints go to stderr. Every',
    'answer begins alike:',
    '',
    '```json',
    '{ "format": "handrail-answer", "version": 1, "command": "check", "exitCode": 1 }',
    '```',
    '',
    'Instants are whole seconds of PET, with UTC in ISO 8601 beside them where a program may need it. A figure that is not known is',
    '`null`; nothing is filled in. A field is never given another meaning within a version; `version` counts up when one goes.',
    '',
    '| exit code | |',
    '|---|---|',
    '| 0 | fine |',
    '| 1 | findings at error level |',
    '| 2 | bad input |',
    '| 3 | no plan exists |',
    '| 4 | cannot tell: something that is needed is not stated |',
    '| 70 | Handrail itself failed: a fault of the program |',
    '',
    'A command that ends without an answer prints [why](../schemas/failure.schema.json) instead, with every mistake of the text at its',
    'line and column.',
    '',
    '| command | what its answer tells | schema |',
    '|---|---|---|',
    ...answers.map(
      ({ command, about }) => `| \`${command}\` | ${about} | [${command}](../schemas/${command}.schema.json) |`,
    ),
    '',
    'What `plan -o` writes, and `replan` with `--json`, is a timeline ([schema](../schemas/timeline.schema.json)); what `export`',
    'writes is a campaign ([schema](../schemas/campaign.schema.json)). Both say their own format and version first.',
    '',
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const check = process.argv.includes('--check');
  for (const [name, text] of answerSchemas()) {
    const path = join(DOCS, name);
    if (existsSync(path) && readFileSync(path, 'utf8') === text) continue;
    if (check) {
      console.error(`${path} is out of date: run npx tsx tools/generate.ts`);
      process.exitCode = 1;
    } else {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, text);
      console.log(`wrote ${path}`);
    }
  }
}
