/** Orders that the text states or that a person fixed: joins, lags, pins, gates, the reader's one voice, the wall. */
import type { Placed } from '../replay/replay-context.ts';
import type { NetworkDraft } from './network-draft.ts';
import { stepStartEvent } from './stint-events.ts';
import { suitWall } from '../../suit/supplies-wall.ts';
import { indoorsWall } from '../../timeline/indoors-wall.ts';

export function orderLinks(draft: NetworkDraft): void {
  const byKey = new Map(draft.placed.map((placed) => [placed.stint.key, placed]));
  joins(draft, byKey);
  lags(draft, byKey);
  pins(draft, byKey);
  gates(draft, byKey);
  voices(draft);
  wall(draft);
}

function joins(draft: NetworkDraft, byKey: ReadonlyMap<string, Placed>): void {
  for (const join of draft.campaign.tasks.flatMap((task) => task.joins)) {
    const releases = byKey.get(join.releases);
    const waits = byKey.get(join.waits);
    if (releases === undefined || waits === undefined) continue;
    draft.order(end(draft, releases), start(draft, waits), 'join', `join "${join.title}"`, join.span);
  }
  for (const hold of draft.options.holds ?? []) {
    const releases = byKey.get(hold.releases);
    const waits = byKey.get(hold.waits);
    if (releases === undefined || waits === undefined) continue;
    const { releasesSteps, waitsStep = 0 } = hold;
    const waiting = draft.ways.filter(({ who }) => who === hold.waitsWayOf);
    const way = waiting.find(({ next }) => next === hold.waits) ?? waiting.find(({ last }) => last === hold.waits);
    const over = draft.ways.find(({ who, last }) => who === hold.releasesWayOf && last === hold.releases);
    const part = releasesSteps === undefined || releasesSteps >= releases.steps ? '' : `step ${releasesSteps} of `;
    const done =
      over !== undefined
        ? `${over.who}'s way from "${releases.stint.title}" is over`
        : releasesSteps === 0
          ? `"${releases.stint.title}" has begun`
          : `${part}"${releases.stint.title}" is done`;
    const step = waitsStep === 0 ? '' : `step ${waitsStep + 1} of `;
    const what = way === undefined ? `${step}"${waits.stint.title}"` : draft.at(way.start).words;
    const from =
      over?.end ?? (releasesSteps === undefined ? end(draft, releases) : draft.boundary(releases, releasesSteps));
    const to = way?.start ?? stepStartEvent(draft, waits, waitsStep);
    draft.order(from, to, 'hold', `hold: ${what} waits for the call that ${done}`, waits.stint.span);
  }
}

function lags(draft: NetworkDraft, byKey: ReadonlyMap<string, Placed>): void {
  for (const later of draft.placed) {
    for (const after of later.stint.after) {
      const earlier = byKey.get(after.stint);
      if (earlier === undefined) continue;
      const reason = `"${later.stint.title}" comes after "${earlier.stint.title}" as written`;
      const [from, to] = [end(draft, earlier), start(draft, later)];
      draft.order(from, to, 'lag', reason, after.span, Math.ceil(after.leastS));
      if (after.mostS !== null) draft.link(from, to, null, Math.floor(after.mostS), 'lag', reason, after.span);
    }
  }
}

/** A pinned start is kept as "not before": a day that runs late is no breach of it. */
function pins(draft: NetworkDraft, byKey: ReadonlyMap<string, Placed>): void {
  for (const pin of draft.campaign.pins) {
    if (pin.kind === 'order') {
      const first = byKey.get(pin.first);
      const second = byKey.get(pin.then);
      if (first === undefined || second === undefined) continue;
      const reason = `pin: "${second.stint.title}" after "${first.stint.title}"`;
      draft.order(end(draft, first), start(draft, second), 'pin', reason, pin.span);
    } else if (pin.kind === 'start') {
      const placed = byKey.get(pin.stint);
      if (placed === undefined) continue;
      const notBeforeS = Math.min(pin.petS, placed.planned.startS);
      draft.link(
        draft.petZero,
        start(draft, placed),
        notBeforeS,
        null,
        'pin',
        `pin: "${placed.stint.title}" not before its pinned start`,
        pin.span,
      );
    }
  }
}

function gates(draft: NetworkDraft, byKey: ReadonlyMap<string, Placed>): void {
  for (const gate of draft.campaign.gates) {
    const placed = byKey.get(gate.before);
    if (placed === undefined || gate.latestPetS === null) continue;
    const reason = `gate "${gate.title}": "${placed.stint.title}" starts by the latest time that it may be called`;
    draft.link(draft.petZero, start(draft, placed), null, Math.floor(gate.latestPetS), 'gate', reason, gate.span);
  }
}

function voices(draft: NetworkDraft): void {
  const spoken = draft.placed.filter(({ stint }) => stint.voice);
  spoken.forEach((next, at) => {
    const before = spoken[at - 1];
    if (before === undefined || before.planned.endS > next.planned.startS) return;
    const reason = `the reader talks through "${before.stint.title}" before "${next.stint.title}"`;
    draft.order(end(draft, before), start(draft, next), 'voice', reason, next.stint.span);
  });
}

/** The tightest stated limit, whatever the plan shows. */
function wall(draft: NetworkDraft): void {
  const eva = draft.context.evas.get(draft.plan.eva);
  const limits: { petS: number; cause: string }[] = [];
  if (draft.plan.wall !== null) limits.push({ petS: draft.plan.wall.petS, cause: draft.plan.wall.cause });
  if (eva !== undefined && eva.longestS !== null)
    limits.push({ petS: eva.longestS, cause: `the longest EVA stated for ${eva.title}` });
  for (const { person } of eva?.egress ?? []) {
    const wearer = draft.context.people.get(person);
    const suit = wearer === undefined ? null : suitWall(draft.context.campaign, wearer);
    if (suit !== null) limits.push({ petS: suit.petS, cause: `the ${suit.cause}` });
  }
  const indoors = eva === undefined ? null : indoorsWall(draft.campaign, eva, draft.plan.petZeroUtcMs);
  if (indoors !== null) limits.push(indoors);
  const [tightest] = limits.sort((a, b) => a.petS - b.petS);
  if (tightest === undefined) return;
  draft.link(
    draft.petZero,
    draft.bothIn,
    null,
    Math.floor(tightest.petS),
    'wall',
    `the wall: ${tightest.cause}`,
    eva?.span ?? null,
  );
}

const start = (draft: NetworkDraft, placed: Placed): number => draft.boundary(placed, 0);
const end = (draft: NetworkDraft, placed: Placed): number => draft.boundary(placed, placed.steps);
