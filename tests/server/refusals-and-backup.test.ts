/** Refusals by their published code, and a copy of everything that comes back whole. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { API_ERRORS } from '@handrail/wire/api/api-errors';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { backUp } from '../../apps/server/src/backup/back-up.ts';
import { restore } from '../../apps/server/src/backup/restore.ts';
import { openSqlite } from '../../apps/server/src/storage/open-store.ts';
import { storeFile } from '../../apps/server/src/storage/store-file.ts';
import { type Asking, PASSWORD, type Served, served } from './served.ts';

let here: Served;
let id = '';
const work = { text: '// changed\n', timeline: null, message: 'm' };
beforeAll(async () => {
  here = await served();
  const { body } = await here.ask('GET', '/api/campaigns', { as: 'viewer' });
  id = (body as readonly { readonly id: string }[])[0]?.id ?? '';
});
afterAll(() => here?.end());

type Case = readonly [code: keyof typeof API_ERRORS, method: string, path: () => string, asking: Asking];
const CASES: readonly Case[] = [
  ['request/wrong-shape', 'POST', () => '/api/campaigns', { as: 'planner', body: { title: '' } }],
  ['request/not-readable', 'POST', () => '/api/campaigns', { as: 'planner', body: '{' }],
  ['session/not-signed-in', 'GET', () => '/api/campaigns', {}],
  [
    'session/wrong-name-or-password',
    'POST',
    () => '/api/login',
    { body: { name: 'viewer', password: 'another word' } },
  ],
  ['session/not-allowed', 'GET', () => '/api/users', { as: 'viewer' }],
  [
    'session/wrong-password',
    'POST',
    () => '/api/password',
    { as: 'viewer', body: { old: 'another word', password: 'a longer word yet' } },
  ],
  [
    'request/not-from-this-page',
    'POST',
    () => '/api/logout',
    { as: 'viewer', headers: { origin: 'https://elsewhere.example' } },
  ],
  ['campaign/unknown', 'GET', () => '/api/campaigns/nowhere', { as: 'viewer' }],
  ['version/unknown', 'GET', () => `/api/campaigns/${id}/versions/999`, { as: 'viewer' }],
  [
    'user/unknown',
    'PATCH',
    () => '/api/users/00000000-0000-4000-8000-0000000000ff',
    { as: 'administrator', body: { isLocked: true } },
  ],
  ['model/unknown', 'GET', () => `/api/campaigns/${id}/models/none.glb`, { as: 'viewer' }],
  ['request/unknown-path', 'GET', () => '/api/nothing', { as: 'viewer' }],
  ['setup/already-done', 'POST', () => '/api/setup', { body: { name: 'x', password: PASSWORD, token: 'x' } }],
  [
    'user/name-is-taken',
    'POST',
    () => '/api/users',
    { as: 'administrator', body: { name: 'Viewer', password: PASSWORD, roles: [] } },
  ],
  [
    'user/last-administrator',
    'PATCH',
    () => '/api/users/00000000-0000-4000-8000-000000000004',
    { as: 'administrator', body: { roles: [] } },
  ],
  [
    'version/parent-is-not-head',
    'POST',
    () => `/api/campaigns/${id}/versions`,
    { as: 'planner', body: { ...work, parent: 77 } },
  ],
  ['request/too-large', 'POST', () => '/api/login', { body: { name: 'x'.repeat(70_000), password: 'x' } }],
  [
    'request/wrong-media-type',
    'POST',
    () => '/api/campaigns',
    { as: 'planner', body: 'x', headers: { 'content-type': 'application/xml' } },
  ],
  [
    'model/not-a-drawing',
    'PUT',
    () => `/api/campaigns/${id}/models/core.glb`,
    { as: 'planner', body: 'no drawing', headers: { 'content-type': 'model/gltf-binary' } },
  ],
];

describe('what is refused is refused by its published code and status', () => {
  test.each(CASES)('%s', async (code, method, path, asking) => {
    const { status, body } = await here.ask(method, path(), asking);
    expect([status, (body as { code?: string }).code]).toEqual([API_ERRORS[code][0], code]);
    expect((body as { message: string }).message.length).toBeGreaterThan(8);
  });

  test('every code that is published stands in the reference', () => {
    const page = readFileSync('docs/reference/server.md', 'utf8');
    for (const code of Object.keys(API_ERRORS)) expect(page).toContain(`\`${code}\``);
  });

  test('ten wrong passwords in a row lock a name, for the right one too', async () => {
    for (let tries = 0; tries < 10; tries++)
      await here.ask('POST', '/api/login', { body: { name: 'console', password: `wrong ${tries} word` } });
    const { status, body } = await here.ask('POST', '/api/login', { body: { name: 'console', password: PASSWORD } });
    expect([status, (body as { code: string }).code]).toEqual([429, 'session/too-many-tries']);
  });
});

describe('a file', () => {
  test('is written with every saved version, and what was changed outside is met before anything is saved', async () => {
    const opened = (await here.ask('GET', `/api/campaigns/${id}`, { as: 'viewer' })).body as {
      head: { number: number; text: string };
    };
    const first = await here.ask('POST', `/api/campaigns/${id}/versions`, {
      as: 'planner',
      body: { ...work, text: `${opened.head.text}// saved here\n`, parent: opened.head.number },
    });
    expect(first.status).toBe(201);
    const file = join(here.folder, 'first.kdl');
    expect(readFileSync(file, 'utf8')).toContain('// saved here');
    writeFileSync(file, `${readFileSync(file, 'utf8')}// changed outside\n`);
    const second = await here.ask('POST', `/api/campaigns/${id}/versions`, {
      as: 'planner',
      body: { ...work, parent: opened.head.number + 1 },
    });
    const { code, head } = second.body as { code: string; head: { text: string } };
    expect([second.status, code]).toEqual([409, 'version/parent-is-not-head']);
    expect(head.text).toContain('// changed outside');
    expect(readFileSync(file, 'utf8')).toContain('// changed outside');
  });
});

describe('a backup', () => {
  test('taken while the server runs brings back campaigns, versions and accounts, and is never written over', async () => {
    const place = mkdtempSync(join(tmpdir(), 'handrail-backup-'));
    try {
      const file = join(place, 'all.backup');
      expect(await backUp(here.folder, file)).toMatch(/SHA-256|[0-9a-f]{64}/);
      await expect(backUp(here.folder, file)).rejects.toThrow(/there already/);
      const elsewhere = join(place, 'folder');
      await restore(file, elsewhere);
      expect(existsSync(storeFile(elsewhere, null))).toBe(true);
      const [kept, source] = [
        await openSqlite(storeFile(elsewhere, null)),
        await openSqlite(storeFile(here.folder, null)),
      ];
      expect(await kept.campaigns.versions(id)).toEqual(await source.campaigns.versions(id));
      expect(await kept.accounts.users()).toEqual(await source.accounts.users());
      await kept.close();
      await source.close();
    } finally {
      rmSync(place, { recursive: true, force: true });
    }
  });

  test('that was spoilt is refused with a reason, and nothing is touched', async () => {
    const place = mkdtempSync(join(tmpdir(), 'handrail-backup-'));
    try {
      const file = join(place, 'all.backup');
      await backUp(here.folder, file);
      const bytes = readFileSync(file);
      writeFileSync(file, bytes.subarray(0, Math.floor(bytes.length / 2)));
      await expect(restore(file, join(place, 'folder'))).rejects.toThrow();
      expect(existsSync(join(place, 'folder', '.handrail'))).toBe(false);
    } finally {
      rmSync(place, { recursive: true, force: true });
    }
  });
});
