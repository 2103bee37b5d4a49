/** Tasks, inserts and the joins inside them. */
import type { Join, Stint, Task } from '../campaign.ts';
import { type CheckedNode, text, textAt, words } from '../check/checked-node.ts';
import { filledIn, type ReadContext, titleOf } from './read-context.ts';
import { readStint, type StintSurroundings, stintKey } from './read-stint.ts';

/** @param objective as the task or the objective says it; null: none */
export function readTask(
  node: CheckedNode,
  rank: number,
  objective: string | null,
  evaIds: readonly string[],
  around: StintSurroundings,
  context: ReadContext,
): Task {
  const id = textAt(node, 0) ?? '';
  const stints: Stint[] = [];
  const above = new Map<CheckedNode, number>();
  for (const one of node.children) {
    if (one.name === 'stint') stints.push(readStint(one, id, around, context));
    else if (one.name === 'join') above.set(one, stints.length);
  }
  if (stints.length === 0 && !node.source.children.some((one) => one.name === 'use')) {
    context.problems.add('missing-node', node.nameSpan, `this ${node.name} has no stint`, {
      expected: 'stint <id> who=EV1 at=<place> { … }',
    });
  }
  const joins = [...above].map(([join, at], index) => readJoin(join, index, id, stints, at, context));
  const named = new Set<string>();
  for (const join of joins) {
    if (named.has(join.id)) {
      context.problems.add('id-twice', join.span, `a join "${join.id}" stands already in this task`, {
        expected: 'id= on one of the two joins, or another title',
      });
    }
    named.add(join.id);
  }
  return {
    id,
    title: node.title ?? titleOf(id),
    rank,
    insert: node.name === 'insert',
    evas: readEvas(node, id, evaIds, context),
    objective,
    order: (text(node, 'order') ?? 'written') as Task['order'],
    stints,
    joins,
    span: node.span,
  };
}

function readEvas(node: CheckedNode, id: string, evaIds: readonly string[], context: ReadContext): readonly string[] {
  const written = words(node, 'eva').map((word) => word.text);
  if (written.includes('any')) return evaIds;
  if (written.length > 0) return [...new Set(written)];
  return filledIn(
    context,
    evaIds,
    node.span,
    `EVA of ${id}`,
    evaIds.length === 1 ? `${evaIds[0]}, the only one` : 'any',
    'format',
  );
}

/**
 * A join stands between the stint above that the speaker takes part in and the stint below that the listener takes part in;
 * after= and before= name others.
 */
function readJoin(
  node: CheckedNode,
  index: number,
  task: string,
  stints: readonly Stint[],
  at: number,
  context: ReadContext,
): Join {
  const says = text(node, 'from');
  const listens = text(node, 'to');
  const takesPart = (stint: Stint, body: string | null): boolean =>
    body === null || stint.roles.some((role) => role.candidates.includes(body));
  const after = text(node, 'after');
  const before = text(node, 'before');
  const releases =
    after !== null ? stintKey(after, task, context) : nearest(stints, at - 1, -1, (one) => takesPart(one, says))?.key;
  const waits =
    before !== null ? stintKey(before, task, context) : nearest(stints, at, 1, (one) => takesPart(one, listens))?.key;
  if (releases === undefined) {
    context.problems.add(
      'join-hangs',
      node.span,
      `no stint above this join${says === null ? '' : ` has ${says} in it`}`,
      {
        expected: 'after=, the stint whose end releases',
      },
    );
  }
  if (waits === undefined) {
    context.problems.add(
      'join-hangs',
      node.span,
      `no stint below this join${listens === null ? '' : ` has ${listens} in it`}`,
      {
        expected: 'before=, the stint that waits',
      },
    );
  }
  if (releases !== undefined && releases === waits) {
    context.problems.add('join-hangs', node.span, 'this join waits for the stint that it releases', {
      expected: 'two different stints',
    });
  }
  const slug = (node.title ?? '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const id = text(node, 'id') ?? (slug === '' ? `join-${index + 1}` : slug);
  return {
    id,
    title: node.title ?? titleOf(id),
    task,
    releases: releases ?? '',
    waits: waits ?? '',
    says,
    listens,
    span: node.span,
  };
}

function nearest(
  stints: readonly Stint[],
  from: number,
  step: 1 | -1,
  fits: (stint: Stint) => boolean,
): Stint | undefined {
  for (let at = from; at >= 0 && at < stints.length; at += step) {
    const stint = stints[at] as Stint;
    if (fits(stint)) return stint;
  }
  return undefined;
}
