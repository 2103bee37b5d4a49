import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (torque: number): string => `
hardware driver kind=power-tool at=EV1 { property torque-least "2 N·m"; property torque-most "34 N·m" }
hardware b1 kind=bolt at=bay state=torqued torque="${torque} N·m" turns=10
task turn rank=1 eva=day { stint turn-it who=EV1 at=bay { release b1 with=driver; drive b1 with=driver } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:20 turn/turn-it
EV1 0:20-0:24 bay > porch
EV2 0:24-0:29 in
EV1 0:29-0:34 in
hatch 0:34-0:39`;

export const torqueIsWithinTheTool = defineRule({
  title: 'Every fastener can be driven by the tool that is planned for it',
  broken: 'A fastener is planned with a tool that cannot drive it',
  severity: 'error',
  why: 'A tool that cannot reach the torque stalls or slips; one that cannot hold it low enough breaks the fastener.',
  source: 'common practice',
  *check(facts) {
    const told = new Set<string>();
    for (const { eva, steps } of facts.evas) {
      for (const step of steps) {
        const sentence = step.stint.steps[step.index];
        if (sentence === undefined) continue;
        const tools = step.effects?.tools.filter((use) => use.steps.includes(step.index)).map((use) => use.tool) ?? [];
        for (const toolId of sentence.tool === null ? tools : [sentence.tool]) {
          const tool = facts.pieces.get(toolId);
          const least = tool?.properties['torque-least'];
          const most = tool?.properties['torque-most'];
          for (const object of sentence.objects) {
            const piece = facts.pieces.get(object);
            const torqueNm = sentence.torqueNm ?? piece?.torqueNm ?? null;
            if (tool === undefined || piece === undefined || torqueNm === null || told.has(`${toolId} ${object}`))
              continue;
            const where = {
              eva: eva.eva,
              person: step.who,
              stint: step.stint.key,
              step: step.index,
              petS: step.startS,
              span: sentence.span,
            };
            if (typeof most !== 'number' && typeof least !== 'number') {
              told.add(`${toolId} ${object}`);
              yield {
                severity: 'unknown',
                where,
                why: `the torque range of ${tool.title} is not stated; ${piece.title} wants ${torqueNm} N·m`,
                mend: `write property torque-most "…" on ${toolId}`,
              };
            } else if (
              (typeof most === 'number' && torqueNm > most) ||
              (typeof least === 'number' && torqueNm < least)
            ) {
              told.add(`${toolId} ${object}`);
              yield {
                where,
                why: `${piece.title} wants ${torqueNm} N·m; ${tool.title} gives ${typeof least === 'number' ? `${least} to ` : 'up to '}${typeof most === 'number' ? `${most} N·m` : 'any'}`,
                mend: 'name another tool with=…',
              };
            }
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign: campaign(50), timeline },
    satisfies: { campaign: campaign(30), timeline },
  },
});
