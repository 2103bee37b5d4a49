/** One stint: its bodies, its sentences, its exceptions. */
import type { Arm, Hardware, Role, Step, Stint, WindowUse } from '../campaign.ts';
import {
  type CheckedNode,
  childrenOf,
  flag,
  number,
  spanOf,
  text,
  textAt,
  type Word,
  words,
  wordsFrom,
} from '../check/checked-node.ts';
import { readDuration } from '../duration/read-duration.ts';
import { OUTSIDE, type ReadContext, titleOf } from './read-context.ts';
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

interface Helper {
  readonly node: CheckedNode;
  readonly fromStep: number;
  readonly toStep: number;
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

function readRoles(
  node: CheckedNode,
  armAlone: boolean,
  helpers: readonly Helper[],
  stepCount: number,
  arms: readonly Arm[],
  context: ReadContext,
): readonly Role[] {
  const roles: Role[] = [];
  const whole = { fromStep: 0, toStep: stepCount, span: node.span };
  const who = words(node, 'who');
  const ride = text(node, 'on');
  const startOn = text(node, 'start-on') ?? ride;
  const endOn = text(node, 'end-on') ?? ride;
  const arm = text(node, 'arm') ?? (armAlone ? (who[0]?.text ?? null) : (startOn ?? endOn));
  const armRole = arm === null ? null : readArmRole(node, arm, whole, arms, context);

  if (armAlone) {
    if (who.length > 1) {
      context.problems.add(
        'wrong-sort',
        spanOf(node, 'who'),
        'an arm works alone or takes part: who= names one arm or people',
        {
          expected: 'who= the people, arm= the arm',
        },
      );
    }
    if (armRole !== null) roles.push(armRole);
  } else {
    const both = who.some((word) => word.text === 'both');
    const at = text(node, 'at') ?? (startOn === null ? null : posePlace(arms, arm, armRole?.at ?? null));
    const to =
      text(node, 'to') ?? (endOn !== null && startOn !== null ? posePlace(arms, arm, armRole?.to ?? null) : null) ?? at;
    const place = requirePlace(node, at, context);
    roles.push({
      name: 'lead',
      candidates: both ? context.outside.slice(0, 1) : candidates(who, spanOf(node, 'who'), [], context),
      at: place,
      to: to ?? place,
      startOn,
      endOn,
      restraint: text(node, 'restraint'),
      ...whole,
    });
    const partner = words(node, 'partner');
    if (both && partner.length > 0) {
      context.problems.add('two-ends', spanOf(node, 'partner'), 'who=both names the partner already', {
        expected: 'who=both, or who= and partner=',
      });
    }
    if (both && context.outside.length < 2) {
      context.problems.add('wrong-sort', spanOf(node, 'who'), 'who=both needs two people with role=outside');
    }
    if (both || partner.length > 0) {
      const partnerAt = text(node, 'partner-at') ?? place;
      const lead = roles[0]?.candidates ?? [];
      const found = both ? context.outside.slice(1, 2) : candidates(partner, spanOf(node, 'partner'), lead, context);
      roles.push({
        name: 'partner',
        candidates: found,
        at: partnerAt,
        to: text(node, 'partner-to') ?? (text(node, 'partner-at') === null ? (to ?? place) : partnerAt),
        startOn: null,
        endOn: null,
        restraint: text(node, 'partner-restraint'),
        ...whole,
      });
    }
    if (armRole !== null) roles.push(armRole);
  }
  for (const helper of helpers) roles.push(readHelper(helper, roles, arms, context));
  return roles;
}

function readHelper(helper: Helper, roles: readonly Role[], arms: readonly Arm[], context: ReadContext): Role {
  const { node, fromStep, toStep } = helper;
  const range = { fromStep, toStep, span: node.span };
  const who = wordsFrom(node, 0);
  const arm = who.find((word) => context.ids.get('arm', word.text) !== null);
  if (arm !== undefined) return readArmRole(node, arm.text, range, arms, context);
  const lead = roles.find((role) => role.name === 'lead');
  const at = text(node, 'at') ?? lead?.at ?? OUTSIDE;
  return {
    name: 'partner',
    candidates: candidates(who, node.arguments[0]?.span ?? node.span, lead?.candidates ?? [], context),
    at,
    to: text(node, 'to') ?? at,
    startOn: null,
    endOn: null,
    restraint: text(node, 'restraint'),
    ...range,
  };
}

/** Without pose=, the arm's only pose at the place of the work. */
function readArmRole(
  node: CheckedNode,
  armId: string,
  range: Pick<Role, 'fromStep' | 'toStep' | 'span'>,
  arms: readonly Arm[],
  context: ReadContext,
): Role {
  const arm = arms.find((one) => one.id === armId);
  const place = text(node, 'at');
  const poses = arm === undefined || place === null ? [] : arm.poses.filter((pose) => pose.place === place);
  const at = text(node, 'pose') ?? (poses.length === 1 ? (poses[0]?.id ?? '') : '');
  if (at === '' && arm !== undefined) {
    context.problems.add('missing-property', node.span, `${armId} takes part, and its pose is not said`, {
      expected: `pose=, one of ${arm.poses.map((pose) => pose.id).join(', ')}`,
    });
  }
  const to = text(node, 'to-pose') ?? at;
  for (const [key, pose] of [
    ['pose', at],
    ['to-pose', to],
  ] as const) {
    if (key === 'to-pose' && pose === at) continue;
    if (arm === undefined || pose === '' || arm.poses.some((one) => one.id === pose)) continue;
    if (context.ids.get('pose', pose) === null) continue;
    context.problems.add('wrong-sort', spanOf(node, key), `"${pose}" is a pose of another arm`, {
      expected: arm.poses.map((one) => one.id).join(', '),
    });
  }
  return { name: 'arm', candidates: [armId], at, to, startOn: null, endOn: null, restraint: null, ...range };
}

function posePlace(arms: readonly Arm[], arm: string | null, pose: string | null): string | null {
  return arms.find((one) => one.id === arm)?.poses.find((one) => one.id === pose)?.place ?? null;
}

function requirePlace(node: CheckedNode, at: string | null, context: ReadContext): string {
  if (at !== null) return at;
  if (!context.placeless) {
    context.problems.add('missing-property', node.nameSpan, 'this stint does not say "at"', {
      expected: 'at=, a place of the vehicle',
    });
  }
  return OUTSIDE;
}

/** Person ids in the order of the people; `any` is everybody outside but those who are needed elsewhere for certain. */
function candidates(
  written: readonly Word[],
  span: CheckedNode['span'],
  lead: readonly string[],
  context: ReadContext,
): readonly string[] {
  const taken = lead.length === 1 ? lead : [];
  const any = written.some((word) => word.text === 'any');
  const named = any ? context.outside : written.map((word) => word.text);
  const found = [...new Set(named)].filter((id) => !taken.includes(id));
  if (found.length === 0 && named.length > 0) {
    context.problems.add('wrong-sort', span, `${named[0]} leads this stint and cannot be the partner too`, {
      expected: context.outside.filter((id) => !taken.includes(id)).join(' or ') || 'a second person outside',
    });
  }
  for (const word of any ? [] : written) {
    if (context.ids.get('person', word.text) === null || context.outside.includes(word.text)) continue;
    context.problems.add('wrong-sort', word.span, `${word.text} has no suit (role is not outside)`, {
      expected: context.outside.join(' or '),
    });
  }
  return found.sort((a, b) => (context.bodyOrder.get(a) ?? 0) - (context.bodyOrder.get(b) ?? 0));
}

function checkStepRoles(steps: readonly Step[], roles: readonly Role[], context: ReadContext): void {
  const covered = { partner: new Set<number>(), arm: new Set<number>() };
  for (const role of roles) {
    if (role.name === 'lead') continue;
    for (let at = role.fromStep; at < role.toStep; at++) covered[role.name].add(at);
  }
  for (const [at, step] of steps.entries()) {
    if (step.by === 'lead' || covered[step.by].has(at)) continue;
    context.problems.add('nobody-there', step.span, `by=${step.by}, and no ${step.by} takes part in this sentence`, {
      expected:
        step.by === 'partner'
          ? 'partner= on the stint, or with <person> { … }'
          : 'arm= on the stint, or with <arm> { … }',
    });
  }
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
