/** Conflicts per EVA: some seconds for an EVA of thirty stints. */
export const DEFAULT_BUDGET = 20_000;
