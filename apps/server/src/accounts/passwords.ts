/** Passwords as argon2id hashes. @source RFC 9106 for the function; OWASP Password Storage Cheat Sheet for 19 MiB and 2 passes (the defaults of the library) */
import { hash, verify } from '@node-rs/argon2';

const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export async function hashPassword(password: string): Promise<string> {
  return await hash(password.normalize('NFKC'), COST);
}

let nobody: Promise<string> | undefined;

/** @param stored null: there is no such account; it takes as long as if there were */
export async function isPassword(stored: string | null, password: string): Promise<boolean> {
  nobody ??= hashPassword('nobody has this password');
  const isRight = await verify(stored ?? (await nobody), password.normalize('NFKC'));
  return stored !== null && isRight;
}

/** Names that look the same are the same. */
export const nameKey = (name: string): string => name.normalize('NFKC').trim().toLowerCase();
