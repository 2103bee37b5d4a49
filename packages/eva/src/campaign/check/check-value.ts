/** One written value against its type. */
import { type Dimension, parseQuantity, unitsOf } from '@handrail/quantity/quantity';
import { parsePet, parseUtc } from '@handrail/quantity/time';
import type { ValueType } from '../definition/value-type.ts';
import { nearestName } from '../problem/nearest-name.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { SourceEntry } from '../text/source-node.ts';
import type { CheckedValue, Word } from './checked-node.ts';
import { describeType, withArticle } from './describe-type.ts';

export const ID = /^[A-Za-z][A-Za-z0-9-]*$/;
/** A stint from outside its task. */
const PATH = /^[A-Za-z][A-Za-z0-9-]*\/[A-Za-z][A-Za-z0-9-]*$/;
const VARIABLE = /^(request:)?[A-Za-z][A-Za-z0-9-]*(\.[A-Za-z][A-Za-z0-9-]*)?$/;
const WORD = /^[^"{}\n]{1,80}$/;
const LONGEST_TEXT = 2000;

/** The value; null (with a problem) when it is not of that type. `name` is how the message calls it. */
export function checkValue(
  type: ValueType,
  entry: SourceEntry,
  name: string,
  problems: ProblemList,
): CheckedValue | null {
  const { value, valueSpan: span } = entry;
  const wrongType = (expected: string): null => {
    problems.add('wrong-type', span, `${name} is ${sortOf(value)}`, { expected });
    return null;
  };
  switch (type.type) {
    case 'id':
    case 'reference': {
      if (typeof value !== 'string') return wrongType(`${describeType(type)}, such as ${exampleOf(type)}`);
      const many = type.type === 'reference' && type.many;
      const found = many ? splitWords(value, entry) : [{ text: value, span }];
      const paths = type.type === 'reference' && type.to.includes('stint');
      const bad = found.find((one) => !ID.test(one.text) && !(paths && PATH.test(one.text)));
      if (found.length === 0 || bad !== undefined) {
        problems.add('not-an-id', bad?.span ?? span, `"${bad?.text ?? value}" is not a name`, {
          expected: `a letter, then letters, digits and hyphens${paths ? ', or task/stint' : ''}`,
        });
        return null;
      }
      return { value, words: found, span };
    }
    case 'quantity':
      return checkQuantity(type, entry, name, problems);
    case 'number': {
      const unit = type.unit === null ? '' : ` (${type.unit})`;
      if (typeof value !== 'number') return wrongType(`a number${unit} without quotes`);
      if (!Number.isFinite(value) || value < type.least || value > type.most) {
        problems.add('out-of-range', span, `${name} is ${value}`, { expected: `${type.least} to ${type.most}${unit}` });
        return null;
      }
      if (type.integer && !Number.isInteger(value)) {
        problems.add('not-whole', span, `${name} is ${value}`, { expected: 'a whole number' });
        return null;
      }
      return { value, words: [], span };
    }
    case 'choice': {
      if (typeof value !== 'string') return wrongType(type.of.join(' | '));
      if (!type.of.includes(value)) {
        problems.add('not-a-choice', span, `${name} cannot be "${value}"`, {
          expected: type.of.join(' | '),
          nearest: nearestName(value, type.of),
        });
        return null;
      }
      return { value, words: [{ text: value, span }], span };
    }
    case 'utc': {
      const instant = typeof value === 'string' ? parseUtc(value) : null;
      if (instant === null) {
        problems.add('not-an-instant', span, `${name} is ${quote(value)}, which is not an instant`, {
          expected: 'an instant in UTC, such as "2031-09-14T11:40:00Z"',
        });
        return null;
      }
      return { value: instant, words: [], span };
    }
    case 'pet': {
      const time = typeof value === 'string' ? parsePet(value) : null;
      if (time === null) {
        problems.add('not-a-pet', span, `${name} is ${quote(value)}, which is not a PET`, {
          expected: 'hours and minutes of PET in quotes, such as "2:10"',
        });
        return null;
      }
      return { value: time, words: [], span };
    }
    case 'flag':
      if (typeof value !== 'boolean') return wrongType('#true or #false');
      return { value, words: [], span };
    case 'text':
      if (typeof value !== 'string') return wrongType('text in quotes');
      if (value.trim() === '' || value.length > LONGEST_TEXT) {
        problems.add(
          'bad-text',
          span,
          `${name} ${value.trim() === '' ? 'is empty' : `has ${value.length} characters`}`,
          {
            expected: `1 to ${LONGEST_TEXT} characters`,
          },
        );
        return null;
      }
      return { value, words: [{ text: value, span }], span };
    case 'variable':
      if (typeof value !== 'string' || !VARIABLE.test(value)) {
        problems.add('not-a-state', span, `${quote(value)} does not name a state`, {
          expected: 'a hardware id, id.aspect, id.holder, or request:ID',
        });
        return null;
      }
      return { value, words: [{ text: value, span }], span };
    case 'word':
      if (typeof value !== 'string' || !WORD.test(value)) {
        return wrongType('one word');
      }
      return { value, words: [{ text: value, span }], span };
    default:
      if (value === null) return wrongType('text, a number, #true or #false');
      return { value, words: typeof value === 'string' ? [{ text: value, span }] : [], span };
  }
}

function checkQuantity(
  type: Extract<ValueType, { type: 'quantity' }>,
  entry: SourceEntry,
  name: string,
  problems: ProblemList,
): CheckedValue | null {
  const { value, valueSpan: span } = entry;
  const expected = `${withArticle(type.dimension)}, such as "${exampleQuantity(type.dimension)}"`;
  if (typeof value !== 'string') {
    problems.add(
      'wrong-type',
      span,
      typeof value === 'number' ? `${name} is ${value}, without a unit` : `${name} is ${sortOf(value)}`,
      { expected },
    );
    return null;
  }
  const read = parseQuantity(value);
  if (!read.ok) {
    const problem = read.problem;
    if (problem.kind === 'unknown-unit') {
      problems.add('unknown-unit', span, `${name} is "${value}": there is no unit "${problem.unit}"`, {
        expected: unitsOf(type.dimension).join(', '),
        nearest: nearestUnit(problem.unit, type.dimension) ?? problem.nearest,
      });
    } else if (problem.kind === 'mixed-dimensions') {
      problems.add('wrong-dimension', span, `${name} is "${value}", which mixes ${problem.units.join(' and ')}`, {
        expected,
      });
    } else
      problems.add('not-a-quantity', span, `${name} is "${value}", which is not a figure with a unit`, { expected });
    return null;
  }
  if (read.dimension !== type.dimension) {
    problems.add('wrong-dimension', span, `${name} is "${value}", ${withArticle(read.dimension)}`, { expected });
    return null;
  }
  const tooLow = type.least !== null && read.si < type.least.si;
  const tooHigh = type.most !== null && read.si > type.most.si;
  if (tooLow || tooHigh) {
    problems.add('out-of-range', span, `${name} is "${value}"`, {
      expected: [
        type.least === null ? null : `at least ${type.least.text}`,
        type.most === null ? null : `at most ${type.most.text}`,
      ]
        .filter((part) => part !== null)
        .join(', '),
    });
    return null;
  }
  return { value: read.si, words: [{ text: value, span }], span };
}

/** Words of a text with the place of each; inside quotes with escapes the place of the whole text. */
function splitWords(value: string, entry: SourceEntry): readonly Word[] {
  const exact = entry.valueSpan.length === value.length + (entry.quoted ? 2 : 0);
  const found: Word[] = [];
  for (const match of value.matchAll(/\S+/g)) {
    const span = exact
      ? {
          ...entry.valueSpan,
          column: entry.valueSpan.column + match.index + (entry.quoted ? 1 : 0),
          length: match[0].length,
        }
      : entry.valueSpan;
    found.push({ text: match[0], span });
  }
  return found;
}

function nearestUnit(unit: string, dimension: Dimension): string | null {
  return nearestName(unit, unitsOf(dimension));
}

function sortOf(value: SourceEntry['value']): string {
  if (value === null) return '#null';
  if (typeof value === 'string') return `text, ${quote(value)}`;
  if (typeof value === 'number') return Number.isNaN(value) ? 'not a number' : `a number, ${value}`;
  return `a flag, #${value}`;
}

function quote(value: SourceEntry['value']): string {
  if (typeof value !== 'string') return value === null || typeof value === 'boolean' ? `#${value}` : String(value);
  return `"${value.length > 40 ? `${value.slice(0, 37)}…` : value}"`;
}

const EXAMPLES: Partial<Record<Dimension, string>> = {
  time: '12 min',
  length: '6 m',
  mass: '82 kg',
  torque: '34 N·m',
  angle: '30 deg',
  ratio: '2 %',
};
function exampleQuantity(dimension: Dimension): string {
  return EXAMPLES[dimension] ?? `1 ${unitsOf(dimension)[0]}`;
}

function exampleOf(type: ValueType): string {
  return type.type === 'reference' && type.to.includes('stint') ? 'swap-pump/free-old-pump' : 'pump-bay';
}
