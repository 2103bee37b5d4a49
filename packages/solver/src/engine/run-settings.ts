/** What each part that only makes the search faster is called when it is left out. */
export const PARTS = [
  'withoutNeighbourhoods',
  'withoutBoundAttempts',
  'withoutShiftingLeft',
  'withoutGenerator',
  /** Propagators that only repeat what others enforce. */
  'withoutRedundant',
  'withoutMinimisation',
  'withoutCircles',
  'withoutRouteWorths',
  'withoutEnergy',
] as const;

/** Parts of the engine that can be left out, or looked at more closely, to show that the answer stays the same. */
export type RunSettings = {
  /** Refuse reasons whose atoms did not hold before the bound they explain. */
  readonly checksReasons?: boolean;
} & { readonly [part in (typeof PARTS)[number]]?: boolean };
