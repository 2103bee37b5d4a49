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

/** Written in one breath, since a page that is being left is given no time for more. */
const LAST = 'handrail-last';

/** Puts by at once; what is too large for it stays with what was put by before. */
export function putByAtOnce(entry: PutBy): void {
  try {
    localStorage.setItem(LAST, JSON.stringify(entry));
  } catch {
    // The browser's quota: the shelf itself holds what stood a quarter of a second ago.
  }
}

function lastLeft(campaignId: string): PutBy | null {
  const kept = localStorage.getItem(LAST);
  if (kept === null) return null;
  const entry = JSON.parse(kept) as PutBy;
  return entry.campaignId === campaignId ? entry : null;
}

export async function putBy(entry: PutBy): Promise<void> {
  await (await shelf()).put('documents', entry);
}

export async function takeOff(campaignId: string): Promise<PutBy | null> {
  const onShelf = (await (await shelf()).get('documents', campaignId)) ?? null;
  const last = lastLeft(campaignId);
  return last !== null && last.atMs >= (onShelf?.atMs ?? 0) ? last : onShelf;
}

export async function allPutBy(): Promise<readonly PutBy[]> {
  return (await shelf()).getAll('documents');
}
