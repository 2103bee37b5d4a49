/** Pre-breathes: stages, breaks, tissue model and limit, all inputs of the operator. */
import { BODY_WATER_VAPOUR_PA } from '../../prebreathe/breathed-gas.ts';
import type { PrebreatheStage } from '../../prebreathe/prebreathe-protocol.ts';
import type { Prebreathe } from '../campaign.ts';
import { type CheckedNode, child, number, text, textAt } from '../check/checked-node.ts';
import { readPropertyBand } from './read-band.ts';
import { type ReadContext, titleOf } from './read-context.ts';

const MINUTE_S = 60;
/** As the engine allows. */
const SAME_PRESSURE_PA = 1;

/** null when something in it was refused. */
export function readPrebreathe(node: CheckedNode, context: ReadContext): Prebreathe | null {
  const id = textAt(node, 0) ?? '';
  const source = text(node, 'source');
  const stages = readStages(node, context);
  const breakRule = readBreakRule(node);
  if (
    breakRule === null &&
    stages?.some((stage) => stage.role === 'break') === true &&
    child(node, 'break-rule') === null
  ) {
    context.problems.add('missing-node', node.nameSpan, `pre-breathe ${id} has a break and no rule for it`, {
      expected: 'break-rule payback= longest= source=',
    });
  }
  if (source === null) return null;
  const halfTimeS = readPropertyBand(node, 'half-time', source, context);
  const startNitrogenPa = readPropertyBand(node, 'start-nitrogen', source, context);
  const ratioLimit = readPropertyBand(node, 'limit', source, context);
  const suitPressurePa = number(node, 'suit-pressure');
  const vapour = text(node, 'vapour');
  if (stages === null || halfTimeS === null || startNitrogenPa === null || ratioLimit === null) return null;
  if (suitPressurePa === null || vapour === null) return null;
  const exercise = number(node, 'exercise-rate');
  return {
    id,
    title: node.title ?? titleOf(id),
    model: {
      compartments: [{ id: 'tissue', halfTimeS, startNitrogenPa }],
      vapourPa: vapour === 'dry' ? 0 : BODY_WATER_VAPOUR_PA,
      suitPressurePa,
      ratioLimit,
      comparedDecimals: number(node, 'compared-decimals'),
      exerciseRatePerSPerVo2:
        exercise === null
          ? null
          : { low: exercise / MINUTE_S, likely: exercise / MINUTE_S, high: exercise / MINUTE_S, source },
    },
    stages,
    breakRule,
    span: node.span,
  };
}

function readStages(node: CheckedNode, context: ReadContext): readonly PrebreatheStage[] | null {
  const stages: PrebreatheStage[] = [];
  let complete = true;
  for (const one of node.children) {
    if (one.name !== 'stage' && one.name !== 'break') continue;
    const startPressurePa = number(one, 'pressure');
    const oxygenFraction = number(one, 'oxygen');
    const minutes = number(one, 'minutes');
    const role = one.name === 'break' ? 'break' : (text(one, 'role') as 'oxygen' | 'hold' | null);
    if (startPressurePa === null || oxygenFraction === null || minutes === null || role === null) {
      complete = false;
      continue;
    }
    const before = stages.at(-1);
    if (before !== undefined && Math.abs(before.endPressurePa - startPressurePa) > SAME_PRESSURE_PA) {
      context.problems.add(
        'pressure-jumps',
        one.span,
        `this ${one.name} begins at ${kilopascals(startPressurePa)}, and "${before.title}" ends at ${kilopascals(before.endPressurePa)}`,
        { expected: 'the same pressure, or a stage with to-pressure= between them' },
      );
    }
    stages.push({
      title: one.title ?? (one.name === 'break' ? `break ${stages.length + 1}` : `stage ${stages.length + 1}`),
      role,
      startPressurePa,
      endPressurePa: (one.name === 'stage' ? number(one, 'to-pressure') : null) ?? startPressurePa,
      oxygenFraction,
      durationS: minutes * MINUTE_S,
      exerciseVo2: one.name === 'stage' ? number(one, 'exercise') : null,
    });
  }
  return complete && stages.length > 0 ? stages : null;
}

function readBreakRule(node: CheckedNode): Prebreathe['breakRule'] {
  const one = child(node, 'break-rule');
  if (one === null) return null;
  const paybackRatio = number(one, 'payback');
  const longestBreakS = number(one, 'longest');
  const source = text(one, 'source');
  return paybackRatio === null || longestBreakS === null || source === null
    ? null
    : { paybackRatio, longestBreakS, source };
}

function kilopascals(pressurePa: number): string {
  return `${Math.round(pressurePa / 10) / 100} kPa`;
}
