import type { ValueType } from '../definition/value-type.ts';

/** In words, for messages and the reference page. */
export function describeType(type: ValueType): string {
  switch (type.type) {
    case 'id':
      return `a new ${type.declares} id`;
    case 'reference': {
      const what = type.to.join(' or ');
      const ids = type.many ? `${what} ids in one text` : `${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what} id`;
      return type.words.length === 0 ? ids : `${ids}, or ${type.words.join(', ')}`;
    }
    case 'quantity': {
      const range = [
        type.least === null ? '' : `from ${type.least.text}`,
        type.most === null ? '' : `to ${type.most.text}`,
      ];
      return [withArticle(type.dimension), ...range.filter((part) => part !== '')].join(' ');
    }
    case 'number':
      return `${type.integer ? 'a whole number' : 'a number'} from ${type.least} to ${type.most}${type.unit === null ? '' : ` ${type.unit}`}`;
    case 'choice':
      return type.of.join(' | ');
    case 'utc':
      return 'an instant in UTC';
    case 'pet':
      return 'a PET, hours:minutes';
    case 'flag':
      return '#true or #false';
    case 'text':
      return 'text';
    case 'variable':
      return 'a state';
    case 'word':
      return 'a word';
    default:
      return 'text, a number or a flag';
  }
}

/** "a mass", "an angle", "a length of time". */
export function withArticle(dimension: string): string {
  const words = dimension.replaceAll('-', ' ');
  return dimension === 'time' ? 'a length of time' : `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}
