/** Stands on every page and in every file that the program writes. */
export const PROGRAM_VERSION = '0.1.0';
