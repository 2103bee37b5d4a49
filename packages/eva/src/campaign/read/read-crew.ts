/** People and arms. */
import type { Arm, ArmPose, ArmTransfer, ClimbDown, Person } from '../campaign.ts';
import { type CheckedNode, child, childrenOf, flag, number, numberAt, text, textAt } from '../check/checked-node.ts';
import type { Span } from '../span.ts';
import { readPropertyBand } from './read-band.ts';
import { filledIn, type ReadContext, titleOf } from './read-context.ts';

export function readPerson(node: CheckedNode, context: ReadContext): Person {
  const id = textAt(node, 0) ?? '';
  return {
    id,
    title: node.title ?? id,
    role: (text(node, 'role') ?? 'outside') as Person['role'],
    pace: number(node, 'pace') ?? filledIn(context, 1, node.span, `pace of ${id}`, '1', 'format'),
    suitLimitS: number(node, 'suit-limit'),
    startAnchor: text(node, 'anchor'),
    tetherLengthM: number(node, 'tether'),
    carryMost: number(node, 'carries'),
    ...readOwnSuit(node, id, context),
    span: node.span,
  };
}

/** A suit asks for the person's own work factor and mass: neither is assumed. */
function readOwnSuit(
  node: CheckedNode,
  id: string,
  context: ReadContext,
): Pick<Person, 'suit' | 'workFactor' | 'bodyMassKg'> {
  const suit = text(node, 'suit');
  const bodyMassKg = number(node, 'body-mass');
  const workFactor = readPropertyBand(node, 'work-factor', `stated for ${id}`, context);
  if (suit !== null) {
    for (const name of ['work-factor', 'body-mass']) {
      if (node.source.entries.some((entry) => entry.name === name)) continue;
      context.problems.add('missing-property', node.nameSpan, `${id} has a suit and does not say "${name}"`, {
        expected: name === 'body-mass' ? 'body-mass=, a mass' : 'work-factor=, 1 where nothing else is known',
      });
    }
  }
  return { suit, workFactor, bodyMassKg };
}

export const ASSUMED_PEOPLE: readonly string[] = ['EV1', 'EV2', 'IV'];

/** A pasted list names no crew: the three that every campaign has. */
export function assumedPeople(span: Span, context: ReadContext): readonly Person[] {
  const person = (id: string, title: string, role: Person['role']): Person => ({
    id,
    title,
    role,
    pace: 1,
    suitLimitS: null,
    startAnchor: null,
    tetherLengthM: null,
    carryMost: null,
    suit: null,
    workFactor: null,
    bodyMassKg: null,
    span,
  });
  return filledIn(
    context,
    [person('EV1', 'EV1', 'outside'), person('EV2', 'EV2', 'outside'), person('IV', 'IV', 'inside')],
    span,
    'people',
    'EV1 and EV2 outside, IV inside, pace 1',
    'format',
  );
}

export function readArm(node: CheckedNode, context: ReadContext): Arm {
  const id = textAt(node, 0) ?? '';
  const poses = childrenOf(node, 'pose').map(readPose);
  const own = new Set(poses.map((pose) => pose.id));
  const startPose = text(node, 'start') ?? '';
  const requireOwn = (pose: string, at: CheckedNode): void => {
    if (pose === '' || own.has(pose) || context.ids.get('pose', pose) === null) return;
    context.problems.add('wrong-sort', at.span, `"${pose}" is a pose of another arm`, {
      expected: [...own].join(', '),
    });
  };
  requireOwn(startPose, node);
  const transfers = childrenOf(node, 'transfer').map((transfer): ArmTransfer => {
    const from = textAt(transfer, 0) ?? '';
    const to = textAt(transfer, 1) ?? '';
    requireOwn(from, transfer);
    requireOwn(to, transfer);
    if (from !== '' && from === to) {
      context.problems.add('same-ends', transfer.span, `this transfer begins and ends at "${from}"`);
    }
    return {
      from,
      to,
      emptyS: number(transfer, 'empty') ?? 0,
      loadedS: number(transfer, 'loaded'),
      oneWay: flag(transfer, 'one-way') ?? false,
      climbDown: readClimbDown(transfer),
      span: transfer.span,
    };
  });
  return {
    id,
    title: node.title ?? titleOf(id),
    operator: text(node, 'operator') ?? '',
    poses,
    transfers,
    startPose,
    span: node.span,
  };
}

function readClimbDown(node: CheckedNode): ClimbDown | null {
  const down = child(node, 'climb-down');
  return down === null ? null : { place: textAt(down, 0) ?? '', durationS: numberAt(down, 1) ?? 0 };
}

function readPose(node: CheckedNode): ArmPose {
  const id = textAt(node, 0) ?? '';
  return {
    id,
    title: node.title ?? titleOf(id),
    place: text(node, 'place'),
    climbDown: readClimbDown(node),
    span: node.span,
  };
}
