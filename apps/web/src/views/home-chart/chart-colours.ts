/** The page's colours as a canvas takes them; read again when the theme changes. */
const TOKENS = [
  'paper',
  'panel',
  'ink',
  'soft',
  'line',
  'faint',
  'night',
  'gap',
  'first',
  'second',
  'wall',
  'post',
  'ride',
  'error',
  'warning',
  'unknown',
  'focus',
] as const;

export type ChartColours = Readonly<Record<(typeof TOKENS)[number], string>> & { readonly families: readonly string[] };

export function chartColours(element: HTMLElement): ChartColours {
  const probe = document.createElement('span');
  element.append(probe);
  const read = (token: string): string => {
    probe.style.color = `var(--${token})`;
    return getComputedStyle(probe).color;
  };
  const families = Array.from({ length: 8 }, (_, index) => read(`family-${index}`));
  const colours = Object.fromEntries(TOKENS.map((token) => [token, read(token)])) as Record<
    (typeof TOKENS)[number],
    string
  >;
  probe.remove();
  return { ...colours, families };
}
