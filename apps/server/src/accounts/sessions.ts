/** Sessions: a random token in a cookie, its hash in the store. */
import { createHash, randomBytes } from 'node:crypto';
import type { AccountStore, User } from '../storage/storage.ts';

const HOUR_MS = 3_600_000;
export const IDLE_MS = 12 * HOUR_MS;
export const LONGEST_MS = 7 * 24 * HOUR_MS;
/** Use is written down no more often than this. */
const NOTE_MS = 60_000;

export const tokenHash = (token: string): string => createHash('sha256').update(token).digest('hex');

/** @returns the token for the cookie */
export async function beginSession(accounts: AccountStore, user: string): Promise<string> {
  const nowMs = Date.now();
  await accounts.endSessionsBefore(nowMs - LONGEST_MS, nowMs - IDLE_MS);
  const token = randomBytes(32).toString('base64url');
  await accounts.beginSession(tokenHash(token), user, nowMs);
  return token;
}

/** null: no session, or one that has ended, or of an account that is locked. */
export async function userOfSession(accounts: AccountStore, token: string | undefined): Promise<User | null> {
  if (token === undefined || token.length > 100) return null;
  const hash = tokenHash(token);
  const session = await accounts.session(hash);
  const nowMs = Date.now();
  if (session === null || nowMs - session.begunUtcMs > LONGEST_MS || nowMs - session.usedUtcMs > IDLE_MS) return null;
  const user = await accounts.user(session.user);
  if (user === null || user.isLocked) return null;
  if (nowMs - session.usedUtcMs > NOTE_MS) await accounts.useSession(hash, nowMs);
  return user;
}
