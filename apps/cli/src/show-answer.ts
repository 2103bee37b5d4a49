/** What `show` tells, as `--json` promises it. */
import type { Campaign, Hardware, Stint } from '@handrail/eva/campaign/campaign';
import { type DescribedStint, sentenceOf } from '@handrail/eva/hardware/describe-states';
import type { Kind } from '@handrail/eva/kinds/kind';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import type { show } from '@handrail/wire/answers/show';

type Shown = AnswerBody<typeof show>;

export function showAnswer(
  campaign: Campaign,
  kind: Kind | null,
  stints: readonly Stint[],
  hardware: readonly Hardware[],
  states: readonly DescribedStint[] | null,
): Shown {
  return {
    campaign: campaign.id,
    title: campaign.title,
    documentHash: campaign.documentHash,
    library: { id: campaign.library.id, version: campaign.library.version },
    kind: kind === null ? null : kindShown(kind),
    stints: stints.map(stintShown),
    hardware: hardware.map(hardwareShown),
    states,
  };
}

function kindShown({ id, title, about, aspects, verbs, source }: Kind): NonNullable<Shown['kind']> {
  return {
    id,
    title,
    about,
    aspects,
    verbs: verbs.map((verb) => ({
      id: verb.id,
      sentence: verb.sentence,
      aspect: verb.aspect,
      needs: verb.needs,
      leaves: verb.leaves,
      timeS: verb.timeS,
      perTurnS: verb.perTurnS,
      toolKinds: verb.toolKinds,
      underControl: verb.underControl,
      source: verb.source,
    })),
    source,
  };
}

function stintShown({ key, title, roles, duration, steps, span }: Stint): Shown['stints'][number] {
  return {
    stint: key,
    title,
    roles: roles.map(({ name, candidates, at, to, fromStep, toStep }) => ({
      name,
      candidates,
      at,
      to,
      fromStep,
      toStep,
    })),
    agreedS: duration.agreedS,
    boundsS: duration.boundsS,
    spread: duration.spread,
    basis: duration.basis,
    steps: steps.map(sentenceOf),
    span,
  };
}

function hardwareShown(piece: Hardware): Shown['hardware'][number] {
  return {
    id: piece.id,
    title: piece.title,
    kind: piece.kind,
    at: { kind: piece.at.kind, id: piece.at.id },
    of: piece.of,
    initial: piece.initial,
    massKg: piece.massKg,
    loadClass: piece.loadClass,
    controls: piece.controls,
    torqueNm: piece.torqueNm,
    turns: piece.turns,
    toolFits: piece.toolFits,
    properties: piece.properties,
    settings: piece.settings,
    span: piece.span,
  };
}
