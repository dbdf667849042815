import { describe, expect, test } from "vitest";
import { tableOf } from "../../controls/table-of.ts";
import { asksForUnit, chosenField, matchesOf } from "./columns.ts";

describe("a list of jars", () => {
  test("commas, semicolons and tabs separate; what is no list says why", () => {
    for (const mark of [",", ";", "\t"]) {
      const read = tableOf(`\uFEFFJar${mark}Cut\nL1${mark}2 lb\n`);
      expect(read).toMatchObject({ ok: true, value: { header: ["Jar", "Cut"] } });
    }
    expect(tableOf("  ")).toEqual({ ok: false, error: "empty" });
    expect(tableOf("Jar,Cut\n,\n")).toEqual({ ok: false, error: "no-rows" });
    expect(tableOf("just words\nand more")).toEqual({ ok: false, error: "one-column" });
    expect(tableOf('Jar,Cut\n"L1,2 lb')).toEqual({ ok: false, error: "unreadable" });
  });
});

describe("its columns", () => {
  const read = tableOf("Jar,Flakes,Strength,When\nL1,57,95,5/6/2026\n");
  const table = read.ok ? read.value : { header: [], rows: [] };

  test("a choice takes the place of a proposal, and no two columns are the same", () => {
    const first = matchesOf(table, {});
    expect(first.map((match) => match.field)).toEqual(["code", "resin-amount", "strength", "mixed"]);
    const choices = chosenField(first, {}, 2, "resin-amount");
    expect(matchesOf(table, choices).map((match) => match.field)).toEqual([
      "code",
      null,
      "resin-amount",
      "mixed",
    ]);
  });

  test("bare numbers ask for their unit until it is told", () => {
    const column = (choices = {}) => matchesOf(table, choices)[1];
    expect(asksForUnit(column() as never)).toBe(true);
    expect(asksForUnit(column({ 1: { unit: "g" } }) as never)).toBe(false);
    expect(column({ 1: { unit: "g" } })?.unit).toBe("g");
  });

  test("a date that may begin with the day or the month is told by hand", () => {
    expect(matchesOf(table, {})[3]?.dayOrder).toBeNull();
    expect(matchesOf(table, { 3: { dayOrder: "day-month-year" } })[3]?.dayOrder).toBe("day-month-year");
  });
});
