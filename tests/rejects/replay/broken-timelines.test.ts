import { readdirSync, readFileSync } from 'node:fs';
import { REPLAY_CHECKS } from '@handrail/eva/proof/replay/replay-checks';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { formatFindings } from '@handrail/eva/finding/format-finding';
import { describe, expect, it } from 'vitest';
import { breakIt } from './broken.ts';
import { BROKEN } from './timelines/all.ts';
import { TWO_EVAS } from './two-evas.ts';

describe('the replay of the two EVAs', () => {
  it('has nothing to say about the timeline that holds', () => {
    const { campaign, model, timeline } = TWO_EVAS;
    expect(formatFindings(replayTimeline(campaign, model, timeline))).toBe('');
  });

  it('is tried with at least fifty broken timelines, no two alike', () => {
    expect(BROKEN.length).toBeGreaterThanOrEqual(50);
    expect(new Set(BROKEN.map((one) => one.name)).size).toBe(BROKEN.length);
  });

  it('has a timeline that breaks each thing that it checks', () => {
    const root = new URL('../../../packages/eva/src/proof/replay/', import.meta.url);
    const checked = new Set<string>();
    for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' })) {
      if (!file.endsWith('.ts') || file === 'replay-checks.ts') continue;
      for (const [, rule] of readFileSync(new URL(file, root), 'utf8').matchAll(/'(replay\/[a-z-]+)'/g)) {
        checked.add(rule as string);
      }
    }
    expect(checked.size).toBeGreaterThan(60);
    const broken = new Set<string>(BROKEN.map((one) => one.rule));
    expect([...checked].filter((rule) => !broken.has(rule))).toEqual([]);
    expect(REPLAY_CHECKS.map((one): string => one.id).sort()).toEqual([...checked].sort());
  });

  it('calls nothing an error that rests on an EVA which is not in the timeline', () => {
    const { campaign, model, timeline } = TWO_EVAS;
    const second = { ...timeline, evas: timeline.evas.slice(1), leftOut: timeline.leftOut };
    const findings = replayTimeline(campaign, model, second);
    expect(new Set(findings.map((one) => one.severity))).toEqual(new Set(['unknown']));
  });

  it('marks what a waiver covers until the waiver runs out', () => {
    const { campaign, model, timeline } = TWO_EVAS;
    const margin = { ...campaign, limits: { ...campaign.limits, marginS: 1800 } };
    const waiver = {
      rule: 'replay/margin-to-the-wall',
      of: 'one',
      reason: 'short EVA',
      by: 'flight director',
      span: campaign.span,
    };
    // EVA one is over at 13:39 on the 14th.
    for (const [until, expected] of [
      ['2031-09-14T13:39:00Z', 'short EVA (flight director)'],
      ['2031-09-14T13:38:59Z', null],
    ] as const) {
      const waived = { ...margin, waivers: [{ ...waiver, untilUtcMs: Date.parse(until) }] };
      expect(replayTimeline(waived, model, timeline).map((one) => one.waiver)).toEqual([expected]);
    }
  });

  for (const broken of BROKEN) {
    it(`notices when ${broken.name}`, () => {
      const { campaign, model, timeline } = breakIt(broken);
      const findings = replayTimeline(campaign, model, timeline);
      const found = findings.filter((one) => one.rule === broken.rule);
      expect(found.map((one) => one.why).join('\n')).toContain(broken.says);
      const finding = found.find(
        ({ why, where }) =>
          why.includes(broken.says) &&
          (broken.stint === undefined || where.stint === broken.stint) &&
          (broken.person === undefined || where.person === broken.person),
      );
      expect(finding, `a finding at ${broken.stint ?? broken.person ?? 'all'}`).toBeDefined();
      expect(finding?.title.length).toBeGreaterThan(10);
      expect(finding?.waiver).toBeNull();
    });
  }
});
