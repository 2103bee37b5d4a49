/** Reads campaign files from disk; prints every problem in them and ends with exit code 2 when there is an error. */
import { readFileSync } from 'node:fs';
import type { CampaignReading } from '@handrail/eva/campaign/read-campaign';
import { type OpenedCampaign, openCampaign } from '@handrail/eva/judge/open-campaign';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';
import { problemText } from './terminal/message-text.ts';
import { complain } from './terminal/output.ts';

export interface LoadedCampaign extends OpenedCampaign {
  readonly reading: CampaignReading;
}

/** @throws ExitError with code 2: a file cannot be read, or the text has errors (they have been printed). */
export function loadCampaign(...files: readonly string[]): LoadedCampaign {
  const { opened, reading, skyFault } = openCampaign(files.map((name) => ({ name, text: readBytes(name) })));
  for (const problem of reading.problems) complain(`${problemText(problem)}\n\n`);
  if (opened !== null) return { ...opened, reading };
  if (skyFault !== null) throw new ExitError(EXIT.badInput, skyFault);
  const errors = reading.problems.filter((problem) => problem.severity === 'error').length;
  throw new ExitError(
    EXIT.badInput,
    `${errors} ${errors === 1 ? 'error' : 'errors'} in ${files.join(', ')}; nothing was planned or written`,
    reading.problems,
  );
}

/** @throws ExitError with code 2 in words, whatever the system says. */
export function readBytes(file: string): Uint8Array {
  try {
    return readFileSync(file);
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code;
    const words =
      code === 'ENOENT'
        ? 'there is no such file'
        : code === 'EISDIR'
          ? 'it is a folder, not a file'
          : code === 'EACCES'
            ? 'it may not be read'
            : String(code ?? cause);
    throw new ExitError(EXIT.badInput, `${file}: ${words}`);
  }
}
