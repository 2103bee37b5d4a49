/** One response over an EVA as a table for the terminal: of each stay, and of the ways and waits between two, the occasion that costs most. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import type { whatif } from '@handrail/wire/answers/whatif';
import { tableText } from './terminal/table-text.ts';
import { textWidth, wrapText } from './terminal/wrap-text.ts';

type Occasion = AnswerBody<typeof whatif>['occasions'][number];

export function occasionsTable(occasions: readonly Occasion[]): string {
  if (occasions.length === 0) return 'it cannot come up in this EVA';
  const table = tableText(
    ['PET', 'who', 'in', 'both in', 'way home', 'outcome'],
    worstOfEach(occasions).map(({ petS, who, stint, lateS, homeMarginS, abortMarginS, breaks, first }) => [
      formatPet(petS),
      who,
      stint ?? 'between',
      lateS === null ? 'goes home' : lateS < 1 ? 'as planned' : `+${formatPet(lateS)}`,
      homeMarginS !== null
        ? marginWords(homeMarginS)
        : abortMarginS !== null
          ? `abort ${marginWords(abortMarginS)}`
          : '',
      first === null ? 'holds' : `BREAKS ${breaks > 1 ? `${breaks}: ` : ''}${first.split(';')[0] ?? ''}`,
    ]),
  );
  const [least] = occasions
    .filter(({ homeMarginS }) => homeMarginS !== null)
    .toSorted((a, b) => (a.homeMarginS ?? 0) - (b.homeMarginS ?? 0));
  const broken = occasions.filter(({ first }) => first !== null).length;
  const counted = `${occasions.length} ${occasions.length === 1 ? 'occasion' : 'occasions'}, ${broken} of them ${broken === 1 ? 'breaks' : 'break'} something`;
  const margin =
    least === undefined
      ? ''
      : `; the way home after it is closest at PET ${formatPet(least.petS)}: ${formatDuration(Math.abs(least.homeMarginS ?? 0))} ${(least.homeMarginS ?? 0) < 0 ? 'past the limit' : 'to the limit'}`;
  return `${table}\n${wrapText(`${counted}${margin}`, textWidth())}`;
}

function marginWords(marginS: number): string {
  return `${marginS < 0 ? 'SHORT ' : ''}${formatPet(Math.abs(marginS))}`;
}

function worstOfEach(occasions: readonly Occasion[]): readonly Occasion[] {
  const worst: Occasion[] = [];
  for (const one of occasions) {
    const last = worst.at(-1);
    if (last === undefined || last.stint !== one.stint) worst.push(one);
    else if (isWorse(one, last)) worst[worst.length - 1] = one;
  }
  return worst;
}

/** More that breaks, then later in, then less margin home; no way home at all is no margin. */
function isWorse(one: Occasion, other: Occasion): boolean {
  if (one.breaks !== other.breaks) return one.breaks > other.breaks;
  if ((one.lateS ?? 0) !== (other.lateS ?? 0)) return (one.lateS ?? 0) > (other.lateS ?? 0);
  return (one.homeMarginS ?? Number.NEGATIVE_INFINITY) < (other.homeMarginS ?? Number.NEGATIVE_INFINITY);
}
