import { formatDuration, formatPet } from '@handrail/quantity/time';
import { takesPart } from '../../suit/eva-supplies.ts';
import { suitWall } from '../../suit/supplies-wall.ts';
import { indoorsWall } from '../../timeline/indoors-wall.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay } }
`;
const timeline = (wall: string): string => `${OUT}EV1 0:10-0:14 porch > bay
EV1 0:14-0:22 look/see
EV1 0:22-0:26 bay > porch
EV2 0:26-0:31 in
EV1 0:31-0:36 in
hatch 0:36-0:41
${wall}`;

export const bothAreInBeforeTheWall = defineRule({
  title: 'Both are on vehicle supplies with the hatch closed before the wall',
  broken: 'They are not in before the wall',
  severity: 'error',
  why: 'After that a suit runs on its reserve. The wall is the least of the stated limits: the longest EVA, a window in which nobody is outside, the suits by their stated limit or their supplies.',
  source: 'common practice',
  *check(facts) {
    for (const { eva } of facts.evas) {
      const planned = facts.campaign.evas.find((candidate) => candidate.id === eva.eva);
      const limits = [
        ...(planned?.longestS === null || planned === undefined
          ? []
          : [{ petS: planned.longestS, cause: 'longest EVA' }]),
        ...[planned === undefined ? null : indoorsWall(facts.campaign, planned, eva.petZeroUtcMs)].filter(
          (one) => one !== null,
        ),
        ...facts.outside
          .filter((person) => takesPart(eva, person.id))
          .flatMap((person) => suitWall(facts.campaign, person) ?? []),
        ...(eva.wall === null ? [] : [eva.wall]),
      ].sort((a, b) => a.petS - b.petS);
      const least = limits[0];
      if (least === undefined) {
        yield {
          severity: 'unknown',
          where: { eva: eva.eva, span: planned?.span ?? null },
          why: 'neither a longest EVA nor a suit limit is stated, so there is no wall to be in before',
          mend: 'write longest="6 h 30 min" on the EVA, or suit-limit, or a suit, on each person',
        };
        continue;
      }
      if (eva.bothInS <= least.petS) continue;
      yield {
        where: { eva: eva.eva, petS: eva.bothInS, span: planned?.span ?? null },
        why: `both in at PET ${formatPet(eva.bothInS)}; the wall is ${formatPet(least.petS)} (${least.cause}), ${formatDuration(eva.bothInS - least.petS)} too late`,
        mend: `drop or move ${formatDuration(eva.bothInS - least.petS)} of work; the cut order says what goes first`,
      };
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('wall 0:40 supplies') },
    satisfies: { campaign, timeline: timeline('wall 6:00 longest EVA') },
  },
});
