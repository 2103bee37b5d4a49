import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed } from '../replay-finding.ts';

/** What could not be read from the sentences of planned work cannot be replayed: each gap is told. */
export function effectsAreKnown({ flown }: ReplayContext): Finding[] {
  return flown.flatMap(({ placed }) =>
    placed.flatMap((one) => {
      const where = { eva: one.eva, stint: one.stint.key, petS: one.planned.startS };
      if (one.effects === null) {
        return [
          noticed('replay/effects-are-known', {
            ...where,
            severity: 'unknown',
            title: `What "${one.stint.title}" needs and leaves is not known`,
            why: 'nothing was inferred for it',
            span: one.stint.span,
          }),
        ];
      }
      return one.effects.unknowns.map(({ words, span }) =>
        noticed('replay/effects-are-known', {
          ...where,
          severity: 'unknown',
          title: `Part of what "${one.stint.title}" needs and leaves is not known`,
          why: words,
          mend: 'name the hardware, or write the need or the leave',
          span,
        }),
      );
    }),
  );
}
