/** Writes out `use` nodes: their stints are checked exactly like hand-written ones, and complaints point at the `use`. */
import type { KindsLibrary } from '../../kinds/kinds-library.ts';
import type { TaskTemplate, TemplateNode, TemplateValue } from '../../kinds/templates/template.ts';
import { checkShapes } from '../check/check-shape.ts';
import { type CheckedNode, textAt } from '../check/checked-node.ts';
import { nearestName } from '../problem/nearest-name.ts';
import type { ProblemList } from '../problem/problem.ts';
import type { SourceEntry, SourceNode } from '../text/source-node.ts';

export function expandUses(
  nodes: readonly CheckedNode[],
  library: KindsLibrary,
  templates: readonly TaskTemplate[],
  problems: ProblemList,
): readonly CheckedNode[] {
  return nodes.map((node) => {
    if (node.name !== 'task' && node.name !== 'insert') return node;
    if (!node.children.some((child) => child.name === 'use')) return node;
    const children = node.children.flatMap((child) =>
      child.name === 'use' ? expandUse(child, node.name, library, templates, problems) : [child],
    );
    return { ...node, children };
  });
}

function expandUse(
  use: CheckedNode,
  parent: string,
  library: KindsLibrary,
  templates: readonly TaskTemplate[],
  problems: ProblemList,
): readonly CheckedNode[] {
  const name = textAt(use, 0);
  const id = textAt(use, 1);
  if (name === null || id === null) return [];
  const template = templates.find((one) => one.name === name);
  if (template === undefined) {
    const names = templates.map((one) => one.name);
    problems.add('unknown-template', use.arguments[0]?.span ?? use.span, `there is no template "${name}"`, {
      expected: names.join(', ') || 'stints written out: no template is known',
      nearest: nearestName(name, names),
    });
    return [];
  }
  const args: Record<string, TemplateValue> = {};
  for (const [key, value] of use.properties) args[key] = value.value;
  const known = new Set(template.arguments.map((one) => one.id));
  for (const [key, value] of use.properties) {
    if (known.has(key)) continue;
    problems.add('unknown-property', value.span, `template ${name} has no "${key}"`, {
      expected: [...known].join(', '),
      nearest: nearestName(key, known),
    });
  }
  for (const one of template.arguments) {
    if (!one.required || use.properties.has(one.id)) continue;
    problems.add('missing-property', use.nameSpan, `template ${name} needs "${one.id}"`, { expected: one.about });
  }
  if (template.arguments.some((one) => one.required && !use.properties.has(one.id))) return [];
  const result = template.expand({ name, id, args, children: use.source.children.map(templateNode), span: use.span });
  if (!result.ok) {
    for (const problem of result.problems) {
      problems.add(
        'template',
        problem.span,
        problem.message,
        problem.advice === null ? {} : { expected: problem.advice },
      );
    }
    return [];
  }
  const sources = result.nodes.map((node) => sourceNode(node, name));
  return checkShapes(sources, parent, false, library.verbs, problems);
}

function templateNode(source: SourceNode): TemplateNode {
  const properties: Record<string, TemplateValue> = {};
  for (const entry of source.entries)
    if (entry.name !== null && entry.value !== null) properties[entry.name] = entry.value;
  return {
    name: source.name,
    arguments: source.entries.flatMap((entry) => (entry.name === null && entry.value !== null ? [entry.value] : [])),
    properties,
    children: source.children.map(templateNode),
    span: source.span,
  };
}

function sourceNode(node: TemplateNode, template: string): SourceNode {
  const entry = (name: string | null, value: TemplateValue): SourceEntry => ({
    name,
    nameSpan: name === null ? null : node.span,
    value,
    valueSpan: node.span,
    quoted: typeof value === 'string',
    annotation: null,
  });
  return {
    name: node.name,
    nameSpan: node.span,
    span: node.span,
    entries: [
      ...node.arguments.map((value) => entry(null, value)),
      ...Object.entries(node.properties).map(([key, value]) => entry(key, value)),
    ],
    children: node.children.map((child) => sourceNode(child, template)),
    annotation: null,
    template,
  };
}
