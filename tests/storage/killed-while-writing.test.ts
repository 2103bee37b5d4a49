/** The server is killed as a power cut would, again and again, while several people save. What it acknowledged is there afterwards. */
import { type ChildProcess, spawn } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { packProgram } from '../../tools/pack-program.ts';

/** HANDRAIL_KILLS=200 for the long run. */
const KILLS = Number(process.env['HANDRAIL_KILLS'] ?? 12);
const WRITERS = 4;
const ROOT = join(import.meta.dirname, '..', '..');

let folder: string;
let program: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'handrail-killed-'));
  program = join(folder, 'server.mjs');
  await packProgram('server', program);
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  copyFileSync(join(ROOT, 'examples/first-campaign.kdl'), join(folder, 'plan.kdl'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test(`after ${KILLS} kills nothing that was acknowledged is lost`, async () => {
  /** Texts that the server said are kept, by number of their version. */
  const acknowledged = new Map<number, string>();
  for (let kill = 0; kill < KILLS; kill++) {
    const { child, address } = await started();
    const [{ id }] = (await ask(address, 'GET', '/api/campaigns')) as [{ id: string }];
    await expectKept(address, id, acknowledged);
    const over = new AbortController();
    const writers = Array.from({ length: WRITERS }, async (_, writer) => {
      for (let count = 0; !over.signal.aborted; count++) {
        try {
          const { head } = (await ask(address, 'GET', `/api/campaigns/${id}`)) as { head: { number: number } };
          const text = `// kill ${kill}, writer ${writer}, save ${count}\n`;
          const saved = (await ask(address, 'POST', `/api/campaigns/${id}/versions`, {
            parent: head.number,
            text,
            timeline: null,
            message: 'm',
          })) as { number: number };
          acknowledged.set(saved.number, text);
        } catch {
          // Refused because another was first, or the server is gone: nothing was acknowledged.
        }
      }
    });
    await new Promise((resolve) => setTimeout(resolve, 40 + ((kill * 37) % 160)));
    child.kill('SIGKILL');
    await new Promise((resolve) => child.once('exit', resolve));
    over.abort();
    await Promise.all(writers);
  }
  const { child, address } = await started();
  const [{ id }] = (await ask(address, 'GET', '/api/campaigns')) as [{ id: string }];
  await expectKept(address, id, acknowledged);
  child.kill('SIGKILL');
  process.stdout.write(`${KILLS} kills, ${acknowledged.size} acknowledged versions, all kept\n`);
  expect(acknowledged.size).toBeGreaterThan(KILLS);
}, 900_000);

async function expectKept(address: string, id: string, acknowledged: ReadonlyMap<number, string>): Promise<void> {
  const versions = (await ask(address, 'GET', `/api/campaigns/${id}/versions`)) as readonly {
    readonly number: number;
  }[];
  const numbers = versions.map(({ number }) => number);
  // Numbers have no gap: nothing was taken away in between.
  expect(numbers).toEqual(Array.from({ length: numbers.length }, (_, index) => numbers.length - index));
  const there = new Set(numbers);
  expect([...acknowledged.keys()].filter((number) => !there.has(number))).toEqual([]);
  for (const [number, text] of [...acknowledged].slice(-WRITERS * 4)) {
    expect(((await ask(address, 'GET', `/api/campaigns/${id}/versions/${number}`)) as { text: string }).text).toBe(
      text,
    );
  }
}

async function started(): Promise<{ readonly child: ChildProcess; readonly address: string }> {
  const child = spawn(process.execPath, [program, 'open', join(folder, 'plan.kdl'), '--port', '0'], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let words = '';
  const address = await new Promise<string>((resolve, reject) => {
    const hear = (part: Buffer): void => {
      words += part.toString();
      const found = /at (http:\/\/\S+)/.exec(words)?.[1];
      if (found !== undefined) resolve(found);
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', () => reject(new Error(words)));
  });
  return { child, address };
}

async function ask(address: string, method: string, path: string, body?: unknown): Promise<unknown> {
  const answer = await fetch(address + path, {
    method,
    headers: { 'x-handrail': '1', ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}
