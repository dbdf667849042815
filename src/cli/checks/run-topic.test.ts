import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { exitCodeFor, linesOf, summary } from "./report.ts";
import { runTopic } from "./run-topic.ts";
import { numberIn, perRow } from "./table.ts";
import { NotReadable, type Topic } from "./topic.ts";

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

function folderOf(files: Record<string, unknown>): string {
  const folder = mkdtempSync(join(tmpdir(), "lacbench-checks-"));
  folders.push(folder);
  for (const [name, content] of Object.entries(files))
    writeFileSync(join(folder, name), typeof content === "string" ? content : JSON.stringify(content));
  return folder;
}

const doubling: Topic = {
  kinds: {
    double: (given) => ({
      twice: 2 * ((given.input as { x: number }).x ?? Number.NaN),
      note: "more than asked",
    }),
    nothing: () => ({}),
    throwing: () => {
      throw new Error("no such bench");
    },
    choosy: () => {
      throw new NotReadable("the protocol is not known");
    },
  },
  tables: {
    "halves.csv": perRow({
      inputs: ["x"],
      expected: { half: ["abs", 1e-9] },
      others: ["source", /^computed_/],
      shown: (row) => (row.source === "SUSPECT" ? "suspect" : undefined),
      compute: (row) => ({ half: numberIn(row, "x") / 2 }),
    }),
  },
  instances: {
    "jobshop/1": () => {
      throw new Error("no machines");
    },
  },
  notCompared: ["constants.csv"],
};

async function check(files: Record<string, unknown>) {
  const folder = folderOf(files);
  const report = await runTopic("made", doubling, { cases: folder, constants: folder });
  return { report, code: exitCodeFor(report), last: summary(report) };
}
const cases = (...list: object[]) => ({ "cases.json": { format: "cases/1", cases: list } });
const double = (twice: unknown, tol: unknown = { "*": ["rel", 1e-9] }) => ({
  id: "d",
  kind: "double",
  input: { x: 3 },
  expected: { twice },
  tol,
});

test("a right value passes", async () => {
  const { code, last } = await check(cases(double(6)));
  expect([code, last]).toEqual([0, "made: 1 passed, 0 failed, 0 not read"]);
});

test("a wrong value fails, and the line says by how much", async () => {
  const { report, code } = await check(cases(double(6.5)));
  expect(code).toBe(1);
  expect([...linesOf(report.cases[0] as never)]).toEqual(["d\ttwice\t6.5\t6\trel 1e-9\t-0.500\tFAILED"]);
});

test("an expected key that was not computed fails", async () => {
  expect((await check(cases({ ...double(6), kind: "nothing" }))).code).toBe(1);
});

test("a number that could not be computed never passes", async () => {
  expect((await check(cases({ ...double(6), input: {} }))).code).toBe(1);
  expect((await check(cases({ ...double(null), input: {} }))).code).toBe(1);
});

test("a number without a tolerance in its file fails", async () => {
  expect((await check(cases(double(6, {})))).code).toBe(1);
  expect((await check(cases(double(6, { "*": ["roughly", 1] })))).code).toBe(1);
});

test("an adapter that throws is a failed case with its message, and the next case still runs", async () => {
  const { report, code } = await check(cases({ ...double(6), kind: "throwing" }, double(6)));
  expect([code, report.passed, report.failed]).toEqual([1, 1, 1]);
  expect(report.cases[0]?.why).toBe("no such bench");
});

test("an unknown kind, format or protocol is not read", async () => {
  const { code, last } = await check(cases({ ...double(6), kind: "triple" }, double(6)));
  expect([code, last]).toEqual([3, "made: 1 passed, 0 failed, 1 not read"]);
  expect((await check({ "a.json": { format: "cases/9", cases: [double(6)] } })).code).toBe(3);
  expect((await check({ "a.json": { format: "rcpsp/1", instances: [{ name: "i" }] } })).code).toBe(3);
  expect((await check(cases({ ...double(6), kind: "choosy" }))).code).toBe(3);
});

test("a case that expects nothing, a broken file, an unknown table: not read", async () => {
  expect((await check(cases({ id: "d", kind: "double" }))).code).toBe(3);
  expect((await check({ "a.json": "{" })).code).toBe(3);
  expect((await check({ "other.csv": "x,half\n1,0.5\n" })).last).toBe("made: 0 passed, 0 failed, 1 not read");
});

test("a column that is not known is noticed, one that is needed is missed", async () => {
  expect((await check({ "halves.csv": "x,half,hue\n1,0.5,3\n4,2,3\n" })).last).toBe(
    "made: 0 passed, 0 failed, 2 not read",
  );
  expect((await check({ "halves.csv": "half\n0.5\n" })).code).toBe(3);
});

test("a table: columns of others, rows only shown, empty cells, a wrong cell, a cell that is no number", async () => {
  const header = "x,half,source,computed_half\n";
  expect((await check({ "halves.csv": `${header}1,0.5,a,9\n2,9,SUSPECT,9\n3,,b,9\n` })).last).toBe(
    "made: 1 passed, 0 failed, 0 not read",
  );
  expect((await check({ "halves.csv": `${header}1,0.6,a,9\n` })).code).toBe(1);
  expect((await check({ "halves.csv": `${header}one,0.5,a,9\n` })).code).toBe(1);
});

test("inputs are not counted, and a folder without a case is no pass", async () => {
  const { code, last } = await check({
    "rules.json": { rules: [] },
    "constants.csv": "a\n1\n",
    "README.md": "",
  });
  expect([code, last]).toEqual([4, "made: 0 passed, 0 failed, 0 not read"]);
  expect((await check({ "halves.csv": "x,half,source\n2,9,SUSPECT\n" })).code).toBe(4);
});

test("a table with ragged rows is not read; an instance that cannot be made a case of has failed", async () => {
  expect((await check({ "halves.csv": "x,half\n1\n" })).code).toBe(3);
  const { report, code } = await check({ "a.json": { format: "jobshop/1", instances: [{ name: "ft06" }] } });
  expect([code, report.cases[0]?.why]).toEqual([1, "no machines"]);
});
