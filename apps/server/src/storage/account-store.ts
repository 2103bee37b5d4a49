import { type Kysely, sql } from 'kysely';
import type { Role } from '@handrail/wire/api/api-types';
import type { AccountStore, User } from './storage.ts';
import type { Tables } from './tables.ts';

export function accountStore(database: Kysely<Tables>): AccountStore {
  return {
    users: async () => (await database.selectFrom('users').selectAll().orderBy('name_key').execute()).map(userOf),
    user: async (id) => {
      const row = await database.selectFrom('users').selectAll().where('id', '=', id).executeTakeFirst();
      return row === undefined ? null : userOf(row);
    },
    userNamed: async (nameKey) => {
      const row = await database.selectFrom('users').selectAll().where('name_key', '=', nameKey).executeTakeFirst();
      return row === undefined ? null : userOf(row);
    },
    addUser: async (user, nameKey) => await insertUser(database, user, nameKey),
    addFirstUser: async (user, nameKey) => {
      try {
        // Serializable: of two that both find nobody there, the database lets one through.
        return await database
          .transaction()
          .setIsolationLevel('serializable')
          .execute(async (transaction) => {
            const there = await transaction.selectFrom('users').select('id').executeTakeFirst();
            return there === undefined && (await insertUser(transaction, user, nameKey));
          });
      } catch (cause) {
        if ((await database.selectFrom('users').select('id').executeTakeFirst()) === undefined) throw cause;
        return false;
      }
    },
    changeUser: async (id, { roles, isLocked, passwordHash }) => {
      const change = {
        ...(roles === undefined ? {} : { roles: JSON.stringify(roles) }),
        ...(isLocked === undefined ? {} : { is_locked: isLocked ? 1 : 0 }),
        ...(passwordHash === undefined ? {} : { password_hash: passwordHash }),
      };
      await database.updateTable('users').set(change).where('id', '=', id).execute();
    },
    beginSession: async (tokenHash, user, nowUtcMs) => {
      const row = { token_hash: tokenHash, user_id: user, begun_utc_ms: nowUtcMs, used_utc_ms: nowUtcMs };
      await database.insertInto('sessions').values(row).execute();
    },
    session: async (tokenHash) => {
      const row = await database
        .selectFrom('sessions')
        .selectAll()
        .where('token_hash', '=', tokenHash)
        .executeTakeFirst();
      return row === undefined ? null : { user: row.user_id, begunUtcMs: row.begun_utc_ms, usedUtcMs: row.used_utc_ms };
    },
    useSession: async (tokenHash, nowUtcMs) => {
      await database
        .updateTable('sessions')
        .set({ used_utc_ms: nowUtcMs })
        .where('token_hash', '=', tokenHash)
        .execute();
    },
    endSession: async (tokenHash) => {
      await database.deleteFrom('sessions').where('token_hash', '=', tokenHash).execute();
    },
    endSessionsOf: async (user, but) => {
      let ended = database.deleteFrom('sessions').where('user_id', '=', user);
      if (but !== undefined) ended = ended.where('token_hash', '!=', but);
      await ended.execute();
    },
    endSessionsBefore: async (begunUtcMs, usedUtcMs) => {
      await database
        .deleteFrom('sessions')
        .where((where) => where.or([where('begun_utc_ms', '<', begunUtcMs), where('used_utc_ms', '<', usedUtcMs)]))
        .execute();
    },
    failedLogins: async (nameKey) => {
      const row = await database
        .selectFrom('failed_logins')
        .selectAll()
        .where('name_key', '=', nameKey)
        .executeTakeFirst();
      return { tries: row?.tries ?? 0, lastUtcMs: row?.last_utc_ms ?? 0 };
    },
    countFailedLogin: async (nameKey, nowUtcMs, forgetBeforeUtcMs) => {
      await database.deleteFrom('failed_logins').where('last_utc_ms', '<', forgetBeforeUtcMs).execute();
      await database
        .insertInto('failed_logins')
        .values({ name_key: nameKey, tries: 1, last_utc_ms: nowUtcMs })
        .onConflict((conflict) =>
          conflict.column('name_key').doUpdateSet({ tries: sql`failed_logins.tries + 1`, last_utc_ms: nowUtcMs }),
        )
        .execute();
    },
    forgetFailedLogins: async (nameKey) => {
      await database.deleteFrom('failed_logins').where('name_key', '=', nameKey).execute();
    },
  };
}

async function insertUser(database: Kysely<Tables>, user: User, nameKey: string): Promise<boolean> {
  const written = await database
    .insertInto('users')
    .values({
      id: user.id,
      name: user.name,
      name_key: nameKey,
      password_hash: user.passwordHash,
      roles: JSON.stringify(user.roles),
      is_locked: user.isLocked ? 1 : 0,
    })
    .onConflict((conflict) => conflict.column('name_key').doNothing())
    .returning('id')
    .execute();
  return written.length > 0;
}

function userOf(row: Tables['users']): User {
  return {
    id: row.id,
    name: row.name,
    roles: JSON.parse(row.roles) as readonly Role[],
    isLocked: row.is_locked === 1,
    passwordHash: row.password_hash,
  };
}
