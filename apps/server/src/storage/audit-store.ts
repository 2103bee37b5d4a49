import type { Kysely } from 'kysely';
import type { AuditStore } from './storage.ts';
import type { Tables } from './tables.ts';

export function auditStore(database: Kysely<Tables>): AuditStore {
  return {
    write: async ({ atUtcMs, by, what, of }) => {
      await database.insertInto('audit').values({ at_utc_ms: atUtcMs, by, what, of }).execute();
    },
    list: async (before, most) => {
      let rows = database.selectFrom('audit').selectAll().orderBy('id', 'desc').limit(most);
      if (before !== undefined) rows = rows.where('id', '<', before);
      return (await rows.execute()).map(({ id, at_utc_ms: atUtcMs, by, what, of }) => ({ id, atUtcMs, by, what, of }));
    },
  };
}
