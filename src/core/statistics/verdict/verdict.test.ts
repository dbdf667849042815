import { describe, expect, test } from "vitest";
import { type CheckRow, checkTable } from "../../../../test/check-table.ts";
import { expectNear } from "../../../../test/near.ts";
import { refusalOf } from "../../../../test/refusal-of.ts";
import { randomFromSeed, randomNormal, shuffled } from "../../random.ts";
import type { Reading } from "./readings.ts";
import { type Verdict, verdictMeasured } from "./verdict-measured.ts";

const reading = (given: Partial<Reading> & Pick<Reading, "patch" | "value" | "factors">): Reading => ({
  jar: undefined,
  plank: undefined,
  board: undefined,
  judge: undefined,
  ...given,
});

const pairOf = (verdict: Verdict, a: string, b: string) => {
  const found = verdict.pairs.find((p) => p.a === a && p.b === b);
  if (found === undefined) throw new Error(`no pair ${a}, ${b}`);
  return found;
};

const hardness = checkTable("trials/anova/data/hardness-tips.csv").map(
  (row: CheckRow, i): Reading =>
    reading({
      patch: String(i),
      board: row.coupon ?? "",
      factors: { tip: row.tip ?? "" },
      value: Number(row.y),
    }),
);
const aboutTips = { compare: "tip", appliedTo: "patch", matters: 0.2 } as const;

describe("blocks taken out: Montgomery, hardness testing", () => {
  const verdict = verdictMeasured(hardness, aboutTips);

  test("the error is what is left over of tips and coupons: 0.08 on 9 degrees of freedom", () => {
    expectNear(verdict.method.errorMeanSquare ?? Number.NaN, 0.08 / 9, { relative: 1e-10 });
    expect(verdict.degreesOfFreedom).toBe(9);
    expect(verdict.method.terms).toEqual(["block", "tip"]);
    expect(verdict.about).toBe("tip");
  });

  test("the interval is the printed quantile times the error: q(0.05; 4, 9) = 4.415, so ± 0.208", () => {
    const { difference, interval } = pairOf(verdict, "3", "4");
    expectNear(difference, 9.45 - 9.875, { relative: 1e-10 });
    expectNear(interval[1] - difference, (4.415 * Math.sqrt(0.08 / 9)) / 2, { absolute: 1e-4 });
  });

  test("tip 4 is harder than tip 3 by more than matters, and than the others in direction only", () => {
    expect(pairOf(verdict, "3", "4").verdict).toBe("different");
    expect(pairOf(verdict, "1", "4")).toMatchObject({ verdict: "unclear", directionSure: true });
    expect(verdict.letters).toEqual({ "4": "a", "3": "b", "2": "b", "1": "b" });
  });

  test("like patches lie apart by the root of the error", () => {
    expectNear(verdict.noise?.patch ?? Number.NaN, Math.sqrt(0.08 / 9), { relative: 1e-10 });
    expect(verdict.noise?.unit).toBeNull();
  });

  test("a difference that matters of 1 makes every pair as good as equal", () => {
    const { pairs, moreNeeded } = verdictMeasured(hardness, { ...aboutTips, matters: 1 });
    expect(pairs.every((p) => p.verdict === "equal")).toBe(true);
    expect(moreNeeded).toEqual({ jars: 0, boards: 0 });
  });
});

// D. C. Montgomery, Design and Analysis of Experiments (2013), example 14.1: purity of material from three
// suppliers, four batches each, three determinations. Printed: SS 15.06, 69.92, 63.33; batches against the rest.
const purity = [
  [
    [1, -1, 0],
    [-2, -3, -4],
    [-2, 0, 1],
    [1, 4, 0],
  ],
  [
    [1, -2, -3],
    [0, 4, 2],
    [-1, 0, -2],
    [0, 3, 2],
  ],
  [
    [2, 4, 0],
    [-2, 0, 2],
    [1, -1, 2],
    [3, 2, 1],
  ],
].flatMap((batches, s) =>
  batches.flatMap((values, b) =>
    values.map((value, i) =>
      reading({
        patch: `${s}${b}${i}`,
        jar: `supplier ${s + 1}, batch ${b + 1}`,
        factors: { supplier: `${s + 1}` },
        value,
      }),
    ),
  ),
);

describe("the error of the jar: Montgomery, purity of batches from three suppliers", () => {
  const verdict = verdictMeasured(purity, { compare: "supplier", appliedTo: "jar", matters: 1 });
  test("suppliers are held against batches, 69.92 on 9, and not against the determinations", () => {
    expect(verdict.method.errorTerm).toBe("jar");
    expect(verdict.degreesOfFreedom).toBe(9);
    expectNear((verdict.method.errorMeanSquare ?? 0) * 9, 69.92, { absolute: 0.005 });
    expect(verdict.about).toBe("supplier");
  });
  test("no two suppliers are shown to differ, as in the book (F = 0.97)", () => {
    expect(verdict.pairs.map((p) => p.verdict)).toEqual(["unclear", "unclear", "unclear"]);
    expectNear(pairOf(verdict, "1", "3").difference, -5 / 12 - 14 / 12, { relative: 1e-10 });
  });
  test("one batch of each says something of those batches only", () => {
    const one = purity.filter((r) => r.jar?.endsWith("batch 1"));
    const { about, method } = verdictMeasured(one, { compare: "supplier", appliedTo: "jar", matters: 1 });
    expect(about).toBe("these jars");
    expect(method.errorTerm).toBe("patch");
  });
});

describe("a split plot: Yates's oats, the variety sown on whole plots", () => {
  const oats = checkTable("trials/anova/data/oats-split-plot.csv").map(
    (row, i): Reading =>
      reading({
        patch: String(i),
        board: row.block ?? "",
        jar: `${row.block} ${row.variety}`,
        factors: { variety: row.variety ?? "", nitrogen: row.nitrogen ?? "" },
        value: Number(row.yield),
      }),
  );
  test("the variety is held against whole plots: 601.33 on 10 degrees of freedom", () => {
    const verdict = verdictMeasured(oats, { compare: "variety", appliedTo: "jar", matters: 10 });
    expectNear(verdict.method.errorMeanSquare ?? Number.NaN, 601.330555556, { relative: 1e-8 });
    expect(verdict.degreesOfFreedom).toBe(10);
    const { interval, difference } = pairOf(verdict, "Golden_rain", "Marvellous");
    // q(0.05; 3, 10) = 3.87677675 (scipy 1.17.1), 24 plots a variety
    expectNear(interval[1] - difference, 3.87677675 * Math.sqrt(601.330555556 / 24), { relative: 1e-8 });
  });
  test("the nitrogen is held against what is left within the plots", () => {
    const verdict = verdictMeasured(oats, { compare: "nitrogen", appliedTo: "patch", matters: 10 });
    expect(verdict.method.errorTerm).toBe("patch");
    // 7968.75 + 321.75 on 45 + 6: the interaction of variety and nitrogen stays in the error.
    expectNear(verdict.method.errorMeanSquare ?? Number.NaN, 8290.5 / 51, { relative: 1e-8 });
  });
});

/** A made-up trial: `jars` jars of each alcohol, each on every board once. */
function trial(seed: string, levels: readonly string[], jars: number, boards: number): Reading[] {
  const random = randomFromSeed(seed);
  const effect = new Map(levels.map((level, i) => [level, i === levels.length - 1 ? 4 : 0]));
  return levels.flatMap((level) =>
    Array.from({ length: jars }, () => 0.5 * randomNormal(random)).flatMap((luck, j) =>
      Array.from({ length: boards }, (_, b) =>
        reading({
          patch: `${level}${j}${b}`,
          jar: `${level}${j}`,
          board: `b${b}`,
          factors: { alcohol: level },
          value: (effect.get(level) ?? 0) + luck + b + randomNormal(random),
        }),
      ),
    ),
  );
}
const aboutAlcohol = { compare: "alcohol", appliedTo: "jar", matters: 1 } as const;

describe("properties", () => {
  const rows = trial("properties", ["e", "i", "p"], 3, 4);
  const plain = verdictMeasured(rows, aboutAlcohol);

  test("the order of rows does not matter", () => {
    const other = verdictMeasured(shuffled(rows, randomFromSeed("rows")), aboutAlcohol);
    for (const { a, b, difference, verdict } of plain.pairs) {
      expectNear(pairOf(other, a, b).difference, difference, { absolute: 1e-12 });
      expect(pairOf(other, a, b).verdict).toBe(verdict);
    }
  });

  test("the verdict moves with the labels", () => {
    const renamed: Record<string, string> = { e: "p", i: "e", p: "i" };
    const other = verdictMeasured(
      rows.map((r) => ({ ...r, factors: { alcohol: renamed[r.factors.alcohol ?? ""] ?? "" } })),
      aboutAlcohol,
    );
    for (const p of plain.pairs) {
      const [a, b] = [renamed[p.a] ?? "", renamed[p.b] ?? ""];
      const moved = a < b ? pairOf(other, a, b) : pairOf(other, b, a);
      expect(moved.verdict).toBe(p.verdict);
      expectNear(Math.abs(moved.difference), Math.abs(p.difference), { absolute: 1e-12 });
    }
  });

  test("another zero of the scale changes nothing, another unit the unit", () => {
    const shifted = verdictMeasured(
      rows.map((r) => ({ ...r, value: 1000 + 3 * r.value })),
      { ...aboutAlcohol, matters: 3 },
    );
    for (const p of plain.pairs) {
      expectNear(pairOf(shifted, p.a, p.b).difference, 3 * p.difference, { absolute: 1e-9 });
      expect(pairOf(shifted, p.a, p.b).verdict).toBe(p.verdict);
    }
  });

  test("a reading given twice is one patch, not two", () => {
    const twice = verdictMeasured([...rows, ...rows], aboutAlcohol);
    expect(twice.degreesOfFreedom).toBe(plain.degreesOfFreedom);
    twice.pairs.forEach((p, i) => {
      expectNear(p.interval[0], plain.pairs[i]?.interval[0] ?? Number.NaN, { absolute: 1e-9 });
    });
    expect(twice.wobble).toMatchObject({ sameJudge: 0, readingsPerPatch: 2 });
  });

  test("jars of one level on one board: the board is what was made apart", () => {
    const confounded = rows.filter((r) => r.board === { e: "b0", i: "b1", p: "b2" }[r.factors.alcohol ?? ""]);
    expect(verdictMeasured(confounded, aboutAlcohol).about).toBe("these boards");
  });

  test("one plank of each wood says something of those planks only", () => {
    const woods = rows.map((r) => ({
      ...r,
      plank: r.board === "b0" || r.board === "b1" ? "p1" : "p2",
      factors: { wood: r.board === "b0" || r.board === "b1" ? "cherry" : "ash" },
    }));
    const verdict = verdictMeasured(woods, { compare: "wood", appliedTo: "plank", matters: 1 });
    expect(verdict.about).toBe("these planks");
    expect(verdict.method.errorTerm).toBe("block");
  });
});

describe("what cannot be judged is refused", () => {
  const rows = trial("refusals", ["e", "i"], 2, 2);
  const refusal = (
    readings: readonly Reading[],
    question: Parameters<typeof verdictMeasured>[1] = aboutAlcohol,
  ) => refusalOf(() => verdictMeasured(readings, question));
  test("values that are all alike", () => {
    expect(refusal(rows.map((r) => ({ ...r, value: 7 })))).toMatchObject({ code: "no-variation" });
  });
  test("levels that differ while nothing else does", () => {
    const exact = rows.map((r) => ({ ...r, value: r.factors.alcohol === "e" ? 1 : 2 }));
    expect(refusal(exact)).toMatchObject({ code: "no-variation" });
  });
  test("one board with one patch of each", () => {
    const one = rows.filter((r) => r.board === "b0" && r.jar?.endsWith("0"));
    expect(refusal(one)).toMatchObject({ code: "not-enough-data", field: "rows" });
  });
  test("a jar that carries two levels", () => {
    const mixed = rows.map((r) => ({ ...r, jar: "j" }));
    expect(refusal(mixed)).toMatchObject({ code: "contradiction", field: "appliedTo.alcohol" });
  });
  test("a factor on jars without jars", () => {
    expect(refusal(rows.map((r) => ({ ...r, jar: undefined })))).toMatchObject({
      code: "missing",
      field: "rows.jar",
    });
  });
  test("a factor that changes together with another", () => {
    const twins = rows.map((r) => ({ ...r, factors: { ...r.factors, cut: `${r.factors.alcohol}-cut` } }));
    expect(refusal(twins)).toMatchObject({ code: "contradiction", field: "compare" });
  });
  test("a patch in two places", () => {
    const [first, ...rest] = rows;
    if (first === undefined) throw new Error("no rows");
    expect(refusal([first, { ...first, board: "elsewhere" }, ...rest])).toMatchObject({
      code: "contradiction",
      field: "rows[1].block",
    });
  });
});
