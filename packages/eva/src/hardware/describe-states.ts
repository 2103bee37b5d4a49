/**
 * What was inferred, in lines that a person can say yes or no to, step by step. Nothing is added here: every line is one need,
 * leave, tool, control or unknown of the model.
 */
import type { Campaign, Stint, Step } from '../campaign/campaign.ts';
import type { Span } from '../campaign/span.ts';
import type { HardwareModel, Leave, Need, StintEffects } from './effects.ts';
import { isUntilOwnStep } from './stint-reading.ts';

export interface StateLine {
  /** Step index; null for what belongs to the whole stint. */
  readonly step: number | null;
  readonly kind: 'needs' | 'leaves' | 'tool' | 'under' | 'carries' | 'unknown';
  /** "needs j1 = mated (stated)". */
  readonly text: string;
  readonly why: string;
}

export interface DescribedStint {
  readonly stint: string;
  readonly title: string;
  readonly steps: readonly string[];
  readonly lines: readonly StateLine[];
}

export function describeStates(campaign: Campaign, model: HardwareModel): readonly DescribedStint[] {
  return campaign.tasks
    .flatMap((task) => task.stints)
    .map((stint) => {
      const effects = model.effects.get(stint.key);
      return {
        stint: stint.key,
        title: stint.title,
        steps: stint.steps.map(sentenceOf),
        lines: effects === undefined ? [] : describeStint(stint, effects, model),
      };
    });
}

/** "demate j1 j2 j3", "stow tray-1 to bag-2 with driver". */
export function sentenceOf(step: Step): string {
  const parts = [step.verb, ...step.objects];
  if (step.from !== null) parts.push('from', step.from);
  if (step.to !== null) parts.push('to', step.to);
  if (step.tool !== null) parts.push('with', step.tool);
  if (step.by !== 'lead') parts.push('by', step.by);
  return parts.join(' ');
}

/** One paragraph per step: "step 2 demate j1: needs j1 = mated (stated); leaves j1 = demated; under pump-bus-off". */
export function stateSentences(described: DescribedStint): readonly string[] {
  const name = described.stint.split('/').at(-1) ?? described.stint;
  const whole = described.lines.filter((line) => line.step === null);
  const sentences = whole.length === 0 ? [] : [`${name}: ${whole.map((line) => line.text).join('; ')}`];
  for (const [index, sentence] of described.steps.entries()) {
    const lines = described.lines.filter((line) => line.step === index);
    const text = lines.length === 0 ? 'changes nothing' : lines.map((line) => line.text).join('; ');
    sentences.push(`${name} step ${index + 1} ${sentence}: ${text}`);
  }
  return sentences;
}

function describeStint(stint: Stint, effects: StintEffects, model: HardwareModel): readonly StateLine[] {
  const lines: StateLine[] = [];
  for (const need of effects.needs) {
    // A value that a step changes is asked at the start and until that step: one thing to say yes to, not two.
    if (isUntilOwnStep(need)) continue;
    lines.push({ step: stepOf(need), kind: 'needs', text: needText(need, stint, model), why: need.origin.words });
  }
  for (const leave of effects.leaves) lines.push(leaveLine(leave, stint));
  for (const { tool, steps } of effects.tools) {
    for (const step of steps) lines.push({ step, kind: 'tool', text: `with ${tool}`, why: 'tool of the verb' });
  }
  for (const { request, fromStep, toStep, origin } of effects.controls) {
    const whole = fromStep === 0 && toStep >= stint.steps.length;
    const text = whole || toStep === fromStep + 1 ? `under ${request}` : `under ${request} until step ${toStep} ends`;
    lines.push({ step: origin.from === 'written' ? null : fromStep, kind: 'under', text, why: origin.words });
  }
  for (const { role, item } of effects.carriesIn) {
    lines.push({
      step: null,
      kind: 'carries',
      text: `arrives with ${item} in hand (${who(stint, role)})`,
      why: 'load',
    });
  }
  for (const { role, item } of effects.carriesOut) {
    lines.push({
      step: null,
      kind: 'carries',
      text: `goes on with ${item} in hand (${who(stint, role)})`,
      why: 'load',
    });
  }
  for (const { words, span } of effects.unknowns) {
    const steps = [...stint.steps.keys()].filter((index) => samePlace(stint.steps[index]?.span, span));
    lines.push({
      step: steps.length === 1 ? (steps[0] as number) : null,
      kind: 'unknown',
      text: `cannot tell: ${words}`,
      why: 'not stated',
    });
  }
  return lines;
}

/** Sentences that a template wrote all stand at its `use` node: then the step cannot be told from the place. */
function samePlace(a: Span | undefined, b: Span): boolean {
  return a?.file === b.file && a.line === b.line && a.column === b.column;
}

function stepOf(need: Need): number | null {
  return need.origin.step;
}

function needText(need: Need, stint: Stint, model: HardwareModel): string {
  const variable = model.variables.get(need.variable);
  const stated = variable !== undefined && need.allowed.includes(variable.initial) ? ' (stated)' : '';
  const allowed = need.allowed.map((value) => valueText(value, stint)).join(' or ');
  const whole = need.when === 'during' && need.fromStep === 0 && need.toStep >= stint.steps.length;
  const long = need.when === 'during' && need.origin.step !== null && need.toStep > need.origin.step + 1;
  const when =
    need.when === 'end'
      ? ' at the end'
      : need.origin.step === null && whole
        ? ' throughout'
        : long
          ? ` until step ${need.toStep} ends`
          : '';
  return `needs ${stateText(need.variable, allowed)}${when}${stated}`;
}

function leaveLine(leave: Leave, stint: Stint): StateLine {
  const inside = leave.step >= 0 && leave.step < stint.steps.length;
  const when = leave.step < 0 ? ' at the start' : inside ? '' : ' at the end';
  return {
    step: inside ? leave.step : null,
    kind: 'leaves',
    text: `leaves ${stateText(leave.variable, valueText(leave.value, stint))}${when}`,
    why: leave.origin.words,
  };
}

/** "j1 = mated"; "old-pump at pump-bay", "tray-1 in bag-2", "driver with EV1". */
function stateText(variable: string, values: string): string {
  return variable.endsWith('.holder') ? `${variable.slice(0, -'.holder'.length)} ${values}` : `${variable} = ${values}`;
}

function valueText(value: string, stint: Stint): string {
  const at = value.indexOf(':');
  if (at < 0) return value;
  const id = value.slice(at + 1);
  switch (value.slice(0, at)) {
    case 'role':
      return `with ${who(stint, Number(id))}`;
    case 'person':
      return `with ${id}`;
    case 'place':
      return `at ${id}`;
    case 'hardware':
      return `in ${id}`;
    default:
      return `on ${id}`;
  }
}

function who(stint: Stint, role: number): string {
  return stint.roles[role]?.candidates.join(' or ') ?? `role ${role}`;
}
