import { join } from 'node:path';

/** Where the versions are kept: in a folder .handrail beside the files, which git is told to leave out. */
export function storeFile(folder: string, openFile: string | null): string {
  return join(folder, '.handrail', openFile === null ? 'handrail.db' : `${openFile}.db`);
}
