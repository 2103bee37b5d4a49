/** Reads and judges the document beside the page: everything that a person sees of a plan, worked out from text and timeline. */
import { homeChartData } from '@handrail/eva/brief/home-chart/home-chart-data';
import { page, type PageAssets } from '@handrail/eva/brief/page';
import { verdictSentence } from '@handrail/eva/brief/parts/verdict';
import { inputLevel, inputLevelSentence } from '@handrail/eva/campaign/input-level';
import { type Completions, completeAt, declarationsOf } from '@handrail/eva/campaign/complete/complete-at';
import type { Finding } from '@handrail/eva/finding/finding';
import { briefOf } from '@handrail/eva/judge/brief-of';
import { judgeTimeline } from '@handrail/eva/judge/judge-timeline';
import { type OpenedCampaign, openCampaign } from '@handrail/eva/judge/open-campaign';
import { travelAtEgress } from '@handrail/eva/judge/travel-at-egress';
import { replayTimeline } from '@handrail/eva/proof/replay/replay-timeline';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { evaSupplies } from '@handrail/eva/suit/eva-supplies';
import { bindingChain, bindings } from '@handrail/eva/timeline/binding-chain';
import { margins } from '@handrail/eva/timeline/margins';
import type { EvaTimeline, Timeline } from '@handrail/eva/timeline/timeline';
import { wayHomeSurface, type WayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import { expose } from 'comlink';
import type { EvaJudged, Judged, Opening } from '../derived/derived-store.ts';
import { FILE_NAME } from '../document/working-copy.ts';

let kept: { readonly text: string; readonly opened: OpenedCampaign | null } | null = null;

/** Before ways home are known, the chart is drawn without posts. */
const NO_WAYS_HOME = { people: new Map(), committed: [] } as unknown as WayHomeSurface;

function open(text: string): Opening {
  const { opened, reading, skyFault } = openCampaign([{ name: FILE_NAME, text }]);
  kept = { text, opened };
  return {
    campaign: opened?.campaign ?? null,
    hardware: opened?.hardware ?? null,
    problems: reading.problems,
    skyFault,
    levelSentence: opened === null ? null : inputLevelSentence(inputLevel(opened.campaign, opened.hardware)),
  };
}

function openedAs(text: string): OpenedCampaign | null {
  if (kept?.text !== text) open(text);
  return kept?.opened ?? null;
}

type HomeSeconds = ReturnType<typeof travelAtEgress>;

let travelKept: { readonly key: string; readonly homeSeconds: HomeSeconds } | null = null;

/** How far it is home when each EVA begins: it rests on the EVAs before alone, so that a hand on the last one leaves it as it is. */
function travelOf(opened: OpenedCampaign, text: string, timeline: Timeline): HomeSeconds {
  const last = timeline.evas.reduce((late, eva) => Math.max(late, eva.petZeroUtcMs), Number.NEGATIVE_INFINITY);
  const before = timeline.evas.filter((eva) => eva.petZeroUtcMs < last);
  const key = `${text}|${JSON.stringify([before, timeline.evas.map(({ eva, petZeroUtcMs }) => [eva, petZeroUtcMs])])}`;
  if (travelKept?.key !== key) travelKept = { key, homeSeconds: travelAtEgress(opened, timeline) };
  return travelKept.homeSeconds;
}

interface EvaParts {
  readonly least: EvaJudged['margins'];
  readonly bindings: EvaJudged['bindings'];
}
const partsKept = new Map<
  string,
  { readonly key: string; readonly homeSeconds: HomeSeconds; readonly parts: EvaParts }
>();

/** Supplies, margins and reasons of one EVA: worked out again only when that EVA has changed. */
function partsOf(
  { campaign, hardware, library }: OpenedCampaign,
  text: string,
  eva: EvaTimeline,
  homeSeconds: HomeSeconds,
): EvaParts {
  const key = `${text}|${JSON.stringify(eva)}`;
  const known = partsKept.get(eva.eva);
  if (known?.key === key && known.homeSeconds === homeSeconds) return known.parts;
  const why = bindings(campaign, hardware, eva);
  const readings = evaSupplies(campaign, library, eva);
  const parts: EvaParts = {
    least: margins(campaign, hardware, eva, (place, pace) => homeSeconds(eva.eva, place, pace), readings).slice(0, 3),
    bindings: eva.stints.map(({ stint }) => [stint, bindingChain(why, stint)] as const),
  };
  partsKept.set(eva.eva, { key, homeSeconds, parts });
  return parts;
}

/** @param depth replay: the second opinion alone, for live checks; all: the rules and the ways home too */
function judge(text: string, timeline: Timeline, depth: 'replay' | 'all', nowUtcMs: number): Judged | null {
  const began = performance.now();
  const opened = openedAs(text);
  if (opened === null) return null;
  const { campaign, hardware, library } = opened;
  const isWhole = depth === 'all';
  const findings: readonly Finding[] = isWhole
    ? judgeTimeline(opened, timeline, nowUtcMs)
    : replayTimeline(campaign, hardware, timeline);
  const homeSeconds = travelOf(opened, text, timeline);
  const wayHome = (eva: EvaTimeline): WayHomeSurface =>
    isWhole ? wayHomeSurface(campaign, hardware, library, timeline, eva) : NO_WAYS_HOME;
  const input = {
    campaign,
    hardware,
    kinds: library.kinds,
    timeline,
    findings,
    homeSeconds,
    wayHome,
    program: '',
    madeUtcMs: nowUtcMs,
  };
  const judgedEvas = timeline.evas.map((eva): readonly [string, EvaJudged] => {
    const title = campaign.evas.find(({ id }) => id === eva.eva)?.title ?? eva.eva;
    const here = findings.filter(({ where }) => where.eva === eva.eva);
    const { least, bindings: why } = partsOf(opened, text, eva, homeSeconds);
    return [
      eva.eva,
      { verdict: verdictSentence(eva, title, here), margins: least, chart: homeChartData(input, eva), bindings: why },
    ];
  });
  return { findings, evas: new Map(judgedEvas), hasWaysHome: isWhole, tookMs: performance.now() - began };
}

interface BriefingAsk {
  readonly text: string;
  readonly timeline: Timeline;
  readonly assets: PageAssets;
  readonly program: string;
  readonly madeUtcMs: number;
}

/** The briefing page of a plan; null: the text has errors. */
function briefing({ text, timeline, assets, program, madeUtcMs }: BriefingAsk): string | null {
  const opened = openedAs(text);
  if (opened === null) return null;
  const findings = judgeTimeline(opened, timeline, madeUtcMs);
  return page(briefOf(opened, { timeline, findings, program, madeUtcMs }), assets);
}

/** Names are read anew at most this often while somebody types. */
const NAMES_MS = 1000;
let names: { readonly text: string; readonly atMs: number; readonly ids: ReturnType<typeof declarationsOf> } | null =
  null;

function complete(text: string, offset: number): Completions {
  const isOld = names === null || (names.text !== text && performance.now() - names.atMs > NAMES_MS);
  if (isOld) {
    const ids = declarationsOf([{ name: FILE_NAME, text }], standardLibrary);
    names = { text, atMs: performance.now(), ids };
  }
  return completeAt(text, offset, (names as NonNullable<typeof names>).ids, standardLibrary);
}

const reading = { open, judge, complete, briefing };
export type ReadingWorker = typeof reading;
expose(reading);
