import { calculationNamed } from "../src/core/registry/all.ts";
import { type Calculation, calculate } from "../src/core/registry/calculation.ts";
import type { Problem } from "../src/core/registry/problem.ts";

const named = (name: string): Calculation => {
  const calculation = calculationNamed(name);
  if (calculation === undefined) throw new Error(`no calculation ${name}`);
  return calculation;
};

/** What a registered calculation gives, held against its own output schema. */
export function run(name: string, input: unknown): Record<string, unknown> {
  const result = calculate(named(name), input);
  if (!result.ok) throw new Error(`${result.error.field}: ${result.error.message}`);
  return named(name).output.parse(result.value) as Record<string, unknown>;
}

/** Why a registered calculation refuses an input. */
export function refusal(name: string, input: unknown): Problem {
  const result = calculate(named(name), input);
  if (result.ok) throw new Error(`${name} took it`);
  return result.error;
}
