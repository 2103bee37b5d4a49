/** A plan that looks right for its planning figures and is refused by a proof, and short ways to write what its work does. */
import { SPAN } from '../../reference/routes/bare-campaign.ts';
import { type Nominal, utc } from './nominal.ts';

export interface ProofCase {
  /** What is wrong with the plan, as a sentence. */
  readonly name: string;
  readonly rule: `proof/${string}`;
  /** What the reason must say; times added up by hand. */
  readonly says: string;
  readonly stint?: string;
  readonly plan: Nominal;
}

export const NEEDS = 'proof/needs-and-changes-are-in-order';
export const CHANGES = 'proof/changes-are-in-order';
export const OUTSIDE = 'proof/order-with-outside-events-is-kept';

export const opens = { changes: [['cover', 'closed', 'open', 0]] } as const;
export const closes = { changes: [['cover', 'open', 'closed', 0]] } as const;
export const looksIn = { looks: [['cover', 'open', 0, 1]] } as const;
export const looksOn = { looks: [['cover', 'closed', 0, 1]] } as const;
export const event = (atMin: number, value: string) => ({
  events: [
    {
      id: 'turn',
      title: 'the wing turns',
      atUtcMs: utc(atMin),
      agreed: true,
      leaves: [{ variable: 'cover', value, span: SPAN }],
      span: SPAN,
    },
  ],
});
