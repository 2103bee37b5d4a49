import { readFileSync } from 'node:fs';
import { splitStint } from '@handrail/eva/campaign/edit/split-stint';
import { applyEdit } from '@handrail/eva/campaign/edit/text-edit';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { openCampaign } from '@handrail/eva/judge/open-campaign';
import { splitPlanned } from '@handrail/eva/timeline/edit/split-planned';
import { expect, test } from 'vitest';
import { plannedFulmar } from '../../support/planned-fulmar.ts';

const NAME = 'fulmar.kdl';
const FULMAR = readFileSync('examples/fulmar.kdl', 'utf8');
const { campaign, hardware, timeline } = plannedFulmar();
const file = parseFile(NAME, FULMAR, new ProblemList());
const stints = campaign.tasks.flatMap((task) => task.stints).filter(({ steps }) => steps.length > 1);

test('every stint that can be cut at every sentence reads again, with the same sentences in the same order and the same minutes', () => {
  let cuts = 0;
  const refusals = new Set<string>();
  for (const stint of stints) {
    for (let step = 1; step < stint.steps.length; step++) {
      const split = splitStint(file, campaign, stint, step);
      if ('refused' in split) {
        refusals.add(split.refused.split(':')[0] ?? '');
        continue;
      }
      let files = [{ name: NAME, text: FULMAR }] as readonly { name: string; text: string }[];
      for (const edit of split.edits) files = applyEdit(files, edit).files;
      const { opened, reading } = openCampaign(files);
      const errors = reading.problems
        .filter(({ severity }) => severity === 'error')
        .map(({ what, span }) => `${span.line}: ${what}`);
      expect([stint.key, step, errors]).toEqual([stint.key, step, []]);
      const after = opened?.campaign.tasks.flatMap((task) => task.stints) ?? [];
      const [first, second] = [
        after.find(({ key }) => key === stint.key),
        after.find(({ key }) => key === split.second),
      ];
      const sentence = ({ verb, objects, from, to, tool }: (typeof stint.steps)[number]) => [
        verb,
        objects,
        from,
        to,
        tool,
      ];
      expect([...(first?.steps ?? []), ...(second?.steps ?? [])].map(sentence)).toEqual(stint.steps.map(sentence));
      const minutes = ((first?.duration.agreedS ?? 0) + (second?.duration.agreedS ?? 0)) / 60;
      expect(Math.abs(minutes - stint.duration.agreedS / 60)).toBeLessThanOrEqual(0.35);
      cuts++;
    }
  }
  expect(cuts).toBeGreaterThan(3);
  expect(refusals.size).toBeGreaterThan(0);
});

test('the plan has both parts where it had the whole, and nothing else moves', () => {
  for (const eva of timeline.evas) {
    for (const planned of eva.stints.filter(({ stepEndsS }) => stepEndsS.length > 1)) {
      const now = splitPlanned(planned.stint, 1, 'x/y')({ campaign, hardware }, timeline);
      const parts = now.evas
        .flatMap(({ stints: all }) => all)
        .filter(({ stint }) => stint === planned.stint || stint === 'x/y');
      expect([parts[0]?.startS, parts[0]?.endS, parts[1]?.endS]).toEqual([
        planned.startS,
        parts[1]?.startS,
        planned.endS,
      ]);
      expect(parts.flatMap(({ stepEndsS }) => stepEndsS)).toEqual(planned.stepEndsS);
    }
  }
});
