import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (extra: string): string => `
hardware driver kind=power-tool at=EV1 { property torque-least "2 N·m"; property torque-most "34 N·m" }
${extra}
hardware b1 kind=bolt at=bay state=torqued torque="30 N·m" turns=10
task turn rank=1 eva=day { stint turn-it who=EV1 at=bay { release b1 with=driver; drive b1 with=driver } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 turn/turn-it
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const mustDoToolHasABackUp = defineRule({
  title: 'A tool that committed work depends on has a back-up outside',
  broken: 'Committed work depends on one tool alone',
  severity: 'warning',
  why: 'A flat battery or a lost tool must not end the work that the EVA was flown for.',
  source: 'common practice',
  *check(facts) {
    const inserts = new Set(facts.campaign.tasks.filter((task) => task.insert).map((task) => task.id));
    for (const { eva, steps, valueBefore } of facts.evas) {
      const told = new Set<string>();
      for (const step of steps) {
        if (inserts.has(step.stint.task)) continue;
        for (const use of step.effects?.tools ?? []) {
          const tool = facts.pieces.get(use.tool);
          if (tool === undefined || told.has(use.tool) || !use.steps.includes(step.index)) continue;
          const needed = step.stint.steps.flatMap((sentence, index) =>
            use.steps.includes(index) ? sentence.objects : [],
          );
          const torqueNm = Math.max(0, ...needed.map((object) => facts.pieces.get(object)?.torqueNm ?? 0));
          const kinds = new Set(
            needed.flatMap((object) =>
              verbTools(facts.library, facts.pieces.get(object)?.kind, step.stint.steps[step.index]?.verb),
            ),
          );
          const spare = facts.campaign.hardware.some((candidate) => {
            if (candidate.id === tool.id || !(candidate.kind === tool.kind || kinds.has(candidate.kind))) return false;
            const most = candidate.properties['torque-most'];
            if (typeof most === 'number' && most < torqueNm) return false;
            const holder = valueBefore(`${candidate.id}.holder`, step.startS);
            return holder.startsWith('person:') || holder.startsWith('hardware:') || holder.startsWith('place:');
          });
          told.add(use.tool);
          if (spare) continue;
          yield {
            where: { eva: eva.eva, person: step.who, stint: step.stint.key, petS: step.startS, span: use.span },
            why: `${tool.title} is the only tool outside that can do it${torqueNm > 0 ? ` (${torqueNm} N·m)` : ''}`,
            mend: 'take a second one, or a ratchet, along',
          };
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign(''), timeline },
    satisfies: {
      campaign: campaign('hardware ratchet kind=ratchet at=EV2 { property torque-most "60 N·m" }'),
      timeline,
    },
  },
});

function verbTools(
  library: {
    readonly kinds: ReadonlyMap<
      string,
      { readonly verbs: readonly { readonly id: string; readonly toolKinds: readonly string[] }[] }
    >;
  },
  kind: string | undefined,
  verb: string | undefined,
): readonly string[] {
  return library.kinds.get(kind ?? '')?.verbs.find((candidate) => candidate.id === verb)?.toolKinds ?? [];
}
