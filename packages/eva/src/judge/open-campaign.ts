/** From text to everything that is asked of it: read, windows computed, hardware inferred. Terminal and page open a campaign the same way. */
import { Fault } from '@handrail/quantity/fault';
import type { Campaign } from '../campaign/campaign.ts';
import { type CampaignReading, readCampaign } from '../campaign/read-campaign.ts';
import type { CampaignFile } from '../campaign/text/source-file.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { inferHardware } from '../hardware/infer-hardware.ts';
import { type KindsLibrary, standardLibrary } from '../kinds/kinds-library.ts';
import { PROOF_CHECKS } from '../proof/claim/proof-checks.ts';
import { REPLAY_CHECKS } from '../proof/replay/replay-checks.ts';
import { rules } from '../rules/rules.generated.ts';
import { fillComputedWindows } from '../sky/campaign/fill-computed-windows.ts';
import { SLIP_CHECKS } from '../slip/slip-findings.ts';

export interface OpenedCampaign {
  readonly campaign: Campaign;
  readonly hardware: HardwareModel;
  readonly library: KindsLibrary;
}
export interface CampaignOpening {
  /** null: there is an error among the problems, or the sky is out of its range. */
  readonly opened: OpenedCampaign | null;
  readonly reading: CampaignReading;
  /** What of the sky could not be computed, in words; null: nothing. */
  readonly skyFault: string | null;
}

/** Ids of everything that a waiver may name. */
const WAIVABLE = [...rules, ...REPLAY_CHECKS, ...PROOF_CHECKS, ...SLIP_CHECKS].map(({ id }) => id);

export function openCampaign(files: readonly CampaignFile[]): CampaignOpening {
  const reading = readCampaign(files, standardLibrary, { rules: WAIVABLE });
  if (reading.campaign === null) return { opened: null, reading, skyFault: null };
  try {
    const campaign = fillComputedWindows(reading.campaign);
    const hardware = inferHardware(campaign, standardLibrary);
    return { opened: { campaign, hardware, library: standardLibrary }, reading, skyFault: null };
  } catch (cause) {
    if (!(cause instanceof Fault)) throw cause;
    const skyFault = cause.message + (cause.advice === null ? '' : `; ${cause.advice}`);
    return { opened: null, reading, skyFault };
  }
}
