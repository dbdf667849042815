import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkTable } from "../../../../test/check-table.ts";
import { expectNear } from "../../../../test/near.ts";
import { randomFromSeed, randomNormal } from "../../random.ts";
import { type Residual, residualRemarks } from "../model/residual-checks.ts";
import { mixedComparison } from "./mixed-comparison.ts";
import { oddsEffect } from "./odds-beside.ts";
import { orderedEvidence } from "./ordered-evidence.ts";
import type { Reading } from "./readings.ts";
import { type DealtUnit, stratifiedPermutation } from "./stratified-permutation.ts";
import { verdictMeasured } from "./verdict-measured.ts";
import { verdictOrdered } from "./verdict-ordered.ts";

const reading = (given: Partial<Reading> & Pick<Reading, "patch" | "value" | "factors">): Reading => ({
  jar: undefined,
  plank: undefined,
  board: undefined,
  judge: undefined,
  ...given,
});

interface MadeByLme4 {
  readonly id: string;
  readonly columns: Readonly<Record<string, readonly (string | number)[]>>;
  readonly expected: {
    readonly fixed: readonly {
      term: string;
      estimate: number;
      adjustedError: number;
      degreesOfFreedom: number;
    }[];
  };
}
const { cases } = JSON.parse(
  readFileSync(new URL("../../../../test/check-values/statistics/mixed-lme4.json", import.meta.url), "utf8"),
) as { cases: readonly MadeByLme4[] };
const made = (start: string): MadeByLme4 => cases.find((c) => c.id.startsWith(start)) as MadeByLme4;

describe("lost patches: the mixed model of lme4 with pbkrtest's degrees of freedom", () => {
  const { columns, expected } = made("jars and boards");
  const readings = (columns.gloss ?? []).map((value, i) =>
    reading({
      patch: String(i),
      jar: String(columns.jar?.[i]),
      board: String(columns.board?.[i]),
      factors: { recipe: String(columns.recipe?.[i]) },
      value: Number(value),
    }),
  );
  const mixed = mixedComparison(readings, "recipe", []);

  test("every pair", () => {
    for (const { term, estimate, adjustedError, degreesOfFreedom } of expected.fixed.slice(1)) {
      const found = mixed.difference(term.replace("recipe", ""), "a");
      expectNear(found.estimate, estimate, { relative: 1e-6 });
      expectNear(Math.sqrt(found.variance), adjustedError, { relative: 1e-5 });
      expectNear(found.degreesOfFreedom, degreesOfFreedom, { relative: 1e-4 });
    }
    expect(mixed.variances.map((v) => v.group)).toEqual(["jar", "board"]);
  });
  test("the verdict itself keeps to mean squares, and differs little", () => {
    const verdict = verdictMeasured(readings, { compare: "recipe", appliedTo: "jar", matters: 3 });
    expect(verdict.method.name).toContain("analysis of variance");
    const pair = verdict.pairs.find((p) => p.a === "a" && p.b === "b");
    expectNear(pair?.difference ?? Number.NaN, mixed.difference("a", "b").estimate, { absolute: 0.5 });
  });
});

describe("three judges or more are random, and so are their tastes", () => {
  const random = randomFromSeed("judges");
  const judges = ["a", "b", "c", "d"].map((name) => ({
    name,
    shift: randomNormal(random),
    taste: 2 * randomNormal(random),
  }));
  const readings = judges.flatMap(({ name, shift, taste }) =>
    Array.from({ length: 16 }, (_, i) =>
      reading({
        patch: String(i),
        judge: name,
        factors: { recipe: i % 2 === 0 ? "x" : "y" },
        value: shift + (i % 2) * taste + 0.3 * randomNormal(random),
      }),
    ),
  );
  const question = { compare: "recipe", appliedTo: "patch", matters: 1 } as const;
  test("judges who disagree leave few degrees of freedom: about one less than there are judges", () => {
    const verdict = verdictMeasured(readings, question);
    expect(verdict.method.terms).toContain("random: judge by recipe");
    expectNear(verdict.degreesOfFreedom, 3, { absolute: 0.3 });
  });
  test("two judges stay these two judges", () => {
    const two = readings.filter((r) => r.judge === "a" || r.judge === "b");
    expect(verdictMeasured(two, question).method.name).toContain("analysis of variance");
  });
});

describe("Dunnett against a control", () => {
  // The same data and printed intervals as the certified topic: recovery of blankets (R, package multcomp).
  const file = JSON.parse(
    readFileSync(new URL("../../../../test/check-values/trials/anova/cases.json", import.meta.url), "utf8"),
  ) as {
    cases: readonly {
      kind: string;
      data: string;
      model: { response: string; compare: string; control: string };
      expected: { critical_05: number; comparisons: readonly { pair: string; diff: number; se: number }[] };
    }[];
  };
  const dunnett = file.cases.filter((c) => c.kind === "dunnett");
  test("there are cases", () => {
    expect(dunnett.length).toBeGreaterThan(0);
  });
  test.each(dunnett.map((c) => [c.data, c] as const))("%s", (data, { model, expected }) => {
    const readings = checkTable(`trials/anova/${data}`).map((row, i) =>
      reading({
        patch: String(i),
        factors: { level: row[model.compare] ?? "" },
        value: Number(row[model.response]),
      }),
    );
    const verdict = verdictMeasured(readings, {
      compare: "level",
      appliedTo: "patch",
      matters: 1,
      control: model.control,
    });
    expect(verdict.pairs).toHaveLength(expected.comparisons.length);
    for (const { pair, diff, se } of expected.comparisons) {
      const found = verdict.pairs.find((p) => `${p.a} - ${p.b}` === pair);
      expectNear(found?.difference ?? Number.NaN, diff, { relative: 1e-9 });
      // multcomp's quantile is quasi-Monte Carlo
      expectNear((found?.interval[1] ?? Number.NaN) - diff, expected.critical_05 * se, { relative: 2e-3 });
    }
  });
});

describe("permutation within strata", () => {
  const unit = (stratum: string, level: string, total: number): DealtUnit => ({
    stratum,
    level,
    total,
    count: 1,
  });
  test("four against four, wholly apart: 2 of 70 dealings", () => {
    const units = [1, 2, 3, 4, 5, 6, 7, 8].map((v, i) => unit("", i < 4 ? "a" : "b", v - 4.5));
    expect(stratifiedPermutation(units, randomFromSeed("p"))).toMatchObject({
      pValue: 2 / 70,
      dealings: 70,
      exact: true,
    });
  });
  test("six pairs that all point one way: 2 of 64, the sign test", () => {
    const units = Array.from({ length: 6 }, (_, i) => [
      unit(`${i}`, "a", 0.5),
      unit(`${i}`, "b", -0.5),
    ]).flat();
    expect(stratifiedPermutation(units, randomFromSeed("p"))).toMatchObject({ pValue: 2 / 64, dealings: 64 });
  });
  test("too many to try: drawn, and the same for the same seed", () => {
    const random = randomFromSeed("noise");
    const units = Array.from({ length: 40 }, (_, i) => unit("", i < 20 ? "a" : "b", randomNormal(random)));
    const [one, two] = [1, 2].map(() => stratifiedPermutation(units, randomFromSeed("p")));
    expect(one).toEqual(two);
    expect(one?.exact).toBe(false);
    expect(one?.dealings).toBe(10_000);
  });
});

describe("ordered responses: what stands beside the shares", () => {
  test("two steps: the effect is the difference of two probabilities", () => {
    const share = (x: number) => 1 / (1 + Math.exp(-x));
    expectNear(oddsEffect([0.4], 1, -0.5), share(1 - 0.4) - share(-0.5 - 0.4), { absolute: 1e-12 });
    expect(oddsEffect([-1, 1], 0.7, 0.7)).toBeCloseTo(0, 12);
  });
  test("nine boards of ten on which b stands higher, one level: 4 of 1024 dealings, and all kinds agree", () => {
    const readings = Array.from({ length: 10 }, (_, board) =>
      ["a", "b"].map((level) =>
        reading({
          patch: `${level}${board}`,
          board: `${board}`,
          factors: { recipe: level },
          value: level === "a" ? board % 3 : Math.min(4, (board % 3) + (board === 4 ? 0 : 2)),
        }),
      ),
    ).flat();
    const question = { compare: "recipe", appliedTo: "patch", matters: 0.3 } as const;
    const verdict = verdictOrdered(readings, question);
    const beside = orderedEvidence(readings, { ...question, ranked: false }, verdict, randomFromSeed("v"));
    expect(beside.evidence).toEqual([
      { kind: "shares", differs: true },
      { kind: "permutation", differs: true },
      { kind: "odds", differs: true },
    ]);
    expect(beside.permutation?.pValue).toBe(4 / 1024);
  });
});

describe("residuals", () => {
  const random = randomFromSeed("residuals");
  const residuals = (of: (i: number, noise: number) => Partial<Residual>): Residual[] =>
    Array.from({ length: 40 }, (_, i) => ({
      patch: `p${i}`,
      level: i < 20 ? "a" : "b",
      fitted: 40 + (i % 20),
      residual: 0,
      leverage: 0.1,
      ...of(i, randomNormal(random)),
    }));
  test("plain noise gets each remark once in a hundred times", () => {
    const remarks = Array.from({ length: 400 }, () =>
      residualRemarks(
        residuals((_, noise) => ({ residual: noise, leverage: 0 })),
        40,
      ),
    ).flat();
    for (const code of ["one-patch-apart", "spread-differs", "spread-grows"])
      expect(remarks.filter((r) => r.code === code).length).toBeLessThanOrEqual(12);
  });
  test("one patch far off is named", () => {
    const far = residuals((i, noise) => ({ residual: i === 7 ? 8 : noise }));
    expect(residualRemarks(far, 36)[0]).toMatchObject({ code: "one-patch-apart", patch: "p7" });
  });
  test("levels that scatter unequally, and scatter that grows", () => {
    const wide = residuals((i, noise) => ({ residual: i < 20 ? noise : 6 * noise }));
    expect(residualRemarks(wide, 36).map((r) => r.code)).toContain("spread-differs");
    const growing = residuals((i, noise) => ({ residual: noise * 0.15 * (i % 20), fitted: i % 20 }));
    expect(residualRemarks(growing, 36).map((r) => r.code)).toContain("spread-grows");
  });
});
