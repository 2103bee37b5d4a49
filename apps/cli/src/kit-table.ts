/** The kit of responses as a table for the terminal. */
import { formatDuration, formatPet } from '@handrail/quantity/time';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import type { whatif } from '@handrail/wire/answers/whatif';
import { tableText } from './terminal/table-text.ts';

type Kit = AnswerBody<typeof whatif>['kit'];

export function kitTable(kit: Kit): string {
  if (kit.length === 0) return 'no response that can come up in this plan asks for kit';
  return tableText(
    ['EVA', 'response', 'needs', 'served by', 'times', 'farthest', 'at hand'],
    kit.map((line) => [
      line.eva,
      line.response,
      line.asked,
      line.pieces.join(', '),
      String(line.occasions),
      line.farthestS === null ? 'out of reach' : line.farthestS === 0 ? 'in hand' : formatDuration(line.farthestS),
      atHandWords(line),
    ]),
  );
}

function atHandWords({ notAtHand, inUse, farthestS }: Kit[number]): string {
  if (notAtHand !== null) {
    return `NO at PET ${formatPet(notAtHand.petS)}${notAtHand.where === null ? '' : `, it is ${notAtHand.where}`}`;
  }
  if (inUse !== null) return `in use by ${inUse.person} at PET ${formatPet(inUse.petS)}`;
  return farthestS === 0 ? 'yes' : 'with the other one';
}
