/** A plan without a stated wall is searched no further than this after PET 0. */
export const LONGEST_SEARCHED_S = 24 * 3600;
