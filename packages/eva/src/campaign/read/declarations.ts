/** Every id of the campaign, by namespace, with the node that declares it. */
import type { CheckedNode, Word } from '../check/checked-node.ts';
import type { Body, Namespace } from '../definition/value-type.ts';
import type { ProblemList } from '../problem/problem.ts';
import { formatSpan, type Span } from '../span.ts';

export interface Declared {
  readonly id: string;
  readonly namespace: Namespace;
  /** null: assumed by the reader. */
  readonly node: CheckedNode | null;
  readonly span: Span;
}

const BODIES: readonly Body[] = ['person', 'arm', 'hardware', 'place'];

export class Declarations {
  readonly #byNamespace = new Map<Namespace, Map<string, Declared>>();

  /** Declares an id; one that is taken is a problem that names both places. Whether it was free. */
  add(namespace: Namespace, id: string, node: CheckedNode | null, span: Span, problems: ProblemList): boolean {
    const before = this.#body(namespace)
      ? BODIES.map((body) => this.get(body, id)).find((one) => one !== null)
      : this.get(namespace, id);
    if (before !== undefined && before !== null) {
      const where = before.span.file === span.file ? `line ${before.span.line}` : formatSpan(before.span);
      problems.add('id-twice', span, `"${id}" is already the ${before.namespace} of ${where}`, {
        expected: this.#body(namespace)
          ? 'one id each for people, arms, hardware and places'
          : `one id for each ${namespace}`,
      });
      return false;
    }
    const inner = this.#byNamespace.get(namespace) ?? new Map<string, Declared>();
    inner.set(id, { id, namespace, node, span });
    this.#byNamespace.set(namespace, inner);
    return true;
  }

  get(namespace: Namespace, id: string): Declared | null {
    return this.#byNamespace.get(namespace)?.get(id) ?? null;
  }

  /** The person, arm, hardware or place of this id. */
  body(id: string): Declared | null {
    for (const body of BODIES) {
      const found = this.get(body, id);
      if (found !== null) return found;
    }
    return null;
  }

  ids(namespace: Namespace): readonly string[] {
    return [...(this.#byNamespace.get(namespace)?.keys() ?? [])];
  }

  all(namespace: Namespace): readonly Declared[] {
    return [...(this.#byNamespace.get(namespace)?.values() ?? [])];
  }

  #body(namespace: Namespace): boolean {
    return (BODIES as readonly Namespace[]).includes(namespace);
  }
}

/** Walks the checked nodes and declares what their definitions say they declare. Stints are known as task/stint. */
export function collectDeclarations(nodes: readonly CheckedNode[], problems: ProblemList): Declarations {
  const declarations = new Declarations();
  const walk = (node: CheckedNode, task: string | null): void => {
    const definition = node.definition;
    if (definition === null) return;
    let free = true;
    const declare = (namespace: Namespace, word: Word): void => {
      const id = namespace === 'stint' && task !== null ? `${task}/${word.text}` : word.text;
      free = declarations.add(namespace, id, node, word.span, problems) && free;
    };
    for (const [at, value] of node.arguments.entries()) {
      const argument = definition.arguments[at] ?? definition.arguments.find((one) => one.rest);
      if (value !== null && argument?.type.type === 'id')
        for (const one of value.words) declare(argument.type.declares, one);
    }
    for (const [key, value] of node.properties) {
      const type = definition.properties[key]?.type;
      if (type?.type === 'id') for (const one of value.words) declare(type.declares, one);
    }
    // The stints of a second task of the same name would all be named twice too.
    if (!free) return;
    const inside =
      definition.name === 'task' || definition.name === 'insert' ? String(node.arguments[0]?.value ?? '') : task;
    for (const child of node.children) walk(child, inside);
  };
  for (const node of nodes) walk(node, null);
  return declarations;
}
