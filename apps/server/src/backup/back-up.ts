/** `backup`: everything that a folder of campaigns holds in one file, taken while the server runs. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import Database from 'better-sqlite3';
import { storeFile } from '../storage/store-file.ts';

/** @returns what was written, in words */
export async function backUp(folder: string, file: string): Promise<string> {
  const store = storeFile(folder, null);
  if (!existsSync(store))
    throw new Error(`${folder} holds no store: was it ever served? (on PostgreSQL use pg_dump, see docs/server.md)`);
  if (existsSync(file)) throw new Error(`${file} is there already: a backup is never written over`);
  const draft = `${file}.part`;
  rmSync(draft, { force: true });
  const source = new Database(store, { readonly: true, timeout: 10_000 });
  try {
    await source.backup(draft);
  } finally {
    source.close();
  }
  const copy = new Database(draft);
  let files = 0;
  try {
    copy.pragma('journal_mode = DELETE');
    copy.exec('create table backup_files (path text primary key, bytes blob not null)');
    // Sessions are keys to doors: they have no place in a copy that is carried around.
    copy.exec('delete from sessions; delete from failed_logins');
    const insert = copy.prepare('insert into backup_files values (?, ?)');
    for (const path of filesOf(folder)) {
      insert.run(path, readFileSync(join(folder, path)));
      files += 1;
    }
    copy.exec('vacuum');
    if (copy.pragma('integrity_check', { simple: true }) !== 'ok')
      throw new Error('the copy does not hold together; nothing was written');
  } finally {
    copy.close();
  }
  renameSync(draft, file);
  const hash = hashOfFile(file);
  writeFileSync(`${file}.sha256`, `${hash}  ${basename(file)}\n`);
  return `wrote ${file} (${statSync(file).size} bytes, ${files} files)\nsha256 ${hash}   also in ${file}.sha256`;
}

export function hashOfFile(file: string): string {
  return createHash('sha256').update(readFileSync(file)).digest('hex');
}

/** Campaign files, timelines, and drawings. */
function filesOf(folder: string): string[] {
  const found: string[] = [];
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.name.startsWith('.')) continue;
    if (entry.isFile() && /\.(kdl|timeline\.json)$/.test(entry.name)) found.push(entry.name);
    if (entry.isDirectory() && entry.name.endsWith('.models')) {
      for (const name of readdirSync(join(folder, entry.name)))
        if (/^[a-z0-9-]+\.glb$/.test(name)) found.push(`${entry.name}/${name}`);
    }
  }
  return found;
}
