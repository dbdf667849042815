import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { Pen, typed } from "../demo/pen.ts";
import type { Body } from "../notebook/kinds/all.ts";
import { filmBeneath, filmView } from "./film.ts";

const hour = (h: number): string => new Date(Date.UTC(2026, 9, 1, 8) + h * 3.6e6).toISOString();
type Layer = Body<"layer-applied">;

/** A jar of 2 lb: 240 g of dry resin to a litre of pure ethanol, so that a film is easily reckoned by hand. */
function shop() {
  const pen = new Pen("film tests", "Europe/Berlin");
  const flakes = pen.write(hour(-3), "material-bought", {
    form: "resin",
    name: "flakes",
    resin: { grade: "lemon", waxMassFraction: 0, moistureMassFraction: 0 },
  });
  const spirit = pen.write(hour(-3), "material-bought", {
    form: "solvent",
    name: "ethanol",
    solvent: { alcohol: "ethanol" },
  });
  const jar = pen.write(
    hour(-2),
    "batch-mixed",
    {
      code: "J",
      resins: [{ material: flakes, amount: typed("239.65 g", "mass") }],
      solvents: [{ material: spirit, amount: typed("1000 ml", "volume") }],
    },
    { about: [flakes, spirit] },
  );
  const board = pen.write(hour(-1), "board-cut", {
    name: "B",
    wood: "cherry",
    plank: "P",
    lengthMm: 500,
    widthMm: 200,
  });
  const sealed = ["first", "second", "third"].map((n) => `${n}-coat-sinks-percent`);
  const noSinking = () =>
    sealed.forEach((name) => {
      pen.write(hour(-1), "default-changed", { name, value: 0 });
    });
  const coat = (at: number, more: Partial<Layer> = {}) =>
    pen.write(
      hour(at),
      "layer-applied",
      { sort: "coat", targets: [{ board }], from: [{ batch: jar }], method: "brush", ...more },
      { about: [board, jar] },
    );
  const work = (at: number, body: Pick<Body<"surface-worked">, "how" | "removedUm" | "with">) =>
    pen.write(hour(at), "surface-worked", { targets: [{ board }], ...body }, { about: [board] });
  return {
    pen,
    flakes,
    spirit,
    jar,
    board,
    noSinking,
    coat,
    work,
    film: () => filmView(pen.book, { board }),
  };
}
const weighed = (text: string, more = {}): Pick<Layer, "amount"> => ({
  amount: { by: "weighings", total: typed(text, "mass"), ...more },
});
const um = (x: number): number => x * 1e6;

// By hand: 10 g of 22.8 % resin by mass is 2.33 g on 0.1 m²; at 1205 kg/m³ that is 19.3 µm. (2 lb in pure ethanol: 239.65 g
// of resin to 789.2 g of ethanol.)
test("grams on an area make a film", () => {
  const { noSinking, coat, film } = shop();
  noSinking();
  coat(0, weighed("10 g"));
  const resin = (10 * 239.65) / (239.65 + 789.2);
  expectNear(um(film().thickness), resin / 0.1 / 1.205, { relative: 2e-4 });
  expect(film().coats[0]).toMatchObject({ wetFrom: "weighed", openWhich: false, sunk: 0 });
});

test("a board that was weighed keeps all that it gained; a jar lost what the pad kept as well", () => {
  const jar = shop();
  const board = shop();
  for (const each of [jar, board]) each.noSinking();
  jar.coat(0, { method: "pad", ...weighed("10 g") });
  board.coat(0, { method: "pad", ...weighed("10 g", { weighed: "board" }) });
  expectNear(jar.film().thickness / board.film().thickness, 0.5, { relative: 1e-12 });
});

// 16.6 % by volume at 2 lb: mass balance, published as 16.
test("a comb on the wet film says it by itself, and without any amount the method's usual is taken and doubted more", () => {
  const { noSinking, coat, film } = shop();
  noSinking();
  coat(0, { amount: { by: "wet film", total: typed("100 µm", "length") } });
  expectNear(um(film().thickness), 16.589, { relative: 1e-3 });
  const sure = film().standardUncertainty / film().thickness;
  const usual = shop();
  usual.noSinking();
  usual.coat(0);
  expectNear(um(usual.film().thickness), 114 * 0.16589, { relative: 1e-3 });
  expect(usual.film().standardUncertainty / usual.film().thickness).toBeGreaterThan(2 * sure);
});

test("the first coats sink in, sanding comes off the top, and what was there before a coat is known", () => {
  const { coat, work, film, pen, board } = shop();
  work(-0.5, { how: "sanded", with: "220" });
  coat(0, weighed("10 g"));
  const second = coat(2, weighed("10 g"));
  work(3, { how: "levelled", removedUm: 4 });
  coat(4, weighed("10 g"));
  const { coats, thickness } = film();
  const whole = (coats[0]?.laid ?? 0) + (coats[0]?.sunk ?? 0);
  expectNear(coats[0]?.laid ?? 0, 0.5 * whole, { relative: 1e-12 });
  expectNear(coats[1]?.left ?? 0, 0.8 * whole - 4e-6, { relative: 1e-9 });
  expectNear(thickness, (0.5 + 0.8 + 0.95) * whole - 4e-6, { relative: 1e-9 });
  expectNear(filmBeneath(pen.book, { board }, second), 0.5 * whole, { relative: 1e-12 });
});

test("a bought product on top leaves the film open, and says which layer does", () => {
  const { coat, film } = shop();
  coat(0, weighed("10 g"));
  const top = coat(1, { sort: "topcoat", from: [{ name: "a varnish" }] });
  expect(film().unknown).toEqual([top]);
  expect(film().coats[1]).toMatchObject({ laid: null, wet: null });
  expect(film().thickness).toBeGreaterThan(0);
});

// By hand: of three coats one is of 2 lb, one is from no jar, and one is from a jar whose flakes were measured by the cup.
test("a coat from no jar and one from a jar of an unknown cut are not known, each for its own reason", () => {
  const { pen, flakes, coat, film } = shop();
  const unweighed = pen.write(
    hour(-2),
    "batch-mixed",
    { code: "U", resins: [{ material: flakes, amount: typed("200 ml", "volume") }], solvents: [] },
    { about: [flakes] },
  );
  coat(0, weighed("10 g"));
  const bare = coat(1, { from: [] });
  const unknown = coat(2, { from: [{ batch: unweighed }] });
  expect(film().coats.map((one) => one.whyUnknown)).toEqual([null, "no jar", "cut"]);
  expect(film().coats.map((one) => one.laid === null)).toEqual([false, true, true]);
  expect(film().unknown).toEqual([bare, unknown]);
});

test("cutting through is told; stripped, the wood is bare", () => {
  const { coat, film, pen, board } = shop();
  coat(0);
  pen.write(hour(1), "film-removed", { targets: [{ board }], how: "cut through" }, { about: [board] });
  expect(film()).toMatchObject({ cutThrough: true });
  expect(film().coats).toHaveLength(1);
  pen.write(hour(2), "film-removed", { targets: [{ board }], how: "stripped" }, { about: [board] });
  expect(film()).toMatchObject({ cutThrough: false, thickness: 0, coats: [] });
});

test("a film too thin to rub out says how many coats are missing; the figures are the person's to change", () => {
  const { noSinking, coat, film, pen } = shop();
  noSinking();
  coat(0, weighed("10 g"));
  coat(1, weighed("10 g"));
  const before = film().rubbing;
  expectNear(um(before.toGo), 76 - um(film().thickness), { absolute: 1e-6 });
  expect(before.coatsToGo).toBe(2);
  expect(before.risk).toBe("may go through");
  pen.write(hour(2), "default-changed", { name: "film-to-rub-out-micrometres", value: 30 });
  expect(film().rubbing.coatsToGo).toBe(0);
  pen.write(hour(2), "default-changed", { name: "rubbing-out-takes-off-micrometres", value: 60 });
  expect(film().rubbing.risk).toBe("goes through");
});

test("while a trial's key is shut a coat is one of its jars, and the film is as wide as they are apart", () => {
  const { pen, flakes, spirit, jar, board, noSinking } = shop();
  noSinking();
  const weak = pen.write(
    hour(-2),
    "batch-mixed",
    {
      code: "W",
      resins: [{ material: flakes, amount: typed("119.8 g", "mass") }],
      solvents: [{ material: spirit, amount: typed("1000 ml", "volume") }],
    },
    { about: [flakes, spirit] },
  );
  const trial = pen.write(hour(-1), "trial-asked", {
    question: "which",
    varies: [{ factor: "cut", levels: ["1", "2"], appliedTo: "jar" }],
    looksAt: [{ name: "gloss", scale: "measured" }],
    coats: 2,
  });
  const jars = [jar, weak].map((batch, i) => ({ jar: `jar ${i}`, recipe: {}, batch }));
  pen.write(
    hour(-0.5),
    "trial-laid-out",
    {
      boards: [{ board, name: "B", plank: "P", wood: "cherry", patches: 1 }],
      patches: [{ patch: "p1", board: "B", place: 1, code: "K7" }],
      orders: [["K7"]],
      keySha256: "0".repeat(64),
      blinding: "codes only",
      geometry: { boardMm: [500, 200], patchMm: [100, 100], gutterMm: 5, judgedInsetMm: 5 },
      jars,
    },
    { about: [trial, board, jar, weak] },
  );
  pen.write(
    hour(0),
    "layer-applied",
    { sort: "coat", targets: [{ trial, patch: "p1" }], from: [], method: "brush", ...weighed("1 g") },
    { about: [trial] },
  );
  const place = { trial, patch: "p1" };
  const film = filmView(pen.book, place);
  // 1 g on 0.01 m² of 2 lb is 19.3 µm, of 1 lb 10.9 µm
  expectNear(um(film.thickness), (19.33 + 10.93) / 2, { relative: 5e-3 });
  expect(film.coats[0]).toMatchObject({ openWhich: true, jars: [jar, weak] });
  expect(film.contributions.map((c) => c.source)).toContain("which jar");
});
