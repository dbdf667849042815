import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { listen } from "../../test/listen.ts";
import { dispatch } from "./dispatch.ts";
import { realEffects } from "./effects.ts";

const now = ["--now", "2026-10-12T18:00:00Z"];
const newFolder = (): string => mkdtempSync(join(tmpdir(), "lacbench-jars-"));
const demo = newFolder();
let folder = demo;
beforeAll(async () => {
  const { stdout } = await lacbench(["demo", ...now, "--zone", "Europe/Berlin"]);
  await lacbench(["import"], stdout);
}, 60_000);
afterAll(() => rmSync(demo, { recursive: true }));
beforeEach(() => {
  folder = newFolder();
  cpSync(demo, folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

async function lacbench(args: readonly string[], stdin = "") {
  const { said, outputs } = listen();
  const exit = await dispatch(args, {
    ...realEffects,
    ...outputs,
    stdin: async () => stdin,
    env: { LACBENCH_DATA: folder },
    cwd: folder,
  });
  return { ...said, exit };
}

interface Listed {
  readonly code: string;
  readonly cutLbPerGal: number;
  readonly cutStandardUncertainty: number;
  readonly ageDays: number;
  readonly state: string;
  readonly leftMl: number;
}
const jars = async (): Promise<readonly Listed[]> =>
  JSON.parse((await lacbench(["jars", "--json", ...now])).stdout);

const list = [
  "Jar,Mixed,Flakes,Flakes (oz),Alcohol,Strength,Alcohol (fl oz)",
  "Old 1,5.10.2025,Garnet flakes,2,ethanol,190 proof,8",
  "Old 2,6.10.2025,Seedlac,57 g,ethanol,95,237.84 ml",
];
function csv(lines: readonly string[] = list): string {
  const path = join(folder, "jars.csv");
  writeFileSync(path, `\ufeff${lines.join("\r\n")}\r\n`);
  return path;
}

test("the jars of a notebook: what, cut, age, state and what is left", async () => {
  const { stdout, exit } = await lacbench(["jars", ...now]);
  expect(exit).toBe(0);
  expect(stdout).toMatch(/^G1 .*Garnet.* 2\.00 lb ± 0\.05 .*430 days .*discard/m);
  const found = await jars();
  const garnet = found.find(({ code }) => code === "G1");
  expect(garnet?.leftMl).toBeCloseTo(300, 0);
  const us = await lacbench(["jars", "--units", "us", ...now]);
  expect(us.stdout).toMatch(/^G1 .* fl oz/m);
  expect((await lacbench(["jars", "--units", "stone", ...now])).stderr).toContain("metric or us would do");
});

test("a list comes in: a dry run first, that writes nothing", async () => {
  const before = await jars();
  const dry = await lacbench(["jars", "--import", csv(), "--dry-run", ...now]);
  expect([dry.exit, dry.stderr]).toEqual([0, "A dry run: 2 jars would be written.\n"]);
  expect(dry.stdout).toContain("row 2  Old 1  Garnet flakes in ethanol 190 proof  2.00 lb");
  expect(await jars()).toEqual(before);
  const done = await lacbench(["jars", "--import", csv(), ...now]);
  expect([done.exit, done.stderr]).toEqual([
    0,
    expect.stringMatching(/^2 jars are in the notebook, \d entries/),
  ]);
  const old = (await jars()).filter(({ code }) => code.startsWith("Old"));
  // common practice: two ounces to eight fluid ounces of alcohol is a 2 lb cut; the shelf's seedlac is 2 % damp, and its water is solvent
  expect(old.map(({ cutLbPerGal }) => Number(cutLbPerGal.toFixed(2)))).toEqual([2, 1.95]);
  expect(old.map(({ state }) => state)).toEqual(["test first", "test first"]);
  const again = await lacbench(["jars", "--import", csv(), ...now]);
  expect([again.exit, again.stderr]).toEqual([
    2,
    expect.stringContaining("There is a jar Old 1 in the book already"),
  ]);
});

test("with one bad row nothing is written, and the row, the column and the value are named", async () => {
  const before = await jars();
  const path = csv([...list, "Old 3,7.10.2025,Seedlac,a few,ethanol,95,8"]);
  const refused = await lacbench(["jars", "--import", path, ...now]);
  expect(refused.exit).toBe(2);
  expect(refused.stderr).toContain("Row 4, column “Flakes (oz)”: “a few”");
  expect(await jars()).toEqual(before);
  const without = await lacbench(["jars", "--import", path, "--leave-out", "4", ...now]);
  expect(without.exit).toBe(0);
});

test("columns and dates are put otherwise by hand", async () => {
  const path = csv(["id,when,resin,alcohol,x (oz),weight", "Z,5/6/2026,Seedlac,ethanol 95 %,8,57 g"]);
  const asked = await lacbench(["jars", "--import", path, "--dry-run", ...now]);
  expect(asked.stderr).toContain("“5/6/2026” may begin with the day or the month");
  const told = ["--column", "x (oz)=solvent-amount:floz-us", "--column", "weight=resin-amount"];
  const order = ["--day-order", "day-month-year"];
  const { stdout, exit } = await lacbench(["jars", "--import", path, "--dry-run", ...told, ...order, ...now]);
  expect(exit).toBe(0);
  expect(stdout).toMatch(/row 2 {2}Z {2}Seedlac in ethanol 95 % {2}1\.97 lb .* 2026-06-05/);
  for (const wrong of [
    ["--column", "y=note"],
    ["--column", "weight=colour"],
    ["--column", "weight=resin-amount:stone"],
    ["--day-order", "backwards"],
    ["--leave-out", "one"],
  ])
    expect((await lacbench(["jars", "--import", path, ...wrong, ...now])).exit).toBe(2);
});
