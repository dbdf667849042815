import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { groupingOf } from "./mixed-equations.ts";
import { factorFrom, modelColumns } from "./model-matrix.ts";
import { fitProportionalOdds, type Link, orderedData } from "./proportional-odds.ts";
import { fitProportionalOddsJudges } from "./proportional-odds-judges.ts";

interface Made {
  readonly id: string;
  readonly answers: readonly string[];
  readonly levels: readonly string[];
  readonly terms: readonly string[];
  readonly factors: Readonly<Record<string, readonly string[]>>;
  readonly columns: Readonly<Record<string, readonly string[]>>;
  readonly judges: readonly string[] | null;
  readonly link: Link;
  readonly expected: {
    readonly coefficients: readonly { term: string; estimate: number; standardError: number }[];
    readonly judgeDeviation?: number;
    readonly logLikelihood: number;
  };
}

// Made by clm and clmm of the package ordinal in R: scripts/reference/ordered.R.
const file = new URL("../../../../test/check-values/statistics/ordered-clmm.json", import.meta.url);
const { cases } = JSON.parse(readFileSync(file, "utf8")) as { cases: readonly Made[] };

describe("ordered answers: clm and clmm", () => {
  test.each(cases.map((made) => [made.id, made] as const))("%s", (_, made) => {
    const rows = made.answers.length;
    const factors = Object.fromEntries(
      Object.entries(made.factors).map(([name, levels]) => [
        name,
        { levels, values: made.columns[name] ?? [] },
      ]),
    );
    const data = orderedData(made.answers, made.levels, modelColumns(made.terms, { rows, factors }));
    const { expected, judges } = made;
    const fit =
      judges === null
        ? fitProportionalOdds(data, made.link)
        : fitProportionalOddsJudges(data, groupingOf("judge", judges), made.link);
    expectNear(fit.logLikelihood, expected.logLikelihood, { absolute: 1e-6 });
    expected.coefficients.forEach(({ term, estimate, standardError }, i) => {
      expect(fit.coefficients[i]?.term).toBe(term);
      expectNear(fit.coefficients[i]?.estimate ?? Number.NaN, estimate, { absolute: judges ? 1e-4 : 1e-6 });
      expectNear(fit.coefficients[i]?.standardError ?? Number.NaN, standardError, { relative: 1e-4 });
    });
    if (expected.judgeDeviation !== undefined && "judgeDeviation" in fit)
      expectNear(fit.judgeDeviation as number, expected.judgeDeviation, { absolute: 1e-4 });
  });
});

describe("ordered answers: refusals and edges", () => {
  const steps = ["none", "slight", "plain"];
  const recipe = (values: readonly string[]) =>
    modelColumns(["recipe"], { rows: values.length, factors: { recipe: factorFrom(values) } });
  const code = (run: () => unknown): unknown => {
    try {
      return run();
    } catch (error) {
      return (error as { detail?: { code: string } }).detail?.code;
    }
  };
  test("a word that is not on the scale, and no variation", () => {
    expect(code(() => orderedData(["none", "odd"], steps, recipe(["a", "b"])))).toBe("unknown-name");
    expect(code(() => orderedData(["none", "none"], steps, recipe(["a", "b"])))).toBe("no-variation");
  });
  test("one level always above the other: the odds have no end", () => {
    const data = orderedData(
      ["none", "none", "slight", "plain", "plain", "plain"],
      steps,
      recipe(["a", "a", "a", "b", "b", "b"]),
    );
    expect(code(() => fitProportionalOdds(data))).toBe("no-convergence");
  });
  test("a step that nobody gave is left out, and a weight of two counts twice", () => {
    const answers = ["none", "plain", "plain", "none", "plain", "none"];
    const levels = ["a", "a", "b", "b", "b", "a"];
    const plain = fitProportionalOdds(orderedData(answers, steps, recipe(levels)));
    expect(plain.coefficients.map((c) => c.term)).toEqual(["none|plain", "recipeb"]);
    const twice = fitProportionalOdds(orderedData(answers, steps, recipe(levels), [2, 2, 2, 2, 2, 2]));
    expectNear(twice.logLikelihood, 2 * plain.logLikelihood, { relative: 1e-10 });
    // Two steps: the logistic model of a two-by-two table, ln[(2/1)/(1/2)] = ln 4.
    expectNear(plain.coefficients[1]?.estimate ?? Number.NaN, Math.log(4), { relative: 1e-9 });
  });
  test("judges who all say the same shift nothing", () => {
    const answers = ["none", "plain", "none", "plain", "slight", "slight", "plain", "none"];
    const levels = ["a", "b", "b", "a", "a", "b", "b", "a"];
    const data = orderedData(answers, steps, recipe(levels));
    const judges = groupingOf("judge", ["1", "1", "1", "1", "2", "2", "2", "2"]);
    const fit = fitProportionalOddsJudges(data, judges);
    expect(fit.judgeDeviation).toBe(0);
    expectNear(fit.logLikelihood, fitProportionalOdds(data).logLikelihood, { relative: 1e-10 });
  });
});
