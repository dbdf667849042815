import type { Problem } from "../core/registry/problem.ts";

/** What a command ends with when it cannot do what was asked: words for a person, and the exit code. */
export class CliError extends Error {
  override readonly name = "CliError";
  readonly exitCode: number;
  /** The same in the shape that every door uses. */
  readonly problem: Problem;
  constructor(message: string, exitCode = 1, problem?: Problem) {
    super(message);
    this.exitCode = exitCode;
    this.problem = problem ?? { code: "refused", field: "command", message, value: null, limits: null };
  }
}

/** Exit 2: what was given cannot be used as it stands. */
export const refused = (problem: Problem): CliError => new CliError(problem.message, 2, problem);
