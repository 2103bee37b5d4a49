/**
 * What a person wrote beside the sentences. A written need replaces the inferred ones on the same variable and at the same
 * time of the stint ("start" or "during"), and adds to the rest; a written leave at the end comes after the stint's own writes.
 */
import type { Need, Origin } from './effects.ts';
import { isUntilOwnStep, lastBoundary, type StintReading, write } from './stint-reading.ts';

export function writtenOrigin(words: string, span: Origin['span']): Origin {
  return { from: 'written', step: null, words, span };
}

/** Before the steps are read: what the stint is said to change by merely starting. */
export function readLeavesAtStart(reading: StintReading): void {
  for (const leave of reading.stint.leaves) {
    if (leave.at !== 'start') continue;
    write(
      reading,
      leave.variable,
      leave.value,
      -1,
      writtenOrigin(`leave ${leave.variable} ${leave.value} at start`, leave.span),
    );
  }
}

/** After the steps. */
export function readWrittenRest(reading: StintReading): void {
  const { stint } = reading;
  const length = stint.steps.length;
  const replaced = new Set<string>();
  for (const need of stint.needs) {
    const range: readonly [number, number] =
      need.when === 'start' ? [0, 0] : need.when === 'end' ? [length, length] : [0, lastBoundary(stint)];
    const key = `${need.variable} ${need.when}`;
    if (need.when !== 'end' && !replaced.has(key)) {
      replaced.add(key);
      remove(reading.needs, (other) => other.variable === need.variable && sameTime(other, need.when));
    }
    reading.needs.push({
      variable: need.variable,
      allowed: need.allowed,
      when: need.when,
      fromStep: range[0],
      toStep: range[1],
      origin: writtenOrigin(`need ${need.variable} ${need.allowed.join(' or ')} (${need.when})`, need.span),
    });
  }
  for (const leave of stint.leaves) {
    if (leave.at !== 'end') continue;
    const origin = writtenOrigin(`leave ${leave.variable} ${leave.value} at end`, leave.span);
    write(reading, leave.variable, leave.value, length, origin);
  }
}

/** A verb that changes a value asks for it before it begins ("start", and until its step): a written start need replaces both. */
function sameTime(inferred: Need, when: 'start' | 'during' | 'end'): boolean {
  if (inferred.origin.from === 'written') return false;
  const untilOwnWrite = isUntilOwnStep(inferred);
  return when === 'start' ? inferred.when === 'start' || untilOwnWrite : inferred.when === when && !untilOwnWrite;
}

function remove<T>(list: T[], unwanted: (item: T) => boolean): void {
  for (let index = list.length - 1; index >= 0; index--) if (unwanted(list[index] as T)) list.splice(index, 1);
}
