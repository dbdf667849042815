import type { Problem } from "../../core/registry/problem.ts";
import type { Result } from "../../core/result.ts";
import type { Trial } from "../../core/views/trial.ts";
import type { Analysis } from "../../core/views/trial-rows.ts";
import { reckon } from "../trials/reckoner.ts";
import {
  factorsCompared,
  type Look,
  lastCoatRead,
  questionOf,
  treatedOtherwise,
  type VerdictAnswer,
  type VerdictInput,
} from "./questions.ts";

export interface OneVerdict {
  readonly factor: string;
  readonly input: VerdictInput;
  readonly answer: Result<VerdictAnswer, Problem>;
  /** The same without what departed from the plan, where that leaves other rows. */
  readonly treated: Result<VerdictAnswer, Problem> | null;
}

const answerOf = (input: VerdictInput): Promise<Result<VerdictAnswer, Problem>> =>
  reckon<VerdictAnswer>("verdict", input);

/** The verdicts on one thing looked at: one for each thing that varied. */
export async function verdictsOn(trial: Trial, look: Look): Promise<readonly OneVerdict[]> {
  const coat = lastCoatRead(trial, look);
  const ask = (factor: string, how: Analysis) => questionOf(trial, look, factor, coat, how);
  const verdicts: OneVerdict[] = [];
  for (const factor of factorsCompared(trial)) {
    const input = ask(factor, "as laid out");
    const treated = ask(factor, "as treated");
    verdicts.push({
      factor,
      input,
      answer: await answerOf(input),
      treated: treatedOtherwise(input, treated) ? await answerOf(treated) : null,
    });
  }
  return verdicts;
}
