import { nodes } from '../nodes.generated.ts';
import type { NodeDefinition } from './define-node.ts';

const BY_NAME: ReadonlyMap<string, NodeDefinition> = new Map(nodes.map((node) => [node.name, node]));

/** The definition of a node; null: none has this name, so in a stint it is a sentence. */
export function nodeByName(name: string): NodeDefinition | null {
  return BY_NAME.get(name) ?? null;
}
