import type { Campaign, Stint } from '../campaign/campaign.ts';
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import { type StepVerb, stepVerbs } from '../kinds/step-verbs.ts';
import { type CampaignFacts, campaignFacts, fixedPlace, isCarried } from './campaign-facts.ts';
import { chooseTool } from './choose-tool.ts';
import type { HardwareModel, Hold, Leave, Need, Origin, StintEffects } from './effects.ts';
import { type PossibleHolders, possibleHolders } from './possible-holders.ts';
import { askInReach, placesInReach } from './reach.ts';
import { goesStraight, readCarry } from './read-carry.ts';
import { joinControls, readControls } from './read-controls.ts';
import {
  askAllFast,
  askAllFree,
  askInSeat,
  askRetained,
  type RetentionFacts,
  retentionFacts,
  writeSeating,
} from './read-fastening.ts';
import { readRestraint } from './read-restraint.ts';
import { aspectVariable, holderVariable, stateVariables } from './state-variables.ts';
import { ask, beginReading, isUntilOwnStep, lastBoundary, type StintReading, unknown, write } from './stint-reading.ts';
import { readLeavesAtStart, readWrittenRest } from './written-exceptions.ts';

/**
 * What every stint of a campaign needs, leaves, holds and uses, read from its sentences with the kinds' verbs.
 *
 * Method: each stint alone, sentence by sentence, object by object. A need that the stint's own earlier writes answer is not
 * asked of the world; one that they contradict is among the unknowns, and so is everything else that cannot be told. Nothing
 * is guessed: no tool is chosen between two, no request and no source is made up.
 *
 * Pure and deterministic: the same campaign and library give the same model, in the order of the text.
 */
export function inferHardware(campaign: Campaign, library: KindsLibrary): HardwareModel {
  const facts = campaignFacts(campaign, library);
  const possible = possibleHolders(facts);
  const retention = retentionFacts(facts);
  const effects = new Map<string, StintEffects>();
  for (const stint of campaign.tasks.flatMap((task) => task.stints)) {
    effects.set(stint.key, inferStint(facts, possible, retention, stint));
  }
  return { variables: stateVariables(campaign, library, possible), effects };
}

function inferStint(
  facts: CampaignFacts,
  possible: PossibleHolders,
  retention: RetentionFacts,
  stint: Stint,
): StintEffects {
  const reading = beginReading(facts, stint, possible);
  readLeavesAtStart(reading);
  for (const index of stint.steps.keys()) readStep(reading, retention, index);
  for (const role of stint.roles) readRestraint(reading, role);
  for (const request of stint.under) {
    const origin: Origin = { from: 'written', step: null, words: `under ${request}`, span: stint.span };
    reading.controls.push({ request, fromStep: 0, toStep: lastBoundary(stint), origin });
  }
  readWrittenRest(reading);
  return {
    stint: stint.key,
    needs: joinNeeds(reading.needs),
    leaves: reading.leaves,
    holds: holdsOf(reading),
    tools: [...reading.tools].map(([tool, { steps, span }]) => ({ tool, steps, span })),
    controls: joinControls(reading.controls),
    ...loadsOf(reading),
    unknowns: reading.unknowns,
  };
}

function readStep(reading: StintReading, retention: RetentionFacts, index: number): void {
  const { facts, stint } = reading;
  const step = stint.steps[index];
  if (step === undefined) return;
  const { known, unknown: notKnown } = stepVerbs(step, facts.hardware, facts.library);
  for (const { words } of notKnown) unknown(reading, words, step.span);
  for (const object of known) {
    const sentence = object.object === null ? step.verb : `${step.verb} ${object.object}`;
    const words = `${sentence} (${object.kind.title.toLowerCase()})`;
    const origin: Origin = { from: 'verb', step: index, words, span: step.span };
    readObject(reading, object, index, origin);
    chooseTool(reading, object, index, { ...origin, from: 'tool' });
    readControls(reading, object, index, origin);
  }
  const words = `${step.verb} ${step.objects.join(' ')}`;
  const origin: Origin = { from: 'verb', step: index, words, span: step.span };
  writeSeating(reading, known, index, origin);
  askRetained(reading, known, index, retention, origin);
}

function readObject(reading: StintReading, object: StepVerb, step: number, origin: Origin): void {
  const { kind, verb, hardware } = object;
  if (hardware === null) return;
  askThere(reading, object, step, origin);
  const aspectIndex = kind.aspects.findIndex((aspect) => aspect.id === verb.aspect);
  const removes = kind.seating !== undefined && goesStraight(reading, object);
  const byFasteners = removes && askAllFree(reading, hardware, step, { ...origin, from: 'carry' });
  askInSeat(reading, object, step, origin);
  askAllFast(reading, object, step, origin);
  const variable = aspectIndex < 0 ? null : aspectVariable(hardware.id, aspectIndex, verb.aspect as string);
  const writes = variable !== null && verb.leaves !== null;
  if (variable !== null && verb.needs.length > 0 && !byFasteners)
    ask(reading, variable, verb.needs, step, writes, origin);
  for (const also of verb.alsoNeeds ?? []) {
    const index = kind.aspects.findIndex((aspect) => aspect.id === also.aspect);
    if (index < 0) continue;
    const words = `${origin.words}, ${also.aspect} ${also.values.join(' or ')}`;
    ask(reading, aspectVariable(hardware.id, index, also.aspect), also.values, step, false, { ...origin, words });
  }
  const carried = verb.carry === 'none' || readCarry(reading, object, step, { ...origin, from: 'carry' });
  if (writes && carried) write(reading, variable, verb.leaves, step, origin);
}

/** The piece is where the people are: it, or what it belongs to. */
function askThere(reading: StintReading, object: StepVerb, step: number, origin: Origin): void {
  const { facts, stint } = reading;
  const piece = object.hardware;
  if (piece === null || object.verb.carry !== 'none') return;
  const carry: Origin = { ...origin, from: 'carry' };
  if (isCarried(facts, piece.id)) {
    askInReach(reading, piece.id, step, { ...carry, words: `${origin.words}, ${piece.id} at hand` });
    return;
  }
  if (piece.of !== null && isCarried(facts, piece.of)) {
    askInReach(reading, piece.of, step, { ...carry, words: `${origin.words}, ${piece.of} at hand` });
  }
  const place = fixedPlace(piece, facts.hardware, facts.library);
  const here = placesInReach(facts, stint, step);
  if (place !== null && here.length > 0 && !here.includes(place)) {
    unknown(reading, `${origin.words}: it is at ${place}, and this step is done at ${here.join(' and ')}`, origin.span);
  }
}

/** The same value asked through one step after another is one need over all of them. */
function joinNeeds(needs: readonly Need[]): readonly Need[] {
  const joined: Need[] = [];
  for (const need of needs) {
    const index =
      isUntilOwnStep(need) || need.when !== 'during' ? -1 : joined.findIndex((other) => continues(other, need));
    const before = joined[index];
    if (before === undefined) joined.push(need);
    else joined[index] = { ...before, toStep: Math.max(before.toStep, need.toStep) };
  }
  return joined;
}

function continues(before: Need, need: Need): boolean {
  return (
    before.when === 'during' &&
    !isUntilOwnStep(before) &&
    before.variable === need.variable &&
    before.origin.from === need.origin.from &&
    before.fromStep <= need.fromStep &&
    need.fromStep <= before.toStep &&
    before.allowed.join('|') === need.allowed.join('|')
  );
}

/** From the first to the last write, and on to the last step that relies on it. */
function holdsOf(reading: StintReading): readonly Hold[] {
  const byVariable = new Map<string, Leave[]>();
  for (const leave of reading.leaves) {
    const list = byVariable.get(leave.variable);
    if (list === undefined) byVariable.set(leave.variable, [leave]);
    else list.push(leave);
  }
  const length = reading.stint.steps.length;
  return [...byVariable].map(([variable, leaves]) => {
    const steps = leaves.map((leave) => leave.step);
    const last = Math.max(...steps, reading.reliesUntil.get(variable) ?? -1);
    return { variable, fromStep: Math.max(0, Math.min(...steps)), toStep: Math.min(length, last + 1) };
  });
}

/** Pieces with a load class that must be in hand at the start, or are in hand at the end. */
function loadsOf(reading: StintReading): Pick<StintEffects, 'carriesIn' | 'carriesOut'> {
  const carriesIn: { role: number; item: string }[] = [];
  const carriesOut: { role: number; item: string }[] = [];
  for (const piece of reading.facts.campaign.hardware) {
    if (piece.loadClass === null || !isCarried(reading.facts, piece.id)) continue;
    const variable = holderVariable(piece.id);
    const roleIn =
      reading.needs
        .filter((need) => need.variable === variable && need.allowed.length === 1)
        .map((need) => ({ need, role: roleIndex(reading, need.allowed[0] as string) }))
        .find(({ need, role }) => role !== null && isBrought(reading, need, role))?.role ?? null;
    const written = reading.own.get(variable)?.value;
    const roleOut = written === undefined ? null : roleIndex(reading, written);
    if (roleIn !== null) carriesIn.push({ role: roleIn, item: piece.id });
    if (roleOut !== null) carriesOut.push({ role: roleOut, item: piece.id });
  }
  return { carriesIn, carriesOut };
}

/** Asked at the start of the stint, or from the step at which this role joins it. */
function isBrought(reading: StintReading, need: Need, role: number): boolean {
  const since = reading.stint.roles[role]?.fromStep ?? 0;
  return since === 0 ? need.when === 'start' : need.when === 'during' && need.fromStep === since;
}

/** The role behind a holder value; an arm that fills a role counts as that role. */
function roleIndex(reading: StintReading, value: string): number | null {
  if (value.startsWith('role:')) return Number(value.slice('role:'.length));
  if (!value.startsWith('arm:')) return null;
  const index = reading.stint.roles.findIndex(
    (role) => role.name === 'arm' && role.candidates.length === 1 && role.candidates[0] === value.slice('arm:'.length),
  );
  return index < 0 ? null : index;
}
