/** What people decided: gates, responses, pins, waivers. */
import type { Gate, Hardware, Pin, Response, Step, Waiver } from '../campaign.ts';
import {
  type CheckedNode,
  child,
  childrenOf,
  flag,
  number,
  numberAt,
  spanOf,
  text,
  textAt,
  words,
  wordsFrom,
} from '../check/checked-node.ts';
import { readPercentiles } from '../duration/read-duration.ts';
import { nearestName } from '../problem/nearest-name.ts';
import { type ReadContext, titleOf } from './read-context.ts';
import { readLeaves } from './read-outside-world.ts';
import { checkStepVerbs, readStep } from './read-step.ts';

export function readGate(node: CheckedNode): Gate {
  const id = textAt(node, 0) ?? '';
  return {
    id,
    title: node.title ?? titleOf(id),
    before: text(node, 'before') ?? '',
    caller: text(node, 'caller') ?? '',
    latestPetS: number(node, 'latest'),
    conditions: childrenOf(node, 'condition').map((one) => textAt(one, 0) ?? ''),
    onNo: text(node, 'on-no') ?? '',
    drops: words(node, 'drops').map((word) => word.text),
    span: node.span,
  };
}

export function readResponse(
  node: CheckedNode,
  hardware: ReadonlyMap<string, Hardware>,
  context: ReadContext,
): Response {
  const id = textAt(node, 0) ?? '';
  const kind = text(node, 'kind');
  const stint = text(node, 'stint');
  if (kind !== null && stint !== null) {
    context.problems.add('two-ends', node.span, 'a response applies to a kind or in a stint, not both', {
      expected: 'kind= or stint=',
    });
  }
  const steps = node.children
    .filter((one) => one.definition === null)
    .map((one): Step => {
      const step = readStep(one, 'lead', context);
      checkStepVerbs(step, one, hardware, kind, context);
      return step;
    });
  const leavesIt = text(node, 'leaves-it');
  const values = kind === null ? [] : (context.library.kinds.get(kind)?.aspects[0]?.values ?? []);
  if (leavesIt !== null && !values.includes(leavesIt)) {
    context.problems.add(
      'unknown-value',
      spanOf(node, 'leaves-it'),
      kind === null
        ? 'leaves-it= speaks of the piece of a kind, and no kind is given'
        : `"${leavesIt}" is no state of a ${kind}`,
      { expected: kind === null ? 'kind=' : values.join(' | '), nearest: nearestName(leavesIt, values) },
    );
  }
  const written = child(node, 'minutes');
  const probability = child(node, 'probability');
  return {
    id,
    title: node.title ?? titleOf(id),
    trigger: text(node, 'trigger') ?? '',
    appliesTo: kind !== null ? { kind } : stint !== null ? { stint } : null,
    steps,
    duration: written === null ? null : readPercentiles(written, context),
    kit: childrenOf(node, 'kit').flatMap((one) => wordsFrom(one, 0).map((word) => word.text)),
    leaves: readLeaves(node, context),
    leavesIt,
    leadsTo: text(node, 'leads-to') as Response['leadsTo'],
    probability: probability === null ? null : numberAt(probability, 0),
    span: node.span,
  };
}

/** One thing a pin: so that each has one price. */
export function readPin(node: CheckedNode, context: ReadContext): Pin | null {
  const { problems, ids } = context;
  const of = textAt(node, 0) ?? '';
  const task = ids.get('task', of) !== null;
  const given = ['person', 'start', 'before', 'eva', 'out'].filter((key) =>
    node.source.entries.some((entry) => entry.name === key),
  );
  const [kind] = given;
  if (kind === undefined || given.length > 1) {
    problems.add(
      'pin-says',
      node.span,
      `a pin fixes one thing, and this one fixes ${given.length === 0 ? 'nothing' : given.join(' and ')}`,
      {
        expected: 'one of person=, start=, before=, eva=, out=#true',
      },
    );
    return null;
  }
  if ((kind === 'eva' || kind === 'out') !== task && (task || ids.get('stint', of) !== null)) {
    problems.add('wrong-sort', node.arguments[0]?.span ?? node.span, `"${of}" is a ${task ? 'task' : 'stint'}`, {
      expected: task ? 'task/stint with person=, start= or before=' : 'a task with eva= or out=',
    });
    return null;
  }
  if (kind !== 'person' && node.properties.has('role')) {
    problems.add('two-ends', spanOf(node, 'role'), 'role= goes with person=', { expected: 'person= and role=' });
  }
  const span = node.span;
  switch (kind) {
    case 'person':
      return {
        kind,
        stint: of,
        role: (text(node, 'role') ?? 'lead') as 'lead' | 'partner',
        person: text(node, 'person') ?? '',
        span,
      };
    case 'start':
      return { kind, stint: of, petS: number(node, 'start') ?? 0, span };
    case 'before':
      // oxlint-disable-next-line unicorn/no-thenable -- the campaign's own word for the stint that comes second
      return { kind: 'order', first: of, then: text(node, 'before') ?? '', span };
    case 'eva':
      return { kind, task: of, eva: text(node, 'eva') ?? '', span };
    default:
      if (flag(node, 'out') === false) {
        problems.add('pin-says', spanOf(node, 'out'), 'out=#false fixes nothing', { expected: 'out=#true, or no pin' });
        return null;
      }
      return { kind: 'out', task: of, span };
  }
}

/** @param rules ids of the rules that exist; empty: not known here */
export function readWaiver(node: CheckedNode, rules: readonly string[], context: ReadContext): Waiver {
  const rule = textAt(node, 0) ?? '';
  const span = node.arguments[0]?.span ?? node.span;
  if (rule !== '' && !/^[a-z][a-z0-9-]*\/[a-z][a-z0-9-]*$/.test(rule)) {
    context.problems.add('not-a-rule', span, `"${rule}" is not a rule id`, { expected: 'subject/what-must-hold' });
  } else if (rules.length > 0 && rule !== '' && !rules.includes(rule)) {
    context.problems.add('not-a-rule', span, `there is no rule "${rule}"`, { nearest: nearestName(rule, rules) });
  }
  return {
    rule,
    of: text(node, 'of') ?? '',
    reason: text(node, 'reason') ?? '',
    by: text(node, 'by') ?? '',
    untilUtcMs: number(node, 'until') ?? 0,
    span: node.span,
  };
}
