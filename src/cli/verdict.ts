import Papa from "papaparse";
import { calculate } from "../core/registry/calculation.ts";
import { readJson } from "../core/registry/read-json.ts";
import { verdictCalculation } from "../core/registry/verdict.ts";
import { placesKnown, placesThatKeepSides } from "../core/statistics/verdict/jaw-places.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { byFactor, numberOption, type Values } from "./factor-options.ts";
import { rowsFromCsv } from "./rows-csv.ts";

interface Pair {
  readonly a: string;
  readonly b: string;
  readonly difference: number;
  readonly interval: readonly [number, number];
  readonly verdict: "different" | "equal" | "unclear";
}
interface Told {
  readonly about: string;
  readonly pairs: readonly Pair[];
  readonly matters: number;
  readonly degreesOfFreedom: number;
  readonly method: { readonly name: string; readonly errorTerm: string };
  readonly moreNeeded: { readonly jars: number | null; readonly boards: number | null };
  readonly flags: readonly { readonly message: string }[];
}

const threeWords = {
  different: "Different",
  equal: "As good as equal",
  unclear: "Not enough to tell",
} as const;

export const command = defineCommand({
  usage: "verdict [INPUT.json | ROWS.csv --compare alcohol --applied alcohol=jar]",
  positionals: 1,
  options: {
    compare: { type: "string", value: "FACTOR", description: "the column whose levels are compared" },
    applied: {
      type: "string",
      multiple: true,
      value: "FACTOR=jar",
      description: "what a factor sits on: jar, plank, board or patch; once for each",
    },
    response: { type: "string", value: "gloss", description: "what was read" },
    scale: { type: "string", value: "measured", description: "measured (unless told), ordered or ranked" },
    levels: { type: "string", value: "a,b,c", description: "steps of an ordered scale, from least to most" },
    matters: { type: "string", value: "5", description: "the difference that matters" },
    csv: { type: "boolean", description: "the comparisons as a table in CSV" },
  },
  async run({ values, positionals }, effects) {
    const [file] = positionals;
    const text = file === undefined ? await effects.stdin() : effects.readFile(file);
    const answer = calculate(verdictCalculation, inputFrom(text, file ?? "the input", values));
    if (!answer.ok) throw refused(answer.error);
    if (values.json === true) effects.stdout(`${JSON.stringify(answer.value, null, 2)}\n`);
    else effects.stdout((values.csv === true ? asTable : inWords)(answer.value as Told)); // what this calculation gives
  },
});

/** JSON as the calculation takes it, or a table with the question in the options. */
function inputFrom(text: string, file: string, values: Values): unknown {
  if (/^\s*[[{]/.test(text)) {
    const input = readJson(text);
    if (!input.ok) throw refused(input.error);
    return input.value;
  }
  const matters = numberOption(values, "matters", "5");
  return {
    response: {
      name: values.response ?? "value",
      scale: values.scale ?? "measured",
      ...(typeof values.levels === "string" ? { levels: values.levels.split(",").map((l) => l.trim()) } : {}),
      ...(matters === undefined ? {} : { matters }),
    },
    ...(values.compare === undefined ? {} : { compare: values.compare }),
    appliedTo: Object.fromEntries(byFactor(values, "applied", "alcohol=jar")),
    rows: rowsFromCsv(text, file),
  };
}

const asTable = ({ pairs, matters }: Told): string =>
  `${Papa.unparse(
    pairs.map(({ a, b, difference, interval: [low, high], verdict }) => ({
      a,
      b,
      difference,
      low,
      high,
      matters,
      verdict: threeWords[verdict],
    })),
    { newline: "\n", escapeFormulae: true },
  )}\n`;

function inWords(told: Told): string {
  const lines = told.pairs.map((p) => pairLine(p, told.matters));
  const more = moreLine(told.moreNeeded);
  return [
    ...lines,
    ...(more === null ? [] : [more]),
    ...(told.about.startsWith("these ")
      ? [`This is about ${told.about}: each level came out of one of them.`]
      : []),
    `Held against the noise from ${told.method.errorTerm.replace(/[()]/g, "")} to ${told.method.errorTerm.replace(/[()]/g, "")}, ${Number(told.degreesOfFreedom.toPrecision(3))} degrees of freedom; ${told.method.name}.`,
    ...told.flags.map((f) => f.message),
  ]
    .map((line) => `${line}\n`)
    .join("");
}

function pairLine(pair: Pair, matters: number): string {
  const swapped = pair.difference < 0;
  const [a, b] = swapped ? [pair.b, pair.a] : [pair.a, pair.b];
  const interval: readonly [number, number] = swapped
    ? [-pair.interval[1], -pair.interval[0]]
    : pair.interval;
  const places = placesThatKeepSides(interval, matters);
  const [low, high] = interval.map((x) => x.toFixed(places));
  const size = Math.abs(pair.difference).toFixed(placesKnown(interval));
  return `${threeWords[pair.verdict]}: ${a} over ${b} by ${size}, from ${low} to ${high}; ${matters} matters.`;
}

function moreLine({ jars, boards }: Told["moreNeeded"]): string | null {
  if (jars === 0 || boards === 0) return null;
  const ways = [
    ...(boards === null ? [] : [`${boards} more board${boards === 1 ? "" : "s"}`]),
    ...(jars === null ? [] : [`${jars} more jar${jars === 1 ? "" : "s"} of each`]),
  ];
  return ways.length === 0 ? null : `${ways.join(" or ")} would settle what cannot be told.`;
}
