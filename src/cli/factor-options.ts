import { type CliError, refused } from "./cli-error.ts";

export type Values = Readonly<Record<string, string | boolean | readonly string[] | undefined>>;

export const optionRefused = (option: string, value: unknown, wouldDo: string): CliError =>
  refused({
    code: "wrong-type",
    field: `--${option}`,
    message: `--${option} is ${String(value)}, which cannot be read. ${wouldDo} would do.`,
    value: value ?? null,
    limits: null,
  });

/** An option that is given once for each factor, as `alcohol=jar`: what stands on its right, by what stands on its left. */
export function byFactor(values: Values, option: string, example: string): ReadonlyMap<string, string> {
  const given = values[option];
  const list = Array.isArray(given) ? (given as readonly string[]) : [];
  return new Map(
    list.map((one) => {
      const [factor, told, ...rest] = one.split("=");
      if (!factor || !told || rest.length > 0) throw optionRefused(option, one, example);
      return [factor, told];
    }),
  );
}

export function numberOption(values: Values, option: string, example: string): number | undefined {
  const typed = values[option];
  if (typed === undefined) return undefined;
  const value = Number(typed);
  if (Number.isFinite(value) && String(typed).trim() !== "") return value;
  throw optionRefused(option, typed, example);
}
