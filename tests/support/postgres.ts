/**
 * A PostgreSQL of its own for a test file: a cluster in a temporary folder, on a socket and a free port, gone afterwards. With
 * DATABASE_URL set that server is used instead, each time with a database of its own.
 */
import { execFileSync, spawn } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

export interface StartedPostgres {
  /** Address of a fresh, empty database. */
  readonly freshDatabase: () => Promise<string>;
  readonly stop: () => Promise<void>;
}

export async function startPostgres(): Promise<StartedPostgres> {
  const given = process.env['DATABASE_URL'];
  if (given !== undefined) return { freshDatabase: () => freshDatabase(given), stop: async () => {} };
  const bin = binFolder();
  const folder = mkdtempSync(join(tmpdir(), 'handrail-postgres-'));
  // PostgreSQL refuses to run as root; its own account is there where it was installed.
  const owner = process.getuid?.() === 0 ? accountOf('postgres') : null;
  const as = owner === null ? {} : { uid: owner.uid, gid: owner.gid };
  if (owner !== null) chownSync(folder, owner.uid, owner.gid);
  const data = join(folder, 'data');
  execFileSync(join(bin, 'initdb'), ['-D', data, '-U', 'handrail', '--auth=trust', '-E', 'UTF8', '--no-sync'], {
    ...as,
    stdio: 'ignore',
  });
  const port = await freePort();
  const server = spawn(
    join(bin, 'postgres'),
    ['-D', data, '-p', String(port), '-k', folder, '-c', 'listen_addresses=127.0.0.1'],
    { ...as, stdio: 'ignore' },
  );
  const address = `postgresql://handrail@127.0.0.1:${port}/postgres`;
  await reached(address);
  return {
    freshDatabase: () => freshDatabase(address),
    stop: async () => {
      const ended = new Promise((resolve) => server.once('exit', resolve));
      server.kill('SIGINT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

let count = 0;

async function freshDatabase(address: string): Promise<string> {
  const name = `handrail_test_${process.pid}_${Date.now()}_${++count}`;
  const client = new pg.Client({ connectionString: address });
  await client.connect();
  await client.query(`create database ${name}`);
  await client.end();
  const fresh = new URL(address);
  fresh.pathname = `/${name}`;
  return fresh.href;
}

function binFolder(): string {
  const versions = existsSync('/usr/lib/postgresql')
    ? readdirSync('/usr/lib/postgresql').sort((a, b) => Number(b) - Number(a))
    : [];
  const found = versions
    .map((version) => `/usr/lib/postgresql/${version}/bin`)
    .find((bin) => existsSync(join(bin, 'initdb')));
  if (found === undefined)
    throw new Error(
      'the storage tests need PostgreSQL: install it (Debian: apt-get install postgresql) or set DATABASE_URL',
    );
  return found;
}

function accountOf(name: string): { readonly uid: number; readonly gid: number } {
  const id = (flag: string): number => Number(execFileSync('id', [flag, name], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

async function freePort(): Promise<number> {
  const probe = createServer();
  await new Promise<void>((resolve) => probe.listen(0, '127.0.0.1', resolve));
  const address = probe.address();
  await new Promise((resolve) => probe.close(resolve));
  if (address === null || typeof address === 'string') throw new Error('no free port');
  return address.port;
}

async function reached(address: string): Promise<void> {
  for (let tries = 0; ; tries++) {
    const client = new pg.Client({ connectionString: address });
    try {
      await client.connect();
      await client.end();
      return;
    } catch (cause) {
      if (tries > 150) throw cause;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
}
