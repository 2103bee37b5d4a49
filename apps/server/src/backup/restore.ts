/** `restore`: a folder of campaigns out of a backup, only into a folder that holds nothing. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { SCHEMA_VERSION } from '../storage/migrations.ts';
import { storeFile } from '../storage/store-file.ts';
import { hashOfFile } from './back-up.ts';

const OUR_PATH = /^[^./\\][^/\\]*(\/[a-z0-9-]+\.glb)?$/;

/** @returns what was restored, in words */
export async function restore(file: string, folder: string): Promise<string> {
  if (!existsSync(file)) throw new Error(`${file}: there is no such file`);
  if (existsSync(folder) && readdirSync(folder).length > 0)
    throw new Error(`${folder} is not empty: nothing is ever restored over something`);
  const hash = hashOfFile(file);
  const note = `${file}.sha256`;
  const isNoted = existsSync(note);
  if (isNoted && !readFileSync(note, 'utf8').startsWith(hash))
    throw new Error(`${file} is not what was backed up: its sha256 is ${hash}, ${note} says another`);
  const backup = opened(file);
  try {
    const version = versionOf(backup);
    if (version > SCHEMA_VERSION)
      throw new Error(
        `${file} is of version ${version}, this program knows up to ${SCHEMA_VERSION}: use the newer program`,
      );
    const rows = backup.prepare('select path, bytes from backup_files').all() as { path: string; bytes: Buffer }[];
    const foreign = rows.find(({ path }) => !OUR_PATH.test(path));
    if (foreign !== undefined) throw new Error(`${file} holds a path that is none of ours: ${foreign.path}`);
    mkdirSync(join(folder, '.handrail'), { recursive: true });
    await backup.backup(storeFile(folder, null));
    for (const { path, bytes } of rows) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), bytes, { flag: 'wx' });
    }
    const store = new Database(storeFile(folder, null));
    store.exec('drop table backup_files; vacuum');
    const campaigns = store.prepare('select count(*) as n from campaigns').get() as { n: number };
    const versions = store.prepare('select count(*) as n from versions').get() as { n: number };
    store.close();
    const checked = isNoted ? 'sha256 as noted' : `no ${note}: sha256 not compared`;
    return `restored ${campaigns.n} campaigns with ${versions.n} versions and ${rows.length} files into ${folder} (${checked}, integrity ok)`;
  } finally {
    backup.close();
  }
}

function opened(file: string): Database.Database {
  const broken = (): Error => new Error(`${file} is no backup of ours, or it is damaged`);
  let backup: Database.Database;
  try {
    backup = new Database(file, { readonly: true });
    if (backup.pragma('integrity_check', { simple: true }) !== 'ok') throw broken();
  } catch {
    throw broken();
  }
  return backup;
}

function versionOf(backup: Database.Database): number {
  try {
    return (backup.prepare('select version from schema_version').get() as { version: number }).version;
  } catch {
    throw new Error('the file is no backup of ours: it says no version');
  }
}
