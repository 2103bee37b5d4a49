/** Reads campaign files from disk; prints every problem in them and ends with exit code 2 when there is an error. */
import { readFileSync } from 'node:fs';
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { type CampaignReading, readCampaign } from '@handrail/eva/campaign/read-campaign';
import type { HardwareModel } from '@handrail/eva/hardware/effects';
import { inferHardware } from '@handrail/eva/hardware/infer-hardware';
import { type KindsLibrary, standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';
import { PROOF_CHECKS } from '@handrail/eva/proof/claim/proof-checks';
import { REPLAY_CHECKS } from '@handrail/eva/proof/replay/replay-checks';
import { rules } from '@handrail/eva/rules/rules.generated';
import { fillComputedWindows } from '@handrail/eva/sky/campaign/fill-computed-windows';
import { SLIP_CHECKS } from '@handrail/eva/slip/slip-findings';
import { Fault } from '@handrail/quantity/fault';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';
import { problemText } from './terminal/message-text.ts';
import { complain } from './terminal/output.ts';

export interface LoadedCampaign {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly library: KindsLibrary;
  readonly reading: CampaignReading;
}

/** @throws ExitError with code 2: a file cannot be read, or the text has errors (they have been printed). */
export function loadCampaign(...files: readonly string[]): LoadedCampaign {
  const reading = readCampaign(
    files.map((name) => ({ name, text: readBytes(name) })),
    standardLibrary,
    { templates, rules: [...rules, ...REPLAY_CHECKS, ...PROOF_CHECKS, ...SLIP_CHECKS].map(({ id }) => id) },
  );
  for (const problem of reading.problems) complain(`${problemText(problem)}\n\n`);
  if (reading.campaign === null) {
    const errors = reading.problems.filter((problem) => problem.severity === 'error').length;
    throw new ExitError(
      EXIT.badInput,
      `${errors} ${errors === 1 ? 'error' : 'errors'} in ${files.join(', ')}; nothing was planned or written`,
      reading.problems,
    );
  }
  const campaign = withWindows(reading.campaign);
  return {
    campaign,
    hardware: inferHardware(campaign, standardLibrary),
    library: standardLibrary,
    reading,
  };
}

/** Computed windows filled in by the sky engines. @throws ExitError with code 2 where what is stated is outside their range */
function withWindows(campaign: Campaign): Campaign {
  try {
    return fillComputedWindows(campaign);
  } catch (cause) {
    if (!(cause instanceof Fault)) throw cause;
    throw new ExitError(EXIT.badInput, cause.message + (cause.advice === null ? '' : `; ${cause.advice}`));
  }
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
