/** `handrail import`: campaign JSON of another program back to campaign text. */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { Fault } from '@handrail/quantity/fault';
import { readCampaignJson } from '@handrail/wire/campaign/read-campaign-json';
import type { Command } from 'commander';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';
import { readBytes } from '../load-campaign.ts';
import { mustBeWritable } from '../must-be-writable.ts';
import { problemText } from '../terminal/message-text.ts';
import { complain, print } from '../terminal/output.ts';

export function register(program: Command): void {
  program
    .command('import')
    .argument('<file>', 'campaign JSON, see docs/schemas/campaign.schema.json')
    .option('--into <folder>', 'where to write the files', '.')
    .option('--force', 'write over files that are there')
    .description('campaign JSON of another program to campaign text')
    .action((file: string, options: { into: string; force?: boolean }) => {
      const written = importCampaign(file, options.into, options.force === true);
      for (const path of written) print(`wrote ${path}`);
      print(`next, handrail check ${written.join(' ')}`);
    });
}

/**
 * Writes the files of the campaign; those with problems are written too, since they are mended as text, and the problems are
 * printed.
 *
 * @returns paths written
 * @throws ExitError with code 2: a file is there already. Fault `wire/…`: it is no campaign JSON
 */
export function importCampaign(file: string, folder: string, force: boolean): readonly string[] {
  const { files, migrated } = read(file);
  for (const about of migrated) complain(`brought up to date: ${about}`);
  // A name in foreign data is a name, not a way into other folders.
  const targets = files.map((one) => ({ path: join(folder, safeName(one.name)), text: one.text }));
  const twice = targets.find((one, at) => targets.findIndex((other) => other.path === one.path) !== at);
  if (twice !== undefined) throw new ExitError(EXIT.badInput, `two files of ${file} would be written to ${twice.path}`);
  const there = targets.find((one) => existsSync(one.path));
  if (there !== undefined && !force) {
    throw new ExitError(EXIT.badInput, `${there.path} is there already; name another folder, or say --force`);
  }
  try {
    mkdirSync(folder, { recursive: true });
  } catch (cause) {
    throw new ExitError(
      EXIT.badInput,
      `the folder ${folder} cannot be made: ${folderWords((cause as NodeJS.ErrnoException).code, cause)}`,
    );
  }
  for (const { path, text } of targets) {
    mustBeWritable(path);
    writeFileSync(path, text);
  }
  for (const problem of readCampaign(files, standardLibrary).problems) complain(`${problemText(problem)}\n\n`);
  return targets.map((one) => one.path);
}

/** @throws Fault `wire/…` that says which file it is about */
function read(file: string): ReturnType<typeof readCampaignJson> {
  try {
    return readCampaignJson(new TextDecoder('utf-8').decode(readBytes(file)));
  } catch (cause) {
    if (!(cause instanceof Fault)) throw cause;
    const { code, message, values, advice } = cause;
    throw new Fault(code, `${file}: ${message}`, { values, cause, ...(advice === null ? {} : { advice }) });
  }
}

function folderWords(code: string | undefined, cause: unknown): string {
  if (code === 'EEXIST' || code === 'ENOTDIR') return 'a file stands in its way';
  return code === 'EACCES' ? 'it may not be written there' : String(code ?? cause);
}

function safeName(name: string): string {
  const base = basename(name.replaceAll('\\', '/'))
    .replace(/[^A-Za-z0-9._-]+/g, '-')
    .replace(/^\.+/, '');
  return base === '' ? 'campaign.kdl' : base.endsWith('.kdl') ? base : `${base}.kdl`;
}
