/** How a command ends: the process's exit code. */
export const EXIT = {
  fine: 0,
  /** Findings, no burn, a failed comparison: an answer, but not a good one. */
  findings: 1,
  badInput: 2,
  internal: 3,
} as const

export type ExitCode = (typeof EXIT)[keyof typeof EXIT]
