import { expect, test } from "vitest";
import { Pen, typed } from "../demo/pen.ts";
import { Notebook } from "../notebook/notebook.ts";
import { poundsPerUsGallonFromCut } from "../units.ts";
import { jarFitness, jarIds, jarView } from "./jar.ts";

const hour = (h: number): string => new Date(Date.UTC(2026, 9, 1, 8) + h * 3.6e6).toISOString();
const g = (text: string) => typed(text, "mass");
const ml = (text: string) => typed(text, "volume");

function shop() {
  const pen = new Pen("jar tests", "Europe/Berlin");
  const flakes = pen.write(hour(-2), "material-bought", {
    form: "resin",
    name: "Dewaxed lemon",
    resin: { grade: "lemon", waxMassFraction: 0.005, moistureMassFraction: 0 },
  });
  const spirit = pen.write(hour(-2), "material-bought", {
    form: "solvent",
    name: "Ethanol 95 %",
    solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  });
  const book = () => {
    const notebook = new Notebook(pen.notebook);
    notebook.add(pen.entries);
    return notebook;
  };
  const mix = (code: string, resin: string, solvent: string, at = 0, more = {}) =>
    pen.write(
      hour(at),
      "batch-mixed",
      {
        code,
        resins: [{ material: flakes, amount: g(resin) }],
        solvents: [{ material: spirit, amount: solvent.endsWith("g") ? g(solvent) : ml(solvent) }],
        ...more,
      },
      { about: [flakes, spirit] },
    );
  return { pen, flakes, spirit, book, mix };
}
const cutIn = (view: ReturnType<typeof jarView>): number =>
  view?.cut ? poundsPerUsGallonFromCut(view.cut.value) : Number.NaN;
const near = (actual: number, expected: number, by: number) =>
  expect(Math.abs(actual - expected)).toBeLessThan(by);

test("57 g in 237.84 mL of 95 % is a 2 lb cut and stands at 285 mL (mass balance; the registered example)", () => {
  const { book, mix } = shop();
  const jar = mix("L1", "57 g", "237.84 ml");
  const view = jarView(book(), jar);
  near(cutIn(view), 2, 0.0005);
  near((view?.volume.value ?? 0) * 1e6, 285.15, 0.05);
  near(view?.solids ?? 0, 0.16589, 1e-4);
  expect(view?.wax).toBe("dewaxed");
  expect(view?.resins.map((named) => named.name)).toEqual(["Dewaxed lemon"]);
});

test("two ounces to eight fluid ounces is a 2 lb cut, to eight ounces by weight 1.69 (common practice)", () => {
  const { book, mix, pen, flakes, spirit } = shop();
  const jug = mix("A", "2 oz", "8 fl oz");
  const scale = pen.write(
    hour(1),
    "batch-mixed",
    {
      code: "B",
      resins: [{ material: flakes, amount: g("2 oz") }],
      solvents: [{ material: spirit, amount: g("8 oz") }],
    },
    { about: [flakes, spirit] },
  );
  near(cutIn(jarView(book(), jug)), 2, 0.005);
  near(cutIn(jarView(book(), scale)), 1.69, 0.005);
});

test("a litre of 3 lb with 1540.4 mL makes 2540.4 mL of 1 lb (mass balance; trade table 1½ parts)", () => {
  const { book, mix, pen, spirit } = shop();
  const stock = mix("L1", "359.48 g", "1000 ml");
  const child = pen.write(
    hour(30),
    "batch-thinned",
    {
      code: "L5",
      taken: ml("1000 ml"),
      added: [{ material: spirit, amount: ml("1540.4 ml") }],
      aimedCutLbPerGal: 1,
    },
    { about: [stock, spirit] },
  );
  const view = jarView(book(), child);
  near(cutIn(view), 1, 0.001);
  near((view?.volume.value ?? 0) * 1e6, 2540.4, 0.5);
  expect(view?.stage).toBe("thinned");
  expect(view?.lineage.map((jar) => jar.code)).toEqual(["L1"]);
  expect(view?.resinSince).toBe(hour(0));
  const parent = jarView(book(), stock);
  expect(parent?.children).toEqual([child]);
  near((parent?.volume.value ?? 0) * 1e6, 1298.3 - 1000, 0.5);
  near(cutIn(parent), 3, 0.001);
});

test("mass is conserved through mixing, straining, thinning, blending and use", () => {
  const { book, mix, pen, spirit, flakes } = shop();
  const a = mix("A", "100 g", "400 ml");
  const b = mix("B", "60 g", "300 g", 1);
  const strained = pen.write(hour(40), "batch-filtered", { code: "C", kept: ml("350 ml") }, { about: [a] });
  const thin = pen.write(
    hour(41),
    "batch-thinned",
    { code: "D", taken: ml("200 ml"), added: [{ material: spirit, amount: g("50 g") }] },
    { about: [strained, spirit] },
  );
  const blend = pen.write(
    hour(42),
    "batch-blended",
    {
      code: "E",
      parts: [
        { batch: thin, amount: g("70 g") },
        { batch: b, amount: g("80 g") },
      ],
    },
    { about: [thin, b] },
  );
  const used = pen.write(
    hour(50),
    "layer-applied",
    {
      sort: "coat",
      method: "brush",
      targets: [{ part: "lid" }],
      from: [{ batch: blend }],
      amount: { by: "weighings", total: g("20 g") },
    },
    { about: [blend] },
  );
  const all = [a, b, strained, thin, blend].map((id) => jarView(book(), id));
  const density95 = 811.38; // OIML R 22, 95 % vol at 20 °C
  const there = all.reduce((sum, view) => sum + (view?.mass.value ?? 0), 0) + 0.02;
  near(there, 0.1 + 0.4e-3 * density95 + 0.06 + 0.3 + 0.05, 2e-6);
  expect(all[4]?.uses.map((use) => use.entry)).toEqual([used]);
  expect(all[4]?.mass.value).toBeCloseTo(0.13, 9);
  expect(all.flatMap((view) => view?.unusable ?? [])).toEqual([]);
  void flakes;
});

test("what a shut jar has lost is solvent: 10 % of it makes a 2 lb cut 2.22 (trade rule, mass balance)", () => {
  const { book, mix, pen } = shop();
  const jar = mix("L1", "57 g", "237.84 ml");
  pen.write(hour(1), "batch-weighed", { gross: g("500.0 g"), withLid: true }, { about: [jar] });
  pen.write(hour(400), "batch-weighed", { gross: g("480.7 g"), withLid: true }, { about: [jar] });
  const view = jarView(book(), jar);
  near(cutIn(view), 2.22, 0.005);
  near((view?.lost?.kg ?? 0) * 1e3, 19.3, 1e-6);
  near((view?.lost?.volume ?? 0) * 1e6, 23.8, 0.1);
  expect(view?.lost?.since).toBe(hour(1));
});

test("a difference within what the scale can tell is no loss", () => {
  const { book, mix, pen } = shop();
  const jar = mix("L1", "57 g", "237.84 ml");
  pen.write(hour(1), "batch-weighed", { gross: g("500 g"), withLid: true }, { about: [jar] });
  pen.write(hour(90), "batch-weighed", { gross: g("499 g"), withLid: true }, { about: [jar] });
  expect(jarView(book(), jar)?.lost).toBeNull();
});

test("topping up brings back what was lost", () => {
  const { book, mix, pen, spirit } = shop();
  const jar = mix("L1", "57 g", "237.84 ml");
  pen.write(hour(1), "batch-weighed", { gross: g("500.0 g"), withLid: true }, { about: [jar] });
  pen.write(hour(400), "batch-weighed", { gross: g("480.7 g"), withLid: true }, { about: [jar] });
  pen.write(
    hour(401),
    "batch-topped-up",
    { added: [{ material: spirit, amount: ml("23.8 ml") }] },
    { about: [jar, spirit] },
  );
  const view = jarView(book(), jar);
  near(cutIn(view), 2, 0.002);
  expect(view?.lost).toBeNull();
});

/** A 2 lb cut by the recipe, dried down on a fine scale: a spoonful of 10 g that leaves so much. */
function driedDownTo(dry: string, wet = "10 g") {
  const { book, mix, pen } = shop();
  const jar = mix("L1", "57 g", "237.84 ml");
  const scale = pen.write(hour(2), "instrument-described", {
    use: "scale",
    name: "Fine scale",
    standardUncertainty: g("0.01 g"),
  });
  pen.write(
    hour(3),
    "batch-dried-down",
    { wet: typed(wet, "mass", scale), dry: typed(dry, "mass", scale) },
    { about: [jar] },
  );
  return jarView(book(), jar);
}
const inPounds = (kgPerM3 = Number.NaN): number => kgPerM3 / 119.826427; // 0.45359237 kg to 231 in³

test("a dry-down of 20 % is 1.69 lb, not the 2 lb reckoned: they disagree, and the measured one stands", () => {
  const view = driedDownTo("2 g");
  near(cutIn(view), 1.6928, 0.001);
  expect(view?.cut?.shown).toBe("measured");
  expect(view?.driedDown).toMatchObject({ disagrees: true, stands: "measured" });
  near(inPounds(view?.driedDown?.reckoned.value), 2, 0.001);
  near(view?.mass.value ?? 0, 0.057 + 0.19298, 1e-5);
});

test("a dry-down that agrees is combined with the reckoning by inverse variance", () => {
  const view = driedDownTo("2.29 g");
  const { reckoned, measured, combined, disagrees } = view?.driedDown ?? {};
  expect(disagrees).toBe(false);
  expect(view?.cut?.shown).toBe("combined");
  // c = Σ(c/u²)/Σ(1/u²), u = (Σ1/u²)^-½, written out
  const [a, b] = [
    1 / (reckoned?.standardUncertainty ?? 0) ** 2,
    1 / (measured?.standardUncertainty ?? 0) ** 2,
  ];
  const mean = (a * (reckoned?.value ?? 0) + b * (measured?.value ?? 0)) / (a + b);
  expect(view?.cut?.value).toBe(combined?.value);
  expect((combined?.value ?? 0) / mean).toBeCloseTo(1, 6);
  // within 1 %: the readings' influences are taken by steps of one standard uncertainty, and the strength moves both
  near((combined?.standardUncertainty ?? 0) * Math.sqrt(a + b), 1, 0.01);
  expect(combined?.standardUncertainty).toBeLessThan(
    Math.min(reckoned?.standardUncertainty ?? 0, measured?.standardUncertainty ?? 0),
  );
  near(view?.mass.value ?? 0, 0.057 + 0.19298, 1e-5);
});

test("a rough dry-down of a spoonful moves the jar little", () => {
  const rough = driedDownTo("0.46 g", "2 g"); // ± 0.02 g in 2 g against a well weighed mix
  expect(rough?.driedDown?.disagrees).toBe(false);
  const { reckoned, measured, combined } = rough?.driedDown ?? {};
  const moved = Math.abs((combined?.value ?? 0) - (reckoned?.value ?? 0));
  expect(moved).toBeLessThan(Math.abs((measured?.value ?? 0) - (reckoned?.value ?? 0)));
});

test("the first of the oldest: a blend is as old as its oldest resin", () => {
  const { book, mix, pen } = shop();
  const old = mix("A", "50 g", "200 ml", 0);
  const fresh = mix("B", "50 g", "200 ml", 500);
  const blend = pen.write(
    hour(600),
    "batch-blended",
    {
      code: "C",
      parts: [
        { batch: fresh, amount: ml("50 ml") },
        { batch: old, amount: ml("50 ml") },
      ],
    },
    { about: [fresh, old] },
  );
  expect(jarView(book(), blend)?.resinSince).toBe(hour(0));
});

test("what cannot be used is reported with why, and nothing is thrown", () => {
  const { book, mix, pen, flakes, spirit } = shop();
  const cups = pen.write(
    hour(0),
    "batch-mixed",
    { code: "X", resins: [{ material: flakes, amount: ml("1 cup") }], solvents: [] },
    { about: [flakes] },
  );
  const jar = mix("L1", "57 g", "237.84 ml");
  pen.write(hour(3), "batch-dried-down", { wet: g("2 g"), dry: g("3 g") }, { about: [jar] });
  pen.write(
    hour(4),
    "batch-thinned",
    { code: "Y", taken: ml("900 ml"), added: [{ material: spirit, amount: ml("10 ml") }] },
    { about: [jar, spirit] },
  );
  const orphan = pen.write(
    hour(5),
    "batch-filtered",
    { code: "Z" },
    { about: ["019a0000-0000-7000-8000-000000000099"] },
  );
  const read = book();
  expect(jarView(read, cups)?.unusable.map((u) => u.reason)).toEqual(["flakes-by-volume"]);
  expect(jarView(read, cups)?.known).toBe(false);
  expect(jarView(read, jar)?.unusable.map((u) => u.reason)).toEqual(["dry-not-lighter", "more-than-it-held"]);
  expect(jarView(read, orphan)?.unusable.map((u) => u.reason)).toEqual(["parent-unknown"]);
});

test("a corrected mix counts as it stands now, under its first id", () => {
  const { book, mix, pen, flakes, spirit } = shop();
  const jar = mix("L1", "75 g", "237.84 ml");
  pen.write(
    hour(1),
    "batch-mixed",
    {
      code: "L1",
      resins: [{ material: flakes, amount: g("57 g") }],
      solvents: [{ material: spirit, amount: ml("237.84 ml") }],
    },
    { about: [jar, flakes, spirit], strikes: [jar] },
  );
  const read = book();
  expect(jarIds(read)).toEqual([jar]);
  near(cutIn(jarView(read, jar)), 2, 0.0005);
});

test("looks bound the time: not yet at 3 h, done by 20 h", () => {
  const { book, mix, pen } = shop();
  const jar = mix("L1", "57 g", "237.84 ml");
  pen.write(hour(1), "batch-looked-at", { undissolved: "most" }, { about: [jar] });
  pen.write(hour(3), "batch-looked-at", { undissolved: "some" }, { about: [jar] });
  pen.write(hour(20), "batch-looked-at", { undissolved: "none", clarity: "clear" }, { about: [jar] });
  pen.write(hour(24), "batch-looked-at", { undissolved: "a trace" }, { about: [jar] });
  const view = jarView(book(), jar);
  expect(view?.looks.ready).toEqual({ notYetH: 3, doneByH: 20 });
  expect(view?.unusable.map((u) => u.reason)).toEqual(["look-out-of-order"]);
});

test("use, test first, discard", () => {
  const { book, mix, pen } = shop();
  const jar = mix("L1", "57 g", "237.84 ml");
  expect(jarFitness(book(), jar, hour(24 * 100))).toMatchObject({ state: "use", because: "fresh" });
  expect(jarFitness(book(), jar, hour(24 * 181))).toMatchObject({ state: "test first", because: "old" });
  pen.write(hour(24 * 182), "batch-drop-tested", { result: "hard", hardAfterMinutes: 60 }, { about: [jar] });
  expect(jarFitness(book(), jar, hour(24 * 190))).toMatchObject({ state: "use" });
  pen.write(hour(24 * 183), "default-changed", { name: "jar-test-holds-days", value: 5, was: 90 }, {});
  expect(jarFitness(book(), jar, hour(24 * 190))).toMatchObject({ state: "test first", because: "old" });
  pen.write(hour(24 * 191), "batch-drop-tested", { result: "tacky" }, { about: [jar] });
  expect(jarFitness(book(), jar, hour(24 * 192))).toMatchObject({ state: "discard" });
});

test("a bottle struck off the shelf leaves its name and its cautions, and says that it is gone", () => {
  const { book, mix, pen, flakes, spirit } = shop();
  const hidden = pen.write(hour(-1), "material-bought", {
    form: "solvent",
    name: "Denatured",
    solvent: {
      parts: [
        { alcohol: "ethanol", massShare: 0.9 },
        { alcohol: "methanol", massShare: 0.1 },
      ],
    },
  });
  const stock = pen.write(
    hour(0),
    "batch-mixed",
    {
      code: "D",
      resins: [{ material: flakes, amount: g("57 g") }],
      solvents: [{ material: hidden, amount: g("200 g") }],
    },
    { about: [flakes, hidden] },
  );
  const thin = pen.write(
    hour(1),
    "batch-thinned",
    { code: "D1", taken: g("100 g"), added: [{ material: spirit, amount: g("100 g") }] },
    { about: [stock, spirit] },
  );
  const other = mix("L1", "57 g", "200 ml");
  pen.write(hour(2), "struck", {}, { strikes: [hidden] });
  const view = jarView(book(), stock);
  expect(view?.solvents.map((named) => named.name)).toEqual(["Denatured"]);
  expect(view?.struck.map((named) => named.name)).toEqual(["Denatured"]);
  expect(view?.composition).toEqual({ unknown: 1 });
  near(view?.cautioned.methanol ?? 0, 0.1, 1e-9); // as its data sheet said
  const thinned = jarView(book(), thin);
  expect(thinned?.struck.map((named) => named.name)).toEqual(["Denatured"]);
  // 100 g of 200 + 57 g hold 77.8 g of it, to 100 g of ethanol 95 %: 7.78 in 177.8
  near(thinned?.cautioned.methanol ?? 0, 0.04376, 1e-4);
  expect(jarView(book(), other)?.struck).toEqual([]);
});
