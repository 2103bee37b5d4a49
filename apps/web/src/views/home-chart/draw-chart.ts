/**
 * The home chart on a canvas: time across, minutes to the hatch upward. Each person is a line, flat on the shelf of a place
 * while working, sloping while travelling; posts are the way home from there; the wall is the time by which both must be in.
 */
import type { HomeChartData, Lane } from '@handrail/eva/brief/home-chart/home-chart-data';
import type { ChartColours } from './chart-colours.ts';
import type { ChartMarks } from './chart-marks.ts';
import { drawAxis, drawBands, drawShelves, drawWall } from './draw-ground.ts';
import { faded, stroke } from './pen.ts';
import type { Scale } from './viewport.ts';

/** Line of the second person lies a little lower, so that two on one shelf are both seen. */
export const LANE_SHIFT = 6;

export function drawChart(
  pen: CanvasRenderingContext2D,
  data: HomeChartData,
  scale: Scale,
  marks: ChartMarks,
  colours: ChartColours,
): void {
  pen.clearRect(0, 0, scale.width, scale.height);
  pen.lineCap = 'butt';
  pen.lineJoin = 'round';
  drawBands(pen, data, scale, colours);
  drawAxis(pen, data, scale, marks, colours);
  drawShelves(pen, data, scale, marks, colours);
  pen.save();
  pen.beginPath();
  pen.rect(scale.left, 0, scale.right - scale.left, scale.height);
  pen.clip();
  drawWall(pen, data, scale, colours);
  if (marks.ghost !== null) {
    pen.globalAlpha = 0.35;
    for (const [index, lane] of marks.ghost.lanes.entries())
      drawLane(pen, lane, index, marks.ghost, scale, { ...marks, numbers: new Map(), troubled: new Map() }, colours);
    pen.globalAlpha = 1;
  }
  for (const [index, lane] of data.lanes.entries()) {
    drawPosts(pen, lane, index, scale, colours);
    drawLane(pen, lane, index, data, scale, marks, colours);
  }
  drawJoins(pen, data, scale, colours);
  drawArms(pen, data, scale, colours);
  drawMinute(pen, scale, marks, colours);
  pen.restore();
  nameArms(pen, data, scale, colours);
}

/** Seconds to the hatch from a place, as the person's own samples or the shelf say. */
export function homeOf(data: HomeChartData, lane: Lane, place: string): number {
  const sample = lane.samples.find((one) => one.place === place && one.travelS !== null);
  return sample?.travelS ?? data.shelves.find((shelf) => shelf.place === place)?.homeS ?? 0;
}

function drawLane(
  pen: CanvasRenderingContext2D,
  lane: Lane,
  index: number,
  data: HomeChartData,
  scale: Scale,
  marks: ChartMarks,
  colours: ChartColours,
): void {
  const colour = index === 0 ? colours.first : colours.second;
  const shift = index * LANE_SHIFT;
  for (const stretch of lane.committed) {
    pen.strokeStyle = faded(colour, 0.32);
    pen.lineWidth = 13;
    for (const piece of lane.course) {
      const [from, to] = [Math.max(piece.startS, stretch.startS), Math.min(piece.endS, stretch.endS)];
      if (to <= from) continue;
      const [low, high] = [homeOf(data, lane, piece.place), homeOf(data, lane, piece.to)];
      const at = (petS: number): number =>
        scale.y(low + ((high - low) * (petS - piece.startS)) / Math.max(1, piece.endS - piece.startS)) + shift;
      stroke(pen, scale.x(from), at(from), scale.x(to), at(to));
    }
  }
  for (const stretch of lane.course) {
    const [x1, x2] = [scale.x(stretch.startS), scale.x(stretch.endS)];
    if (x2 < scale.left || x1 > scale.right) continue;
    const y1 = scale.y(homeOf(data, lane, stretch.place)) + shift;
    const y2 = scale.y(homeOf(data, lane, stretch.to)) + shift;
    const isWork = stretch.kind === 'work';
    pen.strokeStyle = colour;
    pen.setLineDash(stretch.kind === 'wait' ? [3, 3] : []);
    pen.lineWidth = isWork ? 6 : 2.5;
    stroke(pen, x1, y1, x2, y2);
    pen.setLineDash([]);
    if (index % 2 === 1 && isWork) {
      // The second person's line is double.
      pen.strokeStyle = colours.panel;
      pen.lineWidth = 2;
      stroke(pen, x1 + 1, y1, x2 - 1, y2);
    }
    if (stretch.on !== null) {
      pen.strokeStyle = colours.ride;
      pen.lineWidth = 2;
      stroke(pen, x1, y1 + 8, x2, y2 + 8);
    }
    if (stretch.stint === null) continue;
    // Where one stint ends and the next begins is seen.
    pen.fillStyle = colours.ink;
    pen.fillRect(x1, y1 - 5, 1.2, 10);
    const trouble = marks.troubled.get(stretch.stint.key);
    if (trouble !== undefined && x2 - x1 > 3) mark(pen, trouble, x1 + 5, y1 - 12, colours);
    if (marks.selectedStint === stretch.stint.key) {
      pen.strokeStyle = colours.focus;
      pen.lineWidth = 2;
      pen.strokeRect(x1 - 2, Math.min(y1, y2) - 8, Math.max(6, x2 - x1) + 4, Math.abs(y2 - y1) + 16);
    }
    const number = marks.numbers.get(stretch.stint.key);
    if (number === undefined || x2 - x1 < 12) continue;
    pen.font = '600 11px "IBM Plex Sans", sans-serif';
    pen.textAlign = 'center';
    pen.fillStyle = colours.ink;
    pen.fillText(String(number), (x1 + x2) / 2, (y1 + y2) / 2 + (index % 2 === 1 ? 17 : -8));
  }
}

/** A shape for each weight of finding, so that colour is never alone. */
function mark(
  pen: CanvasRenderingContext2D,
  weight: 'error' | 'warning' | 'unknown',
  x: number,
  y: number,
  colours: ChartColours,
): void {
  pen.fillStyle = colours[weight];
  pen.beginPath();
  if (weight === 'error') pen.rect(x - 4, y - 4, 8, 8);
  else if (weight === 'warning') {
    pen.moveTo(x, y - 5);
    pen.lineTo(x + 5, y + 4);
    pen.lineTo(x - 5, y + 4);
  } else pen.arc(x, y, 4, 0, Math.PI * 2);
  pen.fill();
}

function drawPosts(
  pen: CanvasRenderingContext2D,
  lane: Lane,
  index: number,
  scale: Scale,
  colours: ChartColours,
): void {
  const shift = index * LANE_SHIFT;
  for (const sample of lane.samples) {
    const isUnknown = sample.unknown.length > 0;
    if (sample.closeS <= 0 && (!isUnknown || sample.committed)) continue;
    const x = scale.x(sample.petS);
    if (x < scale.left || x > scale.right) continue;
    const base = scale.y(sample.travelS ?? 0) + shift;
    const tip = scale.y((sample.travelS ?? 0) + sample.closeS + sample.otherS) + shift;
    pen.strokeStyle = isUnknown ? colours.unknown : colours.post;
    pen.lineWidth = 1;
    pen.setLineDash(isUnknown ? [3, 2] : []);
    stroke(pen, x, base, x, isUnknown ? tip - 8 : tip);
    pen.setLineDash([]);
    if (!isUnknown) stroke(pen, x - 2.5, tip, x + 2.5, tip);
  }
}

function drawJoins(pen: CanvasRenderingContext2D, data: HomeChartData, scale: Scale, colours: ChartColours): void {
  let lastX = Number.NEGATIVE_INFINITY;
  for (const tie of data.joins.toSorted((a, b) => a.petS - b.petS)) {
    const x = scale.x(tie.petS);
    const at = (who: string | null): number => {
      const index = data.lanes.findIndex((lane) => lane.person === who);
      const lane = data.lanes[index];
      const stretch = lane?.course.find((one) => one.startS <= tie.petS && tie.petS <= one.endS);
      return lane === undefined || stretch === undefined
        ? scale.foot + 40
        : scale.y(homeOf(data, lane, stretch.place)) + index * LANE_SHIFT;
    };
    const [from, to] = [at(tie.says), at(tie.listens)];
    pen.strokeStyle = colours.ink;
    pen.lineWidth = 1.5;
    stroke(pen, x, from, x, to);
    pen.fillStyle = colours.ink;
    pen.beginPath();
    pen.arc(x, from, 3, 0, Math.PI * 2);
    pen.fill();
    if (x - lastX < 70) continue;
    lastX = x;
    pen.font = 'italic 11px "IBM Plex Sans", sans-serif';
    pen.textAlign = 'left';
    pen.fillText(tie.join.title, x + 4, Math.min(from, to) - 12);
  }
}

function drawArms(pen: CanvasRenderingContext2D, data: HomeChartData, scale: Scale, colours: ChartColours): void {
  for (const [index, row] of data.armRows.entries()) {
    const y = scale.foot + 44 + index * 20;
    pen.strokeStyle = colours.faint;
    pen.lineWidth = 1;
    stroke(pen, scale.left, y, scale.right, y);
    for (const piece of row.pieces) {
      const [x1, x2] = [scale.x(piece.startS), scale.x(piece.endS)];
      pen.fillStyle = piece.rider === null ? faded(colours.ride, 0.55) : colours.ride;
      pen.fillRect(x1, y - 5, Math.max(2, x2 - x1), 10);
    }
  }
}

function nameArms(pen: CanvasRenderingContext2D, data: HomeChartData, scale: Scale, colours: ChartColours): void {
  pen.font = '11px "IBM Plex Sans", sans-serif';
  pen.textAlign = 'right';
  pen.fillStyle = colours.ink;
  for (const [index, row] of data.armRows.entries())
    pen.fillText(row.title, scale.left - 12, scale.foot + 48 + index * 20);
}

function drawMinute(pen: CanvasRenderingContext2D, scale: Scale, marks: ChartMarks, colours: ChartColours): void {
  const x = scale.x(marks.minuteS);
  pen.strokeStyle = colours.focus;
  pen.lineWidth = 1.5;
  stroke(pen, x, scale.top - 6, x, scale.foot + 4);
  pen.fillStyle = colours.focus;
  pen.beginPath();
  pen.moveTo(x, scale.top - 1);
  pen.lineTo(x - 5, scale.top - 8);
  pen.lineTo(x + 5, scale.top - 8);
  pen.fill();
}
