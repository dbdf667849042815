import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { Pen } from "../demo/pen.ts";
import { calculate } from "../registry/calculation.ts";
import { verdictCalculation } from "../registry/verdict.ts";
import type { Table } from "../table.ts";
import { trialView } from "../views/trial.ts";
import { trialRows } from "../views/trial-rows.ts";
import { planTrial, type ReadAs, wordsRead } from "./plan-trial.ts";
import { proposeRoles, type RoleMatch } from "./roles.ts";
import { writeTrial } from "./write-trial.ts";

const table = (text: string): Table => {
  const [header = [], ...rows] = text
    .trim()
    .split("\n")
    .map((line) => line.split(",").map((cell) => cell.trim()));
  return { header, rows };
};
const measured: ReadAs = { scale: "measured", levels: [] };
const planned = (text: string, as = measured) => planTrial(table(text), proposeRoles(table(text)), as);
const rolesOf = (text: string) => proposeRoles(table(text)).map((m) => m.role);

function written(plan: ReturnType<typeof planTrial>, look: { name: string; scale: "measured" | "ordered" }) {
  const pen = new Pen("trial import", "Europe/Berlin");
  const now = "2026-11-25T09:00:00Z";
  pen.write(now, "notebook-begun", { name: "from a table" });
  const told = { question: "Theirs", look, seed: "a".repeat(32), salt: "b".repeat(32) };
  const id = writeTrial(plan, told, ({ kind, body, happened, ...around }) =>
    pen.write(happened ?? now, kind, body, around),
  );
  return { id, read: pen.book, trial: trialView(pen.book, id) };
}

const shop = `
Sample, Board, Alcohol, Wood,   Judge, Gloss
1,      A,     ethanol, cherry, Ada,   41
2,      A,     iso,     cherry, Ada,   "44
3,      B,     ethanol, ash,    Ada,   40
4,      B,     iso,     ash,    Ada,   
`.replace('"44', "44");

describe("somebody's table of readings", () => {
  test("its columns are known by their headings, and what varied by few levels that come again", () => {
    expect(rolesOf(shop)).toEqual(["patch", "board", "varies", "varies", "judge", "value"]);
    expect(proposeRoles(table(shop)).map((m) => m.appliedTo)).toEqual([
      "patch",
      "patch",
      "jar",
      "plank",
      "patch",
      "patch",
    ]);
    const other = "code,tip,row number,hardness\n1,a,17,5\n2,b,23,6\n3,a,31,5\n4,b,40,7";
    expect(rolesOf(other)).toEqual(["patch", "varies", null, "value"]);
  });

  test("patches, boards and readings; what was not read is no reading", () => {
    const plan = planned(shop);
    expect(plan.problems).toEqual([]);
    expect(plan.readings.map((r) => r.value)).toEqual([41, 44, 40]);
    expect(plan.patches[3]).toMatchObject({ board: "B", place: 2, wood: "ash", jar: "iso · jar 1" });
    expect(plan.factors.map((f) => [f.name, f.levels])).toEqual([
      ["Alcohol", ["ethanol", "iso"]],
      ["Wood", ["cherry", "ash"]],
    ]);
    expect(plan.jarsToldApart).toBe(false);
  });

  test.each([
    ["no column of patches", "alcohol,gloss\ne,4\ni,5", { why: "no-patch-column", row: null }],
    ["nothing varies", "code,gloss\n1,4\n2,5", { why: "nothing-varies", row: null }],
    ["a row without a patch", "code,alcohol,gloss\n,e,4\n2,i,5", { why: "no-patch", row: 1 }],
    [
      "a level that is missing",
      "code,alcohol,gloss\n1,e,4\n2,,5",
      { why: "no-level", row: 2, column: "alcohol" },
    ],
    [
      "a reading that is no number",
      "code,alcohol,gloss\n1,e,4\n2,i,five",
      { why: "not-a-number", row: 2, value: "five" },
    ],
    [
      "a patch with two recipes",
      "code,alcohol,gloss\n1,e,4\n1,i,5",
      { why: "another-recipe", row: 2, value: "1" },
    ],
    ["a patch on two boards", "code,board,alcohol,gloss\n1,A,e,4\n1,B,e,5", { why: "another-board", row: 2 }],
  ])("%s is told with its row", (_, text, problem) => {
    expect(planned(text).problems).toContainEqual(expect.objectContaining(problem));
  });

  test("words are steps of a scale; one that is none of them is told", () => {
    const words = "code,alcohol,grain\n1,e,none\n2,i,Slight\n3,e,strong";
    expect(wordsRead(table(words), proposeRoles(table(words)))).toEqual(["none", "Slight", "strong"]);
    const plan = planned(words, { scale: "ordered", levels: ["none", "slight"] });
    expect(plan.readings.map((r) => r.value)).toEqual(["none", "slight"]);
    expect(plan.problems).toEqual([{ why: "not-on-the-scale", row: 3, column: "grain", value: "strong" }]);
    expect(wordsRead(table(shop), proposeRoles(table(shop)))).toEqual([]);
  });
});

test("written, a published experiment gives the verdict it gives by itself (Montgomery, hardness testing)", () => {
  const url = new URL("../../../test/check-values/trials/anova/data/hardness-tips.csv", import.meta.url);
  const { header, rows } = table(readFileSync(url, "utf8"));
  const numbered: Table = {
    header: ["patch", ...header],
    rows: rows.map((row, i) => [String(i + 1), ...row]),
  };
  const role = (column: string): RoleMatch["role"] =>
    column === "patch" ? "patch" : column === "tip" ? "varies" : column === "coupon" ? "board" : "value";
  const matches = numbered.header.map(
    (name, column): RoleMatch => ({
      column,
      header: name,
      role: role(name),
      appliedTo: "patch",
      sample: [],
    }),
  );
  const plan = planTrial(numbered, matches, measured);
  expect(plan.problems).toEqual([]);
  const { trial } = written(plan, { name: "hardness", scale: "measured" });
  if (trial === null) throw new Error("the trial is there");
  expect(trial.key.state).toBe("open");
  const answer = calculate(verdictCalculation, {
    response: { name: "hardness", scale: "measured", matters: 0.2 },
    compare: "tip",
    appliedTo: { tip: "patch" },
    rows: trialRows(trial, "hardness", "tip", 1, "as laid out"),
  });
  if (!answer.ok) throw new Error(answer.error.message);
  const verdict = answer.value as ReturnType<typeof verdictCalculation.run>;
  expectNear(verdict.method.errorMeanSquare ?? Number.NaN, 0.08 / 9, { relative: 1e-9 });
  expect(verdict.degreesOfFreedom).toBe(9);
});
