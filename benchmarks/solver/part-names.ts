import { PARTS } from '@handrail/solver/engine/run-settings';

type Part = (typeof PARTS)[number];

/** A part of the engine as it is called on the command line: `route-worths`. */
export function partName(part: Part): string {
  return part
    .slice('without'.length)
    .replace(/(?!^)([A-Z])/g, '-$1')
    .toLowerCase();
}

/** @throws Error for a name that no part has */
export function partNamed(name: string): Part {
  const part = PARTS.find((one) => partName(one) === name);
  if (part === undefined) throw new Error(`no part is called ${name}; there are ${PARTS.map(partName).join(', ')}`);
  return part;
}
