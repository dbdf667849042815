import { calculationNamed } from "../../core/registry/all.ts";
import { calculate } from "../../core/registry/calculation.ts";
import type { Component } from "../../core/solution/component.ts";
import type { Row } from "./topic.ts";

/** Columns that are never expected: our own or another hand's computations beside the printed values. */
export const computedColumns = [
  /^computed_/,
  /_formula/,
  /^model_/,
  /_from_oiml/,
  /_naive/,
  /_residual/,
  /^residual_/,
  /^smoothed_/,
  /_mass_balance/,
];

/** A row whose note says that its printed value is wrong is shown, not compared. */
export const saidWrong = (row: Row): string | undefined =>
  /SUSPECT|misprint|WRONG|off by|excluded/.test(row.note ?? "") ? row.note : undefined;

/** A calculation by its registered name; a refusal is a failed case. */
export function registered(name: string, input: unknown): Record<string, unknown> {
  const calculation = calculationNamed(name);
  if (calculation === undefined) throw new Error(`${name} is not registered`);
  const result = calculate(calculation, input);
  if (!result.ok) throw new Error(result.error.message);
  return result.value as Record<string, unknown>;
}

/** g/cm³ by the registered calculation. */
export const densityGCm3 = (alcohol: Component, percent: number, temperatureC: number): number => {
  const strength = alcohol === "water" ? {} : { massFraction: percent / 100 };
  return (registered("alcohol-density", { alcohol, ...strength, temperatureC }).densityKgM3 as number) / 1e3;
};

export const percentFrom = (alcohol: Component, volumePercent: number, atTemperatureC: number): number =>
  100 *
  (registered("alcohol-strength", { alcohol, volumeFraction: volumePercent / 100, atTemperatureC })
    .massFraction as number);

export const sixtyF = (60 - 32) / 1.8;
