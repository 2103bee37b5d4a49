/**
 * A task template: one `use` node in a task becomes the stints that a lead would have written by hand. It works on plain
 * nodes before anything is resolved, so what it makes is checked exactly like hand-written text, and its complaints point
 * at the `use` node.
 */
import type { Span } from '../../campaign/span.ts';

export type TemplateValue = string | number | boolean;

/**
 * The `use` node, checked for shape only: `use swap-box swap who=EV1 old=old-pump new=new-pump { … }` has name "swap-box",
 * id "swap", args {who, old, new}. An argument that lists several ids is one text with spaces between them.
 */
export interface TemplateUse {
  readonly name: string;
  /** The instance: every id that the template makes begins with it. */
  readonly id: string;
  readonly args: Readonly<Record<string, TemplateValue>>;
  readonly children: readonly TemplateNode[];
  readonly span: Span;
}

/** A node as in the text: `name arguments… key=value… { children }`. */
export interface TemplateNode {
  readonly name: string;
  readonly arguments: readonly TemplateValue[];
  readonly properties: Readonly<Record<string, TemplateValue>>;
  readonly children: readonly TemplateNode[];
  readonly span: Span;
}

export interface TemplateProblem {
  readonly message: string;
  /** What was expected, or the nearest valid name; null where there is nothing to offer. */
  readonly advice: string | null;
  readonly span: Span;
}

export type TemplateResult =
  | { readonly ok: true; readonly nodes: readonly TemplateNode[] }
  | { readonly ok: false; readonly problems: readonly TemplateProblem[] };

export interface TemplateArgument {
  readonly id: string;
  readonly about: string;
  readonly type: 'id' | 'ids' | 'text' | 'minutes' | 'boolean';
  readonly required: boolean;
}

export interface TaskTemplate {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly arguments: readonly TemplateArgument[];
  /** Child nodes of `use` that it understands, beside those of its arguments; each goes where `about` says. */
  readonly childNames: readonly { readonly name: string; readonly about: string }[];
  /** Campaign text of one use and the text it stands for; both are run by the tests. */
  readonly example: { readonly use: string; readonly expands: string };
  readonly expand: (use: TemplateUse) => TemplateResult;
}

export function defineTemplate(template: TaskTemplate): TaskTemplate {
  return template;
}
