/**
 * A spacewalk in trouble as a document: prose for the reader, and fenced blocks that are run.
 *
 *     ```kdl        campaign text after the opening of the rules' examples (example-opening.ts)
 *     ```timeline   in the notation of timeline/timeline-notation.ts
 *     ```ask        what is asked, a line each, and under it `says …`: words that the answer must have
 *         whatif RESPONSE at PET [who PERSON]
 *         wayhome MODE [arm dead] at PET
 *         check RULE
 *
 * Blocks before the first "## " belong to both parts; a part adds campaign text, and may have a timeline of its own.
 */
import { formatFindings } from '@handrail/eva/finding/format-finding';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { allResponses } from '@handrail/eva/response/any-response';
import { isBroken, whatIf } from '@handrail/eva/response/what-if';
import { ruleFacts } from '@handrail/eva/rules/rule-facts';
import { rules } from '@handrail/eva/rules/rules.generated';
import { runRules } from '@handrail/eva/rules/run-rules';
import type { Mode } from '@handrail/eva/wayhome/way-home-state';
import { limitOf } from '@handrail/eva/wayhome/way-home-surface';
import { formatDuration, parsePet } from '@handrail/quantity/time';
import { whatIfLines } from '../../../apps/cli/src/what-if-lines.ts';
import { smallCase, type SmallCase, wayAtHigh } from '../../properties/wayhome/small-case.ts';

export interface Part {
  readonly title: string;
  readonly kdl: string;
  readonly timeline: string;
  readonly asks: readonly { readonly ask: string; readonly says: readonly string[] }[];
}
export interface Answer {
  /** Something breaks, a margin is negative, no way is known, or the rule has a finding. */
  readonly trips: boolean;
  readonly words: string;
}

/** @throws Error where the document has no part of that name */
export function readPart(document: string, name: 'Trips' | 'Near miss'): Part {
  const [head = '', ...sections] = document.split(/^## /m);
  const section = sections.find((one) => one.startsWith(`${name}: `));
  if (section === undefined) throw new Error(`no part "## ${name}: …"`);
  const [title = ''] = section.split('\n');
  const own = blocks(section, 'timeline');
  const asks: { ask: string; says: string[] }[] = [];
  for (const line of blocks(section, 'ask').flatMap((block) => block.split('\n'))) {
    const words = line.trim();
    if (words.startsWith('says ')) asks.at(-1)?.says.push(words.slice('says '.length));
    else if (words !== '') asks.push({ ask: words, says: [] });
  }
  return {
    title: title.slice(`${name}: `.length),
    kdl: [...blocks(head, 'kdl'), ...blocks(section, 'kdl')].join('\n'),
    timeline: (own.length > 0 ? own : blocks(head, 'timeline')).join('\n'),
    asks,
  };
}

function blocks(text: string, language: string): readonly string[] {
  return [...text.matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'gm'))].map(([, body = '']) => body);
}

/** @throws Error where the ask cannot be read, or cannot come up there */
export function answerTo(part: Part, ask: string): Answer {
  const small = smallCase(`\n${part.kdl}`, part.timeline);
  const [verb = '', what = ''] = ask.split(' ');
  if (verb === 'check') return checked(small, what);
  const petS = parsePet(/ at (\S+)/.exec(ask)?.[1] ?? '');
  if (petS === null) throw new Error(`no "at PET" in: ${ask}`);
  if (verb === 'whatif') return troubled(small, what, petS, / who (\S+)/.exec(ask)?.[1] ?? null);
  if (verb === 'wayhome') return wentHome(small, what as Mode, ask.includes(' arm dead ') ? 'dead' : 'alive', petS);
  throw new Error(`cannot read: ${ask}`);
}

function troubled(small: SmallCase, id: string, petS: number, who: string | null): Answer {
  const response = allResponses(small.campaign).find((one) => one.id === id);
  if (response === undefined) throw new Error(`no response ${id}`);
  const { campaign, hardware, timeline, eva } = small;
  const found = whatIf(campaign, hardware, standardLibrary, timeline, eva, response, petS, who);
  if (found.notHere !== null) throw new Error(found.notHere);
  if (found.cannotTell.length > 0) throw new Error(found.cannotTell.join('; '));
  return { trips: isBroken(found), words: whatIfLines(found).join('\n') };
}

function wentHome(small: SmallCase, mode: Mode, arm: 'alive' | 'dead', petS: number): Answer {
  const way = wayAtHigh(small, petS, { mode, arm });
  const limitS = limitOf(small.campaign, small.eva)?.petS;
  if (limitS === undefined) throw new Error('no limit is stated');
  if (way.totalS === null) return { trips: true, words: way.words };
  const marginS = limitS - petS - way.totalS;
  const margin = `${marginS < 0 ? 'short by' : 'margin'} ${formatDuration(Math.abs(marginS))}`;
  return { trips: marginS < 0, words: `${way.words}, ${margin}` };
}

function checked(small: SmallCase, id: string): Answer {
  const rule = rules.find((one) => one.id === id);
  if (rule === undefined) throw new Error(`no rule ${id}`);
  const facts = ruleFacts(small.campaign, small.hardware, standardLibrary, small.timeline);
  const findings = runRules(facts, 0, [rule]);
  return { trips: findings.length > 0, words: formatFindings(findings) };
}
