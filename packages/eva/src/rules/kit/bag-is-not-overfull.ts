import { formatPet } from '@handrail/quantity/time';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (most: number): string => `
hardware sack kind=bag at=EV1 { property items-most ${most} }
hardware tool-a tool-b kind=hand-tool at=bay
task carry rank=1 eva=day { stint pick who=EV1 at=bay { stow tool-a tool-b in=sack } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 carry/pick
EV1 0:18-0:22 bay > porch
EV2 0:22-0:27 in
EV1 0:27-0:32 in
hatch 0:32-0:37`;

export const bagIsNotOverfull = defineRule({
  title: 'A bag holds no more than it takes',
  broken: 'A bag holds more than it takes',
  severity: 'error',
  why: 'A bag that does not close loses what is in it.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, writes, valueAt } of facts.evas) {
      for (const bag of facts.campaign.hardware) {
        const most = bag.properties['items-most'];
        if (bag.kind !== 'bag' || typeof most !== 'number') continue;
        const loose = facts.campaign.hardware.filter((piece) => facts.hardware.variables.has(`${piece.id}.holder`));
        const inside = (petS: number): readonly string[] =>
          loose
            .filter((piece) => valueAt(`${piece.id}.holder`, petS) === `hardware:${bag.id}`)
            .map((piece) => piece.id);
        const instants = [
          0,
          ...writes.filter((write) => write.value === `hardware:${bag.id}`).map((write) => write.petS),
        ];
        const full = instants.find((petS) => inside(petS).length > most);
        if (full === undefined) continue;
        const by = writes.find((write) => write.petS === full && write.value === `hardware:${bag.id}`)?.by ?? null;
        yield {
          where: { eva: eva.eva, stint: by, petS: full, span: bag.span },
          why: `${bag.title} holds ${inside(full).length} items from PET ${formatPet(full)} (${inside(full).join(', ')}); it takes ${most}`,
          mend: 'use a second bag, or stow less',
        };
      }
    }
  },
  examples: {
    violates: { campaign: campaign(1), timeline },
    satisfies: { campaign: campaign(2), timeline },
  },
});
