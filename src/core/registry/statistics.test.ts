import { describe, expect, test } from "vitest";
import { calculate } from "./calculation.ts";
import { oddOneOutCalculation } from "./odd-one-out.ts";
import { readyTimeCalculation } from "./ready-time.ts";
import { verdictCalculation } from "./verdict.ts";

type Json = Record<string, unknown>;

const refused = (calculation: Parameters<typeof calculate>[0], input: unknown) => {
  const result = calculate(calculation, input);
  return result.ok ? undefined : result.error;
};
const answered = (calculation: Parameters<typeof calculate>[0], input: unknown): Json => {
  const result = calculate(calculation, input);
  if (!result.ok) throw new Error(result.error.message);
  return result.value as Json;
};

const row = (board: string, alcohol: string, value: unknown, more: Json = {}): Json => ({
  patch: `${board}${alcohol}${more.jar ?? ""}`,
  jar: alcohol,
  block: board,
  factors: { alcohol },
  value,
  ...more,
});
const rows = ["b1", "b2", "b3"].flatMap((b, i) => [
  row(b, "e", 41 + i),
  row(b, "i", 44.5 + i),
  row(b, "p", 47 - i / 3),
]);
const gloss = {
  response: { name: "gloss", scale: "measured", matters: 5 },
  compare: "alcohol",
  appliedTo: { alcohol: "jar" },
  rows,
};
const withRows = (change: (r: Json, i: number) => Json): Json => ({ ...gloss, rows: rows.map(change) });

describe("verdict: what comes in", () => {
  test("labels may be numbers, and what is not known may be null", () => {
    const given = withRows((r, i) => ({
      ...r,
      patch: i,
      plank: null,
      judge: null,
      occasion: 1,
      daysSinceCoat: 7,
    }));
    expect(answered(verdictCalculation, given)).toMatchObject({
      about: "these jars",
      degreesOfFreedom: 4,
      flags: [],
    });
  });
  test("words of an ordered scale are read by its steps", () => {
    const levels = ["dull", "soft", "bright"];
    const given = {
      ...gloss,
      response: { name: "look", scale: "ordered", levels, matters: 0.4 },
      rows: rows.map((r, i) => ({ ...r, value: levels[i % 3] })),
    };
    const found = answered(verdictCalculation, given);
    expect(found.pairs).toContainEqual(expect.objectContaining({ a: "e", b: "p", difference: -1 }));
  });
});

describe("verdict: what is refused", () => {
  test.each<[string, unknown, Json]>([
    ["an unknown field", { ...gloss, alpha: 0.01 }, { code: "unknown-field", field: "alpha" }],
    [
      "an unknown field of a row",
      withRows((r) => ({ ...r, gloss: 3 })),
      { code: "unknown-field", field: "rows[0].gloss" },
    ],
    ["a factor that no row has", { ...gloss, compare: "wood" }, { code: "unknown-name", field: "compare" }],
    [
      "a factor that one row lacks",
      withRows((r, i) => (i === 4 ? { ...r, factors: {} } : r)),
      { code: "missing", field: "rows[4].factors.alcohol" },
    ],
    [
      "one level only",
      withRows((r) => ({ ...r, factors: { alcohol: "e" } })),
      { code: "no-variation", field: "rows.factors.alcohol" },
    ],
    [
      "a level that nobody read",
      withRows((r) => ((r.factors as Json).alcohol === "p" ? { ...r, value: null } : r)),
      {
        code: "not-enough-data",
        field: "rows.factors.alcohol",
        value: "p",
        message: expect.stringMatching(/ Rows \d+(, \d+)+ would need one\.$/),
      },
    ],
    [
      "a place that is not told",
      { ...gloss, appliedTo: {} },
      { code: "missing", field: "appliedTo.alcohol" },
    ],
    [
      "a place that is not one",
      { ...gloss, appliedTo: { alcohol: "room" } },
      { code: "unknown-name", field: "appliedTo.alcohol" },
    ],
    [
      "a word where a number is read",
      withRows((r, i) => (i === 2 ? { ...r, value: "47" } : r)),
      { code: "wrong-type", field: "rows[2].value" },
    ],
    [
      "a word that is not on the scale",
      {
        ...gloss,
        response: { name: "look", scale: "ordered", levels: ["a", "b"] },
        rows: rows.map((r) => ({ ...r, value: "c" })),
      },
      { code: "unknown-name", field: "rows[0].value", limits: { allowed: ["a", "b"] } },
    ],
    [
      "a share that matters of one or more",
      { ...gloss, response: { name: "look", scale: "ordered", matters: 1 } },
      { code: "out-of-range", field: "response.matters" },
    ],
    [
      "a response of which nobody knows what matters",
      { ...gloss, response: { name: "hardness", scale: "measured" } },
      { code: "missing", field: "response.matters" },
    ],
    ["one board", { ...gloss, rows: rows.slice(0, 3) }, { code: "not-enough-data", field: "rows" }],
    [
      "values that are all alike",
      withRows((r) => ({ ...r, value: 5 })),
      {
        code: "no-variation",
        field: "rows.value",
        message: expect.stringContaining(`Rows ${rows.map((_, i) => i + 1).join(", ")} all read the same`),
      },
    ],
    [
      "ranks that are not ranks",
      {
        ...gloss,
        response: { name: "look", scale: "ranked" },
        rows: rows.map((r, i) => ({ ...r, block: "b", value: i + 2 })),
      },
      {
        code: "contradiction",
        field: "rows.value",
        message: expect.stringContaining(
          `Rows ${rows.map((_, i) => i + 1).join(", ")} (board b) are no ranks`,
        ),
      },
    ],
    [
      "one code twice on one occasion",
      { ...gloss, rows: [...rows.map((r) => ({ ...r, occasion: 1 })), { ...rows[1], occasion: 1 }] },
      {
        code: "contradiction",
        field: `rows[${rows.length}].patch`,
        message: expect.stringContaining(`Row 2 and row ${rows.length + 1} are both `),
      },
    ],
  ])("%s", (_, input, problem) => {
    expect(refused(verdictCalculation, input)).toMatchObject(problem);
  });
});

describe("verdict: what is said beside it", () => {
  const codes = (given: unknown) => (answered(verdictCalculation, given).flags as Json[]).map((f) => f.code);
  test("readings of unequal age", () => {
    expect(codes(withRows((r, i) => ({ ...r, daysSinceCoat: i < 3 ? 2 : 30 })))).toEqual(["unequal-days"]);
    expect(codes(withRows((r, i) => (i < 3 ? { ...r, daysSinceCoat: 2 } : r)))).toEqual(["days-missing"]);
    expect(codes(withRows((r) => ({ ...r, daysSinceCoat: 30 })))).toEqual([]);
  });
  test("what matters when nobody said: 5 gloss units, and 0.3 of an ordered scale", () => {
    const without = { ...gloss, response: { name: "gloss", scale: "measured" } };
    expect(answered(verdictCalculation, without)).toMatchObject({
      matters: 5,
      flags: [{ code: "matters-assumed" }],
    });
    const ordered = { ...gloss, response: { name: "look", scale: "ordered" } };
    expect(answered(verdictCalculation, ordered)).toMatchObject({
      matters: 0.3,
      flags: [{ code: "matters-assumed" }],
    });
  });
});

describe("ready-time", () => {
  const jars = [
    { jar: "1", group: "e", notYetH: 2, doneByH: 5 },
    { jar: "2", group: "e", notYetH: 6, doneByH: 9 },
  ];
  test.each<[string, unknown, Json]>([
    [
      "looks out of order",
      [...jars, { jar: "3", group: "e", notYetH: 8, doneByH: 4 }],
      { code: "out-of-range", field: "jars[2].doneByH", limits: { min: 8 } },
    ],
    [
      "ready when mixed",
      [{ jar: "1", group: "e", notYetH: 0, doneByH: 0 }],
      { code: "out-of-range", field: "jars[0].doneByH" },
    ],
    [
      "a time before the mixing",
      [{ jar: "1", group: "e", notYetH: -1, doneByH: 4 }],
      { code: "out-of-range", field: "jars[0].notYetH" },
    ],
    ["no look after", [{ jar: "1", group: "e", notYetH: 1 }], { code: "missing", field: "jars[0].doneByH" }],
    ["no jars", [], { code: "out-of-range", field: "jars" }],
  ])("%s is refused", (_, given, problem) => {
    expect(refused(readyTimeCalculation, { model: "weibull", jars: given })).toMatchObject(problem);
  });
  test("an unknown model is refused with those that are known", () => {
    expect(refused(readyTimeCalculation, { model: "gamma", jars })).toMatchObject({
      code: "unknown-name",
      field: "model",
      limits: { allowed: ["weibull", "lognormal"] },
    });
  });
  test.each([
    [0, 3, "was ready at its first look"],
    [3, null, "has been seen ready yet"],
  ])("not yet at %d, ready by %s: what would fix it is said", (notYetH, doneByH, words) => {
    const found = answered(readyTimeCalculation, {
      model: "weibull",
      jars: [{ jar: "1", group: "e", notYetH, doneByH }],
    });
    expect(found).toMatchObject({ identifiable: false, scale: null, coefficients: [] });
    expect((found.flags as Json[])[0]?.message).toContain(words);
  });
});

describe("odd-one-out", () => {
  test.each<[string, unknown, Json]>([
    [
      "more right than asked",
      { form: "triangle", trials: 5, correct: 6 },
      { code: "out-of-range", field: "correct", limits: { min: 0, max: 5 } },
    ],
    [
      "half an answer",
      { form: "triangle", trials: 5, correct: 2.5 },
      { code: "wrong-type", field: "correct" },
    ],
    ["an unknown form", { form: "pentad", trials: 5, correct: 2 }, { code: "unknown-name", field: "form" }],
    ["no trial", { form: "triangle", trials: 0, correct: 0 }, { code: "out-of-range", field: "trials" }],
  ])("%s is refused", (_, input, problem) => {
    expect(refused(oddOneOutCalculation, input)).toMatchObject(problem);
  });
  test("all right has no end, and few trials no count", () => {
    expect(answered(oddOneOutCalculation, { form: "triangle", trials: 3, correct: 3 })).toMatchObject({
      dPrime: null,
      correctNeeded: { "0.05": 3, "0.001": null },
    });
  });
});
