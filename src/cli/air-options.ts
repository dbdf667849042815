import { type CliError, refused } from "./cli-error.ts";
import type { OptionSpecs } from "./command.ts";
import { given, type ShopOptions } from "./shop-options.ts";

/** Options that say what the shop's air is like. */
export const airOptions = {
  air: { type: "string", value: "20C", description: "temperature of the air" },
  humidity: { type: "string", value: "50%", description: "relative humidity of the air" },
} as const satisfies OptionSpecs;

const refusal = (option: string, value: unknown, code: string, message: string): CliError =>
  refused({
    code,
    field: `--${option}`,
    message: `--${option} ${message}`,
    value: value ?? null,
    limits: null,
  });

/** What an option has to say; missing, a sentence with an example. */
export function needed<T>(value: T | undefined, option: string, example: string): T {
  if (value !== undefined) return value;
  throw refusal(option, undefined, "missing", `is missing. For instance --${option} ${example} would do.`);
}

export function celsiusOf(typed: ShopOptions, option: string): number | undefined {
  const kelvin = typed.number(option, { dimensions: ["temperature"], bareUnit: "degC" });
  return kelvin === undefined ? undefined : Number((kelvin - 273.15).toFixed(9));
}

export const humidityOf = (typed: ShopOptions): number | undefined =>
  typed.number("humidity", { dimensions: ["fraction"], bareUnit: "percent" });

/** Micrometres, as films are spoken of. */
export const micrometresOf = (typed: ShopOptions, option: string): number | undefined =>
  typed.number(option, { dimensions: ["length"], bareUnit: "um" }, 1e6);

/** A bare number, for what has one usual unit. */
export function plainNumber(typed: ShopOptions, option: string, example: string): number | undefined {
  const text = typed.text(option);
  if (text === undefined) return undefined;
  const value = Number(text.trim());
  if (text.trim() === "" || !Number.isFinite(value))
    throw refusal(option, text, "not-a-number", `is ${text}, which is not a number. ${example} would do.`);
  return value;
}

export const airFromOptions = (typed: ShopOptions): Record<string, unknown> => ({
  temperatureC: needed(celsiusOf(typed, "air"), "air", "20C"),
  relativeHumidity: needed(humidityOf(typed), "humidity", "50%"),
  ...given({ speedMS: plainNumber(typed, "speed", "0.1") }),
});
