import type { EvaTimeline } from '@handrail/eva/timeline/timeline';
import { formatPet, parsePet } from '@handrail/quantity/time';
import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';

/** A time of the EVA. @throws ExitError with code 2 when it is none, or lies outside it */
export function petNamed(text: string, eva: EvaTimeline): number {
  const petS = parsePet(text);
  if (petS === null) throw new ExitError(EXIT.badInput, `"${text}" is not a PET time; write it like 2:10`);
  if (petS < 0 || petS >= eva.bothInS) {
    throw new ExitError(
      EXIT.badInput,
      `PET ${text} is not in EVA ${eva.eva}: from 0:00, and both are in at ${formatPet(eva.bothInS)}`,
    );
  }
  return petS;
}
