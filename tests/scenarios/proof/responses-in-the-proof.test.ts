/** What a response leaves when it does not work, held against the rest of a plan: what mends it, and what it must not speak of. */
import type { Gate } from '@handrail/eva/campaign/campaign';
import type { Finding } from '@handrail/eva/finding/finding';
import { prove } from '@handrail/eva/proof/claim/prove';
import { describe, expect, it } from 'vitest';
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { type Nominal, nominal } from '../../rejects/proof/nominal.ts';
import { closes, looksIn, looksOn, opens } from '../../rejects/proof/proof-case.ts';
import { jams } from '../../rejects/proof/response-cases.ts';

function findingsOf(plan: Nominal): readonly Finding[] {
  const { campaign, model, timeline } = nominal(plan);
  return prove(campaign, model, timeline, { mostScale: 0 }).findings.filter(
    ({ rule }) => rule === 'proof/responses-keep-clear-of-others' || rule === 'proof/what-fails-is-decided-at-a-gate',
  );
}

const GATE: Gate = {
  id: 'is-open',
  title: 'Is it open',
  before: 'a/look',
  caller: 'IV',
  latestPetS: null,
  conditions: ['cover open'],
  onNo: 'come in',
  drops: [],
  span: SPAN,
};
const opened: Nominal = {
  states: { cover: 'closed' },
  joins: [['a/open', 'a/look']],
  campaign: { responses: [jams('a/open', 'jammed')] },
  work: [
    { key: 'a/open', who: 'EV1', at: 10, steps: [10], does: opens },
    { key: 'a/look', who: 'EV2', at: 21, steps: [10], does: looksIn },
  ],
};

describe('work that rests on work that may fail', () => {
  it('is named in a note, with the gate that is missing', () => {
    const [note, ...more] = findingsOf(opened);
    expect(more).toEqual([]);
    expect(note?.severity).toBe('note');
    expect(note?.where.stint).toBe('a/look');
    expect(note?.why).toContain('cover left jammed in "open": "look" (EV2) cannot be done');
    expect(note?.mend).toContain('before="a/look"');
  });
  it('is decided where a gate stands before it', () => {
    expect(findingsOf({ ...opened, campaign: { ...opened.campaign, gates: [GATE] } })).toEqual([]);
  });
  it('is not spoken of where the value would do', () => {
    expect(findingsOf({ ...opened, campaign: { responses: [jams('a/open', 'open')] } })).toEqual([]);
  });
  it('is not spoken of where the response leads home: then the way home answers', () => {
    const home = { ...jams('a/open', 'jammed'), leadsTo: 'abort' as const };
    expect(findingsOf({ ...opened, campaign: { responses: [home] } })).toEqual([]);
  });
});

describe('work beside work that may fail', () => {
  const beside: Nominal = {
    states: { cover: 'open' },
    campaign: { responses: [jams('a/brush', 'closed')] },
    work: [
      { key: 'a/brush', who: 'EV1', at: 10, steps: [10] },
      { key: 'a/look', who: 'EV2', at: 25, steps: [10], does: looksIn },
    ],
  };
  it('is an error, mended by the join that it names', () => {
    const [error, ...more] = findingsOf(beside);
    expect(more).toEqual([]);
    expect(error?.severity).toBe('error');
    expect(error?.mend).toContain('join "brush done" after=brush before=look');
    // Joined, the look follows: that is a matter for a gate, no longer one under somebody's hands.
    const joined = findingsOf({ ...beside, joins: [['a/brush', 'a/look']] });
    expect(joined.map(({ severity }) => severity)).toEqual(['note']);
  });
  it('is none where it is over before the trouble can come up', () => {
    const before: Nominal = {
      ...beside,
      joins: [['a/look', 'a/brush']],
      work: [
        { key: 'a/look', who: 'EV2', at: 10, steps: [10], does: looksIn },
        { key: 'a/brush', who: 'EV1', at: 21, steps: [10] },
      ],
    };
    expect(findingsOf(before)).toEqual([]);
  });
});

it('what restores the state in between, in every execution, keeps the rest whole', () => {
  const plan: Nominal = {
    states: { cover: 'open' },
    joins: [
      ['a/brush', 'a/close'],
      ['a/close', 'a/wipe'],
    ],
    campaign: { responses: [jams('a/brush', 'open')] },
    work: [
      { key: 'a/brush', who: 'EV1', at: 10, steps: [10] },
      { key: 'a/close', who: 'EV2', at: 21, steps: [5], does: closes },
      { key: 'a/wipe', who: 'EV1', at: 27, steps: [5], does: looksOn },
    ],
  };
  expect(findingsOf(plan)).toEqual([]);
});
