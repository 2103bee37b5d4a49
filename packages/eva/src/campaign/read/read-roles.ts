/** Who takes part in a stint, where, and from when to when. */
import type { Arm, Role, Step } from '../campaign.ts';
import { type CheckedNode, spanOf, text, type Word, words, wordsFrom } from '../check/checked-node.ts';
import { OUTSIDE, type ReadContext } from './read-context.ts';

/** A `with` node and the sentences inside it. */
export interface Helper {
  readonly node: CheckedNode;
  readonly fromStep: number;
  readonly toStep: number;
}

/** The bodies that a stint needs: lead, partner, arm, each over its range of sentences. */
export function readRoles(
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

/** A sentence given to a partner or an arm needs one who is there. */
export function checkStepRoles(steps: readonly Step[], roles: readonly Role[], context: ReadContext): void {
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
