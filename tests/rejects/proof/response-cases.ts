/** Plans that hold as long as all goes well, and break where a response has not done what it is for. */
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import type { Response } from '@handrail/eva/campaign/campaign';
import { looksIn, opens, type ProofCase } from './proof-case.ts';

const CLEAR = 'proof/responses-keep-clear-of-others';

/** Something comes up in `stint` (null: anywhere), and leaves the cover in `value`. */
export const jams = (stint: string | null, value: string): Response => ({
  id: 'trouble',
  title: 'Cover jams',
  trigger: 'it does not move',
  appliesTo: stint === null ? null : { stint },
  steps: [],
  duration: { lowS: 60, likelyS: 120, highS: 240 },
  kit: [],
  leaves: [{ variable: 'cover', value, span: SPAN }],
  leavesIt: null,
  leadsTo: null,
  probability: null,
  span: SPAN,
});

export const RESPONSE_CASES: readonly ProofCase[] = [
  {
    name: 'trouble of EV1 may shut the cover while EV2 has both hands in it',
    rule: CLEAR,
    // EV1 may begin at 0:05, out of the hatch, and is at it 10 min; EV2 may begin at 0:10.
    says: '"brush" may be on from PET 0:05 to 0:15, and "look" (EV2) from 0:10 to 0:20',
    stint: 'b/look',
    plan: {
      states: { cover: 'open' },
      campaign: { responses: [jams('a/brush', 'closed')] },
      work: [
        { key: 'a/brush', who: 'EV1', at: 10, steps: [10] },
        { key: 'b/look', who: 'EV2', at: 25, steps: [10], does: looksIn },
      ],
    },
  },
  {
    name: 'what may come up at any minute takes away what work needs, and nobody can be ordered clear of it',
    rule: CLEAR,
    says: 'it can come up at any minute',
    stint: 'a/look',
    plan: {
      states: { cover: 'open' },
      campaign: { responses: [jams(null, 'jammed')] },
      work: [{ key: 'a/look', who: 'EV1', at: 10, steps: [10], does: looksIn }],
    },
  },
  {
    name: 'trouble of one may change what the other is changing just then',
    rule: CLEAR,
    says: 'leaves it open',
    stint: 'b/open',
    plan: {
      states: { cover: 'closed' },
      campaign: { responses: [jams('a/brush', 'jammed')] },
      work: [
        { key: 'a/brush', who: 'EV1', at: 10, steps: [10] },
        { key: 'b/open', who: 'EV2', at: 30, steps: [10], does: opens },
      ],
    },
  },
];
