/** The text as plain nodes with places: what the checker sees, whether it came from KDL, from JSON or from a template. */
import type { Span } from '../span.ts';

export type Scalar = string | number | boolean | null;

export interface SourceEntry {
  /** Property name; null for an argument. */
  readonly name: string | null;
  readonly nameSpan: Span | null;
  readonly value: Scalar;
  readonly valueSpan: Span;
  /** Written in quotes: tells a title from an id. */
  readonly quoted: boolean;
  /** Type annotation, which this format does not use; null: none. */
  readonly annotation: string | null;
}

export interface SourceNode {
  readonly name: string;
  /** Name only; `span` covers name and entries of the first line for messages about the node as a whole. */
  readonly nameSpan: Span;
  readonly span: Span;
  readonly entries: readonly SourceEntry[];
  readonly children: readonly SourceNode[];
  readonly annotation: string | null;
  /** The template that wrote it; null: a person did. */
  readonly template: string | null;
}
