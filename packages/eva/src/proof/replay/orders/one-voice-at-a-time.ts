import type { Finding } from '../../../finding/finding.ts';
import type { ReplayContext } from '../replay-context.ts';
import { noticed, petSpan } from '../replay-finding.ts';

/** Stints that the reader talks through have the voice loop alone. */
export function oneVoiceAtATime({ flown }: ReplayContext): Finding[] {
  return flown.flatMap(({ placed }) => {
    const spoken = placed.filter((one) => one.stint.voice);
    return spoken.flatMap((a, at) =>
      spoken
        .slice(at + 1)
        .filter((b) => a.planned.startS < b.planned.endS && b.planned.startS < a.planned.endS)
        .map((b) =>
          noticed('replay/one-voice-at-a-time', {
            title: `"${a.stint.title}" and "${b.stint.title}" are both talked through at once`,
            why: `${petSpan(a.planned.startS, a.planned.endS)} and ${petSpan(b.planned.startS, b.planned.endS)}; the reader has one voice`,
            mend: 'let one end before the other starts',
            eva: b.eva,
            stint: b.stint.key,
            petS: b.planned.startS,
            span: b.stint.span,
          }),
        ),
    );
  });
}
