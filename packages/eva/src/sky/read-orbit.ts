import { Fault } from '@handrail/quantity/fault';
import type { Sgp4Orbit } from './orbit.ts';
import { readOmmJson } from './read-omm-json.ts';
import { readOmmKvn } from './read-omm-kvn.ts';
import { readTwoLineElements } from './read-two-line-elements.ts';

/**
 * Reads orbit elements in whichever of the three forms the text is: a JSON message, a keyword-value message, two lines.
 * @throws Fault `sky/bad-elements` with line and column, in the words of the form that the text resembles
 * @checked tests/reference/sky/omm.test.ts, tests/rejects/sky
 */
export function readOrbit(text: string): Sgp4Orbit {
  const start = text.replace(/^\uFEFF/, '').trimStart();
  if (start.startsWith('{') || start.startsWith('[')) return readOmmJson(text.replace(/^\uFEFF/, ''));
  if (/^\s*[A-Z_0-9]+\s*=/m.test(start)) return readOmmKvn(text);
  if (/^[12] /m.test(start)) return readTwoLineElements(text);
  throw new Fault(
    'sky/bad-elements',
    'line 1, column 1: this is neither an orbit mean-elements message nor two-line elements',
    {
      values: { line: 1, column: 1 },
      advice: 'give the message as keyword = value or as JSON, or the two lines, with or without a name line',
    },
  );
}
