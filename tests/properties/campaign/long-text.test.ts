/** Long texts that are broken all the way through: the reader comes to an end, and its work grows with the text. */
import { describe, expect, test } from 'vitest';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { MOST_PROBLEMS, SOUND_TEXTS } from './mutated-text.ts';

describe('long broken texts', () => {
  test.each([
    ['unknown nodes', 'x y\n'],
    ['open quotes', 'a "\n'],
    ['open braces closed at once', 'task t { stint s }\n'],
    ['hardware in a chain', null],
    [
      'unknown references',
      'window w { interval "2031-09-14T11:00:00Z" "2031-09-14T12:00:00Z" }\ncut-order e { drop q }\n',
    ],
  ])('a file near the size limit full of %s comes to an end', { timeout: 60_000 }, (_, line) => {
    const size = 400_000;
    let body = '';
    if (line === null) {
      const count = Math.floor(size / 40);
      for (let at = 0; at < count; at++) body += `hardware h${at} kind=bag at=h${at + 1}\n`;
    } else body = line.repeat(Math.floor(size / line.length));
    const text = `handrail 1\n${body}`;
    const { campaign, problems, document } = readCampaign([{ name: 'c.kdl', text }], standardLibrary);
    expect(campaign).toBeNull();
    expect(problems.length).toBeLessThanOrEqual(MOST_PROBLEMS);
    expect(document.files[0]?.parsedCharacters ?? 0).toBeLessThanOrEqual(2 * text.length);
  });
});

test.each(SOUND_TEXTS.map((text, at) => [at + 1, text] as const))(
  'small campaign %i reads without a problem',
  (_, text) => {
    expect(readCampaign([{ name: 'c.kdl', text }], standardLibrary).problems).toEqual([]);
  },
);
