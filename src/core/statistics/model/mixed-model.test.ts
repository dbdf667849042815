import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { at } from "../numeric/vector.ts";
import { mixedContrasts } from "./kenward-roger.ts";
import { groupingOf } from "./mixed-equations.ts";
import { fitMixedModel, type MixedFit } from "./mixed-model.ts";
import { type ModelData, modelColumns } from "./model-matrix.ts";

interface Made {
  readonly id: string;
  readonly method: "reml" | "ml";
  readonly response: string;
  readonly terms: readonly string[];
  readonly random: readonly string[];
  readonly factors: Readonly<Record<string, readonly string[]>>;
  readonly columns: Readonly<Record<string, readonly (string | number)[]>>;
  readonly expected: {
    readonly fixed: readonly {
      term: string;
      estimate: number;
      standardError: number;
      adjustedError?: number;
      degreesOfFreedom?: number;
    }[];
    readonly variances: readonly { group: string; variance: number }[];
    readonly criterion: number;
  };
}

// Made by lme4, lmerTest and pbkrtest in R: scripts/reference/mixed.R.
const file = new URL("../../../../test/check-values/statistics/mixed-lme4.json", import.meta.url);
const { cases } = JSON.parse(readFileSync(file, "utf8")) as { cases: readonly Made[] };

function fitOf(made: Made, order = made.columns[made.response]?.map((_, i) => i) ?? []): MixedFit {
  const column = (name: string) => order.map((i) => made.columns[name]?.[i] ?? "");
  const data: ModelData = {
    rows: order.length,
    factors: Object.fromEntries(
      Object.entries(made.factors).map(([name, levels]) => [
        name,
        { levels, values: column(name).map(String) },
      ]),
    ),
    numeric: Object.fromEntries(
      Object.keys(made.columns)
        .filter((name) => !(name in made.factors))
        .map((name) => [name, column(name).map(Number)]),
    ),
  };
  const groupings = made.random.map((name) => {
    const parts = name.split(":").map(column);
    return groupingOf(
      name,
      order.map((_, i) => JSON.stringify(parts.map((p) => p[i]))),
    );
  });
  const response = column(made.response).map(Number);
  return fitMixedModel(response, modelColumns(made.terms, data), groupings, made.method);
}

describe("fitMixedModel: lme4", () => {
  test.each(cases.map((made) => [made.id, made] as const))("%s", (_, made) => {
    const fit = fitOf(made);
    expectNear(fit.criterion, made.expected.criterion, { absolute: 1e-6 });
    const got = [...fit.variances, { group: "Residual", variance: fit.residualVariance }];
    for (const { group, variance } of made.expected.variances) {
      const mine = got.find((v) => v.group === group)?.variance ?? Number.NaN;
      if (variance === 0) expect(mine).toBe(0);
      else expectNear(mine, variance, { relative: 1e-5 });
    }
    made.expected.fixed.forEach(({ term, estimate, standardError }, i) => {
      expect(fit.fixed[i]?.term).toBe(term);
      expectNear(fit.fixed[i]?.estimate ?? Number.NaN, estimate, { relative: 1e-6 });
      expectNear(fit.fixed[i]?.standardError ?? Number.NaN, standardError, { relative: 1e-5 });
    });
  });
});

describe("mixedContrasts: Kenward and Roger by pbkrtest", () => {
  const reml = cases.filter((made) => made.method === "reml");
  test.each(reml.map((made) => [made.id, made] as const))("%s", (_, made) => {
    const contrast = mixedContrasts(fitOf(made));
    for (const { term, estimate, adjustedError, degreesOfFreedom } of made.expected.fixed) {
      const got = contrast(new Map([[term, 1]]));
      if (term !== "(Intercept)") expectNear(got.estimate, estimate, { relative: 1e-6 });
      expectNear(Math.sqrt(got.variance), adjustedError ?? Number.NaN, { relative: 1e-5 });
      expectNear(got.degreesOfFreedom, degreesOfFreedom ?? Number.NaN, { relative: 1e-4 });
    }
  });
});

describe("fitMixedModel: what it must be indifferent to", () => {
  const crossed = cases.find((made) => made.id.startsWith("jars and boards")) as Made;
  test("the order of rows", () => {
    const rows = crossed.columns[crossed.response]?.length ?? 0;
    const turned = fitOf(
      crossed,
      Array.from({ length: rows }, (_, i) => (i * 7) % rows),
    );
    const plain = fitOf(crossed);
    expectNear(turned.criterion, plain.criterion, { absolute: 1e-7 });
    plain.fixed.forEach((f, i) => {
      expectNear(turned.fixed[i]?.estimate ?? Number.NaN, f.estimate, { relative: 1e-6 });
    });
  });

  test("a common offset and the unit of the response", () => {
    const moved = {
      ...crossed,
      columns: {
        ...crossed.columns,
        [crossed.response]: crossed.columns[crossed.response]?.map((y) => 1e6 + 1000 * Number(y)) ?? [],
      },
    };
    const [plain, other] = [fitOf(crossed), fitOf(moved)];
    plain.variances.forEach(({ variance }, k) => {
      expectNear(other.variances[k]?.variance ?? Number.NaN, variance * 1e6, { relative: 1e-5 });
    });
  });
});

describe("fitMixedModel: refusals", () => {
  const intercept = (rows: number) => modelColumns([], { rows, factors: {} });
  const code = (run: () => unknown): unknown => {
    try {
      return run();
    } catch (error) {
      return (error as { detail?: { code: string } }).detail?.code;
    }
  };
  test("one board only, as many boards as rows, no rows left over", () => {
    const y = [1, 2, 4, 3];
    const boards = (labels: readonly string[]) => [groupingOf("board", labels)];
    expect(code(() => fitMixedModel(y, intercept(4), boards(["a", "a", "a", "a"])))).toBe("not-enough-data");
    expect(code(() => fitMixedModel(y, intercept(4), boards(["a", "b", "c", "d"])))).toBe("not-enough-data");
    expect(code(() => fitMixedModel([1], intercept(1), []))).toBe("not-enough-data");
  });
  test("what was treated alike reads exactly alike", () => {
    const boards = [groupingOf("board", ["a", "a", "b", "b", "c", "c"])];
    expect(code(() => fitMixedModel([1, 1, 3, 3, 7, 7], intercept(6), boards))).toBe("no-variation");
    expect(code(() => fitMixedModel([2, 2, 2, 2, 2, 2], intercept(6), boards))).toBe("no-variation");
  });
  test("two random terms that change together", () => {
    const labels = ["a", "a", "b", "b", "c", "c"];
    const fit = fitMixedModel([1, 2, 3, 5, 7, 6], intercept(6), [
      groupingOf("jar", labels),
      groupingOf("plank", labels),
    ]);
    expect(code(() => mixedContrasts(fit))).toBe("contradiction");
  });
  test("without a random term it is least squares", () => {
    const fit = fitMixedModel([1, 2, 4, 5], intercept(4), []);
    expectNear(fit.fixed[0]?.estimate ?? Number.NaN, 3, { relative: 1e-12 });
    expectNear(fit.residualVariance, 10 / 3, { relative: 1e-12 });
    const { variance, degreesOfFreedom } = mixedContrasts(fit)(new Map([["(Intercept)", 1]]));
    expectNear(variance, 10 / 12, { relative: 1e-12 });
    expectNear(degreesOfFreedom, 3, { relative: 1e-12 });
    expect(at(fit.parts.ratios, 0)).toBeUndefined();
  });
});
