/** Ways home and what a response does, as `--json` promises them. */
import { gateCalls } from '@handrail/eva/gate/propose-gates';
import type { AnyResponse } from '@handrail/eva/response/any-response';
import type { KitLine } from '@handrail/eva/response/kit-list';
import type { Occasion } from '@handrail/eva/response/what-if-throughout';
import type { HomeThen } from '@handrail/eva/response/home-then';
import type { WhatIf } from '@handrail/eva/response/what-if';
import type { WayHome } from '@handrail/eva/wayhome/way-home-plan';
import type { Mode } from '@handrail/eva/wayhome/way-home-state';
import type { WayHomeSurface } from '@handrail/eva/wayhome/way-home-surface';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import type { wayhome } from '@handrail/wire/answers/wayhome';
import type { whatif } from '@handrail/wire/answers/whatif';

type Shown = AnswerBody<typeof wayhome>;
type WayShown = NonNullable<Shown['at']>['ways'][number];
type Applied = AnswerBody<typeof whatif>;

export function wayShown(way: WayHome, marginS: number | null): WayShown {
  return {
    mode: way.mode,
    arm: way.arm,
    totalS: way.totalS,
    marginS,
    words: way.words,
    shortest: way.shortest,
    steps: way.people.flatMap(({ person, steps }) =>
      steps.map(({ kind, startS, endS, words }) => ({ person, kind, startS, endS, words })),
    ),
    unknown: way.unknown,
    blocked: way.blocked,
    assumptions: way.assumptions,
  };
}

export function evaShown(surface: WayHomeSurface, modes: readonly Mode[]): Shown['evas'][number] {
  return {
    eva: surface.eva,
    horizon: surface.horizon,
    limit: surface.limit,
    pairs: surface.pairs.length,
    committed: surface.committed,
    lastMoments: surface.lastMoments,
    gates: gateCalls(surface.ground.campaign, surface.progress.eva, surface).map((call) => ({
      petS: call.petS,
      title: call.title,
      before: call.before,
      caller: call.caller,
      conditions: call.conditions,
      onNo: call.onNo,
      drops: call.drops,
      latestPetS: call.latestPetS,
      proposed: call.proposed,
    })),
    samples: surface.samples.map((sample) => ({
      petS: sample.petS,
      endS: sample.endS,
      returnMarginAtMostS: sample.returnMarginAtMostS,
      modes: modes.map((mode) => ({
        mode,
        plannedS: sample.planned[mode].totalS,
        worstS: sample.worst[mode].totalS,
        marginAtMostS: sample.marginAtMostS[mode],
        words: sample.worst[mode].way?.words ?? sample.planned[mode].words,
        unknown: sample.worst[mode].unknown,
        blocked: sample.worst[mode].blocked,
      })),
    })),
  };
}

export function responseShown(response: AnyResponse): Applied['responses'][number] {
  const { id, title, trigger, from, kinds, verbs, stint, steps, timeS, kit, outcome, leadsTo, armStops, prevails } =
    response;
  const { probability, leavesIt } = response;
  const leaves = response.leaves.map(({ variable, value }) => ({ variable, value }));
  const does = { steps, timeS, kit, outcome, probability, leavesIt, leaves };
  return { id, title, trigger, from, kinds, verbs, stint, ...does, leadsTo, armStops, prevails };
}

export function whatIfShown(found: WhatIf): NonNullable<Applied['found']> {
  const { home, instead, response, ...rest } = found;
  const shown = (one: HomeThen | null) =>
    one === null ? null : { startS: one.startS, marginS: one.marginS, way: wayShown(one.way, one.marginS) };
  return {
    ...rest,
    response: response.id,
    home: shown(home),
    instead: shown(instead),
  };
}

export function occasionShown({ found, broken }: Occasion): Applied['occasions'][number] {
  const { petS, responding, delayS, bothInS, home, missingKit, consequences } = found;
  const noWay = home !== null && home.way.blocked.length > 0 && found.response.leadsTo !== null;
  const told = [
    ...missingKit.map((id) => `${id} is missing`),
    ...consequences.filter(({ breaks }) => breaks).map(({ words }) => words),
    ...(noWay ? [`no way home: ${home.way.words}`] : []),
    ...(home !== null && home.marginS !== null && home.marginS < 0 ? ['the way home is past the limit'] : []),
  ];
  return {
    petS,
    who: responding[0]?.person ?? '?',
    stint: responding[0]?.stint ?? null,
    delayS,
    lateS: bothInS === null ? null : bothInS.thenS - bothInS.plannedS,
    homeMarginS: home?.marginS ?? null,
    abortMarginS: found.instead?.marginS ?? null,
    breaks: told.length,
    first: broken ? (told[0] ?? null) : null,
  };
}

export function kitShown(eva: string, lines: readonly KitLine[]): Applied['kit'] {
  return lines.map(({ response, asked, pieces, occasions, notAtHand, inUse, farthestS }) => ({
    eva,
    response: response.id,
    asked,
    pieces,
    occasions,
    notAtHand: notAtHand === null ? null : { petS: notAtHand.segment.startS, where: notAtHand.kit.where },
    inUse:
      inUse === null || inUse.kit.inUseBy === null
        ? null
        : { petS: inUse.segment.startS, person: inUse.kit.inUseBy.person, stint: inUse.kit.inUseBy.stint },
    farthestS,
  }));
}
