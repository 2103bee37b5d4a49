import { numberLines } from './number-lines.ts';

export interface ProjectJob {
  readonly successors: readonly number[];
  readonly modes: readonly { readonly duration: number; readonly demands: readonly number[] }[];
}
/** A PSPLIB project as its file has it. Jobs are numbered from 0; the first and the last are milestones. */
export interface Project {
  readonly jobs: readonly ProjectJob[];
  readonly renewable: number;
  readonly capacities: readonly number[];
}

/** Reads the sections of a PSPLIB file, single mode (`.sm`) or several modes (`.mm`). @source [KOLISCH-SPRECHER-1997] */
export function readProjectSections(text: string): Project {
  const section = (from: RegExp, to: RegExp | null) => {
    const begin = text.search(from);
    const rest = begin < 0 ? '' : text.slice(text.indexOf('\n', begin) + 1);
    const end = to === null ? -1 : rest.search(to);
    return numberLines(end < 0 ? rest : rest.slice(0, end));
  };
  const count = (what: RegExp) => Number(text.match(what)?.[1] ?? Number.NaN);
  const renewable = count(/- renewable\s*:\s*(\d+)/);
  const capacities = section(/^RESOURCE ?AVAILABILITIES/m, null).at(-1) ?? [];
  const successors = section(/^PRECEDENCE RELATIONS/m, /^\*{5}/m).map((row) => row.slice(3).map((job) => job - 1));
  const requests = section(/^REQUESTS\/DURATIONS/m, /^\*{5}/m).filter((row) => row.length >= 2 + capacities.length);
  const modes: { duration: number; demands: number[] }[][] = [];
  for (const row of requests) {
    // A line that opens a job has its number in front; the lines of its further modes do not.
    const isFirst = row.length === 3 + capacities.length;
    if (isFirst) modes.push([]);
    const [duration, ...demands] = row.slice(isFirst ? 2 : 1) as [number, ...number[]];
    modes.at(-1)?.push({ duration, demands });
  }
  if (modes.length === 0 || modes.length !== successors.length) {
    throw new Error(`not a project file: ${successors.length} jobs with successors, ${modes.length} with durations`);
  }
  return { jobs: modes.map((of, i) => ({ successors: successors[i] ?? [], modes: of })), renewable, capacities };
}
