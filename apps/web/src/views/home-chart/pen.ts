/** Strokes and tones that the chart's drawings share. */

export function stroke(pen: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  pen.beginPath();
  pen.moveTo(x1, y1);
  pen.lineTo(x2, y2);
  pen.stroke();
}

/** "rgb(1, 2, 3)" with less of it. */
export function faded(colour: string, alpha: number): string {
  return colour.replace(/^rgb\((.*)\)$/, `rgba($1, ${alpha})`);
}

export function clear(colour: string): string {
  return faded(colour, 0);
}
