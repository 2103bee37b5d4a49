/** Which tool a sentence uses: the one that it names, or the only one in the campaign that fits. Never a guess between two. */
import type { Hardware } from '../campaign/campaign.ts';
import type { StepVerb } from '../kinds/step-verbs.ts';
import type { CampaignFacts } from './campaign-facts.ts';
import type { Origin } from './effects.ts';
import { roleDoing, type StintReading, unknown } from './stint-reading.ts';

export function chooseTool(reading: StintReading, object: StepVerb, step: number, origin: Origin): void {
  const { facts, stint } = reading;
  const piece = object.hardware;
  const named = stint.steps[step]?.tool ?? null;
  if (object.verb.toolKinds.length === 0) {
    if (named !== null) use(reading, named, step, origin);
    return;
  }
  const fits = piece !== null && piece.toolFits.length > 0 ? piece.toolFits : object.verb.toolKinds;
  const torqueNm = stint.steps[step]?.torqueNm ?? piece?.torqueNm ?? null;
  if (named !== null) {
    const tool = facts.hardware.get(named);
    if (tool === undefined) {
      unknown(reading, `${origin.words}: nothing is called ${named}`, origin.span);
      return;
    }
    const wrong = toolMisfit(tool, fits, torqueNm);
    if (wrong !== null) unknown(reading, `${origin.words} with ${named}: ${wrong}`, origin.span);
    use(reading, named, step, origin);
    return;
  }
  const fitting = facts.campaign.hardware.filter((tool) => toolMisfit(tool, fits, torqueNm) === null);
  const inHand = fitting.filter((tool) => startsWith(reading, tool, step));
  const [only, ...others] = inHand.length === 1 ? inHand : fitting;
  if (only !== undefined && others.length === 0) {
    use(reading, only.id, step, origin);
    return;
  }
  const what =
    only === undefined
      ? `no tool fits (${fits.join(' or ')}${torqueNm === null ? '' : `, ${torqueNm} N·m`})`
      : `${fitting.map((tool) => tool.id).join(', ')} all fit; say with=`;
  unknown(reading, `${origin.words}: ${what}`, origin.span);
}

/** Why this tool does not do; null when it does. A torque that nobody states is not checked: the fastener rules ask for it. */
export function toolMisfit(tool: Hardware, fits: readonly string[], torqueNm: number | null): string | null {
  if (!fits.includes(tool.kind) && !fits.includes(tool.id)) return `it is a ${tool.kind}; ${fits.join(' or ')} fits`;
  const least = tool.properties['torque-least'];
  const most = tool.properties['torque-most'];
  if (torqueNm !== null && typeof most === 'number' && torqueNm > most) {
    return `it gives up to ${most} N·m; ${torqueNm} N·m is asked`;
  }
  if (torqueNm !== null && typeof least === 'number' && torqueNm < least) {
    return `it gives ${least} N·m and more; ${torqueNm} N·m is asked`;
  }
  return null;
}

/** The only person who can do the step has the tool from the start, on them or in a bag on them. */
function startsWith(reading: StintReading, tool: Hardware, step: number): boolean {
  const doing = roleDoing(reading.stint, step)?.role;
  if (doing === undefined || doing.candidates.length !== 1) return false;
  return carrierAtStart(reading.facts, tool) === doing.candidates[0];
}

function carrierAtStart(facts: CampaignFacts, piece: Hardware): string | null {
  let at = piece.at;
  for (let depth = 0; depth <= facts.hardware.size; depth++) {
    if (at.kind === 'person' || at.kind === 'arm') return at.id;
    const holder = at.kind === 'hardware' ? facts.hardware.get(at.id) : undefined;
    if (holder === undefined) return null;
    at = holder.at;
  }
  return null;
}

function use(reading: StintReading, tool: string, step: number, origin: Origin): void {
  const entry = reading.tools.get(tool);
  if (entry === undefined) reading.tools.set(tool, { steps: [step], span: origin.span });
  else if (!entry.steps.includes(step)) entry.steps.push(step);
}
