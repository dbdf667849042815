import { massOf, solidsOf, solutionOf } from "../jar/amounts.ts";
import { foldJar } from "../jar/fold-jar.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { partOfSolution } from "../solution/solution.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { thinTo } from "../solution/thin.ts";
import { cutFromPoundsPerUsGallon } from "../units.ts";
import { jarView } from "../views/jar.ts";
import { materialView } from "../views/material.ts";
import { typed } from "./pen.ts";
import { about, later, roundTo, type Shop } from "./shop.ts";
import { type DemoAlcohol, type DemoCut, demoAlcohols, demoCuts, demoReadyH } from "./truth.ts";

/** Two stocks of each alcohol, each strained and let down to both cuts. */
export interface Jars {
  readonly working: readonly {
    readonly alcohol: DemoAlcohol;
    readonly cut: DemoCut;
    readonly stock: 1 | 2;
    readonly batch: string;
  }[];
}

const letter: Readonly<Record<DemoAlcohol, string>> = { ethanol: "L", isopropanol: "P", denatured: "D" };
const poundsOf: Readonly<Record<DemoCut, number>> = { "1 lb": 1, "1½ lb": 1.5 };
const emptyGrams = { 500: 246, 250: 142, 125: 96 } as const;

interface Stock {
  readonly alcohol: DemoAlcohol;
  readonly number: 1 | 2;
  readonly id: string;
  readonly mixedAt: string;
  readonly readyH: number;
}

/** An empty glass of a size, weighed, as somebody would describe it. */
export function vessel(shop: Shop, at: string, name: string, millilitres: keyof typeof emptyGrams): string {
  const grams = roundTo(about(shop.random, emptyGrams[millilitres], 2), 1);
  return shop.pen.write(at, "vessel-described", {
    name,
    capacity: typed(`${millilitres} ml`, "volume"),
    emptyWeight: typed(`${grams} g`, "mass", shop.shelf.kitchenScale),
  });
}

/** A time to ready from a Weibull distribution of shape 6 about the median. */
const drawReady = (shop: Shop, median: number): number =>
  median * (Math.log(1 / (1 - shop.random())) / Math.log(2)) ** (1 / 6);

/** Day −38, a Saturday's morning: six stocks of three pounds. One was written down wrongly and is struck out. */
function mixStocks(shop: Shop): readonly Stock[] {
  const { pen, clock, shelf, random } = shop;
  const stocks: Stock[] = [];
  for (const [i, alcohol] of demoAlcohols.entries())
    for (const number of [1, 2] as const) {
      const time = later("07:40", (2 * i + number - 1) * 12 + Math.floor(random() * 5));
      const at = clock.at(-38, time);
      const code = `${letter[alcohol]}${number === 1 ? 1 : 5}`;
      const glass = vessel(shop, clock.at(-38, "07:20"), `half-litre jar ${code}`, 500);
      const body = (grams: string) => ({
        code,
        vessel: glass,
        resins: [{ material: shelf.lemon, amount: typed(`${grams} g`, "mass", shelf.kitchenScale) }],
        solvents: [{ material: shelf.alcohol[alcohol], amount: typed("300 ml", "volume", shelf.jug) }],
        aimedCutLbPerGal: 3,
      });
      const things = [glass, shelf.lemon, shelf.alcohol[alcohol]];
      const grams = String(roundTo(about(random, 109, 0.6), 1));
      const mistaken = alcohol === "denatured" && number === 1;
      const id = pen.write(at, "batch-mixed", body(mistaken ? grams.slice(0, 2) : grams), { about: things });
      if (mistaken)
        pen.write(clock.at(-38, later(time, 4)), "batch-mixed", body(grams), {
          about: [id, ...things],
          strikes: [id],
        });
      stocks.push({ alcohol, number, id, mixedAt: time, readyH: drawReady(shop, demoReadyH[alcohol]) });
    }
  return stocks;
}

const undissolvedAt = (share: number) =>
  share < 0.35 ? "most" : share < 0.75 ? "some" : share < 1 ? "a trace" : "none";

/** Looked at after an hour or two, through the day, and again the next morning, until nothing is left. */
function lookAtStocks(shop: Shop, stocks: readonly Stock[]): void {
  const rounds = [
    [-38, "10:10"],
    [-38, "12:15"],
    [-38, "14:40"],
    [-38, "16:30"],
    [-38, "18:20"],
    [-38, "20:40"],
    [-38, "22:30"],
    [-37, "07:30"],
    [-37, "09:30"],
    [-37, "11:40"],
    [-37, "14:00"],
  ] as const;
  const done = new Set<string>();
  for (const [day, time] of rounds)
    for (const [i, stock] of stocks.entries()) {
      if (done.has(stock.id)) continue;
      const at = shop.clock.at(day, later(time, 2 * i));
      const hours = (Date.parse(at) - Date.parse(shop.clock.at(-38, stock.mixedAt))) / 3.6e6;
      const undissolved = undissolvedAt(hours / stock.readyH);
      if (undissolved === "none") done.add(stock.id);
      shop.pen.write(
        at,
        "batch-looked-at",
        { undissolved, clarity: undissolved === "none" ? "hazy" : "cloudy" },
        { about: [stock.id] },
      );
    }
}

/** One of the two that never came quite clear. */
const isHazy = (stock: Stock): boolean => stock.alcohol === "denatured" && stock.number === 2;

/** Day −37, evening: strained through paper, and a spoonful of each dried down. */
function strain(shop: Shop, stock: Stock, turn: number): string {
  const { pen, clock, shelf, random } = shop;
  const code = `${letter[stock.alcohol]}${stock.number === 1 ? 2 : 6}`;
  const time = later("17:40", 14 * turn);
  const glass = vessel(shop, clock.at(-37, time), `half-litre jar ${code}`, 500);
  const there = (jarView(pen.book, stock.id)?.volume.value ?? 0) * 1e6;
  const kept = roundTo(there - about(random, 14, 2), 5);
  const id = pen.write(
    clock.at(-37, later(time, 10)),
    "batch-filtered",
    { code, vessel: glass, through: "coffee paper", kept: typed(`${kept} ml`, "volume", shelf.jug) },
    { about: [stock.id, glass] },
  );
  pen.write(
    clock.at(-37, later(time, 12)),
    "batch-looked-at",
    { undissolved: "none", clarity: isHazy(stock) ? "hazy" : "clear" },
    { about: [id] },
  );
  const fold = foldJar(pen.book, id);
  const solid = fold === null ? 0 : solidsOf(fold.now.value) / massOf(fold.now.value);
  const wet = about(random, 10, 0.4);
  const dry = wet * solid * about(random, 0.995, 0.004);
  pen.write(
    clock.at(-36, later("08:00", 3 * turn)),
    "batch-dried-down",
    {
      wet: typed(`${wet.toFixed(2)} g`, "mass", shelf.fineScale),
      dry: typed(`${dry.toFixed(2)} g`, "mass", shelf.fineScale),
    },
    { about: [id] },
  );
  return id;
}

/** What to add to so much of a stock for a weaker cut, as the jug can measure it [ml]. */
function millilitresToAdd(
  shop: Shop,
  stock: string,
  takenMl: number,
  alcohol: DemoAlcohol,
  pounds: number,
): number {
  const fold = foldJar(shop.pen.book, stock);
  const view = jarView(shop.pen.book, stock);
  const solvent = materialView(shop.pen.book, shop.shelf.alcohol[alcohol])?.composition;
  if (fold === null || view === null || solvent == null) return 0;
  const part = partOfSolution(solutionOf(fold.now.value), (takenMl * 1e-6) / view.volume.value);
  const { added } = thinTo(part, cutFromPoundsPerUsGallon(pounds), solvent);
  return roundTo((added / densityOfSolvent(solvent, strengthAt20C).value) * 1e6, 5);
}

/** Day −36, evening: each strained stock let down to both cuts, shut and weighed. */
function letDown(shop: Shop, stock: Stock, strained: string, turn: number): Jars["working"] {
  const { pen, clock, shelf, random } = shop;
  return [...demoCuts].reverse().map((cut, i) => {
    const code = `${letter[stock.alcohol]}${(stock.number === 1 ? 3 : 7) + i}`;
    const time = later("17:30", 18 * turn + 8 * i);
    const glass = vessel(shop, clock.at(-36, time), `quarter-litre jar ${code}`, 250);
    const taken = cut === "1 lb" ? 85 : 115;
    const add = millilitresToAdd(shop, strained, taken, stock.alcohol, poundsOf[cut]);
    const batch = pen.write(
      clock.at(-36, later(time, 4)),
      "batch-thinned",
      {
        code,
        vessel: glass,
        taken: typed(`${taken} ml`, "volume", shelf.jug),
        added: [{ material: shelf.alcohol[stock.alcohol], amount: typed(`${add} ml`, "volume", shelf.jug) }],
        aimedCutLbPerGal: poundsOf[cut],
      },
      { about: [strained, glass, shelf.alcohol[stock.alcohol]] },
    );
    weigh(shop, batch, glass, clock.at(-36, later(time, 6)), about(random, 0, 0.4));
    pen.write(
      clock.at(-36, later(time, 7)),
      "batch-looked-at",
      { undissolved: "none", clarity: isHazy(stock) ? "hazy" : "clear" },
      { about: [batch] },
    );
    return { alcohol: stock.alcohol, cut, stock: stock.number, batch };
  });
}

/** A jar on the kitchen scale with its lid: what should be there, and so many grams more. */
export function weigh(shop: Shop, batch: string, glass: string, at: string, moreGrams: number): void {
  const empty = shop.pen.book.making(glass)?.body as { emptyWeight: { si: number } };
  const mass = jarView(shop.pen.book, batch)?.mass.value ?? 0;
  const grams = Math.round((empty.emptyWeight.si + mass) * 1e3 + moreGrams);
  shop.pen.write(
    at,
    "batch-weighed",
    { gross: typed(`${grams} g`, "mass", shop.shelf.kitchenScale), withLid: true },
    { about: [batch] },
  );
}

/** A jar kept from more than a year ago, whose drop stays soft. */
function oldJar(shop: Shop): void {
  const { pen, clock } = shop;
  const id = pen.write(
    clock.at(-430, "12:00"),
    "batch-mixed",
    {
      code: "G1",
      resins: [{ name: "Garnet flakes, an older lot", amount: typed("60 g", "mass") }],
      solvents: [{ name: "Denatured alcohol, another tin", amount: typed("250 ml", "volume") }],
      aimedCutLbPerGal: 2,
    },
    { happenedKnownTo: "day", remembered: true },
  );
  pen.write(
    clock.at(-39, "18:05"),
    "batch-looked-at",
    { undissolved: "none", clarity: "cloudy", colour: "darker than it was" },
    { about: [id] },
  );
  pen.write(clock.at(-38, "18:00"), "batch-drop-tested", { result: "tacky" }, { about: [id] });
}

/** The jars of the month, up to the trial. */
export function fillJars(shop: Shop): Jars {
  oldJar(shop);
  const stocks = mixStocks(shop);
  lookAtStocks(shop, stocks);
  const strained = stocks.map((stock, turn) => strain(shop, stock, turn));
  const working = stocks.flatMap((stock, turn) => letDown(shop, stock, strained[turn] as string, turn));
  return { working };
}

/** Last evening: seedlac for the table lamp's foot, not yet ready. */
export function startSeedlac(shop: Shop): void {
  const { pen, clock, shelf } = shop;
  const glass = vessel(shop, clock.at(-1, "19:30"), "half-litre jar S1", 500);
  const id = pen.write(
    clock.at(-1, "19:40"),
    "batch-mixed",
    {
      code: "S1",
      vessel: glass,
      resins: [{ material: shelf.seedlac, amount: typed("80 g", "mass", shelf.kitchenScale) }],
      solvents: [{ material: shelf.alcohol.ethanol, amount: typed("330 ml", "volume", shelf.jug) }],
      aimedCutLbPerGal: 2,
    },
    { about: [glass, shelf.seedlac, shelf.alcohol.ethanol] },
  );
  pen.write(
    clock.at(-1, "20:45"),
    "batch-looked-at",
    { undissolved: "most", clarity: "cloudy" },
    { about: [id] },
  );
  pen.write(
    clock.at(-1, "22:10"),
    "batch-looked-at",
    { undissolved: "most", clarity: "cloudy" },
    { about: [id] },
  );
}
