import { describe, expect, test } from "vitest";
import { randomFromSeed } from "../../random.ts";
import { columnsOf, contrasts, type OptimalProblem, optimalLevels } from "./coordinate-exchange.ts";
import { dot, Information, logDeterminant } from "./information.ts";
import { bestPossible, monomialRows, optimalRuns } from "./optimal-runs.ts";

const random = () => randomFromSeed("optimal");

test("adding and leaving out runs keeps the inverse, and the exchange formula holds", () => {
  const draw = random();
  const rows = Array.from({ length: 9 }, () => Float64Array.from({ length: 4 }, () => draw() * 2 - 1));
  const [x, z, ...others] = rows as [Float64Array, Float64Array, ...Float64Array[]];
  const before = new Information([x, ...others], 4);
  const [dx, dz] = [before.times(x), before.times(z)];
  const formula = (1 + dot(z, dz)) * (1 - dot(x, dx)) + dot(x, dz) ** 2;
  const ratio = Math.exp(logDeterminant([z, ...others]) - logDeterminant([x, ...others]));
  expect(Math.abs(formula / ratio - 1)).toBeLessThan(1e-5); // a trace is lent to every column
  before.add(z);
  before.remove(x);
  const fresh = new Information([z, ...others], 4);
  for (let i = 0; i < 16; i++) expect(before.inverse[i]).toBeCloseTo(fresh.inverse[i] as number, 6);
});

test("fewer runs than things to find out are refused", () => {
  const rows = monomialRows([[-1], [0], [1]], [[0], [1], [2]]);
  expect(() => optimalRuns(rows, 2, 5, random())).toThrow("There are 3 things to find out");
});

test("candidates that cannot part the columns are refused", () => {
  const rows = monomialRows([[-1], [1]], [[0], [2]]);
  expect(() => optimalRuns(rows, 4, 5, random())).toThrow("cannot tell the columns");
});

test("the best weights of a quadratic in one thing are thirds at the ends and the middle (Kiefer and Wolfowitz, 1960)", () => {
  const rows = monomialRows(
    Array.from({ length: 21 }, (_, i) => [i / 10 - 1]),
    [[0], [1], [2]],
  );
  expect(Math.exp(bestPossible(rows))).toBeCloseTo(4 / 27, 9);
});

describe("levels by changing one at a time", () => {
  const problem = (over: Partial<OptimalProblem> = {}): OptimalProblem => {
    const blockOf = over.blockOf ?? [0, 0, 0, 0, 1, 1, 1, 1];
    return {
      factors: [2, 2, 2].map((k) => ({ own: contrasts(k), crossed: contrasts(k) })),
      together: [],
      blockOf,
      blocks: 2,
      fixed: blockOf.map(() => [null, null, null]),
      allowed: () => true,
      ...over,
    };
  };

  test("three things at two levels in two blocks of four: at right angles, det = 8^5", () => {
    const [best] = optimalLevels(problem(), 20, random());
    expect(best?.logDeterminant).toBeCloseTo(5 * Math.log(8), 9);
  });

  test("contrasts are balanced, at right angles and of one length", () => {
    for (const k of [2, 3, 5]) {
      const rows = contrasts(k);
      for (let a = 0; a < k - 1; a++)
        for (let b = a; b < k - 1; b++)
          expect(rows.reduce((s, r) => s + (r[a] as number) * (r[b] as number), 0)).toBeCloseTo(
            a === b ? k : 0,
            9,
          );
    }
  });

  test("what is forbidden stands nowhere, and what is fixed stays", () => {
    const fixed = problem().blockOf.map((b) => [b, null, null]);
    const laid = optimalLevels(
      problem({ fixed, allowed: (_, [a, b, c]) => !(a === 0 && b === 1 && c === 1) }),
      20,
      random(),
    )[0];
    expect(
      laid?.levels.every(([a, b, c], run) => a === (run < 4 ? 0 : 1) && !(a === 0 && b === 1 && c === 1)),
    ).toBe(true);
  });

  test("the same optimum as by exchange of whole runs, on a full quadratic without blocks", () => {
    const squares = { own: [-1, 0, 1].map((x) => [x, x * x]), crossed: [-1, 0, 1].map((x) => [x]) };
    const one = problem({
      factors: [squares, squares],
      together: [[0, 1]],
      blockOf: Array(7).fill(0),
      blocks: 1,
      fixed: Array(7).fill([null, null]),
    });
    expect(columnsOf(one)).toBe(6);
    // 960 is the enumerated optimum: A. C. Atkinson and A. N. Donev, Optimum Experimental Designs (1992), D-efficiency .945
    expect(Math.exp(optimalLevels(one, 60, random())[0]?.logDeterminant ?? 0)).toBeCloseTo(960, 6);
  });
});
