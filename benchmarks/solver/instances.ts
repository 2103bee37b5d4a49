import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';
import type { Model } from '@handrail/solver/model/model';
import { type BestKnown, instanceName, readBestKnown } from './best-known.ts';
import { readJobShop } from './readers/read-job-shop.ts';
import { readMultiMode } from './readers/read-multi-mode.ts';
import { readMultiSkill } from './readers/read-multi-skill.ts';
import { readOrienteering } from './readers/read-orienteering.ts';
import { readProjectMax } from './readers/read-project-max.ts';
import { readProject } from './readers/read-project.ts';

export interface Instance {
  readonly name: string;
  /** What it is summed up with: its folder, or its campaign size. */
  readonly set: string;
  /** 1: the objective as it stands; -1: the model minimises the negated value, as published values are maxima. */
  readonly sense: 1 | -1;
  readonly bestKnown: BestKnown | null;
  readonly load: () => Model;
}

const READERS: Readonly<Record<string, (text: string, name: string) => Model>> = {
  sm: readProject,
  mm: readMultiMode,
  sch: readProjectMax,
  jss: readJobShop,
  dzn: readMultiSkill,
  txt: readOrienteering,
};

/**
 * The instances behind files, folders (walked) and patterns with `*`, sorted by path. A path that does not exist from the
 * working folder is looked for under the folder of open instances: HANDRAIL_BENCH, or `../shared/bench`.
 */
export function findInstances(paths: readonly string[]): Instance[] {
  const files = paths.flatMap((path) => {
    const found = filesBehind(path);
    if (found.length === 0) throw new Error(`no instances behind ${path}`);
    return found;
  });
  const bestKnown = new Map<string, Map<string, BestKnown>>();
  return [...new Set(files)].map((file) => {
    const folder = dirname(file);
    if (!bestKnown.has(folder)) bestKnown.set(folder, readBestKnown(folder));
    const ending = endingOf(file);
    const name = basename(file).replace(/\.\w+$/, '');
    const reader = READERS[ending] as (text: string, name: string) => Model;
    return {
      name,
      set: setName(folder),
      sense: ending === 'txt' ? -1 : 1,
      bestKnown: bestKnown.get(folder)?.get(instanceName(name)) ?? null,
      load: () => reader(readFileSync(file, 'utf8'), name),
    };
  });
}

export function benchFolder(): string {
  return process.env['HANDRAIL_BENCH'] ?? resolve(import.meta.dirname, '../../../shared/bench');
}

function setName(folder: string): string {
  const inBench = relative(benchFolder(), folder);
  return inBench.startsWith('..') ? basename(folder) : inBench;
}

function endingOf(file: string): string {
  return (file.split('.').at(-1) ?? '').toLowerCase();
}

function filesBehind(path: string): string[] {
  const roots = [process.env['INIT_CWD'] ?? process.cwd(), process.cwd(), benchFolder()];
  for (const root of roots) {
    const whole = resolve(root, path);
    const base = whole.includes('*') ? dirname(whole.slice(0, whole.indexOf('*') + 1)) : whole;
    if (!existsSync(base)) continue;
    const files = walk(base).filter((file) => endingOf(file) in READERS);
    const chosen = base === whole ? files : files.filter((file) => matches(file, whole));
    if (chosen.length > 0) return chosen;
  }
  return [];
}

function walk(path: string): string[] {
  if (!statSync(path).isDirectory()) return [path];
  const entries = readdirSync(path).sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  return entries.flatMap((entry) => walk(join(path, entry)));
}

function matches(file: string, pattern: string): boolean {
  const literal = pattern.split('*').map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${literal.join('[^/]*')}$`).test(file);
}
