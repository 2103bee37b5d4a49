/** How the templates write their nodes: stints with the instance id in front, sentences, and what the user adds to a stint. */
import type {
  TaskTemplate,
  TemplateNode,
  TemplateProblem,
  TemplateResult,
  TemplateUse,
  TemplateValue,
} from './template.ts';

type Properties = Readonly<Record<string, TemplateValue | undefined>>;

/** "b1 b2 b3" as three ids; nothing as none. */
export function idsOf(use: TemplateUse, argument: string): readonly string[] {
  const value = use.args[argument];
  return value === undefined ? [] : String(value).split(/\s+/).filter(Boolean);
}

export function textOf(use: TemplateUse, argument: string): string | undefined {
  const value = use.args[argument];
  return value === undefined ? undefined : String(value);
}

/** A sentence; none when there is nothing to do it to. */
export function sentences(
  use: TemplateUse,
  verb: string,
  objects: readonly string[],
  properties: Properties = {},
): readonly TemplateNode[] {
  return objects.length === 0 ? [] : [node(use, verb, objects, properties, [])];
}

/**
 * A stint of the template. What stands in the `use` node inside a node named like the stint is added below its sentences:
 * `use swap-box swap … { free { minutes 18; caution "Hoses may hold pressure" } }`.
 */
export function stintOf(
  use: TemplateUse,
  part: string,
  title: string,
  properties: Properties,
  steps: readonly TemplateNode[],
): readonly TemplateNode[] {
  const added = use.children.filter((child) => child.name === part).flatMap((child) => child.children);
  if (steps.length === 0 && added.length === 0) return [];
  return [node(use, 'stint', [`${use.id}-${part}`, title], properties, [...steps, ...added])];
}

/** The nodes, unless an inner node names no stint of the template. */
export function resultOf(
  use: TemplateUse,
  children: TaskTemplate['childNames'],
  nodes: readonly TemplateNode[],
): TemplateResult {
  const names = children.map((child) => child.name);
  const problems: TemplateProblem[] = use.children
    .filter((child) => !names.includes(child.name))
    .map((child) => ({
      message: `template ${use.name} has no stint "${child.name}"`,
      advice: names.join(', '),
      span: child.span,
    }));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, nodes };
}

function node(
  use: TemplateUse,
  name: string,
  args: readonly TemplateValue[],
  properties: Properties,
  children: readonly TemplateNode[],
): TemplateNode {
  const stated: Record<string, TemplateValue> = {};
  for (const [key, value] of Object.entries(properties)) if (value !== undefined) stated[key] = value;
  return { name, arguments: args, properties: stated, children, span: use.span };
}
