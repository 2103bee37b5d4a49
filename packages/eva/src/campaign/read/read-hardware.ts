/** Hardware: one node may declare many pieces that share what it says. */
import { parseQuantity } from '@handrail/quantity/quantity';
import type { Kind, KindProperty } from '../../kinds/kind.ts';
import type { Hardware, Location } from '../campaign.ts';
import { type CheckedNode, childrenOf, number, spanOf, text, textAt, words, wordsFrom } from '../check/checked-node.ts';
import { ID } from '../check/check-value.ts';
import { nearestName, nearestOrAll } from '../problem/nearest-name.ts';
import { filledIn, OUTSIDE, type ReadContext, titleOf } from './read-context.ts';

const DIMENSIONS = {
  torque: 'torque',
  time: 'time',
  length: 'length',
  mass: 'mass',
  angle: 'angle',
  force: 'force',
  'rotation-rate': 'rotation-rate',
  temperature: 'temperature',
} as const;

export function readHardware(node: CheckedNode, context: ReadContext): readonly Hardware[] {
  const pieces = wordsFrom(node, 0);
  const kindId = text(node, 'kind') ?? '';
  const kind = context.library.kinds.get(kindId);
  const of = text(node, 'of');
  const first = pieces[0]?.text ?? '';
  const shared = {
    kind: kindId,
    at: readLocation(node, first, of, context),
    of,
    initial: readInitial(node, kind, context),
    massKg: number(node, 'mass'),
    loadClass: text(node, 'load'),
    controls: words(node, 'controls').map((word) => word.text),
    torqueNm: number(node, 'torque'),
    turns: number(node, 'turns'),
    toolFits: readFits(node, context),
    properties: readProperties(node, kind, context),
    settings: Object.fromEntries(
      childrenOf(node, 'setting').map((one) => [textAt(one, 0) ?? '', textAt(one, 1) ?? '']),
    ),
  };
  return pieces.map((word) => ({
    id: word.text,
    title: node.title === null ? titleOf(word.text) : pieces.length > 1 ? `${node.title} ${word.text}` : node.title,
    ...shared,
    span: { ...word.span },
  }));
}

function readLocation(node: CheckedNode, first: string, of: string | null, context: ReadContext): Location {
  const at = text(node, 'at');
  if (at !== null) return { kind: context.ids.body(at)?.namespace as Location['kind'], id: at };
  if (of !== null) {
    return filledIn(context, { kind: 'hardware', id: of }, node.span, `place of ${first}`, `on ${of}`, 'format');
  }
  if (!context.placeless) {
    context.problems.add('missing-property', node.nameSpan, 'this hardware says neither "at" nor "of"', {
      expected: 'at=, the place, bag, person or arm where it is at the start',
    });
  }
  return { kind: 'place', id: OUTSIDE };
}

function readInitial(node: CheckedNode, kind: Kind | undefined, context: ReadContext): Record<string, string> {
  const initial: Record<string, string> = {};
  const stated: { aspect: string | null; value: string; span: CheckedNode['span']; aspectSpan: CheckedNode['span'] }[] =
    [];
  const first = text(node, 'state');
  if (first !== null) {
    stated.push({ aspect: null, value: first, span: spanOf(node, 'state'), aspectSpan: spanOf(node, 'state') });
  }
  for (const one of childrenOf(node, 'state')) {
    stated.push({
      aspect: textAt(one, 0),
      value: textAt(one, 1) ?? '',
      span: one.arguments[1]?.span ?? one.span,
      aspectSpan: one.arguments[0]?.span ?? one.span,
    });
  }
  for (const { aspect: written, value, span, aspectSpan } of stated) {
    if (kind === undefined) continue;
    const aspect = written === null ? kind.aspects[0] : kind.aspects.find((one) => one.id === written);
    if (aspect === undefined) {
      const names = kind.aspects.map((one) => one.id);
      context.problems.add(
        'unknown-aspect',
        aspectSpan,
        written === null ? `a ${kind.id} has no state` : `a ${kind.id} has no aspect "${written}"`,
        { expected: names.join(', ') || 'no state', nearest: written === null ? null : nearestName(written, names) },
      );
    } else if (!aspect.values.includes(value)) {
      context.problems.add('unknown-value', span, `a ${kind.id} is never "${value}"`, {
        expected: aspect.values.join(' | '),
        nearest: nearestName(value, aspect.values),
      });
    } else if (initial[aspect.id] !== undefined) {
      context.problems.add('node-twice', aspectSpan, `the state "${aspect.id}" is given twice`, {
        expected: 'one of the two',
      });
    } else initial[aspect.id] = value;
  }
  return initial;
}

function readFits(node: CheckedNode, context: ReadContext): readonly string[] {
  const fits = (text(node, 'fits') ?? '').split(/\s+/).filter((word) => word !== '');
  for (const one of fits) {
    if (ID.test(one) && (context.library.kinds.has(one) || context.ids.get('hardware', one) !== null)) continue;
    context.problems.add('unknown-id', spanOf(node, 'fits'), `there is no kind or tool "${one}"`, {
      nearest: nearestName(one, [...context.library.kinds.keys(), ...context.ids.ids('hardware')]),
    });
  }
  return fits;
}

function readProperties(
  node: CheckedNode,
  kind: Kind | undefined,
  context: ReadContext,
): Record<string, number | string | boolean> {
  const properties: Record<string, number | string | boolean> = {};
  for (const one of childrenOf(node, 'property')) {
    const name = textAt(one, 0) ?? '';
    const value = one.arguments[1];
    if (kind === undefined || value === null || value === undefined) continue;
    const known = kind.properties.find((property) => property.id === name);
    if (known === undefined) {
      const names = kind.properties.map((property) => property.id);
      context.problems.add(
        'unknown-property',
        one.arguments[0]?.span ?? one.span,
        `a ${kind.id} has no property "${name}"`,
        {
          ...nearestOrAll(name, names, 'none'),
        },
      );
      continue;
    }
    const si = propertyValue(known, value.value);
    if (si === null) {
      context.problems.add('wrong-type', value.span, `"${name}" is ${JSON.stringify(value.value)}`, {
        expected: known.type in DIMENSIONS ? `a ${known.type} with its unit` : `a ${known.type}`,
      });
    } else properties[name] = si;
  }
  return properties;
}

function propertyValue(property: KindProperty, value: string | number | boolean): string | number | boolean | null {
  switch (property.type) {
    case 'number':
      return typeof value === 'number' && Number.isFinite(value) ? value : null;
    case 'boolean':
      return typeof value === 'boolean' ? value : null;
    case 'text':
    case 'reference':
      return typeof value === 'string' ? value : null;
    default: {
      const read = typeof value === 'string' ? parseQuantity(value) : null;
      return read?.ok === true && read.dimension === DIMENSIONS[property.type] ? read.si : null;
    }
  }
}

/** Pieces inside each other in a circle are nowhere. */
export function reportCircles(hardware: readonly Hardware[], context: ReadContext): void {
  const byId = new Map(hardware.map((piece) => [piece.id, piece]));
  reportCircle(byId, (piece) => (piece.at.kind === 'hardware' ? piece.at.id : null), 'inside', context);
  reportCircle(byId, (piece) => piece.of, 'a part of', context);
}

/** Follows each piece outward once; a piece met again on the same way lies on a circle. */
function reportCircle(
  byId: ReadonlyMap<string, Hardware>,
  outward: (piece: Hardware) => string | null,
  words: string,
  context: ReadContext,
): void {
  const walkOf = new Map<string, number>();
  let walk = 0;
  for (const start of byId.values()) {
    walk++;
    let piece: Hardware | undefined = start;
    while (piece !== undefined && !walkOf.has(piece.id)) {
      walkOf.set(piece.id, walk);
      const next = outward(piece);
      piece = next === null ? undefined : byId.get(next);
    }
    if (piece === undefined || walkOf.get(piece.id) !== walk) continue;
    const first = piece.id;
    do {
      const on: Hardware = piece;
      context.problems.add('circle', on.span, `"${on.id}" is ${words} itself, directly or through others`);
      piece = byId.get(outward(on) ?? '');
    } while (piece !== undefined && piece.id !== first);
  }
}
