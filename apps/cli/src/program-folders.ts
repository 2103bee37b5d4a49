import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const HERE = dirname(fileURLToPath(import.meta.url));
/** The packed program has the examples beside it; in the checkout they stand at its root. */
export const IS_PACKED = existsSync(join(HERE, 'examples'));

/** Folder of the examples. */
export const EXAMPLES_FOLDER = IS_PACKED ? join(HERE, 'examples') : join(HERE, '..', '..', '..', 'examples');
/** Where the demo writes: out/ of the checkout, or of the folder that the packed program is run in. */
export const OUT_FOLDER = IS_PACKED ? join(process.cwd(), 'out') : join(HERE, '..', '..', '..', 'out');
