import { formatPet } from '@handrail/quantity/time';
import { type TetherMeeting, tetherMeetings } from '../../vehicle/tether-path.ts';
import { defineRule } from '../define-rule.ts';
import { OUT } from '../example-opening.ts';

const campaign = `
limits { tether-swap "1 min" }
hardware upper-anchor kind=anchor at=up
person EV3 role=outside suit-limit="7 h" anchor=upper-anchor tether="26 m"
task look rank=1 eva=day {
    stint see-one who=EV1 at=tip { inspect tip }
    stint see-two who="EV2 EV3" at=down { inspect down }
}
`;
/** EV3's line comes from above and crosses EV1's in the bay; EV2 starts at the porch like EV1, side by side. */
const timeline = (who: string): string => `${OUT}EV1 0:10-0:18 porch > bay > tip
${who} 0:10-0:16 porch > bay > down
EV1 0:18-0:30 look/see-one
${who} 0:18-0:30 look/see-two
EV1 0:30-0:38 tip > bay > porch
${who} 0:30-0:36 down > bay > porch
EV2 0:38-0:43 in
EV1 0:43-0:48 in
hatch 0:48-0:53`;

export const tethersDoNotCross = defineRule({
  title: 'The tethers of two people do not cross while both work',
  broken: 'The tethers of two people cross',
  severity: 'warning',
  why: 'Lines that wind round each other hold both people, and the way back is forced through the same points. Routes are planned so that they keep apart, or the reader talks the lines clear.',
  source: 'common practice',
  *check(facts) {
    for (const { eva, courses, travelOf } of facts.evas) {
      const told = new Set<string>();
      for (const [index, first] of facts.outside.entries()) {
        for (const second of facts.outside.slice(index + 1)) {
          for (const one of courses.get(first.id) ?? []) {
            for (const two of courses.get(second.id) ?? []) {
              if (one.kind !== 'work' || two.kind !== 'work' || one.on !== null || two.on !== null) continue;
              const startS = Math.max(one.startS, two.startS);
              const pair = `${first.id} ${one.place} ${second.id} ${two.place}`;
              if (one.place === two.place || startS >= Math.min(one.endS, two.endS) || told.has(pair)) continue;
              const a = travelOf(first.id).tetherAt(one.place);
              const b = travelOf(second.id).tetherAt(two.place);
              if (a === null || b === null) continue;
              const meeting = tetherMeetings(a, b, facts.campaign.vehicle).find(
                (candidate) => candidate.kind !== 'run together',
              );
              if (meeting === undefined) continue;
              told.add(pair);
              yield {
                where: {
                  eva: eva.eva,
                  person: first.id,
                  stint: one.stint?.key ?? null,
                  petS: startS,
                  span: one.stint?.span ?? null,
                },
                why: `with ${first.id} at ${one.place} and ${second.id} at ${two.place} from PET ${formatPet(startS)} the lines ${meetingWords(meeting)}`,
                mend: 'start one of them from another anchor, or have one swap before passing',
              };
            }
          }
        }
      }
    }
  },
  examples: {
    violates: { campaign, timeline: timeline('EV3') },
    satisfies: { campaign, timeline: timeline('EV2') },
  },
});

function meetingWords(meeting: TetherMeeting): string {
  if (meeting.kind === 'cross') return `cross at ${meeting.place}`;
  if (meeting.kind === 'pass near') return `pass within ${meeting.distanceM.toFixed(1)} m of each other`;
  return `run together along ${meeting.rails.join(', ')}`;
}
