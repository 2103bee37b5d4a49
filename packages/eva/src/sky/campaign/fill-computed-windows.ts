import { Fault } from '@handrail/quantity/fault';
import { formatUtc } from '@handrail/quantity/time';
import { formatSpan } from '../../campaign/span.ts';
import type { Campaign, WindowSet } from '../../campaign/campaign.ts';
import type { ComputedWindow } from '../../campaign/campaign-sky.ts';
import { elementAge, timingPadS } from '../element-age.ts';
import type { Orbit } from '../orbit.ts';
import { type NamedWindowSet, skyWindows } from '../sky-windows.ts';
import { type Interval, lastingAtLeast, windowSet } from '../window-set.ts';
import type { LongRun } from '../worksite-light.ts';
import { type EvaSpan, evaSpans } from './eva-span.ts';
import { vehicleAt } from './vehicle-at.ts';

/**
 * The campaign with the intervals of its computed windows filled in by the sky engines, around each EVA (see `evaSpan`);
 * between EVAs a computed window says nothing. Pure: the same campaign gives the same windows.
 *
 * The pad of a filled window is the stated one plus the timing error of the elements where they are oldest, so it grows with
 * their age and serves both ways: it shrinks the window for inside and widens it for outside. One pad serves all EVAs.
 * @param run progress of the light at worksites, 0 to 1 for each EVA, and a wish to stop; what was not finished stays unfilled
 * @returns the same object where nothing is to be computed
 * @throws Fault `sky/cannot-fill` with file, line and column of the window and the engine's own fault as its cause
 * @checked tests/properties/sky/computed-windows.test.ts, tests/reference/sky/computed-windows.test.ts
 */
export function fillComputedWindows(campaign: Campaign, run: LongRun = {}): Campaign {
  const wanted = campaign.windows.filter((window) => window.computed !== undefined);
  const first = wanted[0];
  if (first === undefined || campaign.sky.orbit === null) return campaign;
  const orbit = campaign.sky.orbit.elements;
  const spans = evaSpans(campaign);
  let perEva: readonly (readonly NamedWindowSet[])[];
  try {
    perEva = spans.map((span) => skyOf(campaign, orbit, span, wanted, run));
  } catch (cause) {
    if (!(cause instanceof Fault)) throw cause;
    const where = campaign.sky.orbit.span;
    throw new Fault(
      'sky/cannot-fill',
      `${formatSpan(where)}: the computed windows cannot be filled: ${cause.message}`,
      {
        cause,
        values: { line: where.line, column: where.column },
        ...(cause.advice === null ? {} : { advice: cause.advice }),
      },
    );
  }
  const growthS = Math.max(0, ...spans.map(({ startUtcMs, endUtcMs }) => timingPadS(orbit, startUtcMs, endUtcMs)));
  return {
    ...campaign,
    windows: campaign.windows.map((window) => {
      const { computed } = window;
      return computed === undefined ? window : filled(window, computed, campaign, perEva, spans, growthS);
    }),
  };
}

function skyOf(
  campaign: Campaign,
  orbit: Orbit,
  { eva, startUtcMs, endUtcMs }: EvaSpan,
  wanted: readonly WindowSet[],
  run: LongRun,
): readonly NamedWindowSet[] {
  const { sky } = campaign;
  const asks = (...sorts: ComputedWindow['what'][]): readonly ComputedWindow[] =>
    wanted.flatMap(({ computed }) => (computed !== undefined && sorts.includes(computed.what) ? [computed] : []));
  const lit = new Set(asks('lit', 'own-shadow').map(({ place }) => place));
  const eyes = new Set(asks('sun-in-eyes').map(({ place }) => place));
  const vehicle = vehicleAt(campaign, eva.egressUtcMs);
  return skyWindows(
    {
      orbit,
      startUtcMs,
      endUtcMs,
      vehicle: vehicle === null ? null : { attitude: vehicle.attitude, shape: vehicle.shape },
      worksites: sky.worksites.filter(({ name }) => lit.has(name)),
      sightLines: sky.sightLines.flatMap(({ place, direction, withinRad }) => {
        const from = sky.worksites.find(({ name }) => name === place);
        return from === undefined || !eyes.has(place) ? [] : [{ name: place, from, direction, withinRad }];
      }),
      radio:
        asks('coverage', 'coverage-gap').length === 0
          ? null
          : {
              partners: sky.partners,
              antennas: sky.antennas,
              handoverS: sky.links?.handoverS ?? 0,
              shortestLinkS: sky.links?.shortestLinkS ?? 0,
            },
      fieldRegion: asks('field-region').length === 0 ? null : sky.fieldRegion,
    },
    run,
  );
}

/** The engine's own name of what a window asks for. */
function engineName({ what, place }: ComputedWindow): string {
  switch (what) {
    case 'coverage-gap':
      return 'coverage gap';
    case 'field-region':
      return 'weak field';
    case 'lit':
      return `lit ${place}`;
    case 'own-shadow':
      return `own shadow ${place}`;
    case 'sun-in-eyes':
      return `sun in eyes ${place}`;
    default:
      return what;
  }
}

function filled(
  window: WindowSet,
  computed: ComputedWindow,
  campaign: Campaign,
  perEva: readonly (readonly NamedWindowSet[])[],
  spans: readonly EvaSpan[],
  growthS: number,
): WindowSet {
  const name = engineName(computed);
  const sets = perEva.map((all) => all.find((set) => set.name === name));
  if (sets.some((set) => set === undefined)) return window;
  const intervals = sets.flatMap((set) =>
    lastingAtLeast(windowSet((set?.intervals ?? []).map(([from, to]): Interval => [from, to])), computed.leastS),
  );
  return {
    ...window,
    intervals: windowSet(intervals),
    padS: computed.statedPadS + growthS,
    source: sourceWords(window, campaign, sets[0]?.note ?? '', spans, growthS),
    computed: { ...computed, filled: true },
  };
}

/** Which engine on which elements, how old they get, and what was taken as given. */
function sourceWords(
  window: WindowSet,
  campaign: Campaign,
  note: string,
  spans: readonly EvaSpan[],
  growthS: number,
): string {
  const orbit = campaign.sky.orbit?.elements;
  if (orbit === undefined) return note;
  const model = MODEL_WORDS[orbit.kind];
  const ages = spans.map(({ endUtcMs }) => elementAge(orbit, endUtcMs).ageDays);
  const oldest = ages.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  const age = `${Math.abs(oldest).toFixed(1)} d ${oldest < 0 ? 'before their epoch' : 'old'} at the farthest`;
  const links =
    /coverage/.test(window.computed?.what ?? '') && campaign.sky.links === null
      ? 'links: not stated, so none is taken as too short'
      : null;
  const worksite = campaign.sky.worksites.find(({ name }) => name === window.computed?.place);
  const facing =
    window.computed?.what === 'lit' && worksite?.normal === null
      ? 'no facing is stated: light from any side counts'
      : null;
  const joints =
    window.computed?.place === null
      ? []
      : spans.flatMap(({ eva }) => {
          const notes = vehicleAt(campaign, eva.egressUtcMs)?.notes ?? [];
          return notes.length === 0 ? [] : [`${eva.id}: ${notes.join(', ')}`];
        });
  return [
    window.source,
    `computed: ${model}, elements of ${formatUtc(orbit.epochUtcMs)}, ${age}`,
    `their timing error of ${growthS.toFixed(0)} s is added to the pad`,
    note,
    links,
    facing,
    ...joints,
  ]
    .filter((part): part is string => part !== null && part !== '')
    .join('; ');
}

export const MODEL_WORDS: Readonly<Record<Orbit['kind'], string>> = {
  sgp4: 'SGP4',
  'kepler-j2': 'Keplerian elements with J2 drift',
  'two-body': 'two-body ellipse',
};
