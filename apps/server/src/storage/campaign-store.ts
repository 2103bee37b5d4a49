import type { ApprovalRow, LiveEvent, VersionHead, VersionWhole } from '@handrail/wire/api/api-types';
import type { Kysely, Selectable, Transaction } from 'kysely';
import { sql } from 'kysely';
import type { CampaignStore, NewVersion } from './storage.ts';
import type { Tables } from './tables.ts';

const HEAD_COLUMNS = ['number', 'parent', 'author', 'at_utc_ms', 'message', 'level', 'errors'] as const;

export function campaignStore(database: Kysely<Tables>): CampaignStore {
  const version = async (id: string, number: number): Promise<VersionWhole | null> => {
    const rows = database.selectFrom('versions').selectAll();
    const row = await rows.where('campaign', '=', id).where('number', '=', number).executeTakeFirst();
    return row === undefined ? null : wholeOf(row);
  };
  return {
    list: async () => {
      const rows = await database
        .selectFrom('campaigns')
        .innerJoin('versions', (join) =>
          join.onRef('versions.campaign', '=', 'campaigns.id').onRef('versions.number', '=', 'campaigns.head'),
        )
        .select([
          'id',
          'title',
          ...HEAD_COLUMNS,
          sql<number>`case when timeline is null then 0 else 1 end`.as('planned'),
        ])
        .orderBy('title')
        .execute();
      return rows.map((row) => ({ id: row.id, title: row.title, head: headOf(row) }));
    },
    files: async () => await database.selectFrom('campaigns').select(['id', 'file']).execute(),
    open: async (id) => {
      const row = await database.selectFrom('campaigns').selectAll().where('id', '=', id).executeTakeFirst();
      const head = row === undefined ? null : await version(id, row.head);
      if (row === undefined || head === null) return null;
      return { id, title: row.title, file: row.file, textHash: row.text_hash, timelineHash: row.timeline_hash, head };
    },
    add: async ({ id, title, file }, first) =>
      await database.transaction().execute(async (transaction) => {
        const added = await transaction
          .insertInto('campaigns')
          .values({ id, title, file, head: 0, event: 0, text_hash: null, timeline_hash: null })
          .onConflict((conflict) => conflict.doNothing())
          .returning('id')
          .execute();
        if (added.length === 0) return false;
        await writeVersion(transaction, id, 1, null, first);
        return true;
      }),
    versions: async (id) => {
      const rows = await database
        .selectFrom('versions')
        .select([...HEAD_COLUMNS, sql<number>`case when timeline is null then 0 else 1 end`.as('planned')])
        .where('campaign', '=', id)
        .orderBy('number', 'desc')
        .execute();
      return rows.map(headOf);
    },
    version,
    save: async (id, parent, next) =>
      await database.transaction().execute(async (transaction) => {
        // Compare and set: whoever comes second finds another head and writes nothing.
        const moved = await transaction
          .updateTable('campaigns')
          .set({ head: parent + 1 })
          .where('id', '=', id)
          .where('head', '=', parent)
          .returning('id')
          .execute();
        return moved.length === 0 ? null : await writeVersion(transaction, id, parent + 1, parent, next);
      }),
    setTitle: async (id, title) => {
      await database.updateTable('campaigns').set({ title }).where('id', '=', id).execute();
    },
    setFileHashes: async (id, { textHash, timelineHash }) => {
      const hashes = { text_hash: textHash, timeline_hash: timelineHash };
      await database.updateTable('campaigns').set(hashes).where('id', '=', id).execute();
    },
    draft: async (id, user) => {
      const drafts = database.selectFrom('drafts').selectAll();
      const row = await drafts.where('campaign', '=', id).where('user_id', '=', user).executeTakeFirst();
      if (row === undefined) return null;
      return { parent: row.parent, text: row.text, timeline: timelineOf(row.timeline), atUtcMs: row.at_utc_ms };
    },
    keepDraft: async (id, user, { parent, text, timeline, atUtcMs }) => {
      const kept = { parent, text, timeline: writtenTimeline(timeline), at_utc_ms: atUtcMs };
      await database
        .insertInto('drafts')
        .values({ campaign: id, user_id: user, ...kept })
        .onConflict((conflict) => conflict.columns(['campaign', 'user_id']).doUpdateSet(kept))
        .execute();
    },
    dropDraft: async (id, user) => {
      await database.deleteFrom('drafts').where('campaign', '=', id).where('user_id', '=', user).execute();
    },
    approvals: async (id) => {
      const rows = await database
        .selectFrom('approvals')
        .selectAll()
        .where('campaign', '=', id)
        .orderBy('id', 'desc')
        .execute();
      return rows.map(({ number, by, decision, note, at_utc_ms: atUtcMs }) => ({
        number,
        by,
        decision: decision as ApprovalRow['decision'],
        note,
        atUtcMs,
      }));
    },
    approve: async (id, approval) => {
      await database.transaction().execute(async (transaction) => {
        const { number, by, decision, note, atUtcMs } = approval;
        await transaction
          .insertInto('approvals')
          .values({ campaign: id, number, by, decision, note, at_utc_ms: atUtcMs })
          .execute();
        await writeEvent(transaction, id, { kind: 'approval', approval });
      });
    },
    eventsAfter: async (id, event) => {
      const events = database.selectFrom('events').select(['event', 'data']).where('campaign', '=', id);
      const rows = await events.where('event', '>', event).orderBy('event').execute();
      return rows.map((row) => ({ event: row.event, data: JSON.parse(row.data) as LiveEvent }));
    },
    lastEvent: async (id) => {
      const row = await database.selectFrom('campaigns').select('event').where('id', '=', id).executeTakeFirst();
      return row?.event ?? 0;
    },
  };
}

async function writeVersion(
  transaction: Transaction<Tables>,
  campaign: string,
  number: number,
  parent: number | null,
  next: NewVersion,
): Promise<VersionWhole> {
  const row = {
    campaign,
    number,
    parent,
    author: next.author,
    at_utc_ms: next.atUtcMs,
    message: next.message,
    text: next.text,
    timeline: writtenTimeline(next.timeline),
    level: next.level,
    errors: next.errors,
  };
  await transaction.insertInto('versions').values(row).execute();
  await transaction.updateTable('campaigns').set({ head: number }).where('id', '=', campaign).execute();
  const whole = wholeOf(row);
  const { text: _text, timeline: _timeline, ...version } = whole;
  await writeEvent(transaction, campaign, { kind: 'version', version });
  return whole;
}

/** The counter stands in the campaign's row, which the transaction holds: numbers come in the order in which they are seen. */
async function writeEvent(transaction: Transaction<Tables>, campaign: string, data: LiveEvent): Promise<void> {
  const counted = await transaction
    .updateTable('campaigns')
    .set({ event: sql`event + 1` })
    .where('id', '=', campaign)
    .returning('event')
    .executeTakeFirstOrThrow();
  await transaction
    .insertInto('events')
    .values({ campaign, event: counted.event, data: JSON.stringify(data) })
    .execute();
}

type HeadRow = Pick<Selectable<Tables['versions']>, (typeof HEAD_COLUMNS)[number]> & { readonly planned: number };

function headOf({ number, parent, author, at_utc_ms: atUtcMs, message, level, errors, planned }: HeadRow): VersionHead {
  return { number, parent, author, atUtcMs, message, level, errors, hasTimeline: planned === 1 };
}

function wholeOf(row: Selectable<Tables['versions']>): VersionWhole {
  const head = headOf({ ...row, planned: row.timeline === null ? 0 : 1 });
  return { ...head, text: row.text, timeline: timelineOf(row.timeline) };
}

const timelineOf = (text: string | null): VersionWhole['timeline'] =>
  text === null ? null : (JSON.parse(text) as VersionWhole['timeline']);
const writtenTimeline = (timeline: VersionWhole['timeline']): string | null =>
  timeline === null ? null : JSON.stringify(timeline);
