import { formatPet } from '@handrail/quantity/time';
import type { Pin } from '../../../campaign/campaign.ts';
import type { Finding } from '../../../finding/finding.ts';
import { type ReplayContext, utcMs } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** What a person fixed by hand stands in the plan, and gated work starts by the latest time of its gate. */
export function pinsAreObeyed(context: ReplayContext): Finding[] {
  return [...context.campaign.pins.flatMap((pin) => replayPin(context, pin)), ...gates(context)];
}

function replayPin(context: ReplayContext, pin: Pin): Finding[] {
  const tell = (title: string, why: string, stint: string | null): Finding[] => {
    const placed = stint === null ? undefined : context.placedByStint.get(stint);
    return [
      noticed('replay/pins-are-obeyed', {
        title,
        why,
        mend: 'plan again with the pin, or take the pin out',
        eva: placed?.eva ?? null,
        stint,
        petS: placed?.planned.startS ?? null,
        span: pin.span,
      }),
    ];
  };
  switch (pin.kind) {
    case 'person': {
      const placed = context.placedByStint.get(pin.stint);
      const index = placed?.stint.roles.findIndex((role) => role.name === pin.role) ?? -1;
      const who = placed?.planned.assigned[index];
      if (placed === undefined || who === pin.person) return [];
      return tell(
        `"${placed.stint.title}" is not done by ${pin.person}`,
        `pinned as ${pin.role}: ${pin.person}; planned: ${who ?? 'nobody'}`,
        pin.stint,
      );
    }
    case 'start': {
      const placed = context.placedByStint.get(pin.stint);
      // Planning keeps to a grid of 10 s.
      if (placed === undefined || Math.abs(placed.planned.startS - pin.petS) < 10) return [];
      return tell(
        `"${placed.stint.title}" does not start when pinned`,
        `pinned to PET ${formatPet(pin.petS)}; planned PET ${formatPet(placed.planned.startS)}`,
        pin.stint,
      );
    }
    case 'order': {
      const first = context.placedByStint.get(pin.first);
      const then = context.placedByStint.get(pin.then);
      if (first === undefined || then === undefined) return [];
      if (utcMs(then, then.planned.startS) >= utcMs(first, first.planned.endS)) return [];
      return tell(
        `"${then.stint.title}" does not come after "${first.stint.title}"`,
        `it starts at PET ${formatPet(then.planned.startS)}; the other ends at PET ${formatPet(first.planned.endS)}`,
        pin.then,
      );
    }
    case 'eva': {
      const elsewhere = context.timeline.evas.find((plan) => plan.tasks.includes(pin.task) && plan.eva !== pin.eva);
      if (elsewhere === undefined) return [];
      return tell(
        `Task ${pin.task} is not in EVA ${pin.eva}`,
        `pinned to ${pin.eva}; planned in ${elsewhere.eva}`,
        null,
      );
    }
    case 'out':
      break;
  }
  const planned = context.timeline.evas.find((plan) => plan.tasks.includes(pin.task));
  if (planned === undefined) return [];
  return tell(`Task ${pin.task} is planned although it is pinned out`, `planned in EVA ${planned.eva}`, null);
}

function gates({ campaign, placedByStint }: ReplayContext): Finding[] {
  return campaign.gates.flatMap((gate) => {
    const placed = placedByStint.get(gate.before);
    if (placed === undefined || gate.latestPetS === null || placed.planned.startS <= gate.latestPetS) return [];
    return [
      noticed('replay/gated-work-starts-by-the-latest', {
        title: `"${placed.stint.title}" starts after its gate may be called`,
        why: `planned PET ${formatPet(placed.planned.startS)}; gate ${gate.id} is called by PET ${formatPet(gate.latestPetS)}`,
        mend: `start it by PET ${formatPet(gate.latestPetS)}`,
        eva: placed.eva,
        stint: placed.stint.key,
        petS: placed.planned.startS,
        span: gate.span,
      }),
    ];
  });
}
