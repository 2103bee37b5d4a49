/** One stint: its bodies, its sentences, its exceptions. */
import type { Arm, Hardware, Step, Stint, WindowUse } from '../campaign.ts';
import { type CheckedNode, childrenOf, flag, number, text, textAt, words, wordsFrom } from '../check/checked-node.ts';
import { readDuration } from '../duration/read-duration.ts';
import { type ReadContext, titleOf } from './read-context.ts';
import { checkStepRoles, type Helper, readRoles } from './read-roles.ts';
import { readCondition } from './read-state.ts';
import { checkStepVerbs, readStep } from './read-step.ts';

export interface StintSurroundings {
  readonly arms: readonly Arm[];
  readonly hardware: ReadonlyMap<string, Hardware>;
}

export function readStint(node: CheckedNode, task: string, around: StintSurroundings, context: ReadContext): Stint {
  const id = textAt(node, 0) ?? '';
  const armAlone = words(node, 'who').some((word) => context.ids.get('arm', word.text) !== null);
  const { steps, helpers } = readSteps(node, armAlone ? 'arm' : 'lead', around, context);
  const roles = readRoles(node, armAlone, helpers, steps.length, around.arms, context);
  checkStepRoles(steps, roles, context);
  return {
    key: `${task}/${id}`,
    id,
    task,
    title: node.title ?? titleOf(id),
    roles,
    steps,
    duration: readDuration(node, `${task}/${id}`, steps, around.hardware, context),
    needs: childrenOf(node, 'need').map((one) => {
      const { variable, values } = readCondition(one, wordsFrom(one, 1), context);
      const when = (text(one, 'when') ?? 'during') as 'start' | 'during' | 'end';
      return { variable, allowed: values, when, span: one.span };
    }),
    leaves: childrenOf(node, 'leave').map((one) => {
      const { variable, values } = readCondition(one, wordsFrom(one, 1), context);
      return { variable, value: values[0] ?? '', at: (text(one, 'at') ?? 'end') as 'start' | 'end', span: one.span };
    }),
    windowUses: node.children.flatMap((one) => readWindowUse(one, steps.length, context) ?? []),
    after: childrenOf(node, 'after').map((one) => {
      const leastS = number(one, 'least') ?? 0;
      const mostS = number(one, 'most');
      if (mostS !== null && mostS < leastS) {
        context.problems.add('range-backwards', one.span, 'most is less than least', { expected: 'least up to most' });
      }
      return { stint: stintKey(textAt(one, 0) ?? '', task, context), leastS, mostS, span: one.span };
    }),
    under: childrenOf(node, 'under').flatMap((one) => wordsFrom(one, 0).map((word) => word.text)),
    voice: flag(node, 'voice') ?? false,
    caution:
      childrenOf(node, 'caution')
        .map((one) => textAt(one, 0) ?? '')
        .join(' ') || null,
    template: node.template,
    span: node.span,
  };
}

/** The full key of a stint named inside a task: the bare id suffices there. */
export function stintKey(written: string, task: string, context: ReadContext): string {
  return !written.includes('/') && context.ids.get('stint', `${task}/${written}`) !== null
    ? `${task}/${written}`
    : written;
}

/** Sentences in order, those inside `with` included; each `with` is a helper over its range. */
function readSteps(
  node: CheckedNode,
  by: Step['by'],
  around: StintSurroundings,
  context: ReadContext,
): { readonly steps: readonly Step[]; readonly helpers: readonly Helper[] } {
  const steps: Step[] = [];
  const helpers: Helper[] = [];
  const walk = (children: readonly CheckedNode[]): void => {
    for (const one of children) {
      if (one.definition === null) {
        const step = readStep(one, by, context);
        checkStepVerbs(step, one, around.hardware, null, context);
        steps.push(step);
      } else if (one.name === 'with') {
        const fromStep = steps.length;
        walk(one.children);
        if (steps.length === fromStep) {
          context.problems.add('nothing-inside', one.span, 'this "with" has no sentence inside', {
            expected: 'the sentences for which the helper is there; for the whole stint, partner= or arm=',
          });
        }
        helpers.push({ node: one, fromStep, toStep: steps.length });
      } else if (one.name === 'safe-stop') {
        const last = steps.at(-1);
        if (last === undefined) {
          context.problems.add('misplaced-node', one.span, 'no sentence stands above this safe-stop', {
            expected: 'safe-stop below the sentence that it is about',
          });
        } else steps[steps.length - 1] = { ...last, safeStop: one.arguments[0]?.value === true };
      }
    }
  };
  walk(node.children);
  return { steps, helpers };
}

function readWindowUse(node: CheckedNode, stepCount: number, context: ReadContext): WindowUse | null {
  if (node.name !== 'inside' && node.name !== 'outside' && node.name !== 'prefer') return null;
  const part = (text(node, 'part') ?? 'whole') as WindowUse['part'];
  const first = number(node, 'from-step');
  const last = number(node, 'to-step');
  if (part !== 'steps' && (first !== null || last !== null)) {
    context.problems.add('two-ends', node.span, 'from-step and to-step go with part=steps only', {
      expected: 'part=steps',
    });
  }
  const fromStep = part === 'steps' ? (first ?? 1) - 1 : 0;
  const toStep = part === 'steps' ? (last ?? stepCount) : stepCount;
  if (part === 'steps' && (fromStep >= toStep || toStep > stepCount)) {
    context.problems.add('out-of-range', node.span, `sentences ${fromStep + 1} to ${toStep} of ${stepCount}`, {
      expected: `from-step and to-step within 1 to ${stepCount}`,
    });
  }
  return {
    window: textAt(node, 0) ?? '',
    mode: node.name === 'outside' ? 'outside' : 'inside',
    part,
    fromStep,
    toStep,
    prefers: node.name === 'prefer',
    span: node.span,
  };
}
