/** A response applied to one minute, as lines for the terminal. */
import type { HomeThen } from '@handrail/eva/response/home-then';
import type { WhatIf } from '@handrail/eva/response/what-if';
import { formatDuration, formatPet } from '@handrail/quantity/time';

/** How many names stand in a line before the rest is counted. */
const MOST_NAMES = 4;

export function whatIfLines(found: WhatIf): readonly string[] {
  const { response } = found;
  const from = response.from === 'stock' ? 'stock response' : 'response of the campaign';
  return [
    `${response.title}, EVA ${found.eva}, PET ${formatPet(found.petS)}  (${from})`,
    line('seen by', response.trigger),
    ...(response.probability === null
      ? []
      : [line('chance', `${Math.round(response.probability * 1000) / 10} % a use`)]),
    ...whoLines(found),
    ...found.steps.map(({ who, words }, at) => line(at === 0 ? 'do' : '', `${at + 1}. ${who}: ${words}`)),
    ...(response.steps.length === 0 ? [line('do', 'nothing is written: the response has no steps')] : []),
    ...timeLines(found),
    ...kitLines(found),
    ...(response.outcome === null ? [] : [line('outcome', response.outcome)]),
    ...leftLines(found),
    ...consequenceLines(found),
    ...givenUpLines(found),
    ...homeLines(found),
    `  ${response.prevails}`,
  ];
}

function line(label: string, words: string): string {
  return `  ${label.padEnd(10)} ${words}`;
}

function whoLines({ responding, alsoFor }: WhatIf): readonly string[] {
  const who = responding.map((one, at) => {
    const role = at === 0 ? 'who' : 'stops too';
    return line(role, `${one.person} at ${one.place}${one.stint === null ? '' : `, in ${one.stint}`}`);
  });
  if (alsoFor.length === 0) return who;
  return [
    ...who,
    line('', `${alsoFor.join(', ')} could have it as well; this is the worse (--who ${alsoFor[0] ?? ''})`),
  ];
}

function timeLines({ response, delayS }: WhatIf): readonly string[] {
  if (response.timeS === null) return [];
  const { likely, high } = response.timeS;
  const fetchS = (delayS ?? high) - high;
  const fetch = fetchS > 0 ? `, with ${formatDuration(fetchS)} to fetch what it needs` : '';
  return [
    line('takes', `${formatDuration(likely)}; 90 % are done in ${formatDuration(high)}${fetch}, which counts below`),
  ];
}

function kitLines({ kit }: WhatIf): readonly string[] {
  return kit.map(({ asked, piece, where, fetchS, inUseBy }) => {
    const name = piece === null || piece === asked ? asked : `${asked} (${piece})`;
    const use = inUseBy === null ? '' : `, IN USE by ${inUseBy.person} in ${inUseBy.stint}`;
    if (fetchS === null) {
      const at = where === null ? '' : `, it is ${where}`;
      return line('MISSING', `${name}: nobody outside can get at it${at}`);
    }
    return line('kit', `${name} ${where ?? ''}${fetchS > 0 ? `, ${formatDuration(fetchS)} to it and back` : ''}${use}`);
  });
}

function leftLines({ left }: WhatIf): readonly string[] {
  if (left.length === 0) return [];
  const byValue = new Map<string, string[]>();
  for (const { title, value } of left) byValue.set(value, [...(byValue.get(value) ?? []), title]);
  return [...byValue].map(([value, titles]) => line('if not', `${titles.join(' or ')} is left ${value}`));
}

function consequenceLines(found: WhatIf): readonly string[] {
  const lines: string[] = [];
  if (found.bothInS !== null) {
    const lateS = found.bothInS.thenS - found.bothInS.plannedS;
    const how = lateS < 1 ? ', as planned: the waits take it up' : `, ${formatDuration(lateS)} later than planned`;
    lines.push(line('both in', `PET ${formatPet(found.bothInS.thenS)}${how}`));
    lines.push(
      line(
        'later',
        named(
          found.delayed.map((one) => one.stint),
          'no stint',
        ),
      ),
    );
  }
  for (const one of found.consequences) {
    const left = one.marginS === null ? '' : ` (${marginWords(one.marginS)})`;
    lines.push(line(one.breaks ? 'BREAKS' : 'holds', `${one.words}${left}`));
  }
  return lines;
}

function givenUpLines({ givenUp }: WhatIf): readonly string[] {
  const undone = givenUp.undone.length === 0 ? [] : [line('not done', named(givenUp.undone, ''))];
  const cut = givenUp.cutFirst.map(({ task, freesS }) =>
    line('cut first', `${task}, ${formatDuration(freesS)} of work and its ways, as agreed in the cut order`),
  );
  return [...undone, ...cut];
}

function homeLines({ home, instead, response }: WhatIf): readonly string[] {
  if (home === null) return [];
  const lines = wayLines(response.leadsTo ?? 'way home', home);
  return instead === null ? lines : [...lines, ...wayLines('or abort', instead)];
}

function wayLines(label: string, { way, marginS, startS }: HomeThen): readonly string[] {
  const then = way.totalS === null ? `no way home: ${way.words}` : way.words;
  const arm = way.arm === 'dead' ? ', arm dead' : '';
  const lines = [line(label, `from PET ${formatPet(startS)}${arm}: ${then}`)];
  if (marginS !== null) {
    lines.push(line(marginS < 0 ? 'SHORT BY' : 'margin', `${formatDuration(Math.abs(marginS))} to the limit`));
  }
  return lines;
}

function marginWords(marginS: number): string {
  return `${marginS < 0 ? 'short by' : 'left'} ${formatDuration(Math.abs(marginS))}`;
}

function named(names: readonly string[], none: string): string {
  if (names.length === 0) return none;
  const rest = names.length - MOST_NAMES;
  return `${names.length} ${names.length === 1 ? 'stint' : 'stints'}: ${names.slice(0, MOST_NAMES).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}
