import { EXIT } from './exit-code.ts';
import { ExitError } from './exit-error.ts';

/** Value of an option that counts something. @throws ExitError with code 2 */
export function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new ExitError(EXIT.badInput, `"${text}" is not a whole number`);
  return Number(text);
}
