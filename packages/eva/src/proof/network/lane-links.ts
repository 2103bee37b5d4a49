/** What one body does, one thing after another: passages, moves, work, with the time to change foot restraints in between. */
import { type Doing, type Lane, lanesOf, nameOf } from '../replay/people/lane.ts';
import { moveSpreadOf, type NetworkDraft } from './network-draft.ts';
import { stepStartEvent } from './stint-events.ts';

interface Drawn {
  readonly doing: Doing;
  readonly start: number;
  readonly end: number;
}

/** Draws moves and passages, and links each lane. */
export function laneLinks(draft: NetworkDraft): void {
  const passages = new Map<object, readonly [number, number]>();
  drawPassages(draft, passages);
  const lanes = lanesOf(draft.context).filter((lane) => lane.plan === draft.plan);
  const drawn = new Map<string, readonly Drawn[]>();
  for (const lane of lanes) {
    const mine = lane.doings.map((doing): Drawn => ({ doing, ...eventsOf(draft, lane, doing, passages) }));
    drawn.set(lane.who, mine);
    linkLane(draft, lane, mine);
    if (draft.context.people.has(lane.who)) rememberWays(draft, lane.who, mine);
  }
  armStaysUnderRider(draft, drawn);
  oneOperator(draft, drawn);
}

function drawPassages(draft: NetworkDraft, passages: Map<object, readonly [number, number]>): void {
  const order = [...draft.plan.passages].sort((a, b) => a.startS - b.startS);
  let before: number | null = null;
  for (const passage of order) {
    const lanes =
      passage.person === null
        ? draft.campaign.people.filter(({ role }) => role === 'outside').map(({ id }) => id)
        : [passage.person];
    const name = passage.kind === 'close-hatch' ? 'closing the hatch' : `${passage.kind} of ${passage.person ?? ''}`;
    const start = draft.event(`the start of ${name}`, passage.startS, [...lanes, 'hatch']);
    const end = draft.event(`the end of ${name}`, passage.endS, [...lanes, 'hatch']);
    passages.set(passage, [start, end]);
    draft.passages.push({ person: passage.person, start, end });
    takesAbout(draft, start, end, passage.endS - passage.startS, 'passage', name);
    draft.link(draft.petZero, start, 0, null, 'hatch', 'nobody passes the hatch before PET 0');
    if (before !== null) draft.order(before, start, 'hatch', 'one at a time in the hatch, in the stated order');
    else draft.link(draft.petZero, start, 0, 0, 'hatch', 'the first egress starts at PET 0');
    before = end;
    if (passage.kind === 'close-hatch') draft.bothIn = end;
  }
}

/** Moves, passages, transfers: their planning figure, with the spread that the caller states. */
function takesAbout(
  draft: NetworkDraft,
  start: number,
  end: number,
  figureS: number,
  kind: 'move' | 'passage',
  reason: string,
): void {
  const spread = moveSpreadOf(draft.campaign, draft.options);
  const [least, most] = spread ?? [1, 1];
  draft.length(start, end, [figureS * least, figureS * most], {
    kind,
    reason,
    bounded: spread !== null,
    plannedS: figureS,
    span: null,
  });
}

function eventsOf(
  draft: NetworkDraft,
  lane: Lane,
  doing: Doing,
  passages: ReadonlyMap<object, readonly [number, number]>,
): { start: number; end: number } {
  if (doing.kind === 'passage') {
    const [start, end] = passages.get(doing.passage) as readonly [number, number];
    return { start, end };
  }
  if (doing.kind === 'move') {
    const way = `${lane.who}'s way from ${doing.move.from} to ${doing.move.to}`;
    const start = draft.event(`the start of ${way}`, doing.startS, [lane.who]);
    const end = draft.event(`the end of ${way}`, doing.endS, [lane.who]);
    takesAbout(draft, start, end, doing.endS - doing.startS, 'move', way);
    draft.link(draft.origin, start, 0, null, 'own', 'nothing happens before the log starts');
    return { start, end };
  }
  const { placed, role } = doing;
  const whole = role.toStep <= role.fromStep || placed.stint.steps.length === 0;
  return {
    start: whole ? draft.boundary(placed, 0) : stepStartEvent(draft, placed, role.fromStep),
    end: draft.boundary(placed, whole ? placed.steps : role.toStep),
  };
}

function linkLane(draft: NetworkDraft, lane: Lane, drawn: readonly Drawn[]): void {
  const person = draft.context.people.get(lane.who);
  const pace = person?.pace ?? 1;
  const { restraintEgressS, restraintIngressS } = draft.campaign.limits;
  drawn.forEach((next, at) => {
    const before = drawn[at - 1];
    if (before === undefined) {
      draft.link(draft.petZero, next.start, 0, null, 'own', 'nobody is at work before PET 0');
      return;
    }
    const lastStay = drawn.slice(0, at).findLast(({ doing }) => doing.kind !== 'move');
    const nextStay = drawn.slice(at).find(({ doing }) => doing.kind !== 'move');
    const [out, into] = [restraintOf(lastStay), restraintOf(nextStay)];
    const isMove = (one: Drawn): boolean => one.doing.kind === 'move';
    const changes = out !== into || isMove(before) || isMove(next);
    const outS = changes && out !== null && !isMove(before) ? (restraintEgressS ?? 0) * pace : 0;
    const inS = changes && into !== null && !isMove(next) ? (restraintIngressS ?? 0) * pace : 0;
    const words = [outS > 0 ? `out of ${out ?? ''}` : '', inS > 0 ? `into ${into ?? ''}` : ''].filter(
      (one) => one !== '',
    );
    const reason = `${lane.who}: ${nameOf(before.doing)}, then ${words.length === 0 ? '' : `${words.join(' and ')}, then `}${nameOf(next.doing)}`;
    draft.link(before.end, next.start, Math.ceil(outS + inS), null, person === undefined ? 'arm' : 'own', reason);
  });
}

function rememberWays(draft: NetworkDraft, who: string, drawn: readonly Drawn[]): void {
  drawn.forEach(({ doing, start, end }, at) => {
    if (doing.kind !== 'move') return;
    const next = drawn.slice(at).find((one) => one.doing.kind !== 'move')?.doing;
    const last = drawn.slice(0, at).findLast((one) => one.doing.kind !== 'move')?.doing;
    draft.ways.push({
      who,
      start,
      end,
      path: doing.move.path,
      anchor: doing.move.anchor,
      next: next?.kind === 'stint' ? next.placed.stint.key : null,
      last: last?.kind === 'stint' ? last.placed.stint.key : null,
    });
  });
}

function restraintOf(one: Drawn | undefined): string | null {
  return one?.doing.kind === 'stint' ? one.doing.role.restraint : null;
}

/** While somebody works from the plate without the arm having a part in it, the arm stays: it moves after, and has come before. */
function armStaysUnderRider(draft: NetworkDraft, drawn: ReadonlyMap<string, readonly Drawn[]>): void {
  for (const [who, mine] of drawn) {
    if (!draft.context.people.has(who)) continue;
    for (const { doing, start, end } of mine) {
      if (doing.kind !== 'stint') continue;
      const arm = doing.role.startOn ?? doing.role.endOn;
      if (arm === null || doing.placed.planned.assigned.includes(arm)) continue;
      for (const other of drawn.get(arm) ?? []) {
        const why = `${arm} stands still while ${who} is at work on its plate`;
        if (other.doing.endS <= doing.startS) draft.order(other.end, start, 'arm', why);
        else if (other.doing.startS >= doing.endS) draft.order(end, other.start, 'arm', why);
      }
    }
  }
}

function oneOperator(draft: NetworkDraft, drawn: ReadonlyMap<string, readonly Drawn[]>): void {
  const byOperator = new Map<string, Drawn[]>();
  for (const arm of draft.campaign.arms) {
    const list = byOperator.get(arm.operator) ?? [];
    list.push(...(drawn.get(arm.id) ?? []));
    byOperator.set(arm.operator, list);
  }
  for (const [operator, list] of byOperator) {
    list.sort((a, b) => a.doing.startS - b.doing.startS);
    list.forEach((next, at) => {
      const before = list[at - 1];
      if (before === undefined || before.doing.endS > next.doing.startS || draft.isShared(before.end, next.start))
        return;
      draft.link(before.end, next.start, 0, null, 'arm', `${operator} works one arm at a time`);
    });
  }
}
