import { describe, expect, test } from "vitest";
import { type CheckRow, checkTable } from "../../../../test/check-table.ts";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { randomFromSeed, randomNormal, shuffled } from "../../random.ts";
import { fitLinearModel, responseWeights } from "./linear-model.ts";
import { factorFrom, type ModelData, modelColumns } from "./model-matrix.ts";
import { anovaInStrata } from "./strata.ts";

const dataOf = (rows: readonly CheckRow[], names: readonly string[]): ModelData => ({
  rows: rows.length,
  factors: Object.fromEntries(names.map((name) => [name, factorFrom(rows.map((r) => r[name] ?? ""))])),
});
const column = (rows: readonly CheckRow[], name: string): number[] => rows.map((r) => Number(r[name]));

describe("published analyses of variance", () => {
  // NIST Statistical Reference Datasets, certified: SiRstv, and SmLs04 whose values lie around 1 000 000.
  test.each([
    ["SiRstv", 0.0511462616, 0.21663656, 1.1804623744],
    ["SmLs01", 1.68, 1.8, 21],
    ["SmLs04", 1.68, 1.8, 21],
  ])("NIST StRD %s", (name, between, within, f) => {
    const rows = checkTable(`trials/anova/data/${name}.csv`);
    const { table } = fitLinearModel(column(rows, "y"), ["treatment"], dataOf(rows, ["treatment"]));
    expectNear(table[0]?.sumOfSquares ?? Number.NaN, between, { relative: 2e-9 });
    expectNear(table[1]?.sumOfSquares ?? Number.NaN, within, { relative: 2e-9 });
    expectNear(table[0]?.f ?? Number.NaN, f, { relative: 2e-9 });
  });

  test("a factorial confounded with blocks: what the blocks hold has no line (Venables and Ripley, npk)", () => {
    const rows = checkTable("trials/anova/data/npk.csv");
    const terms = ["block", "N", "P", "K", "N:P", "N:K", "P:K", "N:P:K"];
    const { table } = fitLinearModel(column(rows, "yield"), terms, dataOf(rows, ["block", "N", "P", "K"]));
    expect(table.map((l) => l.term)).toEqual([...terms.slice(0, -1), "Residuals"]);
    expectNear(table[1]?.f ?? Number.NaN, 12.2587, { absolute: 5e-5 });
    expectNear(table[1]?.pValue ?? Number.NaN, 0.00437, { absolute: 5e-6 });
  });

  test("a split plot: each factor against its own error (Yates 1935, oats)", () => {
    const rows = checkTable("trials/anova/data/oats-split-plot.csv");
    const strata = anovaInStrata(
      column(rows, "yield"),
      ["nitrogen", "variety", "nitrogen:variety"],
      ["block", "block:variety"],
      dataOf(rows, ["block", "nitrogen", "variety"]),
    );
    expect(strata.map((s) => s.stratum)).toEqual(["block", "block:variety", "Within"]);
    const [, whole, within] = strata;
    expectNear(whole?.table[0]?.f ?? Number.NaN, 1.485, { absolute: 5e-4 });
    expectNear(whole?.table[1]?.meanSquare ?? Number.NaN, 601.3, { absolute: 0.05 });
    expectNear(within?.table[0]?.f ?? Number.NaN, 37.686, { absolute: 5e-4 });
    expectNear(within?.table[2]?.meanSquare ?? Number.NaN, 177.1, { absolute: 0.05 });
  });
});

describe("properties", () => {
  const random = randomFromSeed("linear model");
  const labels = Array.from({ length: 24 }, (_, i) => ({
    a: ["x", "y", "z"][i % 3] ?? "",
    b: i % 2 === 0 ? "u" : "v",
    y: 5 + randomNormal(random),
  }));
  const of = (rows: typeof labels): ModelData => ({
    rows: rows.length,
    factors: { a: factorFrom(rows.map((r) => r.a)), b: factorFrom(rows.map((r) => r.b)) },
  });
  const fitted = (rows: typeof labels, shift = 0) =>
    fitLinearModel(
      rows.map((r) => r.y + shift),
      ["a", "b", "a:b"],
      of(rows),
    );

  test("sums of squares add up to that about the mean", () => {
    const { table } = fitted(labels);
    const middle = labels.reduce((t, r) => t + r.y, 0) / labels.length;
    const whole = labels.reduce((t, r) => t + (r.y - middle) ** 2, 0);
    expectNear(
      table.reduce((t, l) => t + l.sumOfSquares, 0),
      whole,
      { relative: 1e-12 },
    );
  });

  test("neither the order of rows nor an offset moves a line", () => {
    const plain = fitted(labels).table;
    for (const other of [fitted(shuffled(labels, random)).table, fitted(labels, 1e6).table]) {
      other.forEach((line, i) => {
        expectNear(line.sumOfSquares, plain[i]?.sumOfSquares ?? Number.NaN, { relative: 1e-8 });
      });
    }
  });

  test("an estimate is its weights times the responses", () => {
    const found = fitted(labels);
    const weights = responseWeights(found, new Map([["ay", 1]]));
    const estimate = labels.reduce((t, r, i) => t + r.y * (weights[i] ?? 0), 0);
    expectNear(estimate, found.coefficients.get("ay") ?? Number.NaN, { relative: 1e-12 });
  });

  test("the cell means of a full model are those of the data", () => {
    const { coefficients: c } = fitted(labels);
    const cell = labels.filter((r) => r.a === "z" && r.b === "v");
    const seen = cell.reduce((t, r) => t + r.y, 0) / cell.length;
    const sum = ["(Intercept)", "az", "bv", "az:bv"].reduce((t, name) => t + (c.get(name) ?? Number.NaN), 0);
    expectNear(sum, seen, { relative: 1e-12 });
  });
});

test("an interaction without its margin takes a column for every level of the other", () => {
  const data: ModelData = {
    rows: 4,
    factors: { a: factorFrom(["x", "x", "y", "y"]), b: factorFrom(["u", "v", "u", "v"]) },
  };
  expect(modelColumns(["a", "a:b"], data).map((c) => c.name)).toEqual([
    "(Intercept)",
    "ay",
    "ax:bv",
    "ay:bv",
  ]);
});

test("an unknown name and a single row are refused", () => {
  const data: ModelData = { rows: 2, factors: { a: factorFrom(["x", "y"]) } };
  expect(() => fitLinearModel([1, 2], ["b"], data)).toThrow(DomainError);
  expect(() => fitLinearModel([1], [], { rows: 1, factors: {} })).toThrow(DomainError);
});
