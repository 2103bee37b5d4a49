/** What the lines of the people stand on: night, gaps, time axis, shelves of the places, the wall. */
import type { HomeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { spreadLabels } from '@handrail/eva/brief/home-chart/spread-labels';
import { formatPet, formatUtcClock } from '@handrail/quantity/time';
import type { ChartColours } from './chart-colours.ts';
import type { ChartMarks } from './chart-marks.ts';
import { clear, faded, stroke } from './pen.ts';
import type { Scale } from './viewport.ts';

const STEPS_S = [300, 600, 900, 1800, 3600] as const;

export function drawBands(
  pen: CanvasRenderingContext2D,
  data: HomeChartData,
  scale: Scale,
  colours: ChartColours,
): void {
  for (const [order, band] of data.bands.entries()) {
    for (const [from, to] of band.pieces) {
      const x1 = Math.max(scale.left, scale.x(from));
      const x2 = Math.min(scale.right, scale.x(to));
      if (x2 <= x1) continue;
      if (band.window.shownAs === 'night') {
        // Soft edges: dusk and dawn are no lines.
        const soft = pen.createLinearGradient(scale.x(from), 0, scale.x(to), 0);
        soft.addColorStop(0, clear(colours.night));
        soft.addColorStop(0.12, faded(colours.night, 0.2));
        soft.addColorStop(0.88, faded(colours.night, 0.2));
        soft.addColorStop(1, clear(colours.night));
        pen.fillStyle = soft;
        pen.fillRect(x1, scale.top, x2 - x1, scale.foot - scale.top);
      } else if (band.window.shownAs === 'gap') hatch(pen, x1, scale.top - 8, x2 - x1, 8, colours.gap);
      else {
        pen.fillStyle = colours.ride;
        pen.fillRect(x1, scale.foot + 2 + (order % 2) * 3, x2 - x1, 2);
      }
    }
  }
}

function hatch(
  pen: CanvasRenderingContext2D,
  x: number,
  y: number,
  width: number,
  height: number,
  colour: string,
): void {
  pen.save();
  pen.beginPath();
  pen.rect(x, y, width, height);
  pen.clip();
  pen.strokeStyle = colour;
  pen.lineWidth = 1;
  pen.beginPath();
  for (let at = x - height; at < x + width; at += 5) {
    pen.moveTo(at, y + height);
    pen.lineTo(at + height, y);
  }
  pen.stroke();
  pen.restore();
}

export function drawAxis(
  pen: CanvasRenderingContext2D,
  data: HomeChartData,
  scale: Scale,
  marks: ChartMarks,
  colours: ChartColours,
): void {
  const span = scale.viewport.toS - scale.viewport.fromS;
  const perS = (scale.right - scale.left) / span;
  const stepS = STEPS_S.find((step) => step * perS >= 58) ?? 3600;
  const zero = data.eva.petZeroUtcMs;
  // On UTC the ticks stand on whole minutes of the clock.
  const shiftS = marks.timeMode === 'utc' ? ((zero / 1000) % stepS) * -1 : 0;
  pen.font = '11px "IBM Plex Sans", sans-serif';
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  const first = Math.ceil((scale.viewport.fromS - shiftS) / stepS) * stepS + shiftS;
  for (let petS = first; petS <= scale.viewport.toS; petS += stepS) {
    const x = scale.x(petS);
    const isHour = Math.round(petS - shiftS) % 3600 === 0;
    pen.strokeStyle = isHour ? colours.line : colours.faint;
    pen.lineWidth = 1;
    stroke(pen, x, scale.top, x, scale.foot);
    const words =
      marks.timeMode === 'pet'
        ? [formatPet(petS), formatUtcClock(zero + petS * 1000)]
        : [formatUtcClock(zero + petS * 1000), formatPet(petS)];
    pen.fillStyle = colours.ink;
    pen.fillText(words[0] ?? '', x, scale.foot + 18);
    pen.fillStyle = colours.soft;
    pen.fillText(words[1] ?? '', x, scale.foot + 31);
  }
  pen.textAlign = 'right';
  pen.fillStyle = colours.soft;
  pen.fillText(marks.timeMode === 'pet' ? 'PET' : 'UTC', scale.left - 8, scale.foot + 18);
  pen.fillText(marks.timeMode === 'pet' ? 'UTC' : 'PET', scale.left - 8, scale.foot + 31);
  pen.textAlign = 'left';
  pen.fillText('minutes to the hatch', 6, scale.top - 14);
}

export function drawShelves(
  pen: CanvasRenderingContext2D,
  data: HomeChartData,
  scale: Scale,
  marks: ChartMarks,
  colours: ChartColours,
): void {
  const ys = spreadLabels(
    data.shelves.map((shelf) => scale.y(shelf.homeS)),
    12,
    scale.top,
    scale.foot + 4,
  );
  const room = scale.left - 40;
  for (const [index, shelf] of data.shelves.entries()) {
    const y = scale.y(shelf.homeS);
    const labelY = ys[index] ?? y;
    const colour = colours.families[Math.max(0, marks.families.indexOf(shelf.family)) % 8] ?? colours.soft;
    pen.strokeStyle = colours.line;
    pen.lineWidth = 1;
    pen.setLineDash([2, 4]);
    stroke(pen, scale.left, y, scale.right, y);
    pen.setLineDash([]);
    pen.strokeStyle = colour;
    pen.lineWidth = 1.5;
    stroke(pen, scale.left - 9, labelY, scale.left, y);
    pen.textBaseline = 'middle';
    pen.textAlign = 'right';
    pen.font = '11px "IBM Plex Sans", sans-serif';
    pen.fillStyle = colours.soft;
    pen.fillText(String(Math.round(shelf.homeS / 6) / 10), scale.left - 12, labelY);
    pen.fillStyle = colours.ink;
    pen.fillText(cut(pen, shelf.title, room), scale.left - 38, labelY);
  }
  pen.textBaseline = 'alphabetic';
}

export function drawWall(
  pen: CanvasRenderingContext2D,
  data: HomeChartData,
  scale: Scale,
  colours: ChartColours,
): void {
  if (data.wall === null) return;
  const { footS, petS, cause } = data.wall;
  const x = scale.x(footS);
  const topX = scale.x(footS - scale.topS);
  pen.fillStyle = faded(colours.wall, 0.1);
  pen.beginPath();
  pen.moveTo(x, scale.foot);
  pen.lineTo(topX, scale.top);
  pen.lineTo(Math.max(scale.right, topX), scale.top);
  pen.lineTo(Math.max(scale.right, x), scale.foot);
  pen.fill();
  pen.strokeStyle = colours.wall;
  pen.lineWidth = 2.5;
  stroke(pen, x, scale.foot, topX, scale.top);
  pen.fillStyle = colours.wall;
  pen.font = '600 11px "IBM Plex Sans", sans-serif';
  pen.textAlign = 'right';
  const words = `the wall: both in by ${formatPet(petS)}, ${cause}`;
  pen.fillText(
    words,
    Math.min(scale.right - 4, Math.max(scale.left + pen.measureText(words).width + 8, x + 40)),
    scale.top - 14,
  );
}

function cut(pen: CanvasRenderingContext2D, words: string, widthPx: number): string {
  if (pen.measureText(words).width <= widthPx) return words;
  let kept = words;
  while (kept.length > 1 && pen.measureText(`${kept}…`).width > widthPx) kept = kept.slice(0, -1);
  return `${kept}…`;
}
