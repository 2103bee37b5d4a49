/** A server in this process, on a free port, with a folder of its own and an account for each role. */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Role } from '@handrail/wire/api/api-types';
import { hashPassword } from '../../apps/server/src/accounts/passwords.ts';
import type { ServerOptions } from '../../apps/server/src/server-options.ts';
import { type StartedServer, startServer } from '../../apps/server/src/start-server.ts';
import { openSqlite } from '../../apps/server/src/storage/open-store.ts';
import { storeFile } from '../../apps/server/src/storage/store-file.ts';
import { mkdirSync } from 'node:fs';

export const PASSWORD = 'a long enough word';
export const ROLES: readonly Role[] = ['viewer', 'planner', 'approver', 'console', 'administrator'];

export interface Served {
  readonly server: StartedServer;
  readonly folder: string;
  /** Cookie of somebody with this role alone; '' for nobody, `none` for an account without roles. */
  readonly cookies: Readonly<Record<string, string>>;
  readonly ask: (
    method: string,
    path: string,
    more?: Asking,
  ) => Promise<{ readonly status: number; readonly body: unknown }>;
  readonly end: () => Promise<void>;
}
export interface Asking {
  readonly as?: string;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

export async function served(options: Partial<ServerOptions> = {}): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'handrail-server-'));
  copyFileSync('examples/first-campaign.kdl', join(folder, 'first.kdl'));
  mkdirSync(join(folder, '.handrail'), { recursive: true });
  const storage = await openSqlite(storeFile(folder, null));
  const passwordHash = await hashPassword(PASSWORD);
  for (const [index, name] of [...ROLES, 'none'].entries()) {
    const roles = name === 'none' ? [] : [name as Role];
    await storage.accounts.addUser(
      { id: `00000000-0000-4000-8000-00000000000${index}`, name, roles, isLocked: false, passwordHash },
      name,
    );
  }
  await storage.close();
  const server = await startServer(
    {
      mode: 'accounts',
      folder,
      file: null,
      host: '127.0.0.1',
      port: 0,
      publicAddress: null,
      databaseUrl: null,
      page: null,
      metricsToken: null,
      perMinute: { requests: 1_000_000_000, logins: 1000 },
      localUser: 'x',
      ...options,
    },
    () => {},
  );
  const cookies: Record<string, string> = { nobody: '' };
  const send = async (method: string, path: string, { as = 'nobody', body, headers = {} }: Asking = {}) => {
    const answer = await fetch(server.address + path, {
      method,
      headers: {
        'x-handrail': '1',
        cookie: cookies[as] ?? '',
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const words = answer.headers.get('content-type')?.includes('event-stream') === true ? '' : await answer.text();
    if (words === '') await answer.body?.cancel().catch(() => {});
    return { status: answer.status, body: parsed(words), setCookie: answer.headers.get('set-cookie') };
  };
  for (const name of [...ROLES, 'none']) {
    const { setCookie } = await send('POST', '/api/login', { body: { name, password: PASSWORD } });
    cookies[name] = setCookie?.split(';')[0] ?? '';
  }
  return {
    server,
    folder,
    cookies,
    ask: send,
    end: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function parsed(words: string): unknown {
  try {
    return JSON.parse(words);
  } catch {
    return words;
  }
}
