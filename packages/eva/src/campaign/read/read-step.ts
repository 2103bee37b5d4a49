/** One sentence of work. */
import { stepVerbs } from '../../kinds/step-verbs.ts';
import type { Hardware, Step } from '../campaign.ts';
import { type CheckedNode, number, text, wordsFrom } from '../check/checked-node.ts';
import { IT } from '../definition/step-shape.ts';
import { nearestName } from '../problem/nearest-name.ts';
import type { ReadContext } from './read-context.ts';

export function readStep(node: CheckedNode, by: Step['by'], context: ReadContext): Step {
  const to = text(node, 'to');
  const into = text(node, 'in');
  if (to !== null && into !== null) {
    context.problems.add('two-ends', node.span, `"${node.name}" says both to= and in=`, { expected: 'one of the two' });
  }
  const agreedMinutes = number(node, 'minutes');
  return {
    verb: node.name,
    objects: wordsFrom(node, 0).map((word) => word.text),
    from: text(node, 'from'),
    to: to ?? into,
    tool: text(node, 'with'),
    by: (text(node, 'by') ?? by) as Step['by'],
    turns: number(node, 'turns'),
    torqueNm: number(node, 'torque'),
    agreedS: agreedMinutes === null ? null : Math.round(agreedMinutes * 60),
    settings: text(node, 'settings'),
    note: text(node, 'note'),
    caution: text(node, 'caution'),
    say: text(node, 'say'),
    hear: text(node, 'hear'),
    safeStop: null,
    span: node.span,
  };
}

/** Does every object's kind know the verb? `it` is the piece in trouble, of the response's kind. */
export function checkStepVerbs(
  step: Step,
  node: CheckedNode,
  hardware: ReadonlyMap<string, Hardware>,
  itKind: string | null,
  context: ReadContext,
): void {
  const places = new Map(wordsFrom(node, 0).map((word) => [word.text, word.span]));
  const known = step.objects.filter((id) => id === IT || context.ids.body(id) !== null);
  if (known.length < step.objects.length) return;
  const objects = step.objects.filter((id) => id !== IT);
  const asked =
    objects.length === 0 && step.objects.length > 0
      ? []
      : stepVerbs({ ...step, objects }, hardware, context.library).unknown;
  for (const { object } of asked) {
    const kindId = object === null ? null : (hardware.get(object)?.kind ?? null);
    report(object, kindId, object === null ? node.nameSpan : (places.get(object) ?? node.span));
  }
  if (
    step.objects.includes(IT) &&
    itKind !== null &&
    context.library.kinds.get(itKind)?.verbs.every((one) => one.id !== step.verb)
  ) {
    report(IT, itKind, places.get(IT) ?? node.span);
  }

  function report(object: string | null, kindId: string | null, span: CheckedNode['span']): void {
    if (kindId !== null && !context.library.kinds.has(kindId)) return;
    const verbs = kindId === null ? [] : (context.library.kinds.get(kindId)?.verbs.map((verb) => verb.id) ?? []);
    const what =
      object === null
        ? `"${step.verb}" needs hardware: it is no verb of the crew or of an arm alone`
        : kindId === null
          ? `nobody can ${step.verb} "${object}", which is a ${context.ids.body(object)?.namespace ?? 'thing'}`
          : `"${object}" is a ${kindId}: it has no verb "${step.verb}"`;
    context.problems.add('verb-not-of-kind', span, what, {
      ...(verbs.length > 0 ? { expected: verbs.join(', ') } : {}),
      nearest: nearestName(step.verb, verbs),
    });
  }
}
