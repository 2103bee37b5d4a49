/** The server program. "handrail serve", "open", "backup" and "restore" start it; it speaks to the terminal through them. */
import { existsSync, statSync } from 'node:fs';
import { userInfo } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { backUp } from './backup/back-up.ts';
import { restore } from './backup/restore.ts';
import type { ServerOptions } from './server-options.ts';
import { startServer } from './start-server.ts';

const say = (words: string): void => void process.stdout.write(`${words}\n`);

try {
  await run(process.argv.slice(2));
} catch (cause) {
  process.stderr.write(`${cause instanceof Error ? cause.message : String(cause)}\n`);
  process.exitCode = 2;
}

async function run(args: readonly string[]): Promise<void> {
  const { positionals, values } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      host: { type: 'string' },
      port: { type: 'string' },
      'public-address': { type: 'string' },
      page: { type: 'string' },
    },
  });
  const [command, first = '', second = ''] = positionals;
  if (command === 'backup') return say(await backUp(resolve(first), resolve(second)));
  if (command === 'restore') return say(await restore(resolve(first), resolve(second)));
  const target = resolve(first);
  mustBe(command === 'serve' ? 'folder' : 'file', target);
  const options: ServerOptions = {
    mode: command === 'serve' ? 'accounts' : 'open',
    folder: command === 'serve' ? target : dirname(target),
    file: command === 'serve' ? null : basename(target),
    host: values.host ?? '127.0.0.1',
    port: portOf(values.port ?? '4600'),
    publicAddress: values['public-address']?.replace(/\/$/, '') ?? null,
    databaseUrl: command === 'serve' ? (process.env['DATABASE_URL'] ?? null) : null,
    page: pageFolder(values.page),
    metricsToken: process.env['HANDRAIL_METRICS_TOKEN'] ?? null,
    perMinute: { requests: 1200, logins: 20 },
    localUser: userInfo().username,
  };
  const server = await startOnFreePort(options, values.port === undefined);
  say(`Serving ${target} at ${server.address}   (Ctrl-C ends)`);
  if (options.page === null) say('The page is not built: only the answers for programs are served.');
  if (server.setupToken !== null) say(`First account: open the address and give this token: ${server.setupToken}`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => void server.close().then(() => process.exit(0)));
  }
}

/** The next free port is taken only where nobody asked for a certain one. */
async function startOnFreePort(options: ServerOptions, mayMove: boolean) {
  for (let port = options.port; ; port += 1) {
    try {
      return await startServer({ ...options, port }, say);
    } catch (cause) {
      const isTaken = (cause as NodeJS.ErrnoException).code === 'EADDRINUSE';
      if (!isTaken) throw cause;
      if (!mayMove || port > options.port + 50)
        throw new Error(`port ${port} is taken; choose another with --port`, { cause });
    }
  }
}

function portOf(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535) throw new Error(`--port is a number from 0 to 65535, not ${text}`);
  return port;
}

function mustBe(sort: 'folder' | 'file', path: string): void {
  if (!existsSync(path)) throw new Error(`${path}: there is no such ${sort}`);
  if (statSync(path).isDirectory() !== (sort === 'folder')) throw new Error(`${path} is no ${sort}`);
}

/** Packed, the page lies beside the program; in the checkout where it is built. */
function pageFolder(given: string | undefined): string | null {
  const here = import.meta.dirname;
  const places = given === undefined ? [join(here, 'page'), join(here, '../../web/dist/page')] : [resolve(given)];
  return places.find((folder) => existsSync(join(folder, 'index.html'))) ?? null;
}
