/** Suits: every constant stated, or the suit is refused with what it lacks. */
import { Fault } from '@handrail/quantity/fault';
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import type { EnergyEquivalent } from '../../suit/gas-exchange.ts';
import type { InspiredCurve } from '../../suit/inspired-carbon-dioxide.ts';
import type { GasLaw } from '../../suit/oxygen-bottle.ts';
import { completeSuit, type SuitDraft, type SuitSpecification } from '../../suit/suit-specification.ts';
import type { EffortUse, Suit, SuitLoadUse } from '../campaign.ts';
import { checkValue } from '../check/check-value.ts';
import { type CheckedNode, child, childrenOf, flag, number, numberAt, text, textAt } from '../check/checked-node.ts';
import { CONSTANT_WORDS, type ConstantWord, wordOfConstant } from '../definition/suit-constant-words.ts';
import { nearestName } from '../problem/nearest-name.ts';
import { readBand } from './read-band.ts';
import { type ReadContext, titleOf } from './read-context.ts';

/** null when something in it was refused. */
export function readSuit(node: CheckedNode, context: ReadContext): Suit | null {
  const id = textAt(node, 0) ?? '';
  const before = context.problems.errorCount;
  const constants = readConstants(node, context);
  const efforts = readNamed(node, 'effort', context);
  const loads = readNamed(node, 'load', context);
  const curve = readCurve(node, context);
  const secondary = requireConstants(node, id, constants, context);
  const effortUse = readEffortUse(node, efforts, context);
  const specification =
    context.problems.errorCount > before
      ? null
      : specify(node, id, { constants, efforts, loads, curve, secondary }, context);
  if (specification === null || effortUse === null) return null;
  return {
    id,
    title: node.title ?? titleOf(id),
    specification,
    beforeEgressS: number(node, 'before-egress') ?? 0,
    effortUse,
    loadUse: childrenOf(node, 'load').map((load): SuitLoadUse => {
      const when = text(load, 'when') ?? 'always';
      return { load: textAt(load, 0) ?? '', window: when === 'always' ? null : when };
    }),
    span: node.span,
  };
}

type Bands = ReadonlyMap<string, SourcedValue | null>;

function readConstants(node: CheckedNode, context: ReadContext): Bands {
  const found = new Map<string, SourcedValue | null>();
  for (const one of childrenOf(node, 'constant')) {
    const word = textAt(one, 0);
    const meaning = word === null ? undefined : CONSTANT_WORDS.get(word);
    if (word === null || meaning === undefined) continue;
    if (found.has(word)) {
      context.problems.add('node-twice', one.span, `${word} is stated twice`, { expected: 'one of the two' });
      continue;
    }
    found.set(word, readConstant(one, word, meaning, context));
  }
  return found;
}

function readConstant(
  node: CheckedNode,
  word: string,
  meaning: ConstantWord,
  context: ReadContext,
): SourcedValue | null {
  const figure = (entry: CheckedNode['source']['entries'][number] | undefined): number | null => {
    if (entry === undefined) return null;
    const value = checkValue(meaning.type, entry, word, context.problems)?.value;
    return typeof value === 'number' ? value : null;
  };
  const { entries } = node.source;
  const named = (name: string) => figure(entries.find((entry) => entry.name === name));
  return readBand(
    node,
    word,
    figure(entries.filter((entry) => entry.name === null)[1]),
    named('low'),
    named('high'),
    context,
  );
}

/** Which of the constants are not there: all of them at once, at the suit. Whether a second pack is fitted. */
function requireConstants(node: CheckedNode, id: string, constants: Bands, context: ReadContext): boolean {
  const declared = child(node, 'secondary-oxygen');
  const fitted = declared === null ? false : flag(declared, 'fitted') === true;
  for (const [word, { of, unit, about }] of CONSTANT_WORDS) {
    const wanted = of.part === 'primary' || fitted;
    if (wanted && !constants.has(word)) {
      context.problems.add('suit-incomplete', node.span, `suit ${id} does not state ${word}, ${about}`, {
        expected: `constant ${word} ${unit === '1' ? '<number>' : `"<figure in ${unit}>"`} low= high= source=`,
      });
    } else if (!wanted && constants.has(word) && declared !== null) {
      context.problems.add('suit-contradicts', node.span, `suit ${id} states ${word} and has no second oxygen pack`, {
        expected: 'secondary-oxygen fitted=#true, or no such constant',
      });
    }
  }
  return fitted;
}

/** Efforts or loads by name. */
function readNamed(node: CheckedNode, name: 'effort' | 'load', context: ReadContext): Bands {
  const found = new Map<string, SourcedValue | null>();
  for (const one of childrenOf(node, name)) {
    const word = textAt(one, 0);
    if (word === null) continue;
    if (found.has(word)) {
      context.problems.add('node-twice', one.span, `the ${name} "${word}" is stated twice`, {
        expected: 'one of the two',
      });
      continue;
    }
    found.set(
      word,
      readBand(one, `the ${name} "${word}"`, numberAt(one, 1), number(one, 'low'), number(one, 'high'), context),
    );
  }
  return found;
}

/** null: never measured, or refused. */
function readCurve(node: CheckedNode, context: ReadContext): InspiredCurve | null {
  const one = child(node, 'inspired-curve');
  if (one === null) return null;
  const points = childrenOf(one, 'point').flatMap((point) => {
    const metabolicW = numberAt(point, 0);
    const meanPa = number(point, 'mean');
    const deviationPa = number(point, 'deviation');
    return metabolicW === null || meanPa === null || deviationPa === null ? [] : [{ metabolicW, meanPa, deviationPa }];
  });
  const measured = flag(one, 'measured');
  if (measured === false && points.length > 0) {
    context.problems.add('two-ends', one.span, 'this curve has points and was not measured', {
      expected: 'measured=#true, or no points',
    });
  }
  if (measured !== true) return null;
  const source = text(one, 'source');
  if (source === null) {
    context.problems.add('missing-property', one.nameSpan, 'a measured curve says where it comes from', {
      expected: 'source=',
    });
    return null;
  }
  const rising = points.every((point, at) => at === 0 || point.metabolicW > (points[at - 1]?.metabolicW ?? 0));
  if (points.length < 2 || !rising) {
    context.problems.add('range-backwards', one.span, 'a curve has at least two points, in rising order of power', {
      expected: 'point "293 W" mean= deviation=, then a greater power',
    });
    return null;
  }
  return { points, source };
}

const USES = [
  'low',
  'moderate',
  'high',
  'moving',
  'passing',
  'helping',
  'unknown',
  'idle',
  'beyond',
  'planning',
] as const;

function readEffortUse(node: CheckedNode, efforts: Bands, context: ReadContext): EffortUse | null {
  const one = child(node, 'effort-use');
  if (one === null) return null;
  const use: Partial<Record<(typeof USES)[number], string>> = {};
  for (const name of USES) {
    const effort = text(one, name);
    if (effort === null) continue;
    if (efforts.has(effort)) use[name] = effort;
    else {
      const names = [...efforts.keys()];
      context.problems.add(
        'unknown-id',
        one.properties.get(name)?.span ?? one.span,
        `there is no effort "${effort}" in this suit`,
        { expected: names.join(', ') || 'an effort of this suit', nearest: nearestName(effort, names) },
      );
    }
  }
  return USES.every((name) => use[name] !== undefined) ? (use as EffortUse) : null;
}

interface Parts {
  readonly constants: Bands;
  readonly efforts: Bands;
  readonly loads: Bands;
  readonly curve: InspiredCurve | null;
  readonly secondary: boolean;
}

function specify(node: CheckedNode, id: string, parts: Parts, context: ReadContext): SuitSpecification | null {
  const refused = [parts.constants, parts.efforts, parts.loads].some((bands) => [...bands.values()].includes(null));
  if (refused) return null;
  const of = (part: 'primary' | 'secondary') =>
    Object.fromEntries(
      [...parts.constants].flatMap(([word, value]) => {
        const meaning = CONSTANT_WORDS.get(word);
        return meaning?.of.part === part && value !== null ? [[meaning.of.constant, value] as const] : [];
      }),
    );
  const stated = (bands: Bands) =>
    [...bands].flatMap(([name, value]) => (value === null ? [] : [[name, value] as const]));
  const always = new Set(
    childrenOf(node, 'load').flatMap((load) => (text(load, 'when') === 'always' ? (textAt(load, 0) ?? []) : [])),
  );
  const draft: SuitDraft = {
    id,
    gasLaw: (text(node, 'gas-law') ?? undefined) as GasLaw | undefined,
    energyEquivalent: (text(node, 'energy') ?? undefined) as EnergyEquivalent | undefined,
    constants: of('primary'),
    effortsW: Object.fromEntries(stated(parts.efforts)),
    loads: Object.fromEntries(
      stated(parts.loads).map(([name, powerW]) => [name, { powerW, always: always.has(name) }] as const),
    ),
    inspiredCurve: parts.curve,
    secondaryOxygen: parts.secondary ? (of('secondary') as unknown as SuitDraft['secondaryOxygen']) : null,
  };
  try {
    return completeSuit(draft);
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    context.problems.add('suit-contradicts', node.span, inWordsOfTheText(fault.message), {});
    return null;
  }
}

/** The engine calls a constant by its own name; the text by words. */
function inWordsOfTheText(message: string): string {
  return message.replace(/\b[a-z]+(?:[A-Z][A-Za-z]*)+\b/g, (name) => wordOfConstant('primary', name) ?? name);
}
