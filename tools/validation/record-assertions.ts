/** Set-up file of a test run: writes down what each numeric assertion compared, a line of JSON each, to HANDRAIL_VALIDATION_FILE. */
import { appendFileSync } from 'node:fs';
import { chai, expect } from 'vitest';

const FILE = process.env['HANDRAIL_VALIDATION_FILE'] ?? '';
const MATCHERS = ['toBeCloseTo', 'toBeLessThan', 'toBeLessThanOrEqual'];

for (const matcher of FILE === '' ? [] : MATCHERS) {
  chai.util.overwriteMethod(
    chai.Assertion.prototype,
    matcher,
    (inherited: (...given: unknown[]) => unknown) =>
      function (this: object, ...given: unknown[]) {
        const actual: unknown = chai.util.flag(this, 'object');
        const { currentTestName, testPath } = expect.getState();
        const at = new Error('where').stack?.split('\n').find((line) => /\.test\.ts:\d+/.test(line));
        const line = Number(/\.test\.ts:(\d+)/.exec(at ?? '')?.[1] ?? 0);
        const isNot = chai.util.flag(this, 'negate') === true;
        if (!isNot && typeof actual === 'number' && typeof given[0] === 'number') {
          const record = {
            matcher,
            actual,
            expected: given[0],
            digits: given[1] ?? null,
            test: currentTestName,
            file: testPath,
            line,
          };
          appendFileSync(FILE, `${JSON.stringify(record)}\n`);
        }
        return inherited.apply(this, given);
      },
  );
}
