/**
 * Brings data of an older version up to date, one version a step. A migration never guesses: what an older version did not
 * say stays unsaid.
 */
import { Fault } from '@handrail/quantity/fault';

export interface Migration<T> {
  /** It makes version `from + 1` of version `from`. */
  readonly from: number;
  /** What changed, for the person whose file it was. */
  readonly about: string;
  readonly apply: (data: T) => T;
}

export interface Migrated<T> {
  readonly data: T;
  /** What was done, oldest first; empty: it was up to date. */
  readonly done: readonly string[];
}

/**
 * @param version of the data
 * @param target version wanted
 * @throws Fault `wire/newer-version` when the data is newer than the target, `wire/no-migration` when a step is not known
 */
export function migrate<T>(data: T, version: number, target: number, migrations: readonly Migration<T>[]): Migrated<T> {
  if (version > target) {
    throw new Fault('wire/newer-version', `this is version ${version}; this program knows version ${target}`, {
      values: { version, target },
      advice: 'use a newer Handrail',
    });
  }
  let current = data;
  const done: string[] = [];
  for (let at = version; at < target; at++) {
    const migration = migrations.find((one) => one.from === at);
    if (migration === undefined) {
      throw new Fault('wire/no-migration', `no way leads from version ${at} to version ${at + 1}`, {
        values: { version, target, at },
      });
    }
    current = migration.apply(current);
    done.push(migration.about);
  }
  return { data: current, done };
}
