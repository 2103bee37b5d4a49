/** The page in a real browser, against the real server on a free port with a folder of its own. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { buildPage } from '../../tools/build-page.ts';
import { launchBrowser } from './browser.ts';

const ROOT = join(import.meta.dirname, '..', '..');
export const PASSWORD = 'a long enough word';

export interface Server {
  readonly address: string;
  /** For the first account; null: there is one already. */
  readonly token: string | null;
  /** As a power cut does it. */
  readonly kill: () => Promise<void>;
}

export async function startServer(folder: string, port = 0): Promise<Server> {
  const child = spawn(
    process.execPath,
    [
      '--import',
      'tsx',
      join(ROOT, 'apps', 'server', 'src', 'main.ts'),
      'serve',
      folder,
      '--port',
      String(port),
      '--page',
      buildPage(),
    ],
    { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  const words = await spoken(child, /Ctrl-C/);
  const address = /(http:\/\/[^\s]+)/.exec(words)?.[1];
  if (address === undefined) throw new Error(`the server said no address: ${words}`);
  return {
    address,
    token: /token:? (\S+)/.exec(words)?.[1] ?? null,
    kill: () =>
      new Promise((resolve) => {
        child.once('exit', () => resolve());
        child.kill('SIGKILL');
      }),
  };
}

function spoken(child: ChildProcess, until: RegExp): Promise<string> {
  return new Promise((resolve, reject) => {
    let words = '';
    child.stdout?.on('data', (piece: Buffer) => {
      words += piece.toString();
      // The word for the first account comes a line later.
      if (until.test(words)) setTimeout(() => resolve(words), 300);
    });
    child.stderr?.on('data', (piece: Buffer) => {
      words += piece.toString();
    });
    child.once('exit', () => reject(new Error(`the server ended: ${words}`)));
  });
}

/** A folder with these campaign texts, by name of file. */
function folderWith(files: Readonly<Record<string, string>>): {
  readonly path: string;
  readonly drop: () => void;
} {
  const path = mkdtempSync(join(tmpdir(), 'handrail-folder-'));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(path, name), text);
  return { path, drop: () => rmSync(path, { recursive: true, force: true }) };
}

export interface Person {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page itself called an error. */
  readonly trouble: string[];
}

/** Somebody with a browser of their own, signed in. The first one makes the first account and gives the others theirs. */
export async function personAt(
  browser: Browser,
  server: Server,
  name: string,
  options: BrowserContextOptions = {},
): Promise<Person> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  context.setDefaultTimeout(10_000);
  const headers = { 'x-handrail': '1', 'content-type': 'application/json' };
  const send = (path: string, data: unknown) => context.request.post(`${server.address}${path}`, { data, headers });
  const signedIn = await send('/api/login', { name, password: PASSWORD });
  if (!signedIn.ok() && server.token !== null) {
    const made = await send('/api/setup', { name, password: PASSWORD, token: server.token });
    if (!made.ok()) throw new Error(`${name} has no account: ${await made.text()}`);
    const { user } = (await made.json()) as { readonly user: { readonly id: string } };
    await context.request.patch(`${server.address}/api/users/${user.id}`, {
      data: { roles: ['administrator', 'planner', 'approver'] },
      headers,
    });
  }
  const page = await context.newPage();
  const trouble: string[] = [];
  page.on('pageerror', (error) => trouble.push(error.message));
  return { context, page, trouble };
}

/** Another account, made by an administrator. */
export async function addAccount(by: Person, server: Server, name: string, roles: readonly string[]): Promise<void> {
  const made = await by.context.request.post(`${server.address}/api/users`, {
    data: { name, password: PASSWORD, roles },
    headers: { 'x-handrail': '1' },
  });
  if (!made.ok()) throw new Error(`no account for ${name}: ${await made.text()}`);
}

/** Waits until everything that is worked out is of what is in hand. */
export async function settled(page: Page): Promise<void> {
  await page.locator('[data-testid="verdict"][data-fresh="true"]').waitFor({ timeout: 30_000 });
}

export interface App {
  readonly browser: Browser;
  /** Set anew by whoever starts another one in its place. */
  server: Server;
  /** The folder that is served. */
  readonly folder: string;
  readonly end: () => Promise<void>;
}

/** A browser and a server with these campaign texts. */
export async function appWith(files: Readonly<Record<string, string>>): Promise<App> {
  const folder = folderWith(files);
  const browser = await launchBrowser();
  const app: App = {
    browser,
    server: await startServer(folder.path),
    folder: folder.path,
    end: async () => {
      await browser.close();
      await app.server.kill();
      folder.drop();
    },
  };
  return app;
}
