/** What the process says to a script. */
export const EXIT = {
  fine: 0,
  /** There are findings at error level. */
  findings: 1,
  badInput: 2,
  noPlan: 3,
  /** Something that is needed for an answer is not stated. */
  cannotTell: 4,
  /** Handrail itself failed: a fault of the program ("internal software error" of BSD's sysexits). */
  programFailed: 70,
} as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
