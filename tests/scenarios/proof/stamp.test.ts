/** The whole stamp: no rule at error level can be broken under it, and it says by itself what each of its parts lacks. */
import { openCampaign } from '@handrail/eva/judge/open-campaign';
import { type StampOptions, stampTimeline } from '@handrail/eva/judge/stamp';
import type { Stamp } from '@handrail/eva/proof/claim/prove';
import type { RuleExample } from '@handrail/eva/rules/define-rule';
import { EXAMPLE_OPENING } from '@handrail/eva/rules/example-opening';
import { exampleSuit, inSuit, SIX_HOURS_OUT } from '@handrail/eva/rules/example-suit';
import { rules } from '@handrail/eva/rules/rules.generated';
import { readTimelineNotation } from '@handrail/eva/timeline/timeline-notation';
import { describe, expect, it } from 'vitest';

function stampOf(example: RuleExample, options: StampOptions = {}): Stamp {
  const { opened, reading } = openCampaign([{ name: 'example.kdl', text: EXAMPLE_OPENING + example.campaign }]);
  if (opened === null) throw new Error(reading.problems.map(({ what }) => what).join('\n'));
  return stampTimeline(opened, readTimelineNotation(example.timeline, opened.campaign), { mostScale: 0, ...options });
}

describe('a plan that breaks a rule at error level', () => {
  for (const { id, examples } of rules.filter(({ severity }) => severity === 'error')) {
    it(`is not stamped where ${id} is broken`, () => {
      const stamp = stampOf(examples.violates);
      const told = stamp.findings.filter(({ rule }) => rule === id);
      expect(told.length).toBeGreaterThan(0);
      expect(stamp.requirements).toContain(id);
      if (told.some(({ severity }) => severity === 'error')) expect(stamp.verdict).toBe('does not hold');
      else expect(stamp.verdict).not.toBe('checked');
    });
  }
});

describe('the parts of a stamp', () => {
  it('refuse supplies that last as planned and not until all durations have both in', () => {
    // Home after 6 h; the wall that the timing proof keeps stands at 7 h, and the oxygen of a bottle at 3.9 MPa ends between them.
    const stamp = stampOf({
      campaign: inSuit(exampleSuit('worn', { 'oxygen-start-pressure': '"3.9 MPa"' })),
      timeline: `${SIX_HOURS_OUT}\nwall 7:00 longest EVA`,
    });
    const short = stamp.findings.filter(({ rule }) => rule === 'proof/supplies-last-at-the-quantile');
    expect(short.length).toBeGreaterThan(0);
    expect(short.every(({ severity, mend }) => severity === 'error' && mend !== null)).toBe(true);
    for (const one of stamp.parts?.supplies.filter(({ supply }) => supply === 'oxygen') ?? []) {
      expect(one.neededUntilS).toBe(7 * 3600);
      if (short.some(({ where }) => where.person === one.person)) expect(one.lastsUntilS).toBeLessThan(7 * 3600);
    }
  });

  it('name a margin for each listed mode of each EVA, and no other mode', () => {
    const { satisfies } = rules.find(({ id }) => id === 'wayhome/terminate-fits-before-the-wall')?.examples ?? {};
    if (satisfies === undefined) throw new Error('the rule has gone');
    const modes = (stamp: Stamp) => stamp.parts?.margins.map(({ mode }) => mode);
    expect(modes(stampOf(satisfies))).toEqual(['terminate', 'abort', 'assist']);
    expect(modes(stampOf(satisfies, { modes: ['abort'] }))).toEqual(['abort']);
    expect(stampOf(satisfies).hash).not.toBe(stampOf(satisfies, { modes: ['abort'] }).hash);
  });

  it('claim nothing above the input level: without limits a plan is not stamped, and is told what is missing', () => {
    const stamp = stampOf({
      campaign:
        'task look rank=1 eva=day { stint see who=EV1 at=bay { inspect bay; minutes low=4 likely=5 high=8 } }\n',
      timeline: `eva day
EV1 0:00-0:05 out
EV1 0:05-0:09 porch > bay
EV1 0:09-0:14 look/see
EV1 0:14-0:18 bay > porch
EV1 0:18-0:23 in
hatch 0:23-0:28
wall 6:00 longest EVA`,
    });
    expect(stamp.verdict).not.toBe('checked');
    expect(stamp.parts?.level.level).toBeLessThan(3);
    const [told] = stamp.findings.filter(({ rule }) => rule === 'proof/input-level-suffices');
    expect(told?.why).toContain('limits home-within');
  });
});
