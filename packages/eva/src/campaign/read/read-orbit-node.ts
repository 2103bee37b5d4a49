/** The orbit: one of three forms, with every fault of its text at its own line and column. */
import { Fault } from '@handrail/quantity/fault';
import { checkedKeplerOrbit, type KeplerOrbit, type Orbit } from '../../sky/orbit.ts';
import { readOrbit } from '../../sky/read-orbit.ts';
import { readTwoLineElements } from '../../sky/read-two-line-elements.ts';
import type { CampaignSky } from '../campaign-sky.ts';
import { type CheckedNode, number, text, textAt } from '../check/checked-node.ts';
import type { Span } from '../span.ts';
import { filledIn, type ReadContext } from './read-context.ts';

const FORMS = ['elements', 'omm', 'kepler'];

export function readOrbitNode(node: CheckedNode, context: ReadContext): CampaignSky['orbit'] {
  const forms = node.children.filter((one) => FORMS.includes(one.name));
  const form = forms[0];
  if (form === undefined) {
    if (node.source.children.length === 0)
      context.problems.add('missing-node', node.nameSpan, 'this orbit has no elements inside', {
        expected: 'elements, omm or kepler',
      });
    return null;
  }
  const second = forms.find((one) => one.name !== form.name);
  if (second !== undefined) {
    context.problems.add('two-ends', second.nameSpan, `the orbit is already given by "${form.name}"`, {
      expected: 'one of elements, omm, kepler',
    });
    return null;
  }
  const elements =
    form.name === 'elements'
      ? readLines(form, context)
      : form.name === 'omm'
        ? readMessage(form, context)
        : readKepler(form, context);
  if (elements === null) return null;
  const name = text(node, 'name');
  return { elements: name === null ? elements : { ...elements, name }, span: form.span };
}

function readLines(node: CheckedNode, context: ReadContext): Orbit | null {
  const lines = [textAt(node, 0), textAt(node, 1)];
  if (lines[0] === null || lines[1] === null) return null;
  return orReport(
    context,
    (line, column) => within(node.arguments[line - 1]?.span ?? node.span, column),
    () => readTwoLineElements(lines.join('\n')),
  );
}

function readMessage(node: CheckedNode, context: ReadContext): Orbit | null {
  const message = textAt(node, 0);
  if (message === null) return null;
  const span = node.arguments[0]?.span ?? node.span;
  // A text of several lines begins on the line after its quotes; its columns count from its own left edge.
  const place = (line: number, column: number): Span =>
    message.includes('\n') ? { ...span, line: span.line + line, column, length: 1 } : within(span, column);
  return orReport(context, place, () => readOrbit(message));
}

function readKepler(node: CheckedNode, context: ReadContext): Orbit | null {
  const needed = ['model', 'epoch', 'semi-major-axis', 'eccentricity', 'inclination', 'node', 'perigee', 'anomaly'];
  if (needed.some((property) => !node.properties.has(property))) return null;
  const figure = (property: string): number => number(node, property) ?? 0;
  const frame =
    text(node, 'frame') ??
    filledIn(context, 'teme', node.span, 'frame of the orbit', 'equator and equinox of date', 'format');
  const orbit: KeplerOrbit = {
    kind: text(node, 'model') === 'j2' ? 'kepler-j2' : 'two-body',
    name: 'stated orbit',
    frame: frame === 'j2000' ? 'EQJ' : 'TEME',
    epochUtcMs: figure('epoch'),
    semiMajorAxisKm: figure('semi-major-axis') / 1000,
    eccentricity: figure('eccentricity'),
    inclinationRad: figure('inclination'),
    raanRad: figure('node'),
    argPerigeeRad: figure('perigee'),
    meanAnomalyRad: figure('anomaly'),
    halfMeanMotionRateRevPerDay2: number(node, 'half-rate'),
  };
  return orReport(
    context,
    () => node.span,
    () => checkedKeplerOrbit(orbit),
  );
}

/** A column of a text in quotes. */
function within(span: Span, column: number): Span {
  return { ...span, column: span.column + column, length: 1 };
}

function orReport(
  context: ReadContext,
  place: (line: number, column: number) => Span,
  read: () => Orbit,
): Orbit | null {
  try {
    return read();
  } catch (cause) {
    if (!(cause instanceof Fault)) throw cause;
    const { line, column } = cause.values;
    const span = place(typeof line === 'number' ? line : 1, typeof column === 'number' ? column : 1);
    context.problems.add('bad-elements', span, cause.message.replace(/^line \d+, column \d+: /, ''));
    return null;
  }
}
