/**
 * Writes docs/schemas/<command>.schema.json, one for each answer that `--json` prints. `--check` writes nothing and fails when
 * one is out of date.
 *
 *   npx tsx tools/generate-answer-schemas.ts [--check]
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { answerJsonSchema } from '@handrail/wire/answer/define-answer';
import { failure } from '@handrail/wire/answer/failure';
import { answers } from '@handrail/wire/answers.generated';

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'schemas');

/** File name → text. */
export function answerSchemas(): ReadonlyMap<string, string> {
  const text = (schema: unknown): string => `${JSON.stringify(schema, null, 2)}\n`;
  return new Map([
    ...answers.map((answer) => [`${answer.command}.schema.json`, text(answerJsonSchema(answer))] as const),
    ['failure.schema.json', text(answerJsonSchema(failure))] as const,
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const check = process.argv.includes('--check');
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, text] of answerSchemas()) {
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
