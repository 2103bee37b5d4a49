/** Which of a node's values is its title: the last, in quotes, beyond those that the definition asks for. */
import type { NodeDefinition } from '../definition/define-node.ts';
import type { SourceEntry } from './source-node.ts';

export interface TitledArguments {
  readonly title: string | null;
  readonly arguments: readonly SourceEntry[];
}

export function splitTitle(definition: NodeDefinition | null, entries: readonly SourceEntry[]): TitledArguments {
  const written = entries.filter((entry) => entry.name === null);
  const last = written.at(-1);
  const none = { title: null, arguments: written };
  if (definition === null || !definition.title || last === undefined) return none;
  if (!last.quoted || typeof last.value !== 'string') return none;
  // Where any number of ids may stand, only the quotes tell the title from one more id; at least one id comes first.
  const fixed = definition.arguments.filter((one) => !one.rest).length;
  const rest = definition.arguments.some((one) => one.rest);
  if (written.length <= (rest ? fixed + 1 : fixed)) return none;
  return { title: last.value, arguments: written.slice(0, -1) };
}
