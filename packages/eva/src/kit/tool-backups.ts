import type { Campaign, Hardware } from '../campaign/campaign.ts';
import { toolMisfit } from '../hardware/choose-tool.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { stepVerbs } from '../kinds/step-verbs.ts';

export interface ToolBackup {
  readonly tool: string;
  /** Stint keys that use it, in the order of the text. */
  readonly stints: readonly string[];
  /** Other pieces of the campaign that fit every one of its uses; empty: there is no back-up. */
  readonly backups: readonly string[];
}

/** For every tool that some step uses: what could stand in for it. A use whose torque nobody states counts as fitting. */
export function toolBackups(campaign: Campaign, model: HardwareModel, library: KindsLibrary): readonly ToolBackup[] {
  const pieces = new Map(campaign.hardware.map((piece) => [piece.id, piece]));
  const uses = new Map<string, { stints: string[]; demands: Demand[] }>();
  for (const stint of campaign.tasks.flatMap((task) => task.stints)) {
    for (const { tool, steps } of model.effects.get(stint.key)?.tools ?? []) {
      const use = uses.get(tool) ?? { stints: [], demands: [] };
      use.stints.push(stint.key);
      for (const index of steps) {
        const step = stint.steps[index];
        if (step === undefined) continue;
        for (const { hardware, verb } of stepVerbs(step, pieces, library).known) {
          const fits = hardware !== null && hardware.toolFits.length > 0 ? hardware.toolFits : verb.toolKinds;
          if (fits.length > 0) use.demands.push({ fits, torqueNm: step.torqueNm ?? hardware?.torqueNm ?? null });
        }
      }
      uses.set(tool, use);
    }
  }
  return [...uses].map(([tool, { stints, demands }]) => ({
    tool,
    stints: [...new Set(stints)],
    backups: campaign.hardware
      .filter((piece) => piece.id !== tool && standsIn(piece, pieces.get(tool), demands))
      .map((piece) => piece.id),
  }));
}

interface Demand {
  readonly fits: readonly string[];
  readonly torqueNm: number | null;
}

/** Where a step names a tool that its verb does not ask for, only the same kind can stand in. */
function standsIn(piece: Hardware, tool: Hardware | undefined, demands: readonly Demand[]): boolean {
  if (demands.length === 0) return piece.kind === tool?.kind;
  return demands.every(({ fits, torqueNm }) => toolMisfit(piece, fits, torqueNm) === null);
}
