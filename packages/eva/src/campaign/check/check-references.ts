/** Every id that is used must be declared, and be of the sort that the place asks for. */
import type { KindsLibrary } from '../../kinds/kinds-library.ts';
import type { ValueType } from '../definition/value-type.ts';
import { IT, STEP_OBJECTS, STEP_PROPERTIES } from '../definition/step-shape.ts';
import { nearestName } from '../problem/nearest-name.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { Declarations } from '../read/declarations.ts';
import type { CheckedNode, Word } from './checked-node.ts';

export interface ReferenceContext {
  readonly ids: Declarations;
  readonly library: KindsLibrary;
  readonly problems: ProblemList;
  /** Words of nodes that could not be read: an id among them may be declared there, so its use is not reported. */
  readonly lost: ReadonlySet<string>;
}

export function checkReferences(nodes: readonly CheckedNode[], context: ReferenceContext): void {
  for (const node of nodes) walk(node, null, false, context);
}

function walk(node: CheckedNode, task: string | null, response: boolean, context: ReferenceContext): void {
  const definition = node.definition;
  for (const [at, value] of node.arguments.entries()) {
    if (value === null) continue;
    const type =
      definition === null
        ? STEP_OBJECTS
        : (definition.arguments[at] ?? definition.arguments.find((one) => one.rest))?.type;
    for (const word of value.words) checkWord(type, word, task, response, context);
  }
  for (const [key, value] of node.properties) {
    const type = (definition === null ? STEP_PROPERTIES : definition.properties)[key]?.type;
    for (const word of value.words) checkWord(type, word, task, response, context);
  }
  const opensTask = definition?.name === 'task' || definition?.name === 'insert';
  const inside = opensTask ? String(node.arguments[0]?.value ?? '') : task;
  for (const child of node.children) walk(child, inside, response || definition?.name === 'response', context);
}

function checkWord(
  type: ValueType | undefined,
  word: Word,
  task: string | null,
  response: boolean,
  context: ReferenceContext,
): void {
  if (type?.type !== 'reference' || type.words.includes(word.text)) return;
  const { ids, library, problems, lost } = context;
  if (response && word.text === IT) return;
  for (const namespace of type.to) {
    if (namespace === 'kind' ? library.kinds.has(word.text) : ids.get(namespace, word.text) !== null) return;
    if (namespace === 'stint' && task !== null && ids.get('stint', `${task}/${word.text}`) !== null) return;
  }
  if (lost.has(word.text) || problems.isFull) return;
  const what = [type.to.slice(0, -1).join(', '), type.to.at(-1)].filter((part) => part !== '').join(' or ');
  const other = ids.body(word.text) ?? null;
  const names = type.to.flatMap((namespace) =>
    namespace === 'kind'
      ? [...library.kinds.keys()]
      : namespace === 'stint' && task !== null && !word.text.includes('/')
        ? ids.ids('stint').map((key) => (key.startsWith(`${task}/`) ? key.slice(task.length + 1) : key))
        : ids.ids(namespace),
  );
  if (other !== null) {
    problems.add('wrong-sort', word.span, `"${word.text}" is a ${other.namespace}, not a ${what}`, {
      expected: listed(names, what),
    });
    return;
  }
  const nearest = nearestName(word.text, [...names, ...type.words]);
  problems.add('unknown-id', word.span, `there is no ${what} "${word.text}"`, {
    ...(nearest === null ? { expected: listed([...type.words, ...names], what) } : {}),
    nearest,
  });
}

function listed(names: readonly string[], what: string): string {
  if (names.length === 0) return `${/^[aeo]/.test(what) ? 'an' : 'a'} ${what}; the campaign declares none`;
  return names.length <= 8 ? names.join(', ') : `${names.slice(0, 7).join(', ')}, … (${names.length} in all)`;
}
