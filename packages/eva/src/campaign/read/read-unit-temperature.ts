/** What is known of units that may stand without power: minutes that the owner states, or one lump that drifts. */
import { Fault } from '@handrail/quantity/fault';
import { type UnpoweredUnit, unpoweredLimit } from '../../thermal/unpowered-unit.ts';
import type { UnitTemperature } from '../campaign.ts';
import { type CheckedNode, number, text, textAt } from '../check/checked-node.ts';
import { readPropertyBand } from './read-band.ts';
import type { ReadContext } from './read-context.ts';

const LUMP = ['start', 'surroundings', 'time-constant'] as const;

/** null when something in it was refused. */
export function readUnitTemperature(node: CheckedNode, context: ReadContext): UnitTemperature | null {
  const hardware = textAt(node, 0) ?? '';
  const clock = text(node, 'clock') ?? '';
  const source = text(node, 'source');
  if (source === null) return null;
  const unit = readUnit(node, hardware, source, context);
  if (unit === null) return null;
  try {
    return { hardware, clock, unit, limit: unpoweredLimit(unit), source, span: node.span };
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    context.problems.add(
      'out-of-range',
      node.span,
      fault.message,
      fault.advice === null ? {} : { expected: fault.advice },
    );
    return null;
  }
}

function readUnit(node: CheckedNode, id: string, source: string, context: ReadContext): UnpoweredUnit | null {
  const written = (name: string): boolean => node.source.entries.some((entry) => entry.name === name);
  const stated = ['limit-low', 'limit-likely', 'limit-high'];
  const lump = LUMP.flatMap((name) => [name, `${name}-low`, `${name}-high`]);
  const isStated = stated.some(written);
  if (isStated === lump.some(written)) {
    context.problems.add(
      isStated ? 'two-ends' : 'missing-property',
      isStated ? node.span : node.nameSpan,
      isStated ? `${id} has stated minutes and a lump` : `nothing says how long ${id} may stand without power`,
      {
        expected:
          'limit-low=, limit-likely= and limit-high=, or start=, surroundings= and time-constant= with their ends',
      },
    );
    return null;
  }
  const missing = (isStated ? stated : lump).filter((name) => !written(name));
  if (missing.length > 0) {
    context.problems.add('missing-property', node.nameSpan, `${id} does not say ${missing.join(', ')}`, {
      expected: missing.map((name) => `${name}=`).join(' '),
    });
    return null;
  }
  if (isStated) {
    const low = number(node, 'limit-low');
    const likely = number(node, 'limit-likely');
    const high = number(node, 'limit-high');
    if (low === null || likely === null || high === null) return null;
    if (!(low <= likely && likely <= high)) {
      context.problems.add('range-backwards', node.span, `the limit of ${id} is not in order`, {
        expected: 'limit-low ≤ limit-likely ≤ limit-high',
      });
      return null;
    }
    return { kind: 'stated', id, limitS: { low, likely, high, source } };
  }
  const [startK, surroundingsK, timeConstantS] = LUMP.map((name) => readPropertyBand(node, name, source, context));
  if (startK == null || surroundingsK == null || timeConstantS == null) return null;
  return {
    kind: 'lumped',
    id,
    startK,
    surroundingsK,
    timeConstantS,
    lowestK: number(node, 'lowest'),
    highestK: number(node, 'highest'),
  };
}
