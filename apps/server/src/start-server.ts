/** Opens the store, takes the files in, and listens. */
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { CampaignFolder } from './campaigns/campaign-folder.ts';
import { buildApp } from './http/build-app.ts';
import { LiveHub } from './live/live-hub.ts';
import { refusalOf, type ServerOptions } from './server-options.ts';
import { openPostgres, openSqlite } from './storage/open-store.ts';
import { storeFile } from './storage/store-file.ts';

export interface StartedServer {
  readonly address: string;
  /** null: there are accounts, or none are needed. */
  readonly setupToken: string | null;
  readonly app: FastifyInstance;
  close(): Promise<void>;
}

/** @param say is told what a person at the terminal wants to know */
export async function startServer(options: ServerOptions, say: (words: string) => void): Promise<StartedServer> {
  const refusal = refusalOf(options);
  if (refusal !== null) throw new Error(refusal);
  const file = storeFile(options.folder, options.file);
  mkdirSync(join(options.folder, '.handrail'), { recursive: true });
  const ignore = join(options.folder, '.handrail', '.gitignore');
  if (!existsSync(ignore)) writeFileSync(ignore, '*\n');
  const storage = options.databaseUrl === null ? await openSqlite(file) : await openPostgres(options.databaseUrl);
  const folder = new CampaignFolder(options.folder, storage.campaigns, say);
  await folder.takeIn(options.file);
  const live = new LiveHub(storage.campaigns);
  const setupToken = randomBytes(18).toString('base64url');
  const app = await buildApp({ options, storage, folder, live, setupToken });
  await app.listen({ host: options.host, port: options.port });
  const { port } = app.server.address() as AddressInfo;
  const host = options.host.includes(':') ? `[${options.host}]` : options.host;
  const needsSetup = options.mode === 'accounts' && (await storage.accounts.users()).length === 0;
  return {
    address: options.publicAddress ?? `http://${host}:${port}`,
    setupToken: needsSetup ? setupToken : null,
    app,
    close: async () => {
      live.close();
      await app.close();
      await storage.close();
    },
  };
}
