/** What may be written at a place in the text: nodes, verbs, properties, ids, words. Read off the node definitions. */
import type { KindsLibrary } from '../../kinds/kinds-library.ts';
import { templates } from '../../kinds/templates.generated.ts';
import { checkShapes, definitionsIn } from '../check/check-shape.ts';
import { describeType } from '../check/describe-type.ts';
import type { NodeDefinition, PropertyDefinition } from '../definition/define-node.ts';
import { nodeByName } from '../definition/node-by-name.ts';
import { STEP_OBJECTS, STEP_PROPERTIES } from '../definition/step-shape.ts';
import type { ValueType } from '../definition/value-type.ts';
import { ProblemList } from '../problem/problem.ts';
import { collectDeclarations, type Declarations } from '../read/declarations.ts';
import { parseFile } from '../text/parse-file.ts';
import { cursorContext } from './cursor-context.ts';

export interface Completion {
  readonly text: string;
  readonly kind: 'node' | 'verb' | 'property' | 'id' | 'word';
  /** One line for people. */
  readonly about: string;
}

export interface Completions {
  /** The stretch of text that a completion replaces. */
  readonly from: number;
  readonly to: number;
  /** Those that begin with what has been written, in the order of their text. */
  readonly items: readonly Completion[];
}

/** Ids of all files, as far as they can be read; made anew when a file changes, not at every key. */
export function declarationsOf(
  files: readonly { readonly name: string; readonly text: string }[],
  library: KindsLibrary,
): Declarations {
  const problems = new ProblemList();
  const sources = files.flatMap((file) => parseFile(file.name, file.text, problems).nodes);
  return collectDeclarations(checkShapes(sources, 'document', false, library.verbs, problems), problems);
}

/** @param offset UTF-16 offset of the cursor in `text` */
export function completeAt(text: string, offset: number, ids: Declarations, library: KindsLibrary): Completions {
  const context = cursorContext(text, offset);
  const parent = context.inside.at(-1) ?? 'document';
  const parentDefinition = nodeByName(parent);
  const items: Completion[] = [];
  if (context.inComment) return { from: offset, to: offset, items };
  const definition = context.node === null ? undefined : definitionsIn(parent).get(context.node);
  const step = context.node !== null && definition === undefined && library.verbs.has(context.node);
  if (context.node === null) {
    for (const node of definitionsIn(parent).values()) items.push({ text: node.name, kind: 'node', about: node.about });
    if (parentDefinition?.steps === true) {
      for (const [verb, uses] of library.verbs) {
        items.push({ text: verb, kind: 'verb', about: `verb of ${uses.map((use) => use.kind.id).join(', ')}` });
      }
    }
  } else if (definition?.name === 'use') {
    completeUse(context, items, ids);
  } else if (definition !== undefined || step) {
    const properties = step ? STEP_PROPERTIES : (definition as NodeDefinition).properties;
    const task = context.inside.length > 1 ? taskAround(text, offset) : null;
    if (context.property !== null) {
      const property = properties[context.property];
      if (context.property === 'state' && context.node === 'hardware')
        statesOf(context.properties['kind'], library, items);
      else if (property !== undefined) values(property.type, ids, library, task, items);
    } else {
      for (const [name, property] of Object.entries(properties)) {
        if (context.properties[name] === undefined) items.push(propertyItem(name, property));
      }
      const argument = step ? STEP_OBJECTS : argumentType(definition as NodeDefinition, context.arguments.length);
      if (argument !== null) values(argument, ids, library, task, items);
    }
  }
  const begun = context.begun.toLowerCase();
  const fitting = items.filter((item) => item.text.toLowerCase().startsWith(begun));
  const unique = [...new Map(fitting.map((item) => [`${item.kind} ${item.text}`, item])).values()];
  unique.sort((a, b) => (a.text < b.text ? -1 : a.text > b.text ? 1 : 0));
  return { from: context.from, to: Math.max(offset, context.from), items: unique };
}

function completeUse(context: ReturnType<typeof cursorContext>, items: Completion[], ids: Declarations): void {
  if (context.arguments.length === 0) {
    for (const one of templates) items.push({ text: one.name, kind: 'word', about: one.title });
    return;
  }
  const template = templates.find((one) => one.name === context.arguments[0]);
  if (template === undefined) return;
  if (context.property !== null) {
    const argument = template.arguments.find((one) => one.id === context.property);
    if (argument?.type !== 'id' && argument?.type !== 'ids') return;
    for (const namespace of ['person', 'arm', 'place', 'hardware', 'pose'] as const) {
      for (const id of ids.ids(namespace)) items.push({ text: id, kind: 'id', about: namespace });
    }
    return;
  }
  for (const argument of template.arguments) {
    if (context.properties[argument.id] !== undefined) continue;
    items.push({ text: `${argument.id}=`, kind: 'property', about: argument.about });
  }
}

function propertyItem(name: string, property: PropertyDefinition): Completion {
  return { text: `${name}=`, kind: 'property', about: `${property.about} (${describeType(property.type)})` };
}

function argumentType(definition: NodeDefinition, index: number): ValueType | null {
  return (definition.arguments[index] ?? definition.arguments.find((one) => one.rest))?.type ?? null;
}

function statesOf(kindId: string | undefined, library: KindsLibrary, items: Completion[]): void {
  const aspect = library.kinds.get(kindId ?? '')?.aspects[0];
  for (const value of aspect?.values ?? [])
    items.push({ text: value, kind: 'word', about: `${kindId}: ${aspect?.id}` });
}

function values(
  type: ValueType,
  ids: Declarations,
  library: KindsLibrary,
  task: string | null,
  items: Completion[],
): void {
  switch (type.type) {
    case 'reference':
      for (const word of type.words) items.push({ text: word, kind: 'word', about: describeType(type) });
      for (const namespace of type.to) {
        if (namespace === 'kind') {
          for (const kind of library.kinds.values()) items.push({ text: kind.id, kind: 'word', about: kind.about });
          continue;
        }
        for (const declared of ids.all(namespace)) {
          const own = namespace === 'stint' && task !== null && declared.id.startsWith(`${task}/`);
          items.push({
            text: own ? declared.id.slice(task.length + 1) : declared.id,
            kind: 'id',
            about: declared.node?.title ?? namespace,
          });
        }
      }
      break;
    case 'choice':
      for (const word of type.of) items.push({ text: word, kind: 'word', about: describeType(type) });
      break;
    case 'flag':
      for (const word of ['#true', '#false']) items.push({ text: word, kind: 'word', about: describeType(type) });
      break;
    case 'variable':
      for (const id of ids.ids('hardware')) items.push({ text: id, kind: 'id', about: 'hardware' });
      for (const id of ids.ids('request')) items.push({ text: `request:${id}`, kind: 'id', about: 'request' });
      break;
    default:
  }
}

/** Id of the task that the cursor is in: the first value of the last top-level task before it. */
function taskAround(text: string, offset: number): string | null {
  const before = text.slice(0, offset);
  return [...before.matchAll(/^\s*(?:task|insert)\s+"?([A-Za-z][A-Za-z0-9-]*)/gm)].at(-1)?.[1] ?? null;
}
