import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of the checkout: examples/ and out/ stand in it. */
export const PROJECT_ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
