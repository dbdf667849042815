import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { places, type Reading } from "../statistics/readings.ts";
import { words } from "../statistics/three-words.ts";
import { type Question, verdictMeasured } from "../statistics/verdict-measured.ts";
import { verdictOrdered } from "../statistics/verdict-ordered.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";

const label = z.union([z.string().min(1), z.number()]);

const response = z.strictObject({
  name: z.string().min(1),
  scale: z.enum(["measured", "ordered", "ranked"]),
  /** Steps of an ordered scale, from least to most. */
  levels: z.array(z.string().min(1)).min(2).optional(),
  /** The difference that matters: in the response's unit; for ordered and ranked responses a share from 0 to 1. */
  matters: z.number().min(0).optional(),
});
type Response = z.output<typeof response>;

const row = z.strictObject({
  patch: label,
  jar: label.nullish(),
  plank: label.nullish(),
  block: label.nullish(),
  judge: label.nullish(),
  occasion: label.nullish(),
  daysSinceCoat: z.number().min(0).nullish(),
  factors: z.record(z.string(), label),
  /** A number, a step of the scale, or null where nothing was read. The higher stands above. */
  value: z.union([z.number(), z.string()]).nullable(),
});
type Row = z.output<typeof row>;

const input = z.strictObject({
  response,
  /** The factor whose levels are compared. */
  compare: z.string().min(1),
  appliedTo: z.record(z.string(), z.enum(places)),
  rows: z.array(row).min(2).max(20_000),
});
type Input = z.output<typeof input>;

const optionalText = (x: string | number | null | undefined): string | undefined =>
  x === null || x === undefined ? undefined : String(x);

/** The value as a number: its own, or the place of its word on the scale. */
function numberOf(given: Response, value: string | number, i: number): number {
  if (typeof value === "number") return value;
  const field = `rows[${i}].value`;
  if (given.scale !== "ordered" || given.levels === undefined)
    throw new DomainError({
      code: "wrong-type",
      field,
      value,
      because:
        given.scale === "ordered"
          ? "response.levels gives no steps to read a word by."
          : "A number would do.",
    });
  const place = given.levels.indexOf(value);
  if (place < 0)
    throw new DomainError({ code: "unknown-name", field, value, limits: { allowed: given.levels } });
  return place;
}

function readingOf(given: Input, r: Row, i: number): Reading | undefined {
  if (!Object.hasOwn(r.factors, given.compare))
    throw new DomainError({
      code: "missing",
      field: `rows[${i}].factors.${given.compare}`,
      value: undefined,
    });
  if (r.value === null) return undefined;
  return {
    patch: String(r.patch),
    jar: optionalText(r.jar),
    plank: optionalText(r.plank),
    board: optionalText(r.block),
    judge: optionalText(r.judge),
    factors: Object.fromEntries(Object.entries(r.factors).map(([name, level]) => [name, String(level)])),
    value: numberOf(given.response, r.value, i),
  };
}

function checkCompared(given: Input): void {
  const names = [...new Set(given.rows.flatMap((r) => Object.keys(r.factors)))];
  if (!names.includes(given.compare))
    throw new DomainError({
      code: "unknown-name",
      field: "compare",
      value: given.compare,
      limits: { allowed: names },
    });
}

/** Refuses a comparison that the rows do not hold: one level only, or a level without a value. */
function checkLevels(given: Input, readings: readonly Reading[]): void {
  const laidOut = new Set(given.rows.map((r) => String(r.factors[given.compare])));
  const field = `rows.factors.${given.compare}`;
  if (laidOut.size < 2) throw new DomainError({ code: "no-variation", field, value: [...laidOut] });
  const read = new Set(readings.map((r) => r.factors[given.compare]));
  const empty = [...laidOut].find((level) => !read.has(level));
  if (empty !== undefined)
    throw new DomainError({
      code: "not-enough-data",
      field,
      value: empty,
      because: `No value was read of ${given.compare} ${empty}.`,
    });
}

/** What a difference is taken to matter from when nobody has said: common practice, and for shares our convention. */
const usualMatters: readonly { readonly name: RegExp; readonly matters: number; readonly unit: string }[] = [
  { name: /gloss/i, matters: 5, unit: "gloss units (common practice)" },
  { name: /colou?r|ΔE|delta ?E/i, matters: 2, unit: "ΔE00 (common practice)" },
];

interface Matters {
  readonly matters: number;
  readonly flags: readonly Flag[];
}

function mattersOf({ scale, name, matters }: Response): Matters {
  const field = "response.matters";
  if (scale === "measured") {
    if (matters !== undefined) return { matters, flags: [] };
    const usual = usualMatters.find((u) => u.name.test(name));
    if (usual === undefined)
      throw new DomainError({
        code: "missing",
        field,
        value: undefined,
        because: `How large a difference in ${name} would matter to you, in its own unit?`,
      });
    const message = `No difference that matters was given: ${usual.matters} ${usual.unit} is taken.`;
    return { matters: usual.matters, flags: [{ code: "matters-assumed", field, message }] };
  }
  if (matters === undefined)
    return {
      matters: 0.3,
      flags: [
        {
          code: "matters-assumed",
          field,
          message: "No difference that matters was given: 0.3 is taken, a convention of Lacbench.",
        },
      ],
    };
  if (!(matters < 1))
    throw new DomainError({
      code: "out-of-range",
      field,
      value: matters,
      limits: { min: 0, max: 0.99 },
      because: "On this scale it is how much more often one is put above the other, as a share.",
    });
  return { matters, flags: [] };
}

function flagsOfDays(rows: readonly Row[]): Flag[] {
  const days = rows.flatMap((r) => (r.value === null ? [] : (r.daysSinceCoat ?? [])));
  const read = rows.filter((r) => r.value !== null).length;
  const field = "rows.daysSinceCoat";
  if (days.length > 0 && days.length < read)
    return [
      { code: "days-missing", field, message: "For some readings the days since the coat are not known." },
    ];
  const [least, most] = [Math.min(...days), Math.max(...days)];
  if (days.length === 0 || most - least < 1) return [];
  return [
    {
      code: "unequal-days",
      field,
      message: `Read from ${least} to ${most} days after the coat, and a young film still changes: part of a difference may be its age.`,
    },
  ];
}

const pair = z.object({
  a: z.string(),
  b: z.string(),
  /** a − b. */
  difference: z.number(),
  interval: z.tuple([z.number(), z.number()]),
  verdict: z.enum(words),
  directionSure: z.boolean(),
});

const output = z.object({
  about: z.string(),
  pairs: z.array(pair),
  method: z.object({
    name: z.string(),
    terms: z.array(z.string()),
    errorTerm: z.string(),
    errorMeanSquare: z.number().nullable(),
    multiplier: z.number(),
    confidence: z.number(),
  }),
  degreesOfFreedom: z.number(),
  letters: z.record(z.string(), z.string()),
  moreNeeded: z.object({ jars: z.number().nullable(), boards: z.number().nullable() }),
  matters: z.number(),
  levels: z.array(z.object({ level: z.string(), mean: z.number(), patches: z.number(), jars: z.number() })),
  wobble: z.object({
    judges: z.number(),
    readingsPerPatch: z.number(),
    sameJudge: z.number().nullable(),
    betweenJudges: z.number().nullable(),
  }),
  /** The test of all levels at once, for ordered and ranked responses. */
  overall: z
    .object({ method: z.string(), statistic: z.number(), degreesOfFreedom: z.number(), pValue: z.number() })
    .nullable(),
  flags: z.array(flag),
});

const hardnessRows = [
  [9.3, 9.4, 9.6, 10],
  [9.4, 9.3, 9.8, 9.9],
  [9.2, 9.4, 9.5, 9.7],
  [9.7, 9.6, 10, 10.2],
].flatMap((values, tip) =>
  values.map((value, coupon) => ({
    patch: `${coupon + 1}${"abcd"[tip]}`,
    block: `coupon ${coupon + 1}`,
    factors: { tip: String(tip + 1) },
    value,
  })),
);

export const verdictCalculation = defineCalculation({
  name: "verdict",
  purpose: "Of each two levels of what was varied: different, as good as equal, or not enough to tell",
  input,
  output,
  run: (given) => {
    checkCompared(given);
    const { matters, flags } = mattersOf(given.response);
    const readings = given.rows.flatMap((r, i) => readingOf(given, r, i) ?? []);
    checkLevels(given, readings);
    const appliedTo = given.appliedTo[given.compare];
    if (appliedTo === undefined)
      throw new DomainError({
        code: "missing",
        field: `appliedTo.${given.compare}`,
        value: undefined,
        limits: { allowed: places },
      });
    const question: Question = { compare: given.compare, appliedTo, matters };
    const verdict =
      given.response.scale === "measured"
        ? { ...verdictMeasured(readings, question), overall: null }
        : verdictOrdered(readings, { ...question, rankedWithinBoards: given.response.scale === "ranked" });
    return {
      ...verdict,
      pairs: verdict.pairs.map((p) => ({ ...p, interval: [...p.interval] as [number, number] })),
      method: { ...verdict.method, terms: [...verdict.method.terms] },
      levels: [...verdict.levels],
      matters,
      flags: [...flags, ...flagsOfDays(given.rows)],
    };
  },
  sources: [
    "NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.7.1: Tukey's method",
    "D. C. Montgomery, Design and Analysis of Experiments (2013), ch. 4 and 14: blocks, and the error that a factor is held against",
    "W. J. Conover, Practical Nonparametric Statistics (1999), 5.8: Friedman's test with ties",
    "T. Tango, Statistics in Medicine 17 (1998) 891: the score interval for paired shares",
  ],
  example: {
    input: {
      response: { name: "hardness", scale: "measured", matters: 0.2 },
      compare: "tip",
      appliedTo: { tip: "patch" },
      rows: hardnessRows,
    },
    output: { degreesOfFreedom: 9, about: "tip" },
  },
});
