/**
 * The home chart as SVG: time across, minutes to the hatch upward. Each person is a line: flat on the shelf of a place
 * while working, sloping while travelling. Posts are the time to a safe stop; the wall is the time by which both must be in.
 * Shape and line style say everything that colour says, so that a grey print reads the same.
 */
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { elementId, type Markup, markup } from '../markup.ts';
import { chartScale, type ChartScale } from './chart-scale.ts';
import type { HomeChartData, Lane } from './home-chart-data.ts';
import { spreadLabels } from './spread-labels.ts';

export function homeChart(data: HomeChartData, numbers: ReadonlyMap<string, number>): Markup {
  const scale = chartScale(data);
  const id = elementId('home-chart', data.eva.eva);
  return markup`<svg class="home-chart" viewBox="0 0 ${scale.width} ${scale.height}" role="group" aria-labelledby="${id}-title ${id}-desc">
<title id="${id}-title">Home chart of EVA ${data.title}</title>
<desc id="${id}-desc">Time across, minutes to the hatch upward. The same facts stand in the table below the chart.</desc>
<defs>
<linearGradient id="${id}-dusk"><stop offset="0" class="night-edge"/><stop offset="0.12" class="night-deep"/><stop offset="0.88" class="night-deep"/><stop offset="1" class="night-edge"/></linearGradient>
<pattern id="${id}-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="6" class="gap-line"/></pattern>
</defs>
${bands(data, scale, id)}${timeAxis(data, scale)}${shelves(data, scale)}${wall(data, scale)}
${data.lanes.map((lane, index) => laneMarks(lane, index, scale, numbers, data.eva.eva))}
${joins(data, scale)}${armRows(data, scale)}
</svg>`;
}

function bands(data: HomeChartData, scale: ChartScale, id: string): Markup[] {
  return data.bands.flatMap((band, order) =>
    band.pieces.map(([from, to]) => {
      const x = scale.x(from);
      const width = scale.x(to) - x;
      const title = `${band.window.title}: PET ${formatPet(from)} to ${formatPet(to)}`;
      if (band.window.shownAs === 'night') {
        return markup`<rect class="night" x="${x}" y="${scale.top}" width="${width}" height="${scale.foot - scale.top}" fill="url(#${id}-dusk)"><title>${title}</title></rect>`;
      }
      if (band.window.shownAs === 'gap') {
        return markup`<rect class="gap" x="${x}" y="${scale.top - 8}" width="${width}" height="8" fill="url(#${id}-hatch)"><title>${title}</title></rect>`;
      }
      return markup`<rect class="band" x="${x}" y="${scale.foot + 2 + (order % 2) * 3}" width="${width}" height="3"><title>${title}</title></rect>`;
    }),
  );
}

function timeAxis(data: HomeChartData, scale: ChartScale): Markup {
  const ticks: number[] = [];
  for (let t = 0; t <= data.endS; t += 1800) ticks.push(t);
  return markup`<g class="axis">${ticks.map(
    (
      t,
    ) => markup`<line class="tick${t % 3600 === 0 ? ' hour' : ''}" x1="${scale.x(t)}" x2="${scale.x(t)}" y1="${scale.top}" y2="${scale.foot}"/>
<text class="pet" x="${scale.x(t)}" y="${scale.foot + 18}" text-anchor="middle">${formatPet(t)}</text>${
      t % 3600 === 0
        ? markup`<text class="utc" x="${scale.x(t)}" y="${scale.foot + 32}" text-anchor="middle">${formatUtcClock(data.eva.petZeroUtcMs + t * 1000)}</text>`
        : null
    }`,
  )}
<text class="unit" x="${scale.left - 6}" y="${scale.foot + 18}" text-anchor="end">PET</text><text class="unit" x="${scale.left - 6}" y="${scale.foot + 32}" text-anchor="end">UTC</text>
<text class="unit" x="4" y="${scale.top - 28}">minutes to the hatch, place</text></g>`;
}

function shelves(data: HomeChartData, scale: ChartScale): Markup {
  const ys = spreadLabels(
    data.shelves.map((shelf) => scale.y(shelf.homeS)),
    11,
    scale.top,
    scale.foot + 6,
  );
  return markup`<g class="shelves">${data.shelves.map((shelf, index) => {
    const y = scale.y(shelf.homeS);
    const labelY = ys[index] ?? y;
    return markup`<line class="shelf" x1="${scale.left}" x2="${scale.right}" y1="${y}" y2="${y}"/><path class="leader" d="M${scale.left - 10} ${labelY - 3}L${scale.left} ${y}"/>
<text class="place" x="${scale.left - 12}" y="${labelY}" text-anchor="end">${shelf.title} <tspan class="minutes">${Math.round(shelf.homeS / 6) / 10}</tspan></text>`;
  })}</g>`;
}

/** A minute of height per minute of time: whoever is on or right of it cannot be in by the wall. */
function wall(data: HomeChartData, scale: ChartScale): Markup | null {
  if (data.wall === null) return null;
  const { petS, footS, cause } = data.wall;
  const topX = scale.x(footS - scale.topS);
  return markup`<g class="wall"><path class="beyond" d="M${scale.x(footS)} ${scale.foot}L${topX} ${scale.y(scale.topS)}H${scale.right}V${scale.foot}Z"/>
<line class="wall-edge" x1="${scale.x(footS)}" y1="${scale.foot}" x2="${topX}" y2="${scale.y(scale.topS)}"/>
<text class="wall-words" x="${scale.right - 4}" y="${scale.top - 26}" text-anchor="end">both in by ${formatPet(petS)}: ${cause}; the wall stands ${formatDuration(data.hatchS)} earlier for the hatch</text></g>`;
}

function laneMarks(
  lane: Lane,
  index: number,
  scale: ChartScale,
  numbers: ReadonlyMap<string, number>,
  eva: string,
): Markup {
  // Two people on one shelf at one time must both be seen: the second line lies a little lower.
  const shift = index * 5;
  const height = (place: string): number =>
    lane.samples.find((sample) => sample.place === place && sample.travelS !== null)?.travelS ?? 0;
  const pieces = lane.course.map((stretch) => {
    const x1 = scale.x(stretch.startS);
    const x2 = scale.x(stretch.endS);
    const y1 = scale.y(height(stretch.place)) + shift;
    const y2 = scale.y(height(stretch.to)) + shift;
    const on =
      stretch.on === null
        ? null
        : markup`<line class="ride-rail" x1="${x1}" y1="${y1 + 7}" x2="${x2}" y2="${y2 + 7}"/>`;
    const line = markup`<line class="course" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>${index % 2 === 1 ? markup`<line class="core" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>` : null}${on}`;
    if (stretch.stint === null) return markup`<g class="${stretch.kind}">${line}</g>`;
    const number = numbers.get(stretch.stint.key);
    const words = `${lane.person}: ${stretch.stint.title}, PET ${formatPet(stretch.startS)} to ${formatPet(stretch.endS)}`;
    return markup`<a class="work" href="#${elementId('sheet', eva, stretch.stint.key)}" data-stint="${stretch.stint.key}" aria-label="${words}"><title>${words}</title>
<rect class="target" x="${x1}" y="${y1 - 14}" width="${Math.max(x2 - x1, 4)}" height="24"/>${line}
<text class="number" x="${(x1 + x2) / 2}" y="${index % 2 === 1 ? y1 + 14 : y1 - 5}" text-anchor="middle">${number ?? ''}</text></a>`;
  });
  const posts = lane.samples
    .filter((sample) => sample.closeS > 0 || (sample.unknown.length > 0 && !sample.committed))
    .map((sample) => {
      const x = scale.x(sample.petS);
      const base = scale.y(sample.travelS ?? height(sample.place)) + shift;
      const tip = scale.y((sample.travelS ?? height(sample.place)) + sample.closeS + sample.otherS) + shift;
      const unknown = sample.unknown.length > 0 ? `; unknown here: ${sample.unknown.join(', ')}` : '';
      const words = `${lane.person} at PET ${formatPet(sample.petS)}: ${sample.totalS === null ? `${formatDuration(sample.closeS)} to a safe stop` : `way home ${sample.words}`}${unknown}`;
      return markup`<g class="post${sample.unknown.length > 0 ? ' unknown' : ''}"><title>${words}</title><line x1="${x}" y1="${base}" x2="${x}" y2="${sample.unknown.length > 0 ? tip - 8 : tip}"/></g>`;
    });
  const committed = lane.committed.map((stretch) => {
    const words = `${lane.person}, PET ${formatPet(stretch.startS)} to ${formatPet(stretch.endS)}: no safe stop in reach${stretch.ifArmStops ? ' if the arm stops' : ''}. ${stretch.why.join('; ')}`;
    // Along the line itself, piece by piece, so that it rises and falls with it.
    return markup`<g class="committed"><title>${words}</title>${lane.course
      .filter((piece) => piece.startS < stretch.endS && stretch.startS < piece.endS)
      .map((piece) => {
        const [from, to] = [Math.max(piece.startS, stretch.startS), Math.min(piece.endS, stretch.endS)];
        const [low, high] = [height(piece.place), height(piece.to)];
        const at = (petS: number): number =>
          scale.y(low + ((high - low) * (petS - piece.startS)) / Math.max(1, piece.endS - piece.startS)) + shift;
        return markup`<line x1="${scale.x(from)}" y1="${at(from)}" x2="${scale.x(to)}" y2="${at(to)}"/>`;
      })}</g>`;
  });
  const last = lane.course.at(-1);
  const label =
    last === undefined
      ? null
      : markup`<text class="who" x="${scale.x(last.endS) + 4}" y="${scale.y(0) - 16 + index * 12}">${lane.person}</text>`;
  return markup`<g class="lane lane-${index}" data-person="${lane.person}">${committed}${posts}${pieces}${label}</g>`;
}

function joins(data: HomeChartData, scale: ChartScale): Markup {
  const heightAt = (who: string | null, petS: number): number | null => {
    const lane = data.lanes.find((candidate) => candidate.person === who);
    const stretch = lane?.course.find((candidate) => candidate.startS <= petS && petS <= candidate.endS);
    if (lane === undefined || stretch === undefined) return null;
    return lane.samples.find((sample) => sample.place === stretch.place && sample.travelS !== null)?.travelS ?? null;
  };
  return markup`<g class="joins">${data.joins.map((tie) => {
    const x = scale.x(tie.petS);
    const from = heightAt(tie.says, tie.petS);
    const to = heightAt(tie.listens, tie.petS);
    const y1 = from === null ? scale.foot + 40 : scale.y(from);
    const y2 = to === null ? scale.foot + 40 : scale.y(to);
    const upper = Math.min(y1, y2);
    return markup`<g class="join"><title>${tie.join.title}: ${tie.says ?? '?'} says, ${tie.listens ?? '?'} waits, PET ${formatPet(tie.petS)}</title><line x1="${x}" x2="${x}" y1="${y1}" y2="${y2}"/><circle cx="${x}" cy="${y1}" r="3"/><text x="${x + 3}" y="${upper - 16}">${tie.join.title}</text></g>`;
  })}</g>`;
}

function armRows(data: HomeChartData, scale: ChartScale): Markup {
  return markup`<g class="arm-rows">${data.armRows.map((row, index) => {
    const y = scale.foot + 44 + index * 22;
    return markup`<text class="place" x="${scale.left - 12}" y="${y + 10}" text-anchor="end">${row.title}</text><line class="shelf" x1="${scale.left}" x2="${scale.right}" y1="${y + 7}" y2="${y + 7}"/>${row.pieces.map(
      (piece) =>
        markup`<rect class="arm-piece${piece.rider === null ? '' : ' ridden'}" x="${scale.x(piece.startS)}" y="${y + 2}" width="${Math.max(1.5, scale.x(piece.endS) - scale.x(piece.startS))}" height="10"><title>${row.title}: ${piece.words}${piece.rider === null ? '' : `, ${piece.rider} on the plate`}, PET ${formatPet(piece.startS)} to ${formatPet(piece.endS)}</title></rect>`,
    )}`;
  })}</g>`;
}
