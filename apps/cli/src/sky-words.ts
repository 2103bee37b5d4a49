/** Figures of the sky as the terminal shows them. */

/** "11:40:05". */
export function clockWithSeconds(utcMs: number): string {
  return new Date(Math.round(utcMs / 1000) * 1000).toISOString().slice(11, 19);
}

/** "-12.4°". */
export function degrees(rad: number, digits = 1): string {
  const text = ((rad * 180) / Math.PI).toFixed(digits);
  return `${/^-0\.?0*$/.test(text) ? text.slice(1) : text}°`;
}

export function percent(fraction: number): string {
  return `${(fraction * 100).toFixed(0)} %`;
}
