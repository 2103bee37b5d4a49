/**
 * State variables as the text names them: "j1" (first aspect), "pump.power", "tray.holder", "request:pump-bus-off"; and the
 * values that they can take.
 */
import type { Kind } from '../../kinds/kind.ts';
import { type CheckedNode, text, textAt, type Word } from '../check/checked-node.ts';
import { nearestName } from '../problem/nearest-name.ts';
import type { ReadContext } from './read-context.ts';

const REQUEST_VALUES = ['clear', 'in force'];

/** A node `<variable> <values…>`: the variable and its values as the rest of the program writes them. */
export function readCondition(
  node: CheckedNode,
  written: readonly Word[],
  context: ReadContext,
): { readonly variable: string; readonly values: readonly string[] } {
  const variable = textAt(node, 0) ?? '';
  const word = node.arguments[0]?.words[0];
  const known = word === undefined ? null : valuesOf(word, context);
  const values = written.map((one) => {
    if (known === null) return one.text;
    if (known === 'holder') return holderValue(one, context);
    if (!known.includes(one.text)) {
      context.problems.add('unknown-value', one.span, `"${variable}" is never "${one.text}"`, {
        expected: known.join(' | '),
        nearest: nearestName(one.text, known),
      });
    }
    return one.text;
  });
  return { variable, values };
}

/** Values of the variable; "holder" for where a piece is; null (with a problem) when there is no such variable. */
function valuesOf(word: Word, context: ReadContext): readonly string[] | 'holder' | null {
  const { ids, problems } = context;
  if (word.text.startsWith('request:')) {
    const id = word.text.slice('request:'.length);
    if (ids.get('request', id) !== null) return REQUEST_VALUES;
    problems.add('unknown-id', word.span, `there is no request "${id}"`, {
      nearest: nearestName(id, ids.ids('request')),
    });
    return null;
  }
  const [id = '', aspectId] = word.text.split('.');
  const declared = ids.get('hardware', id);
  if (declared === null) {
    const other = ids.body(id);
    if (other !== null) {
      problems.add('wrong-sort', word.span, `"${id}" is a ${other.namespace}, which has no state here`, {
        expected: 'a hardware id, id.aspect, id.holder, or request:ID',
      });
    } else {
      problems.add('unknown-id', word.span, `there is no hardware "${id}"`, {
        nearest: nearestName(id, ids.ids('hardware')),
      });
    }
    return null;
  }
  const kindId = declared.node === null ? null : text(declared.node, 'kind');
  const kind = kindId === null ? undefined : context.library.kinds.get(kindId);
  if (kind === undefined) return null;
  if (aspectId === 'holder') {
    if (kind.carried) return 'holder';
    problems.add('unknown-aspect', word.span, `"${id}" is a ${kind.id}, which nobody carries`, {
      expected: aspectsOf(kind),
    });
    return null;
  }
  const aspect = aspectId === undefined ? kind.aspects[0] : kind.aspects.find((one) => one.id === aspectId);
  if (aspect === undefined) {
    const names = kind.aspects.map((one) => one.id);
    problems.add(
      'unknown-aspect',
      word.span,
      aspectId === undefined
        ? `"${id}" is a ${kind.id}, which has no state`
        : `a ${kind.id} has no aspect "${aspectId}"`,
      { expected: aspectsOf(kind), nearest: aspectId === undefined ? null : nearestName(aspectId, names) },
    );
    return null;
  }
  return aspect.values;
}

function aspectsOf(kind: Kind): string {
  const names = [...kind.aspects.map((one) => one.id), ...(kind.carried ? ['holder'] : [])];
  return names.length === 0 ? 'hardware that has a state' : names.join(', ');
}

/** "bag-1" → "hardware:bag-1"; already prefixed values stay. */
function holderValue(word: Word, context: ReadContext): string {
  const bare = word.text.replace(/^(place|hardware|person|arm):/, '');
  const body = context.ids.body(bare);
  if (body !== null) return `${body.namespace}:${bare}`;
  context.problems.add('unknown-id', word.span, `there is no place, hardware, person or arm "${bare}"`, {
    nearest: nearestName(bare, [...context.ids.ids('place'), ...context.ids.ids('hardware')]),
  });
  return word.text;
}
