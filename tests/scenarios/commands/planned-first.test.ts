/** Commands about the way home take a campaign alone: it is planned first, and the answer is that of its plan. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLES, isClean, PackedHandrail } from './packed-handrail.ts';

const CAMPAIGN = join(EXAMPLES, 'first-campaign.kdl');

let handrail: PackedHandrail;

beforeAll(async () => {
  handrail = await PackedHandrail.packed();
  expect(handrail.run(['plan', CAMPAIGN, '-o', 'first.json']).code).toBe(0);
});
afterAll(() => handrail.remove());

describe('without a timeline', () => {
  it.each([
    ['wayhome', []],
    ['wayhome', ['--at', '0:30', '--mode', 'abort']],
    ['whatif', ['--kit']],
    ['whatif', ['--response', 'lost-item', '--at', '0:30']],
  ])('%s %j answers as for the plan that "handrail plan" writes', (command, options) => {
    const [given, planned] = [
      handrail.run([command, CAMPAIGN, 'first.json', ...options, '--json']),
      handrail.run([command, CAMPAIGN, ...options, '--json']),
    ];
    expect(JSON.parse(planned.out)).toEqual(JSON.parse(given.out));
    expect(planned.code).toBe(given.code);
    expect(isClean(planned)).toBe(true);
  });

  it('a response that does not exist is said, with where they are listed', () => {
    const ended = handrail.run(['whatif', CAMPAIGN, '--response', 'nonsense', '--at', '0:30']);
    expect(ended.code).toBe(2);
    expect(ended.err).toContain('no response is called nonsense; --list lists them');
    expect(ended.err).not.toContain('planning');
  });
});
