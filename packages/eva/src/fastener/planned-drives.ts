import type { Campaign, Hardware, Stint } from '../campaign/campaign.ts';
import type { HardwareModel } from '../hardware/effects.ts';
import { type FastenerWindow, fastenerWindow, isFastener } from './fastener-window.ts';

/** A fastener driven in by a sentence of the campaign, with the tool that the sentence means. */
export interface PlannedDrive extends FastenerWindow {
  readonly stint: Stint;
  readonly step: number;
  /** null: the sentence leaves it open. */
  readonly tool: Hardware | null;
  /** What the sentence or the fastener asks for; null: not stated. */
  readonly turns: number | null;
  readonly torqueNm: number | null;
}

const DRIVING = 'drive';

/** Every fastener that some sentence drives in, in the order of the text. */
export function plannedDrives(campaign: Campaign, hardware: HardwareModel): readonly PlannedDrive[] {
  const pieces = new Map(campaign.hardware.map((piece) => [piece.id, piece] as const));
  return campaign.tasks.flatMap((task) =>
    task.stints.flatMap((stint) =>
      stint.steps.flatMap((sentence, step) => {
        if (sentence.verb !== DRIVING) return [];
        const used = hardware.effects.get(stint.key)?.tools.find((use) => use.steps.includes(step))?.tool;
        const tool = pieces.get(sentence.tool ?? used ?? '') ?? null;
        return sentence.objects.flatMap((object): PlannedDrive[] => {
          const piece = pieces.get(object);
          if (piece === undefined || !isFastener(piece)) return [];
          const asked = { turns: sentence.turns ?? piece.turns, torqueNm: sentence.torqueNm ?? piece.torqueNm };
          return [{ ...fastenerWindow({ ...piece, ...asked }, tool), piece, stint, step, tool, ...asked }];
        });
      }),
    ),
  );
}
