import { formatPet } from '@handrail/quantity/time';
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
    for (const { eva, writes, valueBefore, valueAt } of facts.evas) {
      for (const piece of facts.campaign.hardware) {
        const fasteners = facts.campaign.hardware.filter(
          (candidate) => candidate.of === piece.id && HOLDING[candidate.kind] !== undefined,
        );
        if (fasteners.length === 0 || piece.properties['soft-capture'] === true) continue;
        const holds = (id: string, kind: string, value: string): boolean =>
          id !== '' && (HOLDING[kind]?.includes(value) ?? false);
        for (const write of writes) {
          const fastener = fasteners.find((candidate) => candidate.id === write.variable);
          if (fastener === undefined || holds(fastener.id, fastener.kind, write.value)) continue;
          if (!holds(fastener.id, fastener.kind, valueBefore(fastener.id, write.petS))) continue;
          const others = fasteners.some(
            (other) => other.id !== fastener.id && holds(other.id, other.kind, valueAt(other.id, write.petS)),
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
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: { campaign: campaign('tether crate; '), timeline },
  },
});
