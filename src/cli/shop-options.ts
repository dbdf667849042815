import { type ParsedQuantity, parseQuantity, type QuantityProblem } from "../core/quantity/parse-quantity.ts";
import { quantityProblemSentence, readingInWords } from "../core/quantity/problem-sentence.ts";
import type { Dimension, GallonSystem } from "../core/quantity/unit-table.ts";
import { calculationNamed } from "../core/registry/all.ts";
import { calculate } from "../core/registry/calculation.ts";
import type { Problem } from "../core/registry/problem.ts";
import type { Result } from "../core/result.ts";
import { components } from "../core/solution/component.ts";
import { refused } from "./cli-error.ts";
import type { OptionSpecs } from "./command.ts";

/** Options that every command about liquids takes. */
export const liquidOptions = {
  alcohol: { type: "string", value: "NAME", description: `ethanol unless told; ${components.join(", ")}` },
  strength: {
    type: "string",
    value: "95%",
    description: 'as the label says it: % (by volume, 20 °C), "% mass" or proof; pure unless told',
  },
  temperature: {
    type: "string",
    value: "20C",
    description: "of everything read as a volume; 20 °C unless told",
  },
  scale: { type: "string", value: "0.5g", description: "standard uncertainty of the scale" },
  jug: { type: "string", value: "5ml", description: "standard uncertainty of the jug" },
  gallon: {
    type: "string",
    value: "us",
    description: "whose cups, pints and gallons: us (unless told) or imperial",
  },
} as const satisfies OptionSpecs;

type Values = Readonly<Record<string, string | boolean | readonly string[] | undefined>>;

export interface Field {
  readonly dimensions: readonly Dimension[];
  readonly bareUnit?: string;
  readonly flakes?: true;
}

const refuse = (option: string, value: unknown, code: string, message: string) =>
  refused({ code, field: `--${option}`, message: `--${option}: ${message}`, value, limits: null });

/** Reads what was typed after the options of one call, and remembers what was taken for granted. */
export class ShopOptions {
  readonly notes: string[] = [];
  readonly #values: Values;
  readonly #gallon: GallonSystem;
  constructor(values: Values) {
    this.#values = values;
    this.#gallon = this.#readGallon();
  }

  #readGallon(): GallonSystem {
    const { gallon } = this.#values;
    if (gallon === undefined || gallon === "us") return "us";
    if (gallon === "imperial") return "imperial";
    throw refuse("gallon", gallon, "unknown-name", "us or imperial would do.");
  }

  text(option: string): string | undefined {
    const value = this.#values[option];
    return typeof value === "string" ? value : undefined;
  }

  /** As it is read, or what stands against it; undefined when it was not told. */
  read(option: string, field: Field): Result<ParsedQuantity, QuantityProblem> | undefined {
    const typed = this.text(option);
    return typed === undefined ? undefined : parseQuantity(typed, { ...field, gallon: this.#gallon });
  }

  refusal(option: string, problem: QuantityProblem, sentence = quantityProblemSentence(problem)) {
    return refuse(option, this.text(option), problem.code, sentence);
  }

  quantity(option: string, field: Field): ParsedQuantity | undefined {
    const read = this.read(option, field);
    if (read === undefined) return undefined;
    if (!read.ok) throw this.refusal(option, read.error);
    const { instead, typed } = read.value;
    if (instead !== undefined)
      this.notes.push(`${typed} is read as ${readingInWords(read.value)}, not ${readingInWords(instead)}.`);
    return read.value;
  }

  /** An SI value times a factor: grams, millilitres. */
  number(option: string, field: Field, perSi = 1): number | undefined {
    const read = this.quantity(option, field);
    return read === undefined ? undefined : read.si * perSi;
  }

  grams = (option: string) => this.number(option, { dimensions: ["mass"] }, 1e3);
  millilitres = (option: string) => this.number(option, { dimensions: ["volume"] }, 1e6);
  fraction = (option: string) => this.number(option, { dimensions: ["fraction"] });
  /** kg/m³, which is grams to a litre of solvent. */
  cut = (option: string) => this.number(option, { dimensions: ["cut"], bareUnit: "lb-cut" });

  /** An amount by weighing or by jug. */
  amount(option: string, names: { readonly g: string; readonly ml: string }): Record<string, number> {
    const read = this.quantity(option, { dimensions: ["volume", "mass"] });
    if (read === undefined) return {};
    return read.dimension === "mass" ? { [names.g]: read.si * 1e3 } : { [names.ml]: read.si * 1e6 };
  }

  /** A liquid as the calculations take it, from a name and a label's strength. */
  liquid(alcohol = "alcohol", strength = "strength"): Record<string, unknown> {
    const name = this.text(alcohol) ?? "ethanol";
    const read = this.quantity(strength, { dimensions: ["fraction"] });
    if (read === undefined) {
      if (name !== "water") this.notes.push(`No --${strength} is told: the ${name} is taken as pure.`);
      return { alcohol: name };
    }
    if (read.unit === "us-proof") return { alcohol: name, usProof: read.si * 200 };
    if (read.unit === "percent-mass") return { alcohol: name, massFraction: read.si };
    return { alcohol: name, volumeFraction: read.si };
  }

  temperatureC(): Record<string, number> {
    const kelvin = this.number("temperature", { dimensions: ["temperature"], bareUnit: "degC" });
    return kelvin === undefined ? {} : { temperatureC: kelvin - 273.15 };
  }

  /** With either told, what is not told of the two is taken as exact; with neither, a kitchen's are assumed. */
  instruments(): Record<string, unknown> {
    const [scaleG, jugMl] = [this.grams("scale"), this.millilitres("jug")];
    return scaleG === undefined && jugMl === undefined ? {} : { instruments: given({ scaleG, jugMl }) };
  }
}

/** Only what was told. */
export const given = (fields: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));

/** Runs a calculation; a refusal speaks of options where the calculation speaks of fields. */
export function runCalculation<T>(
  name: string,
  input: unknown,
  optionOf: Readonly<Record<string, string>>,
): T {
  const calculation = calculationNamed(name);
  if (calculation === undefined) throw new Error(`${name} is not registered`);
  const result = calculate(calculation, input);
  if (!result.ok) throw refused(inOptions(result.error, optionOf));
  return result.value as T;
}

function inOptions(problem: Problem, optionOf: Readonly<Record<string, string>>): Problem {
  const fields = Object.keys(optionOf).sort((a, b) => b.length - a.length);
  const pattern = new RegExp(
    `(?<![\\w.])(?:${fields.map((f) => f.replace(/[.[\]]/g, "\\$&")).join("|")})(?![\\w.]*\\w)`,
    "g",
  );
  return {
    ...problem,
    field: optionOf[problem.field] ?? problem.field,
    // Two fields of one option, an amount by weight and by volume, read as one.
    message: problem.message
      .replace(pattern, (field) => optionOf[field] ?? field)
      .replace(/(--[\w-]+) or \1/g, "$1"),
  };
}
