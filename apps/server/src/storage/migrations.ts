/** How the store comes to its present shape, step by step. A step that has been released is never changed; a new one is added. */
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

export type Dialect = 'sqlite' | 'postgres';
type Step = (database: Kysely<Tables>, dialect: Dialect) => Promise<void>;

export const STEPS: readonly Step[] = [campaignsAndAccounts];
export const SCHEMA_VERSION = STEPS.length;

/**
 * Brings a store up to date, each step whole or not at all.
 * @throws Error when the store was written by a newer program: using it could lose what this one does not know
 */
export async function migrateStore(database: Kysely<Tables>, dialect: Dialect, upTo = SCHEMA_VERSION): Promise<void> {
  await database.schema
    .createTable('schema_version')
    .ifNotExists()
    .addColumn('version', 'integer', (column) => column.notNull())
    .execute();
  const now = await schemaVersion(database);
  if (now > SCHEMA_VERSION) {
    throw new Error(
      `the store is of version ${now}, this program knows up to ${SCHEMA_VERSION}: use the newer program, or restore a backup`,
    );
  }
  for (let version = now + 1; version <= upTo; version += 1) {
    await database.transaction().execute(async (transaction) => {
      await STEPS[version - 1]?.(transaction, dialect);
      const rows = transaction as unknown as Kysely<{ schema_version: { version: number } }>;
      await rows.deleteFrom('schema_version').execute();
      await rows.insertInto('schema_version').values({ version }).execute();
    });
  }
}

/** 0: nothing is there yet. */
export async function schemaVersion(database: Kysely<Tables>): Promise<number> {
  const rows = database as unknown as Kysely<{ schema_version: { version: number } }>;
  const row = await rows.selectFrom('schema_version').select('version').executeTakeFirst();
  return row?.version ?? 0;
}

async function campaignsAndAccounts(database: Kysely<Tables>, dialect: Dialect): Promise<void> {
  const { schema } = database;
  await schema
    .createTable('campaigns')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('title', 'text', (column) => column.notNull())
    .addColumn('head', 'integer', (column) => column.notNull())
    .addColumn('event', 'integer', (column) => column.notNull())
    .addColumn('file', 'text', (column) => column.notNull().unique())
    .addColumn('text_hash', 'text')
    .addColumn('timeline_hash', 'text')
    .execute();
  await schema
    .createTable('versions')
    .addColumn('campaign', 'text', (column) => column.notNull().references('campaigns.id'))
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('parent', 'integer')
    .addColumn('author', 'text', (column) => column.notNull())
    .addColumn('at_utc_ms', 'bigint', (column) => column.notNull())
    .addColumn('message', 'text', (column) => column.notNull())
    .addColumn('text', 'text', (column) => column.notNull())
    .addColumn('timeline', 'text')
    .addColumn('level', 'integer')
    .addColumn('errors', 'integer', (column) => column.notNull())
    .addPrimaryKeyConstraint('versions_key', ['campaign', 'number'])
    .execute();
  await schema
    .createTable('drafts')
    .addColumn('campaign', 'text', (column) => column.notNull().references('campaigns.id'))
    .addColumn('user_id', 'text', (column) => column.notNull())
    .addColumn('parent', 'integer', (column) => column.notNull())
    .addColumn('text', 'text', (column) => column.notNull())
    .addColumn('timeline', 'text')
    .addColumn('at_utc_ms', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('drafts_key', ['campaign', 'user_id'])
    .execute();
  await counted('approvals')
    .addColumn('campaign', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('by', 'text', (column) => column.notNull())
    .addColumn('decision', 'text', (column) => column.notNull())
    .addColumn('note', 'text', (column) => column.notNull())
    .addColumn('at_utc_ms', 'bigint', (column) => column.notNull())
    .addForeignKeyConstraint('approvals_version', ['campaign', 'number'], 'versions', ['campaign', 'number'])
    .execute();
  await schema
    .createTable('events')
    .addColumn('campaign', 'text', (column) => column.notNull().references('campaigns.id'))
    .addColumn('event', 'integer', (column) => column.notNull())
    .addColumn('data', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('events_key', ['campaign', 'event'])
    .execute();
  await schema
    .createTable('users')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('name_key', 'text', (column) => column.notNull().unique())
    .addColumn('password_hash', 'text', (column) => column.notNull())
    .addColumn('roles', 'text', (column) => column.notNull())
    .addColumn('is_locked', 'integer', (column) => column.notNull())
    .execute();
  await schema
    .createTable('sessions')
    .addColumn('token_hash', 'text', (column) => column.primaryKey())
    .addColumn('user_id', 'text', (column) => column.notNull().references('users.id'))
    .addColumn('begun_utc_ms', 'bigint', (column) => column.notNull())
    .addColumn('used_utc_ms', 'bigint', (column) => column.notNull())
    .execute();
  await schema
    .createTable('failed_logins')
    .addColumn('name_key', 'text', (column) => column.primaryKey())
    .addColumn('tries', 'integer', (column) => column.notNull())
    .addColumn('last_utc_ms', 'bigint', (column) => column.notNull())
    .execute();
  await counted('audit')
    .addColumn('at_utc_ms', 'bigint', (column) => column.notNull())
    .addColumn('by', 'text', (column) => column.notNull())
    .addColumn('what', 'text', (column) => column.notNull())
    .addColumn('of', 'text', (column) => column.notNull())
    .execute();

  function counted(table: string) {
    return dialect === 'postgres'
      ? schema.createTable(table).addColumn('id', 'serial', (column) => column.primaryKey())
      : schema.createTable(table).addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement());
  }
}
