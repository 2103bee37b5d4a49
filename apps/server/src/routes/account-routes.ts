/** Sessions, the first account, and the accounts that an administrator keeps. */
import { randomUUID, timingSafeEqual } from 'node:crypto';
import type { Role, SessionAnswer, UserRow } from '@handrail/wire/api/api-types';
import { CAUTION } from '@handrail/eva/brief/brief-input';
import { hashPassword, isPassword, nameKey } from '../accounts/passwords.ts';
import { beginSession, tokenHash, userOfSession } from '../accounts/sessions.ts';
import { cookieName } from '../http/session-cookie.ts';
import { ServerFault } from '../server-fault.ts';
import { PROGRAM_VERSION } from '../server-options.ts';
import type { Person, Serving } from '../serving.ts';
import type { User } from '../storage/storage.ts';
import type { Asked, Handlers } from './handlers.ts';

const MOST_TRIES = 10;
const LOCK_MS = 15 * 60_000;
/** Whoever sets the server up has everything but the approver's word, which is another person's; they can give themselves that too. */
const FIRST_ROLES: readonly Role[] = ['administrator', 'planner'];

export const accountRoutes: Pick<
  Handlers,
  'readSession' | 'setUp' | 'signIn' | 'signOut' | 'changePassword' | 'listUsers' | 'addUser' | 'changeUser'
> = {
  readSession: async (serving, { who }) => await sessionAnswer(serving, who),
  setUp: async (serving, asked) => {
    mustHaveAccounts(serving);
    const { name, password, token } = asked.body;
    const { accounts } = serving.storage;
    if ((await accounts.users()).length > 0) throw alreadySetUp();
    if (!isSame(token, serving.setupToken)) throw new ServerFault('setup/wrong-token', 'the token is another one');
    const user = await newUser(name, password, FIRST_ROLES);
    if (!(await accounts.addFirstUser(user, nameKey(name)))) throw alreadySetUp();
    return await signedIn(serving, asked, user);
  },
  signIn: async (serving, asked) => {
    mustHaveAccounts(serving);
    const { name, password } = asked.body;
    const { accounts } = serving.storage;
    const key = nameKey(name);
    const nowMs = Date.now();
    const { tries, lastUtcMs } = await accounts.failedLogins(key);
    if (tries >= MOST_TRIES && nowMs - lastUtcMs < LOCK_MS) {
      const minutes = Math.ceil((LOCK_MS - (nowMs - lastUtcMs)) / 60_000);
      throw new ServerFault(
        'session/too-many-tries',
        `too many wrong passwords; the name is free again in ${minutes} min`,
      );
    }
    const user = await accounts.userNamed(key);
    if (!(await isPassword(user?.passwordHash ?? null, password)) || user === null) {
      await accounts.countFailedLogin(key, nowMs, nowMs - LOCK_MS);
      await serving.storage.audit.write({ atUtcMs: nowMs, by: '', what: 'sign-in refused', of: key });
      throw new ServerFault('session/wrong-name-or-password', 'name and password do not belong together');
    }
    if (user.isLocked) throw new ServerFault('session/account-is-locked', `the account "${user.name}" is locked`);
    await accounts.forgetFailedLogins(key);
    return await signedIn(serving, asked, user);
  },
  signOut: async (serving, { request, reply }) => {
    mustHaveAccounts(serving);
    const token = request.cookies[cookieName(serving.options)];
    if (token !== undefined) await serving.storage.accounts.endSession(tokenHash(token));
    reply.clearCookie(cookieName(serving.options), { path: '/' });
  },
  changePassword: async (serving, { who, body, request }) => {
    mustHaveAccounts(serving);
    const { accounts } = serving.storage;
    const user = await accounts.user(who.id);
    if (user === null || !(await isPassword(user.passwordHash, body.old))) {
      throw new ServerFault('session/wrong-password', 'the old password is another one');
    }
    await accounts.changeUser(user.id, { passwordHash: await hashPassword(body.password) });
    const token = request.cookies[cookieName(serving.options)];
    await accounts.endSessionsOf(user.id, token === undefined ? undefined : tokenHash(token));
  },
  listUsers: async (serving) => {
    mustHaveAccounts(serving);
    return (await serving.storage.accounts.users()).map(rowOf);
  },
  addUser: async (serving, { body }) => {
    mustHaveAccounts(serving);
    const user = await newUser(body.name, body.password, body.roles);
    if (!(await serving.storage.accounts.addUser(user, nameKey(body.name)))) {
      throw new ServerFault('user/name-is-taken', `there is an account "${body.name}" already`);
    }
    return rowOf(user);
  },
  changeUser: async (serving, { params, body }) => {
    mustHaveAccounts(serving);
    const { accounts } = serving.storage;
    const user = await accounts.user(params.id);
    if (user === null) throw new ServerFault('user/unknown', `there is no account "${params.id}"`);
    const changed = { roles: body.roles ?? user.roles, isLocked: body.isLocked ?? user.isLocked };
    const others = (await accounts.users()).filter(({ id }) => id !== user.id);
    if (!keepsAccounts(changed) && !others.some(keepsAccounts)) {
      throw new ServerFault('user/last-administrator', `"${user.name}" is the only administrator`);
    }
    const passwordHash = body.password === undefined ? user.passwordHash : await hashPassword(body.password);
    await accounts.changeUser(user.id, { ...changed, passwordHash });
    if (changed.isLocked || body.password !== undefined) await accounts.endSessionsOf(user.id);
    serving.live.dismiss(user.id);
    return rowOf({ ...user, ...changed });
  },
};

const keepsAccounts = ({ roles, isLocked }: Pick<User, 'roles' | 'isLocked'>): boolean =>
  roles.includes('administrator') && !isLocked;
const rowOf = ({ id, name, roles, isLocked }: User): UserRow => ({ id, name, roles: [...roles], isLocked });
const alreadySetUp = (): ServerFault => new ServerFault('setup/already-done', 'the first account has been made');

function mustHaveAccounts({ options }: Serving): void {
  if (options.mode === 'open') throw new ServerFault('session/no-accounts-here', 'there are no accounts here');
}

async function newUser(name: string, password: string, roles: readonly Role[]): Promise<User> {
  return {
    id: randomUUID(),
    name,
    roles: [...new Set(roles)],
    isLocked: false,
    passwordHash: await hashPassword(password),
  };
}

async function signedIn(
  serving: Serving,
  { request, reply }: Asked<'signIn'> | Asked<'setUp'>,
  user: User,
): Promise<SessionAnswer> {
  const { accounts } = serving.storage;
  const name = cookieName(serving.options);
  const before = request.cookies[name];
  if (before !== undefined && (await userOfSession(accounts, before)) !== null)
    await accounts.endSession(tokenHash(before));
  reply.setCookie(name, await beginSession(accounts, user.id), {
    path: '/',
    httpOnly: true,
    sameSite: 'strict',
    secure: serving.options.publicAddress !== null,
  });
  await serving.storage.audit.write({ atUtcMs: Date.now(), by: user.name, what: 'sign-in', of: user.id });
  return await sessionAnswer(serving, user);
}

async function sessionAnswer(serving: Serving, who: Person): Promise<SessionAnswer> {
  const { options, storage } = serving;
  const user = who.id === '' ? null : { id: who.id, name: who.name, roles: [...who.roles] };
  const first =
    options.file === null
      ? null
      : ((await storage.campaigns.files()).find(({ file }) => file === options.file)?.id ?? null);
  const needsSetup = options.mode === 'accounts' && (await storage.accounts.users()).length === 0;
  return { mode: options.mode, needsSetup, user, program: PROGRAM_VERSION, caution: CAUTION, first };
}

function isSame(given: string, right: string): boolean {
  const [one, other] = [tokenHash(given), tokenHash(right)].map((hash) => Buffer.from(hash));
  return one !== undefined && other !== undefined && timingSafeEqual(one, other);
}
