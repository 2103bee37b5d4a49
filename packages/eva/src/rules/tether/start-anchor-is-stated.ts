import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const work = `
hardware lid kind=cover at=bay state=closed
task look rank=1 eva=day { stint open-it who=EV1 at=bay { open lid; close lid } }
`;
const timeline = `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:18 look/open-it
EV1 0:18-0:22 bay > porch
EV2 0:22-0:27 in
EV1 0:27-0:32 in
hatch 0:32-0:37`;

export const startAnchorIsStated = defineRule({
  title: 'Everybody outside hangs on a stated anchor from the first moment',
  broken: 'Somebody goes out on a tether that is not stated',
  severity: 'error',
  why: 'One hook is always closed on structure. Without a start anchor and a reel length nothing can be said about reach, crossings, or the way back.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, courses } of facts.evas) {
      for (const person of facts.outside) {
        if ((courses.get(person.id)?.length ?? 0) === 0) continue;
        const missing = [
          person.startAnchor === null ? 'anchor' : null,
          person.tetherLengthM === null ? 'tether' : null,
        ].filter((word) => word !== null);
        if (missing.length === 0) continue;
        yield {
          where: { eva: eva.eva, person: person.id, span: person.span },
          why: `${person.id} has no ${missing.join(' and no ')} in the campaign`,
          mend: `write person ${person.id} … anchor=… tether="26 m"`,
        };
      }
    }
  },
  examples: {
    violates: {
      campaign: `${work}person EV3 role=outside suit-limit="7 h"\n`,
      timeline: timeline
        .replace('EV1 0:14-0:18', 'EV3 0:10-0:18')
        .replace('EV1 0:10-0:14 porch > bay\n', '')
        .replace('EV1 0:18-0:22 bay > porch\n', ''),
    },
    satisfies: { campaign: work, timeline },
  },
});
