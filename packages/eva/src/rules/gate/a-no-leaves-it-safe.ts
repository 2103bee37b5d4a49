import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';
import { afterNoOf } from '../gate-facts.ts';

const campaign = (drops: string): string => `
hardware line kind=cable at=bay state=stowed { state retainer none }
task lay rank=1 eva=day {
    stint out who=EV1 at=bay { lay line }
    stint tie who=EV1 at=bay { route line; secure line }
}
task look rank=2 eva=day { stint see who=EV1 at=bay { inspect bay } }
gate go "Go" before="${drops}" caller=IV on-no="come in" { condition "both well" }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 lay/out
EV1 0:18-0:24 lay/tie
EV1 0:24-0:28 look/see
EV1 0:28-0:32 bay > porch
EV2 0:32-0:37 in
EV1 0:37-0:42 in
hatch 0:42-0:47`;

export const aNoLeavesItSafe = defineRule({
  title: 'After a "no" at a gate everything can still be left in a state that is safe for the night',
  broken: 'A "no" at a gate leaves something open that may not stay so',
  severity: 'error',
  why: 'A gate is called so that the crew may say "no". Where the work behind it was what closes up, "no" leaves it open, and nobody has planned to close it.',
  source: 'common practice',
  *check(facts) {
    for (const evaFacts of facts.evas) {
      for (const gate of facts.campaign.gates) {
        const found = afterNoOf(facts, evaFacts, gate);
        if (found === null) continue;
        const left = [...found.atEnd].filter(([id, value]) => {
          const variable = facts.hardware.variables.get(id);
          if (variable === undefined || variable.about !== 'aspect' || value === evaFacts.valueLeft(id)) return false;
          // What holds a piece while it is worked on says nothing of leaving it; what is carried in does not stay.
          if (id.endsWith('.retainer')) return false;
          return !(found.atEnd.get(`${variable.of}.holder`) ?? '').startsWith('person:');
        });
        const bad = left.filter(([id, value]) => safeOf(id, value) === 'never');
        const unknown = left.filter(([id, value]) => safeOf(id, value) === undefined);
        const told = bad.length > 0 ? bad : unknown;
        if (told.length === 0) continue;
        const words = told.map(([id, value]) => `${facts.hardware.variables.get(id)?.title ?? id} ${value}`).join(', ');
        yield {
          severity: bad.length > 0 ? 'error' : 'unknown',
          where: { eva: evaFacts.eva.eva, stint: gate.before, span: gate.span },
          why: `after "no" at "${gate.title}" ${[...found.leftOut, ...found.fallsWithIt].join(', ')} is not done, and what is left is ${words}: ${bad.length > 0 ? 'it may not be left so' : 'its kind does not say how long that may stay'}`,
          mend: 'name in drops= what is not begun after a "no", call the gate before the work that opens it, or write a stint that closes it and does not rest on the gate',
        };
      }
    }
    function safeOf(id: string, value: string): string | undefined {
      const variable = facts.hardware.variables.get(id);
      const piece = facts.pieces.get(variable?.of ?? '');
      const kind = piece === undefined ? undefined : facts.library.kinds.get(piece.kind);
      const aspectId = id === variable?.of ? kind?.aspects[0]?.id : id.slice((variable?.of.length ?? 0) + 1);
      return kind?.aspects.find((aspect) => aspect.id === aspectId)?.safe[value];
    }
  },
  examples: {
    violates: { campaign: campaign('lay/tie'), timeline },
    satisfies: { campaign: campaign('look/see'), timeline },
  },
});
