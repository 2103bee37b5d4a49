/** What the server keeps, asked of both databases by the same sentences. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openPostgres, openSqlite } from '../../apps/server/src/storage/open-store.ts';
import type { NewVersion, Storage, User } from '../../apps/server/src/storage/storage.ts';
import { type StartedPostgres, startPostgres } from '../support/postgres.ts';

const folder = mkdtempSync(join(tmpdir(), 'handrail-storage-'));
let postgres: StartedPostgres;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(async () => {
  await postgres?.stop();
  rmSync(folder, { recursive: true, force: true });
});

const version = (words: string, more: Partial<NewVersion> = {}): NewVersion => ({
  author: 'ana',
  atUtcMs: 1_900_000_000_123,
  message: words,
  text: `campaign ${words} "µ → ½ 🛰"`,
  timeline: null,
  level: 2,
  errors: 0,
  ...more,
});
const ana: User = {
  id: '00000000-0000-4000-8000-000000000001',
  name: 'Ana',
  roles: ['planner'],
  isLocked: false,
  passwordHash: 'x',
};

describe.each(['SQLite', 'PostgreSQL'])('on %s', (name) => {
  let place: string;
  let storage: Storage;
  const open = (): Promise<Storage> => (name === 'SQLite' ? openSqlite(place) : openPostgres(place));
  beforeAll(async () => {
    place = name === 'SQLite' ? join(folder, 'store.sqlite') : await postgres.freshDatabase();
    storage = await open();
    await storage.campaigns.add({ id: 'one', title: 'One', file: 'one.kdl' }, version('first'));
  });
  afterAll(() => storage.close());

  test('a campaign begins with version 1, and neither its id nor its file is given twice', async () => {
    const opened = await storage.campaigns.open('one');
    expect(opened?.head).toMatchObject({
      number: 1,
      parent: null,
      author: 'ana',
      message: 'first',
      text: version('first').text,
      atUtcMs: 1_900_000_000_123,
    });
    expect(await storage.campaigns.add({ id: 'one', title: 'Again', file: 'other.kdl' }, version('x'))).toBe(false);
    expect(await storage.campaigns.add({ id: 'two', title: 'Again', file: 'one.kdl' }, version('x'))).toBe(false);
    expect(await storage.campaigns.open('two')).toBeNull();
  });

  test('a version is kept on top of the newest alone; on top of another nothing is written', async () => {
    const saved = await storage.campaigns.save('one', 1, version('second'));
    expect(saved).toMatchObject({ number: 2, parent: 1, text: version('second').text });
    expect(await storage.campaigns.save('one', 1, version('late'))).toBeNull();
    expect((await storage.campaigns.versions('one')).map(({ number, message }) => [number, message])).toEqual([
      [2, 'second'],
      [1, 'first'],
    ]);
    expect(await storage.campaigns.version('one', 1)).toMatchObject({ message: 'first' });
    expect(await storage.campaigns.version('one', 99)).toBeNull();
  });

  test('of many that save at once on top of one version one is kept, and the others are told', async () => {
    await storage.campaigns.add({ id: 'race', title: 'Race', file: 'race.kdl' }, version('start'));
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, index) => storage.campaigns.save('race', 1, version(`try ${index}`))),
    );
    expect(answers.filter((answer) => answer !== null)).toHaveLength(1);
    expect((await storage.campaigns.versions('race')).map(({ number }) => number)).toEqual([2, 1]);
  });

  test('every version is also an event, in order, to be read from any number on', async () => {
    const events = await storage.campaigns.eventsAfter('one', 0);
    const numbers = events.map(({ event }) => event);
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    expect(events.at(-1)?.data).toMatchObject({ kind: 'version', version: { number: 2 } });
    expect(await storage.campaigns.lastEvent('one')).toBe(numbers.at(-1));
    expect(await storage.campaigns.eventsAfter('one', numbers.at(-1) ?? 0)).toEqual([]);
    expect(await storage.campaigns.lastEvent('none')).toBe(0);
  });

  test('a draft is one person’s, is written over by the next, and can be dropped', async () => {
    const draft = { parent: 2, text: 'half a thought', timeline: null, atUtcMs: 1_900_000_000_500 };
    expect(await storage.campaigns.draft('one', ana.id)).toBeNull();
    await storage.campaigns.keepDraft('one', ana.id, draft);
    await storage.campaigns.keepDraft('one', ana.id, { ...draft, text: 'a whole one' });
    expect(await storage.campaigns.draft('one', ana.id)).toEqual({ ...draft, text: 'a whole one' });
    expect(await storage.campaigns.draft('one', 'somebody else')).toBeNull();
    await storage.campaigns.dropDraft('one', ana.id);
    expect(await storage.campaigns.draft('one', ana.id)).toBeNull();
  });

  test('what an approver said stays, newest first, and is an event', async () => {
    await storage.campaigns.approve('one', {
      number: 1,
      decision: 'not agreed',
      note: 'wait',
      by: 'eva',
      atUtcMs: 1_900_000_001_000,
    });
    await storage.campaigns.approve('one', {
      number: 2,
      decision: 'agreed',
      note: '',
      by: 'eva',
      atUtcMs: 1_900_000_002_000,
    });
    expect((await storage.campaigns.approvals('one')).map(({ number, decision }) => [number, decision])).toEqual([
      [2, 'agreed'],
      [1, 'not agreed'],
    ]);
    const last = (await storage.campaigns.eventsAfter('one', 0)).at(-1);
    expect(last?.data).toMatchObject({ kind: 'approval', approval: { number: 2, decision: 'agreed' } });
  });

  test('there is one first account, however many ask at once; later ones have names of their own', async () => {
    const first = await Promise.all(
      [1, 2, 3].map((n) =>
        storage.accounts.addFirstUser(
          { ...ana, id: `00000000-0000-4000-8000-00000000001${n}`, name: `first ${n}` },
          `first ${n}`,
        ),
      ),
    );
    expect(first.filter(Boolean)).toHaveLength(1);
    expect(await storage.accounts.addUser(ana, 'ana')).toBe(true);
    expect(await storage.accounts.addUser({ ...ana, id: '00000000-0000-4000-8000-000000000099' }, 'ana')).toBe(false);
    expect(await storage.accounts.userNamed('ana')).toEqual(ana);
    await storage.accounts.changeUser(ana.id, { roles: ['viewer', 'approver'], isLocked: true });
    expect(await storage.accounts.user(ana.id)).toEqual({ ...ana, roles: ['viewer', 'approver'], isLocked: true });
  });

  test('a session lives until it is ended, alone or with all of its person', async () => {
    for (const token of ['a', 'b', 'c']) await storage.accounts.beginSession(token, ana.id, 1000);
    await storage.accounts.useSession('a', 2000);
    expect(await storage.accounts.session('a')).toEqual({ user: ana.id, begunUtcMs: 1000, usedUtcMs: 2000 });
    await storage.accounts.endSession('b');
    expect(await storage.accounts.session('b')).toBeNull();
    await storage.accounts.endSessionsOf(ana.id, 'a');
    expect(await storage.accounts.session('c')).toBeNull();
    expect(await storage.accounts.session('a')).not.toBeNull();
  });

  test('wrong tries are counted per name and forgotten', async () => {
    await storage.accounts.countFailedLogin('ana', 5000, 0);
    await storage.accounts.countFailedLogin('ana', 6000, 0);
    expect(await storage.accounts.failedLogins('ana')).toEqual({ tries: 2, lastUtcMs: 6000 });
    await storage.accounts.forgetFailedLogins('ana');
    expect((await storage.accounts.failedLogins('ana')).tries).toBe(0);
  });

  test('the audit log is read newest first, page by page', async () => {
    for (const what of ['one', 'two', 'three']) await storage.audit.write({ atUtcMs: 1, by: 'ana', what, of: 'x' });
    const newest = await storage.audit.list(undefined, 2);
    expect(newest.map(({ what }) => what)).toEqual(['three', 'two']);
    expect((await storage.audit.list(newest.at(-1)?.id, 2)).map(({ what }) => what)).toEqual(['one']);
  });

  test('closed and opened again it has everything, and its schema has a number', async () => {
    const before = [
      await storage.campaigns.list(),
      await storage.campaigns.versions('one'),
      await storage.accounts.users(),
    ];
    await storage.close();
    storage = await open();
    expect([
      await storage.campaigns.list(),
      await storage.campaigns.versions('one'),
      await storage.accounts.users(),
    ]).toEqual(before);
    expect(await storage.check()).toBeGreaterThan(0);
  });
});
