import { writeFileSync } from 'node:fs';
import type { Timeline } from '@handrail/eva/timeline/timeline';
import { EXIT } from '../exit-code.ts';
import { ExitError } from '../exit-error.ts';

/** @throws ExitError with code 2 when the file cannot be written. */
export function writeTimeline(file: string, timeline: Timeline): void {
  try {
    writeFileSync(file, `${JSON.stringify(timeline, null, 2)}\n`);
  } catch (cause) {
    throw new ExitError(
      EXIT.badInput,
      `${file} cannot be written: ${(cause as NodeJS.ErrnoException).code ?? String(cause)}`,
    );
  }
}
