import { balancedBlocks, countBlocks } from "../../core/design/catalogue/block-design.ts";
import { type BlockNumbers, blockExistence } from "../../core/design/catalogue/block-existence.ts";
import { fractionOf } from "../../core/design/catalogue/fraction.ts";
import {
  isGraecoLatin,
  mutuallyOrthogonal,
  randomGraecoLatin,
  whyNoGraecoLatin,
} from "../../core/design/catalogue/graeco-latin.ts";
import { latinSquareCount } from "../../core/design/catalogue/latin-count.ts";
import { carryOverOrders, evenNeighbours, isLatinSquare } from "../../core/design/catalogue/latin-square.ts";
import { isOrthogonal, screenFromRow } from "../../core/design/catalogue/plackett-burman.ts";
import { bestPossible, monomialRows, optimalRuns } from "../../core/design/optimal/optimal-runs.ts";
import { randomFromSeed } from "../../core/random.ts";
import { numberIn, perRow } from "./table.ts";
import { type Json, NotReadable, type Row, type Topic } from "./topic.ts";

/** Fresh starts for a search whose optimum is known by enumeration. */
const starts = 300;

const isList = (x: unknown, of: "number" | "string"): boolean =>
  Array.isArray(x) && x.every((item) => typeof item === of);

function numbers(given: Json, key: string): readonly number[] {
  if (!isList(given[key], "number")) throw new NotReadable(`${key} is not a list of numbers`);
  return given[key] as number[];
}

function table(given: Json, key: string): readonly (readonly number[])[] {
  const rows = given[key];
  if (!Array.isArray(rows) || !rows.every((row) => isList(row, "number")))
    throw new NotReadable(`${key} is not a table of numbers`);
  return rows;
}

function count(given: Json): number {
  const runs = given.runs;
  if (typeof runs !== "number") throw new NotReadable("runs is not a number");
  return runs;
}

/** Lists along `input.n`. */
const along = (given: Json, one: (n: number, i: number) => object): Record<string, unknown[]> => {
  const all = numbers(given.input as Json, "n").map((n, i) => Object.entries(one(n, i)));
  return Object.fromEntries(
    (all[0] ?? []).map(([key], k) => [key, all.map((entries) => entries[k]?.[1] as unknown)]),
  );
};

function latinCounts(n: number) {
  const { all, reduced } = latinSquareCount(n);
  return { reduced: Number(reduced), all: Number(all) };
}

/** Made, and counted, where it can be. */
function graecoLatin(n: number) {
  if (whyNoGraecoLatin(n) !== null) return { exists: false };
  const [latin, greek] = randomGraecoLatin(n, randomFromSeed(`outside ${n}`));
  return { exists: isGraecoLatin(latin, greek) };
}

/** Our own orders, counted; where the example of that size counts otherwise, its count. */
function carryOver(given: Json, n: number, i: number) {
  const examples = (given.input as Json).examples as readonly (readonly number[])[][] | undefined;
  const counted = [carryOverOrders(n), ...(examples?.[i] === undefined ? [] : [examples[i]])].map(
    (orders) => ({
      rows: orders.length,
      ordered_pairs_each: evenNeighbours(orders),
    }),
  );
  const [own] = counted;
  return counted.find((c) => JSON.stringify(c) !== JSON.stringify(own)) ?? (own as object);
}

function cellsOf(given: Json, width: 1 | 2): readonly (readonly string[])[] {
  const rows = given.rows ?? (given.input as Json | undefined)?.rows;
  if (!isList(rows, "string")) throw new NotReadable("rows is not a list of texts");
  const cells = (row: string) =>
    /\s/.test(row.trim()) ? row.trim().split(/\s+/) : (row.match(new RegExp(`.{${width}}`, "g")) ?? []);
  return (rows as string[]).map(cells);
}

function validGraecoLatin(given: Json) {
  const cells = cellsOf(given, 2);
  const part = (i: number) => cells.map((row) => row.map((cell) => cell[i] ?? ""));
  return { valid: isGraecoLatin(part(0), part(1)) };
}

function fraction(given: Json) {
  const { factors, generators } = given;
  if (typeof factors !== "number" || !isList(generators, "string"))
    throw new NotReadable("factors is not a number, or generators no list of texts");
  const found = fractionOf(factors, generators as string[]);
  return {
    runs: found.runs,
    resolution: found.resolution,
    word_length_pattern: found.wordLengths,
    defining_words: found.definingWords,
    aliases_up_to_two_factor: found.aliases,
    clear_two_factor: found.clearPairs,
  };
}

function plackettBurman(given: Json) {
  const row = given.first_row;
  if (typeof row !== "string" || !/^[+-]+$/.test(row))
    throw new NotReadable("first_row is not a row of signs");
  const runs = screenFromRow([...row].map((sign) => (sign === "+" ? 1 : -1)));
  return { orthogonal: isOrthogonal(runs), XtX_diag: runs.length, columns: runs[0]?.length };
}

function dOptimal(given: Json) {
  const rows = monomialRows(table(given, "candidates"), table((given.model ?? {}) as Json, "exponents"));
  const runs = count(given);
  const found = optimalRuns(rows, runs, starts, randomFromSeed("outside"));
  const parameters = rows[0]?.length ?? 0;
  const continuous = bestPossible(rows);
  const D = Math.exp(found.logDeterminant / parameters) / runs;
  return {
    parameters,
    det_XtX: Math.exp(found.logDeterminant),
    D,
    D_at_least: D,
    continuous_det_M: Math.exp(continuous),
    continuous_D: Math.exp(continuous / parameters),
    D_efficiency_vs_continuous: D / Math.exp(continuous / parameters),
  };
}

const numbersIn = (row: Row): BlockNumbers => ({
  treatments: numberIn(row, "v"),
  blocks: numberIn(row, "b"),
  timesEach: numberIn(row, "r"),
  blockSize: numberIn(row, "k"),
  meetings: numberIn(row, "lambda"),
});

/** 0 where it is refused; what the catalogue's authors built has to be made here as well. */
function catalogued(row: Row) {
  const wanted = numbersIn(row);
  if (blockExistence(wanted).verdict === "impossible") return { exists: 0 };
  if (row.reason === "built-here") balancedBlocks(wanted);
  return { exists: 1 };
}

function witness(row: Row) {
  const blocks = (row.blocks ?? "").trim().split(/\s+/);
  const { balanced, numbers: n, because } = countBlocks(blocks.map((block) => block.split(".")));
  if (!balanced) throw new Error(because ?? "not balanced");
  return { v: n.treatments, b: n.blocks, r: n.timesEach, k: n.blockSize, lambda: n.meetings };
}

const sizes = ["v", "b", "r", "k", "lambda"] as const;
const named = (row: Row): string => sizes.map((name) => `${name} ${row[name]}`).join(", ");

/** Squares, incomplete blocks, fractions, screens and optimal runs. */
export const topic: Topic = {
  kinds: {
    count: (given) => along(given, latinCounts),
    "max-mutually-orthogonal": (given) => along(given, (n) => ({ max: mutuallyOrthogonal(n).max })),
    existence: (given) => along(given, graecoLatin),
    "carry-over": (given) => along(given, (n, i) => carryOver(given, n, i)),
    "valid-latin": (given) => ({ valid: isLatinSquare(cellsOf(given, 1)) }),
    "valid-graeco-latin": validGraecoLatin,
    fraction,
    "plackett-burman": plackettBurman,
    "d-optimal": dOptimal,
    "d-optimal-published": dOptimal,
  },
  tables: {
    "bibd-catalogue.csv": perRow({
      inputs: sizes,
      expected: { exists: ["exact", 0] },
      others: ["reason", "nonisomorphic"],
      id: named,
      compute: catalogued,
    }),
    "bibd-witnesses.csv": perRow({
      inputs: ["blocks"],
      expected: Object.fromEntries(sizes.map((name) => [name, ["exact", 0]])),
      id: (row) => `blocks of ${named(row)}`,
      compute: witness,
    }),
  },
};
