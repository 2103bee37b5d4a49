/**
 * The grid of planning: whole cells of 10 s from PET 0. This folder alone rounds: planning durations to the nearest cell,
 * travel and lower bounds of waits so that nothing gets shorter, limits and upper bounds down, windows inward.
 */
export const CELL_S = 10;

/** A planning duration. What takes any time at all takes at least one cell. */
export function durationInCells(durationS: number): number {
  return durationS <= 0 ? 0 : Math.max(1, Math.round(durationS / CELL_S));
}

/** For what must not get shorter: travel, least lags, starts of windows to stay inside of. */
export function cellsUp(timeS: number): number {
  return Math.ceil(timeS / CELL_S - 1e-9);
}

/** For what must not get longer: limits, most lags, ends of windows to stay inside of. */
export function cellsDown(timeS: number): number {
  return Math.floor(timeS / CELL_S + 1e-9);
}

export function secondsOf(cells: number): number {
  return cells * CELL_S;
}
