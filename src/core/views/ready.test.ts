import { expect, test } from "vitest";
import { Pen, typed } from "../demo/pen.ts";
import { evenChanceHour, readyView } from "./ready.ts";

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
  const { groups, ratios } = readyView(pen.book);
  expect(groups.map((g) => [g.solvents, g.jars.map((j) => j.code), g.oneJar])).toEqual([
    ["Ethanol", ["A", "B"], false],
    ["Isopropanol", ["C", "D"], false],
  ]);
  expect(groups[0]?.medianH).toBeGreaterThan(4);
  expect(groups[0]?.medianH).toBeLessThan(9);
  expect(groups[1]?.medianH).toBeGreaterThan(9);
  expect(groups[1]?.medianH).toBeLessThan(18);
  expect(ratios).toHaveLength(1);
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
    const t = evenChanceHour(t0, median, scale);
    expect(survival(t, median, 1 / scale) / survival(t0, median, 1 / scale)).toBeCloseTo(0.5, 12);
  }
});

test("nothing watched, nothing said", () => {
  expect(readyView(new Pen("none", "Europe/Berlin").book)).toEqual({ groups: [], ratios: [] });
});
