/**
 * Published networks with published answers. Edges as the sources write them: "u v w" means that v comes at most w after u.
 *
 * [M14] Morris P., *Dynamic Controllability and Dispatchability Relationships*, CPAIOR 2014: the example of the cubic check.
 * [H23] Hunsberger L., Posenato R., *Converting Simple Temporal Networks with Uncertainty into Minimal Equivalent Dispatchable Form* (2023), figure 7a.
 * [HUN] Hunsberger L., lecture slides on temporal networks, slides 118 and 140, and the sample networks that go with them.
 * [NKD13] Nilsson M., Kvarnström J., Doherty P., *Incremental Dynamic Controllability Revisited*, ICAPS 2013: figure 2; cooking dinner.
 * [MMV01] Morris P., Muscettola N., Vidal T., *Dynamic Control of Plans with Temporal Uncertainty*, IJCAI 2001. MEMORY for the numbers.
 * The networks of the first four were read in open test suites that transcribe them, not in the papers themselves.
 */
import { checkControllability } from '@handrail/eva/proof/control/check-controllability';
import type { Stnu } from '@handrail/eva/proof/control/stnu';
import { describe, expect, it } from 'vitest';

/** "A B [5,10]" a requirement, "A=>B [5,50]" a contingent link, "A B 4" an edge. */
function network(text: string): Stnu {
  const names = new Map<string, number>();
  const event = (name: string): number => {
    const known = names.get(name) ?? names.size;
    names.set(name, known);
    return known;
  };
  const requirements: { from: number; to: number; leastS: number | null; mostS: number | null }[] = [];
  const contingents: { from: number; to: number; leastS: number; mostS: number }[] = [];
  for (const part of text.split(';').map((one) => one.trim())) {
    const link = /^(\S+)=>(\S+) \[(\d+),(\d+)\]$/.exec(part);
    const range = /^(\S+) (\S+) \[(-?\d+),(-?\d+)\]$/.exec(part);
    const edge = /^(\S+) (\S+) (-?\d+)$/.exec(part);
    const [from, to] = [event((link ?? range ?? edge)?.[1] as string), event((link ?? range ?? edge)?.[2] as string)];
    if (link !== null) contingents.push({ from, to, leastS: Number(link[3]), mostS: Number(link[4]) });
    else if (range !== null) requirements.push({ from, to, leastS: Number(range[3]), mostS: Number(range[4]) });
    else requirements.push({ from, to, leastS: null, mostS: Number(edge?.[3]) });
  }
  return { events: names.size, requirements, contingents };
}

const DINNER = 'store=>driving [30,60]; driving=>home [35,40]; cooking=>ready [25,30]';

const EXAMPLES: readonly (readonly [name: string, source: string, text: string, controllable: boolean])[] = [
  ['two contingent links and an event between', '[M14]', 'B E -2; E B 4; B D 1; D B 3; A=>B [0,2]; C=>D [0,3]', false],
  ['the same with only its upper bounds', '[M14]', 'E B 4; B D 1; A=>B [0,2]; C=>D [0,3]', true],
  ['one upper bound on a contingent end', '[HUN] 118', 'B C 5; A=>C [2,9]', true],
  ['three bounds about one contingent link', '[H23] 7a', 'X C 3; X Y -2; Y C 1; C W -7; A=>C [1,10]', true],
  [
    'two contingent links in a loop',
    '[HUN] 140',
    'C1 C2 -1; C2 C1 8; C1 X -7; X C1 12; A1=>C1 [1,3]; A2=>C2 [1,10]',
    false,
  ],
  [
    'the loop with 3 more of room',
    '[HUN] dc-2',
    'C1 C2 -1; C2 C1 11; C1 X -7; X C1 12; A1=>C1 [1,3]; A2=>C2 [1,10]',
    true,
  ],
  [
    'a cycle of negative edges',
    '[NKD13] 2',
    'A B [5,10]; B C [5,10]; C D [5,10]; E A [5,7]; A=>U [5,50]; U D -15',
    false,
  ],
  ['dinner ready within 5 of coming home', '[NKD13]', `${DINNER}; home ready [-5,5]`, true],
  // Home spreads over 5 and dinner over 5 against each other: ±5 is the least there is.
  ['dinner ready within 4 of coming home', '[NKD13]', `${DINNER}; home ready [-4,4]`, false],
  [
    'cooking exactly 10 after the start of driving',
    '[NKD13]',
    `${DINNER}; home ready [-5,5]; driving cooking [10,10]`,
    true,
  ],
  ['cooking 9 after the start of driving', '[NKD13]', `${DINNER}; home ready [-5,5]; driving cooking [9,9]`, false],
  ['cooking 11 after the start of driving', '[NKD13]', `${DINNER}; home ready [-5,5]; driving cooking [11,11]`, false],
  [
    'two jobs of 5–10 and 10–15 in 22',
    '[NKD13]',
    's a [0,99]; a=>b [5,10]; b e [1,99]; e=>f [10,15]; f h [1,99]; s h [22,22]',
    false,
  ],
  [
    'the same in 27, the sum of the longest and the gaps',
    '[NKD13]',
    's a [0,99]; a=>b [5,10]; b e [1,99]; e=>f [10,15]; f h [1,99]; s h [27,27]',
    true,
  ],
  [
    'an event 5 to 15 before an end that spreads over 10',
    'laas/fape test suite',
    'start=>end [50,60]; event end [5,15]',
    true,
  ],
  ['an event 6 to 15 before it', 'laas/fape test suite', 'start=>end [50,60]; event end [6,15]', false],
  // One must wait for the end or for a time, whichever is first: the wait of the triangle.
  ['a triangle that needs a wait', '[MMV01] MEMORY', 'A=>B [0,4]; B C [-2,2]', true],
  ['a triangle in which the end comes too late to be waited for', '[MMV01] MEMORY', 'A=>B [0,4]; C B [1,2]', false],
];

describe('dynamic controllability of published networks', () => {
  for (const [name, source, text, controllable] of EXAMPLES) {
    it(`${name} is ${controllable ? '' : 'not '}controllable (${source})`, () => {
      const decided = checkControllability(network(text));
      expect(decided.controllable).toBe(controllable);
      if (!decided.controllable) {
        // The cycle is its own proof: it closes, and its weights sum to less than nothing.
        expect(decided.shortS).toBeGreaterThan(0);
        expect(decided.cycle.length).toBeGreaterThan(1);
        decided.cycle.forEach((edge, at) => {
          expect(edge.to).toBe(decided.cycle[(at + 1) % decided.cycle.length]?.from);
        });
      }
    });
  }
});
