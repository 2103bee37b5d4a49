import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = (last: string): string => `
hardware plug kind=fluid-connector at=bay state=mated controls=vented { state valve closed }
request vented owner=thermal inhibits=2 lead="5 min" verify="1 min" clear="1 min" longest="3 h" status=agreed
hardware fin kind=deployable at=bay state=folded controls=vented { state lock unlocked }
task open rank=1 eva=day { stint pull who=EV1 at=bay { ${last} } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
request vented 0:06 0:12 0:14-0:30 0:31
EV1 0:14-0:30 open/pull
EV1 0:30-0:34 bay > porch
EV2 0:34-0:39 in
EV1 0:39-0:44 in
hatch 0:44-0:49`;

export const hardwareIsLeftSafe = defineRule({
  title: 'At the end of the EVA everything is left in a state that is safe for the night',
  broken: 'Hardware is left in a state that may not be left',
  severity: 'error',
  why: 'Nobody is outside until the next EVA. What is half open, loose or part-way stays so under loads, heat and cold.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, writes, valueLeft } of facts.evas) {
      const told = new Set<string>();
      for (const write of writes) {
        if (told.has(write.variable)) continue;
        told.add(write.variable);
        const variable = facts.hardware.variables.get(write.variable);
        if (variable === undefined || variable.about !== 'aspect') continue;
        const piece = facts.pieces.get(variable.of);
        const kind = piece === undefined ? undefined : facts.library.kinds.get(piece.kind);
        const aspectId = variable.id === variable.of ? kind?.aspects[0]?.id : variable.id.slice(variable.of.length + 1);
        const aspect = kind?.aspects.find((candidate) => candidate.id === aspectId);
        const left = valueLeft(write.variable);
        if (aspect === undefined || aspect.safe[left] !== 'never') continue;
        const last = writes.findLast((candidate) => candidate.variable === write.variable);
        const holder = valueLeft(`${variable.of}.holder`);
        // Carried in by a person or stowed in a bag: it does not stay outside.
        if (holder.startsWith('person:')) continue;
        yield {
          where: { eva: eva.eva, stint: last?.by ?? null, petS: last?.petS ?? null, span: piece?.span ?? null },
          why: `${variable.title} is left ${left}${last === undefined ? '' : ` by ${last.by}`}; a ${kind?.title.toLowerCase() ?? 'piece'} may not be left so`,
          mend: `add the step that closes it: ${
            kind?.verbs
              .filter((verb) => verb.closing && verb.leaves !== null)
              .map((verb) => verb.id)
              .join(', ') ?? ''
          }`,
        };
      }
    }
  },
  examples: {
    violates: {
      campaign:
        `${campaign('inspect plug')}hardware line kind=cable at=bay state=stowed { state retainer none }\n`.replace(
          'inspect plug',
          'lay line',
        ),
      timeline,
    },
    satisfies: { campaign: campaign('inspect plug'), timeline },
  },
});
