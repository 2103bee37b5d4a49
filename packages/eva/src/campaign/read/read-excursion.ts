/** EVAs, objectives, cut orders. */
import type { CutOrder, Eva, Objective, Passage, Person } from '../campaign.ts';
import {
  type CheckedNode,
  child,
  childrenOf,
  number,
  numberAt,
  spanOf,
  text,
  textAt,
  wordsFrom,
} from '../check/checked-node.ts';
import { filledIn, type ReadContext, titleOf } from './read-context.ts';

export function readEva(node: CheckedNode, people: readonly Person[], context: ReadContext): Eva {
  const id = textAt(node, 0) ?? '';
  const success = child(node, 'minimum-success');
  const close = child(node, 'close-hatch');
  return {
    id,
    title: node.title ?? titleOf(id),
    egressUtcMs: number(node, 'egress') ?? 0,
    slipS: number(node, 'slip') ?? filledIn(context, 0, node.span, `slip of ${id}`, '0 min', 'format'),
    longestS: number(node, 'longest'),
    indoors: text(node, 'indoors'),
    egress: readPassages(node, 'out', people, context),
    ingress: readPassages(node, 'in', people, context),
    closeHatchS:
      (close === null ? null : numberAt(close, 0)) ??
      filledIn(context, 0, node.span, `closing the hatch of ${id}`, '0 min: not stated', 'format'),
    minimumSuccess: success === null ? [] : wordsFrom(success, 0).map((word) => word.text),
    prebreathe: text(node, 'prebreathe'),
    span: node.span,
  };
}

/** Each person outside passes once; whoever the text does not name passes in no time, and the default says so. */
function readPassages(
  node: CheckedNode,
  name: 'out' | 'in',
  people: readonly Person[],
  context: ReadContext,
): readonly Passage[] {
  const outside = people.filter((person) => person.role === 'outside').map((person) => person.id);
  const passages: Passage[] = [];
  const passed = new Set<string>();
  for (const one of childrenOf(node, name)) {
    const person = textAt(one, 0);
    if (person === null) continue;
    if (passed.has(person)) {
      context.problems.add('node-twice', one.span, `${person} goes ${name} twice`, { expected: 'each person once' });
    }
    if (context.ids.get('person', person) !== null && !outside.includes(person)) {
      context.problems.add(
        'wrong-sort',
        one.arguments[0]?.span ?? one.span,
        `${person} has no suit (role is not outside)`,
        {
          expected: outside.join(' or '),
        },
      );
    }
    passed.add(person);
    passages.push({ person, durationS: numberAt(one, 1) ?? 0, span: one.span });
  }
  for (const person of outside) {
    if (passed.has(person)) continue;
    const id = textAt(node, 0) ?? '';
    passages.push({
      person,
      durationS: filledIn(context, 0, node.span, `${person} ${name} in ${id}`, '0 min: not stated', 'format'),
      span: node.span,
    });
  }
  return passages;
}

/** @param servedBy task → objective, as the tasks say it */
export function readObjective(
  node: CheckedNode,
  rank: number,
  servedBy: ReadonlyMap<string, { readonly objective: string; readonly span: CheckedNode['span'] }>,
  context: ReadContext,
): Objective {
  const id = textAt(node, 0) ?? '';
  const listed = child(node, 'tasks');
  const tasks = listed === null ? [] : wordsFrom(listed, 0).map((word) => word.text);
  for (const word of listed === null ? [] : wordsFrom(listed, 0)) {
    const other = servedBy.get(word.text);
    if (other === undefined || other.objective === id) continue;
    context.problems.add(
      'objectives-differ',
      word.span,
      `task "${word.text}" says that it serves "${other.objective}"`,
      {
        expected: `the same objective here and in line ${other.span.line}`,
      },
    );
  }
  for (const [task, served] of servedBy) if (served.objective === id && !tasks.includes(task)) tasks.push(task);
  return {
    id,
    title: node.title ?? titleOf(id),
    rank,
    tasks,
    milestones: childrenOf(node, 'milestone').map((one) => {
      const reached = child(one, 'tasks');
      return {
        id: textAt(one, 0) ?? '',
        title: one.title ?? titleOf(textAt(one, 0) ?? ''),
        tasks: reached === null ? [] : wordsFrom(reached, 0).map((word) => word.text),
        span: one.span,
      };
    }),
    neededBy: text(node, 'needed-by'),
    span: node.span,
  };
}

export function readCutOrder(node: CheckedNode): CutOrder {
  return {
    eva: textAt(node, 0) ?? '',
    tasks: childrenOf(node, 'drop').flatMap((one) => textAt(one, 0) ?? []),
    span: node.span,
  };
}

/**
 * Ranks as written, unique; the others follow in the order of the text behind the greatest rank above them.
 * @returns rank by node
 */
export function readRanks(
  nodes: readonly CheckedNode[],
  what: string,
  context: ReadContext,
): ReadonlyMap<CheckedNode, number> {
  const ranks = new Map<CheckedNode, number>();
  const taken = new Map<number, CheckedNode>();
  for (const node of nodes) {
    const rank = number(node, 'rank');
    if (rank === null) continue;
    const before = taken.get(rank);
    if (before !== undefined) {
      context.problems.add(
        'rank-twice',
        spanOf(node, 'rank'),
        `rank ${rank} is already that of "${textAt(before, 0)}"`,
        {
          expected: `a rank of its own for each ${what}`,
        },
      );
    }
    taken.set(rank, node);
    ranks.set(node, rank);
  }
  let last = 0;
  for (const node of nodes) {
    const written = ranks.get(node);
    if (written !== undefined) {
      last = Math.max(last, written);
      continue;
    }
    do last++;
    while (taken.has(last));
    taken.set(last, node);
    ranks.set(
      node,
      filledIn(context, last, node.span, `rank of ${textAt(node, 0)}`, String(last), 'order of the text'),
    );
  }
  return ranks;
}
