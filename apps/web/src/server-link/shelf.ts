/** The browser's own shelf: what is in hand is put by at once, so that a reload, a crash or a lost server loses nothing. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { SavedVersion } from '../document/document-store.ts';
import type { WorkingCopy } from '../document/working-copy.ts';

export interface PutBy {
  readonly campaignId: string;
  readonly title: string;
  readonly copy: WorkingCopy;
  readonly saved: SavedVersion | null;
  readonly atMs: number;
}
interface ShelfSchema extends DBSchema {
  documents: { key: string; value: PutBy };
}

let opened: Promise<IDBPDatabase<ShelfSchema>> | undefined;

function shelf(): Promise<IDBPDatabase<ShelfSchema>> {
  opened ??= openDB<ShelfSchema>('handrail', 1, {
    upgrade: (database) => {
      database.createObjectStore('documents', { keyPath: 'campaignId' });
    },
  });
  return opened;
}

export async function putBy(entry: PutBy): Promise<void> {
  await (await shelf()).put('documents', entry);
}

export async function takeOff(campaignId: string): Promise<PutBy | null> {
  return (await (await shelf()).get('documents', campaignId)) ?? null;
}

export async function allPutBy(): Promise<readonly PutBy[]> {
  return (await shelf()).getAll('documents');
}
