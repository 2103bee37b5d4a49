/** Where a value stands in the campaign text. Lines and columns count from 1; columns count UTF-16 units as editors do. */
export interface Span {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly length: number;
}

export function formatSpan(span: Span): string {
  return `${span.file}:${span.line}:${span.column}`;
}
