import { formatPet } from '@handrail/quantity/time';
import type { Hardware } from '../../campaign/campaign.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (last: string): string => `
hardware crate kind=box at=bay state=fastened load=large { state power off; state retainer none }
hardware keeper kind=latch at=bay of=crate state=latched
task free rank=1 eva=day {
    stint loosen who=EV1 at=bay { ${last}unlatch keeper }
    stint close-it who=EV1 at=bay { latch keeper }
}
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 free/loosen
EV1 0:18-0:20 free/close-it
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

/** Kinds of fasteners and the value in which each still holds its piece. */
const HOLDING: Readonly<Record<string, readonly string[]>> = {
  bolt: ['torqued', 'started'],
  'captive-fastener': ['torqued', 'started'],
  latch: ['latched'],
  pin: ['in'],
  tie: ['tied'],
  'launch-restraint': ['engaged'],
};

export const looseItemsAreRetained = defineRule({
  title: 'A piece is tethered or held before its last fastener lets go',
  broken: 'A piece comes loose with nothing holding it',
  severity: 'error',
  why: 'Make before break: what is not held by something drifts off, is lost, and becomes a hazard.',
  source: 'common practice',
  *check(facts) {
    const fastenersOf = new Map<string, Hardware[]>();
    for (const piece of facts.campaign.hardware) {
      if (piece.of !== null && HOLDING[piece.kind] !== undefined) {
        fastenersOf.set(piece.of, [...(fastenersOf.get(piece.of) ?? []), piece]);
      }
    }
    const holds = (fastener: Hardware, value: string): boolean => HOLDING[fastener.kind]?.includes(value) ?? false;
    for (const { eva, writes, valueBefore, valueAt } of facts.evas) {
      for (const write of writes) {
        const fastener = facts.pieces.get(write.variable);
        const piece = facts.pieces.get(fastener?.of ?? '');
        if (fastener === undefined || piece === undefined || HOLDING[fastener.kind] === undefined) continue;
        if (piece.properties['soft-capture'] === true || holds(fastener, write.value)) continue;
        if (!holds(fastener, valueBefore(fastener.id, write.petS))) continue;
        const fasteners = fastenersOf.get(piece.id) ?? [];
        const others = fasteners.some(
          (other) => other.id !== fastener.id && holds(other, valueAt(other.id, write.petS)),
        );
        const retained = valueBefore(`${piece.id}.retainer`, write.petS);
        const holder = valueBefore(`${piece.id}.holder`, write.petS);
        const inHand = holder.startsWith('person:') || holder.startsWith('arm:');
        if (others || inHand || retained === 'tethered' || retained === 'gripped') continue;
        yield {
          where: { eva: eva.eva, stint: write.by, petS: write.petS, span: facts.stints.get(write.by)?.span ?? null },
          why: `${fastener.title} is the last that holds ${piece.title}; nothing else does at PET ${formatPet(write.petS)} (tether: ${retained})`,
          mend: `add "tether ${piece.id}" before it`,
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign('tether crate; '), timeline },
  },
});
