import { expect, test } from "vitest";
import { Pen, typed } from "../demo/pen.ts";
import { jarsToLookAt } from "./look-again.ts";
import { evenChanceHour, readyModels, readyView, shareReadyBy } from "./ready.ts";
import { readyCompared } from "./ready-compared.ts";

const hour = (h: number): string => new Date(Date.UTC(2026, 9, 1, 8) + h * 3.6e6).toISOString();

function watched() {
  const pen = new Pen("ready", "Europe/Berlin");
  const spirit = (name: string) => pen.write(hour(-1), "material-bought", { form: "solvent", name });
  const mix = (code: string, solvent: string, looks: readonly (readonly [number, boolean])[]) => {
    const id = pen.write(
      hour(0),
      "batch-mixed",
      {
        code,
        resins: [{ name: "Lemon", amount: typed("57 g", "mass") }],
        solvents: [{ material: solvent, amount: typed("240 ml", "volume") }],
      },
      { about: [solvent] },
    );
    for (const [at, ready] of looks)
      pen.write(hour(at), "batch-looked-at", { undissolved: ready ? "none" : "some" }, { about: [id] });
    return id;
  };
  return { pen, spirit, mix };
}

test("jars of one recipe are one group; its median lies where the looks bound it", () => {
  const { pen, spirit, mix } = watched();
  const ethanol = spirit("Ethanol");
  const other = spirit("Isopropanol");
  mix("A", ethanol, [
    [4, false],
    [6, true],
  ]);
  mix("B", ethanol, [
    [6, false],
    [9, true],
  ]);
  mix("C", other, [
    [9, false],
    [12, true],
  ]);
  mix("D", other, [
    [14, false],
    [18, true],
  ]);
  const { groups } = readyView(pen.book);
  expect(groups.map((g) => [g.solvents, g.jars.map((j) => j.code), g.oneJar])).toEqual([
    ["Ethanol", ["A", "B"], false],
    ["Isopropanol", ["C", "D"], false],
  ]);
  expect(groups[0]?.medianH).toBeGreaterThan(4);
  expect(groups[0]?.medianH).toBeLessThan(9);
  expect(groups[1]?.medianH).toBeGreaterThan(9);
  expect(groups[1]?.medianH).toBeLessThan(18);
  expect(readyCompared(pen.book, "weibull")?.pairs).toHaveLength(1);
});

test("never ready: no median, one jar is said to be one, and the next look comes later than the last", () => {
  const { pen, spirit, mix } = watched();
  mix("S", spirit("Ethanol"), [
    [2, false],
    [8, false],
  ]);
  const [group] = readyView(pen.book).groups;
  expect(group).toMatchObject({ medianH: null, oneJar: true });
  expect(group?.jars[0]).toMatchObject({ notYetH: 8, doneByH: null, lookAgainAt: hour(12) });
});

test("evenChanceHour halves the chance of not being ready (Weibull survival, evaluated directly)", () => {
  const survival = (t: number, median: number, shape: number) => Math.exp(-Math.LN2 * (t / median) ** shape);
  for (const [t0, median, scale] of [
    [8, 8, 0.2],
    [3, 10, 0.5],
    [20, 10, 1],
  ] as const) {
    const t = evenChanceHour(t0, median, scale, "weibull");
    expect(survival(t, median, 1 / scale) / survival(t0, median, 1 / scale)).toBeCloseTo(0.5, 12);
  }
});

// Shannon (1948): a yes or no tells −p ln p − (1 − p) ln(1 − p), p by the Weibull survival function, tried at every hour.
test("no other hour of looking is expected to tell more than evenChanceHour", () => {
  const [t0, median, scale] = [6, 8, 0.3];
  const survival = (t: number) => Math.exp(-Math.log(2) * (t / median) ** (1 / scale));
  const tells = (t: number) => {
    const still = survival(t) / survival(t0);
    return -still * Math.log(still) - (1 - still) * Math.log(1 - still);
  };
  const hours = Array.from({ length: 2000 }, (_, i) => t0 + (i + 1) / 100);
  const best = hours.reduce((a, b) => (tells(b) > tells(a) ? b : a));
  expect(Math.abs(evenChanceHour(t0, median, scale, "weibull") - best)).toBeLessThan(0.011);
});

test("the bench asks for that look once the recipe's time is known, and for a spaced one before", () => {
  const { pen, spirit, mix } = watched();
  const ethanol = spirit("Ethanol");
  const open = mix("C", ethanol, [[6, false]]);
  const due = () =>
    (jarsToLookAt(pen.book).find(({ jar }) => jar === open)?.dueMs ?? 0) - Date.parse(hour(0));
  expect(due() / 3.6e6).toBeCloseTo(9, 9); // half as long again
  for (const [code, notYet, done] of [
    ["A", 4, 7],
    ["B", 9, 11],
    ["D", 7, 10],
  ] as const)
    mix(code, ethanol, [
      [notYet, false],
      [done, true],
    ]);
  const group = readyView(pen.book).groups[0];
  const proposed = group?.jars.find(({ id }) => id === open)?.lookAgainAt ?? "";
  expect(Math.abs(due() - (Date.parse(proposed) - Date.parse(hour(0))))).toBeLessThan(1000);
  expect(due() / 3.6e6).not.toBeCloseTo(9, 2);
});

test("nothing watched, nothing said", () => {
  expect(readyView(new Pen("none", "Europe/Berlin").book)).toMatchObject({
    groups: [],
    scale: null,
  });
  expect(readyCompared(new Pen("none", "Europe/Berlin").book, "weibull")).toBeNull();
});

test("half are ready by the median in either model; the steps hold every jar", () => {
  for (const model of readyModels) expect(shareReadyBy(8, 8, 0.3, model)).toBeCloseTo(0.5, 12);
  // One standard deviation of the logarithm above the median: 84.134 % (table of the normal distribution).
  expect(shareReadyBy(8 * Math.exp(0.3), 8, 0.3, "lognormal")).toBeCloseTo(0.84134, 5);
  // A jar that may be ready at any hour after the median: S/2 of a half is a quarter.
  expect(shareReadyBy(evenChanceHour(8, 8, 0.3, "lognormal"), 8, 0.3, "lognormal")).toBeCloseTo(0.75, 9);
  const { pen, spirit, mix } = watched();
  const ethanol = spirit("Ethanol");
  mix("A", ethanol, [
    [4, false],
    [6, true],
  ]);
  mix("B", ethanol, [
    [7, false],
    [9, true],
  ]);
  // By hand: two spans that do not overlap carry half each.
  expect(readyView(pen.book, "lognormal").groups[0]?.steps).toEqual([
    { left: 4, right: 6, mass: 0.5 },
    { left: 7, right: 9, mass: 0.5 },
  ]);
});
