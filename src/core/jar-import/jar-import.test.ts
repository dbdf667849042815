import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pen } from "../demo/pen.ts";
import { calendarDay } from "../pieces/calendar-day.ts";
import type { Table } from "../table.ts";
import { poundsPerUsGallonFromCut } from "../units.ts";
import { jarFitness, jarIds, jarView } from "../views/jar.ts";
import { type ColumnMatch, proposeColumns } from "./match-columns.ts";
import { type ImportContext, planImport } from "./plan-import.ts";
import { writeImport } from "./write-import.ts";

const now = "2026-11-25T09:00:00Z";
const context: ImportContext = {
  today: calendarDay("2026-11-25"),
  gallon: "us",
  shelf: [],
  codes: [],
};
const tableOf = (text: string): Table => {
  const [header = [], ...rows] = text
    .trim()
    .split("\n")
    .map((line) => line.split("|").map((cell) => cell.trim()));
  return { header, rows };
};
const planned = (text: string, more: Partial<ImportContext> = {}) => {
  const table = tableOf(text);
  return planImport(table, proposeColumns(table), { ...context, ...more });
};
const saidOf = (text: string) => planned(text).problems.map(({ says }) => says);
const pounds = (x: number | undefined) => poundsPerUsGallonFromCut(x as never);

/** Written by a pen into a notebook, as a page or the command line would. */
function written(plan: ReturnType<typeof planned>) {
  const pen = new Pen("jar import", "Europe/Berlin");
  pen.write(now, "notebook-begun", { name: "from paper" });
  const ids = writeImport(plan, ({ kind, body, happened, ...around }) =>
    pen.write(happened ?? now, kind, body, around),
  );
  return { ids, read: pen.book, pen };
}

const paper = `
Jar | Mixed     | Flakes        | Flakes (oz) | Alcohol     | Strength | Alcohol (fl oz) | Notes
A   | 5.10.2026 | Dewaxed lemon | 2           | ethanol     | 190 proof | 8              | for the chairs
B   | 6.10.2026 | Seedlac       | 57 g        | ethanol     | 95       | 237.84 ml       |
C   |           | dewaxed Lemon | 1½          | isopropanol | 99       | 8               |
`;

describe("a list of jars", () => {
  test("its columns are matched by heading and cells", () => {
    const matches = proposeColumns(tableOf(paper));
    expect(matches.map(({ field }) => field)).toEqual([
      "code",
      "mixed",
      "resin",
      "resin-amount",
      "solvent",
      "strength",
      "solvent-amount",
      "note",
    ]);
    expect(matches[3]?.unit).toBe("oz");
    expect(matches[6]?.unit).toBe("floz-us");
    expect(matches[1]?.dayOrder).toBe("day-month-year");
    expect(matches[4]?.sample).toEqual(["ethanol", "ethanol", "isopropanol"]);
  });

  // Common practice, by mass balance: two ounces to a cup of eight fluid ounces is a 2 lb cut.
  test("comes in as jars of the cut that they are, on materials named once", () => {
    const plan = planned(paper);
    expect(plan.problems).toEqual([]);
    const { ids, read } = written(plan);
    expect(jarIds(read)).toHaveLength(3);
    const [a, b, c] = ids.map((id) => jarView(read, id));
    expect(pounds(a?.cut?.value)).toBeCloseTo(2, 2);
    expect(pounds(b?.cut?.value)).toBeCloseTo(2, 3);
    expect([a?.code, a?.madeAt, a?.resins[0]?.name]).toEqual(["A", "2026-10-05T12:00:00Z", "Dewaxed lemon"]);
    expect(a?.waterShare).toBeCloseTo(0.076, 3); // 190 proof is 92.4 % by mass
    expect(read.ofKind("material-bought").map(({ body }) => body.name)).toEqual([
      "Dewaxed lemon",
      "ethanol 190 proof",
      "Seedlac",
      "ethanol 95 %",
      "isopropanol 99 %",
    ]);
    expect(c?.resinSince).toBeNull();
    expect(jarFitness(read, ids[2] ?? "", now)).toMatchObject({
      state: "test first",
      because: "age-not-known",
    });
    const listed = read.making(ids[0] ?? "")?.body.listed;
    expect(listed).toMatchObject({ row: 2, cells: { Notes: "for the chairs", "Flakes (oz)": "2" } });
    expect(read.ofKind("note").map(({ body }) => body.text)).toEqual(["for the chairs"]);
  });

  test("says what was taken for granted", () => {
    const notes = planned("code|resin|alcohol|flakes (g)|cut\nA|lemon|ethanol|57|2").notes;
    expect(notes.map(({ says }) => says)).toEqual([
      "Row 2, column “mixed”: No date is written: its age will not be known.",
      "Row 2, column “alcohol”: No strength is written: ethanol is taken as pure.",
    ]);
  });

  test("takes the shelf's own material of that name", () => {
    const shelf = [
      {
        id: "019a0000-0000-7000-8000-000000000001",
        name: "Lemon",
        form: "resin",
        composition: null,
        resin: null,
      },
    ];
    expect(
      planned("code|resin|alcohol|flakes (g)|cut\nA|lemon|ethanol 95%|57|2", { shelf }).jars[0]?.resinOnShelf,
    ).toBe(shelf[0]?.id);
  });
});

describe("any two amounts say the rest", () => {
  // The production formula and the registered example: 57 g for a 2 lb cut is 237.84 mL, and stands at 285.15 mL.
  test.each([
    ["code|resin|alcohol|flakes (g)|cut (lb)\nA|lemon|ethanol 95 %|57|2"],
    ["code|resin|alcohol|cut|makes (ml)\nA|lemon|ethanol 95 %|2 lb|285.15"],
    ["code|resin|alcohol|flakes (g)|volume (ml)\nA|lemon|ethanol 95 %|57|285.15"],
    ["code|resin|alcohol|alcohol (ml)|cut (lb)\nA|lemon|ethanol 95 %|237.84|2"],
  ])("%s", (text) => {
    const plan = planned(text);
    expect(plan.problems).toEqual([]);
    const { read, ids } = written(plan);
    const jar = jarView(read, ids[0] ?? "");
    expect(pounds(jar?.cut?.value)).toBeCloseTo(2, 3);
    expect((jar?.volume.value ?? 0) * 1e6).toBeCloseTo(285.15, 1);
  });

  test("too few are told, naming the row", () => {
    expect(saidOf("code|resin|alcohol|cut\nA|lemon|ethanol|2")[0]).toMatch(
      /^Row 2.*Two of the resin, the alcohol, the cut and the volume/,
    );
  });

  test("amounts that do not make the written cut are said: the ounces were of weight", () => {
    const text = "code|resin|alcohol|flakes (oz)|alcohol (g)|cut\nA|lemon|ethanol 95 %|2|226.8|2";
    expect(planned(text).notes.map(({ says }) => says)).toContain(
      "Row 2, column “code”: The amounts make a 1.69 lb cut; 2.00 lb is written.",
    );
  });

  test("what is left is what was poured out before", () => {
    const plan = planned("code|resin|alcohol|flakes (g)|cut|left (ml)\nA|lemon|ethanol 95 %|57|2|100");
    const { read, ids } = written(plan);
    expect((jarView(read, ids[0] ?? "")?.volume.value ?? 0) * 1e6).toBeCloseTo(100, 1);
    expect(saidOf("code|resin|alcohol|flakes (g)|cut|left (ml)\nA|lemon|ethanol 95 %|57|2|400")[0]).toContain(
      "More is left than the jar was mixed to",
    );
  });
});

describe("each problem names row, column and value, and nothing is half-written", () => {
  const head = "code|date|resin|alcohol|flakes|cut\n";
  test.each([
    ["A|2026-13-40|lemon|ethanol 95 %|57 g|2", "date", "2026-13-40", "no date"],
    ["A|2027-01-01|lemon|ethanol 95 %|57 g|2", "date", "2027-01-01", "has not come yet"],
    ["|2026-10-05|lemon|ethanol 95 %|57 g|2", "code", "", "Nothing is written"],
    ["A|2026-10-05|lemon|ethanol 95 %|two|2", "flakes", "two", "number"],
    ["A|2026-10-05|lemon|ethanol 95 %|1 cup|2", "flakes", "1 cup", "mostly air"],
    ["A|2026-10-05|lemon|ethanol 95 %|-3 g|2", "flakes", "-3 g", "out of range"],
    ["A|2026-10-05|lemon|ethanol 95 %|1,500 g|2", "flakes", "1,500 g", "which?"],
    ["A|2026-10-05|lemon|ethanol 95 %|57 g|1:4", "cut", "1:4", "by weight"],
    ["A|2026-10-05|lemon|ethanol 195 %|57 g|2", "alcohol", "ethanol 195 %", "no strength"],
    ["A|2026-10-05|lemon|spirit of wine|57 g|2", "alcohol", "spirit of wine", "not one liquid"],
  ])("%s", (row, column, value, says) => {
    // flakes and "57 g" make an amount; the name of the resin stands in "resin"
    const plan = planned(`${head}OK|2026-10-05|lemon|ethanol 95 %|57 g|2\n${row}`);
    expect(plan.problems).toHaveLength(1);
    expect(plan.problems[0]).toMatchObject({ row: 3, column, value });
    expect(plan.problems[0]?.says).toContain(says);
    expect(() => written(plan)).toThrow(/Nothing is written/);
  });

  test("a code twice, here or in the book", () => {
    const rows = `${head}A|2026-10-05|lemon|ethanol 95 %|57 g|2\nA|2026-10-05|lemon|ethanol 95 %|57 g|2`;
    expect(saidOf(rows)).toEqual(["Row 3, column “code”: A is the jar of row 2 as well."]);
    expect(planned(rows, { codes: ["A"] }).problems).toHaveLength(2);
  });

  test("a date that may begin with the day or the month waits for a choice", () => {
    const table = tableOf(`${head}A|5/10/2026|lemon|ethanol 95 %|57 g|2`);
    const matches = proposeColumns(table);
    expect(matches[1]?.dayOrder).toBeNull();
    expect(planImport(table, matches, context).problems[0]?.says).toContain("which is to be chosen");
    const chosen = matches.map(
      (m): ColumnMatch => (m.column === 1 ? { ...m, dayOrder: "month-day-year" } : m),
    );
    expect(planImport(table, chosen, context).jars[0]?.row.mixed).toBe("2026-05-10");
  });

  test("ounces of alcohol in a heading wait for a choice, once", () => {
    const table = tableOf(
      "code|resin|alcohol|flakes (oz)|alcohol (oz)\nA|lemon|ethanol 95 %|2|8\nB|lemon|ethanol 95 %|2|8",
    );
    const matches = proposeColumns(table);
    expect(matches[4]?.unitChoices).toEqual(["floz-us", "oz"]);
    expect(planImport(table, matches, context).problems.map(({ row, column }) => [row, column])).toEqual([
      [1, "alcohol (oz)"],
    ]);
    const chosen = matches.map((m) => (m.column === 4 ? { ...m, unit: "floz-us", unitChoices: [] } : m));
    const plan = planImport(table, chosen, context);
    expect(plan.problems).toEqual([]);
    expect(pounds(plan.jars[0]?.amounts.mixed.cut)).toBeCloseTo(2, 2);
  });

  test("a row that is left out is not judged", () => {
    const table = tableOf(`${head}OK|2026-10-05|lemon|ethanol 95 %|57 g|2\nbad||||two|`);
    expect(planImport(table, proposeColumns(table), context, [3]).problems).toEqual([]);
  });
});

test("dates as lists have them", () => {
  const dates = [
    "2026-10-05",
    "2026/10/5",
    "5.10.2026",
    "13/10/2026",
    "5 Oct 2026",
    "October 5th, 2026",
    "05.10.26",
  ];
  const days = dates.map((date) => {
    const table = tableOf(`code|date|resin|alcohol|flakes|cut\nA|${date}|lemon|ethanol 95 %|57 g|2`);
    return planImport(table, proposeColumns(table), context).jars[0]?.row.mixed;
  });
  expect(days).toEqual(dates.map((date) => (date.startsWith("13") ? "2026-10-13" : "2026-10-05")));
});

test("whatever stands in a list, it is judged and never throws", () => {
  const cell = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom(
      "A",
      "57 g",
      "ethanol 95 %",
      "2 lb",
      "5/6/2026",
      "1:4",
      "1 cup",
      "0",
      "NaN",
      "1e9 g",
      "½",
    ),
  );
  const header = fc.constantFrom(
    "code",
    "date",
    "resin",
    "flakes (g)",
    "alcohol",
    "alcohol (oz)",
    "cut",
    "strength",
    "left",
    "makes",
    "x",
  );
  fc.assert(
    fc.property(
      fc.array(header, { maxLength: 9 }),
      fc.array(fc.array(cell, { maxLength: 10 }), { maxLength: 5 }),
      (h, rows) => {
        const table = { header: h, rows };
        const plan = planImport(table, proposeColumns(table), context);
        if (plan.problems.length === 0) expect(written(plan).ids).toHaveLength(plan.jars.length);
        else expect(() => written(plan)).toThrow();
      },
    ),
    { numRuns: 500, seed: 3 },
  );
});
