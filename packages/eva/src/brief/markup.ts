/** Building HTML and SVG as text: everything that comes from a document is escaped here and nowhere else. */

/** Markup that is already safe to place in a page. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type MarkupValue = Markup | string | number | null | undefined | false | readonly MarkupValue[];

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ESCAPES[character] as string);
}

/** Tagged template: literal parts are markup, values are escaped unless they are `Markup`; lists are joined; null and false vanish. */
export function markup(parts: TemplateStringsArray, ...values: readonly MarkupValue[]): Markup {
  let text = parts[0] ?? '';
  values.forEach((value, index) => {
    text += render(value) + (parts[index + 1] ?? '');
  });
  return new Markup(text);
}

function render(value: MarkupValue): string {
  if (value === null || value === undefined || value === false) return '';
  if (value instanceof Markup) return value.text;
  if (typeof value === 'number') return String(Math.round(value * 100) / 100);
  if (typeof value === 'string') return escapeText(value);
  return value.map(render).join('');
}

/** A usable element id from any words. */
export function elementId(...words: readonly string[]): string {
  return words.join('-').replace(/[^A-Za-z0-9]+/g, '-');
}
