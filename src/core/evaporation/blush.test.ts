import { expect, test } from "vitest";
import { dewPoint } from "../air/dew-point.ts";
import type { Composition } from "../solution/composition.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import {
  celsiusFromKelvin,
  cutFromPoundsPerUsGallon,
  kelvin,
  kilogramPerCubicMetre,
  massFraction,
  metre,
  pascal,
} from "../units.ts";
import { type Blush, blushOf, blushOfSetup, blushWords } from "./blush.ts";
import { whatWouldHelp } from "./blush-help.ts";
import { type DryingSetup, dryFilm } from "./drying.ts";

const liquids: Record<string, Composition> = {
  "dry ethanol": { ethanol: massFraction(1) },
  "95 % ethanol": { ethanol: massFraction(0.924), water: massFraction(0.076) },
  isopropanol: { isopropanol: massFraction(1) },
};
const humidities = [0.4, 0.5, 0.6, 0.75, 0.85];

function setup(liquid: string, wetUm: number, rh: number, woodC: number, lb = 1): DryingSetup {
  return {
    applied: {
      composition: liquids[liquid] ?? {},
      thickness: metre(wetUm / 1e6),
      cut: cutFromPoundsPerUsGallon(lb),
      partialDensity: usualPartialDensity,
    },
    liquidTemperature: kelvin(273.15 + woodC),
    air: { temperature: kelvin(293.15), relativeHumidity: rh, pressure: pascal(101_325), speed: 0.1 },
    length: metre(0.3),
    wood: {
      temperature: kelvin(273.15 + woodC),
      thickness: metre(0.02),
      density: kilogramPerCubicMetre(600),
    },
    radiation: true,
    seconds: 12 * 3600,
  };
}

const known = new Map<string, Blush>();
/** Each of the grid's coats is followed once, however often it is compared. */
const judged = (...given: Parameters<typeof setup>): Blush => {
  const key = given.join("/");
  const blush = known.get(key) ?? blushOfSetup(setup(...given));
  if (blush === undefined) throw new Error("a film with resin is judged");
  known.set(key, blush);
  return blush;
};
const rank = (blush: Blush): number => blushWords.indexOf(blush.word);

// Common practice: clear lac blushes from about 75 % relative humidity; a shop at 50 % has no trouble on wood as warm as
// its air. The same at every cut from a wash coat to a full body.
test.each([0.5, 1, 2, 3])("at 20 °C on wood as warm as the air, a %d lb cut", (lb) => {
  for (const liquid of Object.keys(liquids))
    for (const wetUm of [25, 125])
      for (const rh of humidities) {
        const { word } = judged(liquid, wetUm, rh, 20, lb);
        const where = `${liquid}, ${wetUm} µm, ${rh}`;
        if (rh <= 0.5) expect(word, where).toBe("unlikely");
        if (rh >= 0.75) expect(word, where).not.toBe("unlikely");
      }
});

const grid = Object.keys(liquids).flatMap((liquid) =>
  [25, 125].flatMap((wetUm) => [20, 12].map((woodC) => [liquid, wetUm, woodC] as const)),
);

test.each(grid)("%s, %d µm, wood at %d °C: never less likely in damper air", (liquid, wetUm, woodC) => {
  const found = humidities.map((rh) => judged(liquid, wetUm, rh, woodC));
  for (let i = 1; i < found.length; i++) {
    expect(found[i]?.margin).toBeLessThan(found[i - 1]?.margin ?? 0);
    expect(rank(found[i] as Blush)).toBeGreaterThanOrEqual(rank(found[i - 1] as Blush));
  }
});

const cuts = [0.5, 1, 2, 3];
const points = humidities.flatMap((rh) => cuts.map((lb) => [rh, lb] as const));
test.each(points)(
  "at %d, %d lb: never less likely on colder wood, in a thicker film, with more water",
  (rh, lb) => {
    const least = (a: Blush, b: Blush): void => expect(rank(b)).toBeGreaterThanOrEqual(rank(a));
    for (const liquid of Object.keys(liquids))
      for (const wetUm of [25, 125]) {
        const [warm, cold] = [judged(liquid, wetUm, rh, 20, lb), judged(liquid, wetUm, rh, 12, lb)];
        expect(cold.margin).toBeLessThan(warm.margin ?? 0);
        least(warm, cold);
      }
    for (const woodC of [20, 12]) {
      for (const liquid of Object.keys(liquids))
        least(judged(liquid, 25, rh, woodC, lb), judged(liquid, 125, rh, woodC, lb));
      for (const wetUm of [25, 125])
        least(judged("dry ethanol", wetUm, rh, woodC, lb), judged("95 % ethanol", wetUm, rh, woodC, lb));
    }
  },
);

/** Largest rise of the margin over the lowest that came before it, K. */
const wrongWay = (margins: readonly number[]): number => {
  let [lowest, rise] = [Number.POSITIVE_INFINITY, 0];
  for (const margin of margins) {
    rise = Math.max(rise, margin - lowest);
    lowest = Math.min(lowest, margin);
  }
  return rise;
};

// In film and water the margin is monotone within a bound alone. A board near the dew point is coldest at the start,
// whatever lies on it, and there a thicker film sets later, on wood that has warmed, with a smaller share of water: at
// 12 °C and 50 % it sets at 12.2 °C with 0.50 of water at 25 µm, at 16.5 °C with 0.23 at 500 µm. A tolerance of 1e-7
// finds the same: it is in the equations, not in the steps. Found: 0.27 K from 25 to 125 µm, 0.85 K from 10 to 500 µm.
// On wood 10 K colder than the air and more the word turns back with it, which is beyond what practice was asked.
const films = [10, 25, 60, 125, 250, 500];
test.each(Object.keys(liquids))("%s: how far a thicker film turns the margin back", (liquid) => {
  for (const rh of humidities)
    for (const lb of cuts) {
      const margins = (woodC: number): number[] =>
        films.map((wetUm) => judged(liquid, wetUm, rh, woodC, lb).margin ?? Number.NaN);
      const where = `${rh}, ${lb} lb`;
      expect(wrongWay(margins(20)), where).toBe(0);
      const [, thin = 0, , thick = 0] = margins(12);
      expect(thick - thin, where).toBeLessThan(0.3);
      expect(wrongWay(margins(12)), where).toBeLessThan(0.9);
    }
});

test("more water in the liquid turns the margin back by 0.1 K at most", () => {
  const waters = [0, 0.05, 0.1, 0.14, 0.19, 0.24, 0.3];
  for (const rh of [0.4, 0.6, 0.85])
    for (const lb of [0.5, 2]) {
      const margins = waters.map((share) => {
        const given = setup("dry ethanol", 125, rh, 20, lb);
        const composition = { ethanol: massFraction(1 - share), water: massFraction(share) };
        return blushOfSetup({ ...given, applied: { ...given.applied, composition } })?.margin ?? Number.NaN;
      });
      expect(wrongWay(margins), `${rh}, ${lb} lb`).toBeLessThan(0.1);
    }
});

/** Wood that is so much warmer than the air's dew point, in air of 20 °C. */
const woodAbove = (kelvins: number, rh: number): number => dewPoint(kelvin(293.15), rh) - 273.15 + kelvins;

// General paint rule: 3 °C above the dew point at least. A primer of the same resin: 8 °C above it, below 85 %;
// clear lac from 75 % on is a case of its own.
test.each(humidities)(
  "at %d: never unlikely within 3 °C of the dew point, thin coats unlikely 8 °C above it",
  (rh) => {
    for (const liquid of Object.keys(liquids))
      for (const wetUm of [25, 125]) {
        const where = `${liquid}, ${wetUm} µm`;
        expect(judged(liquid, wetUm, rh, woodAbove(3, rh)).word, where).not.toBe("unlikely");
        const far = judged(liquid, wetUm, rh, woodAbove(8, rh)).word;
        if (rh < 0.85) expect(far, where).not.toBe("likely");
        if (wetUm === 25 && rh < 0.75) expect(far, where).toBe("unlikely");
      }
  },
);

test("all three words are said: it is not the same everywhere", () => {
  const words = grid.flatMap(([liquid, wetUm, woodC]) =>
    humidities.map((rh) => judged(liquid, wetUm, rh, woodC).word),
  );
  expect(new Set(words)).toEqual(new Set(blushWords));
});

test("stopped where it sets, a run is judged as it is when followed for the day", () => {
  const given = setup("95 % ethanol", 100, 0.6, 17);
  expect(blushOf(dryFilm(given))).toEqual(blushOfSetup(given));
});

test("solvent alone cannot turn white, and dry air has no dew point", () => {
  expect(blushOfSetup(setup("dry ethanol", 50, 0.6, 20, 0))).toBeUndefined();
  expect(blushOfSetup(setup("dry ethanol", 50, 0, 20))).toEqual({
    word: "unlikely",
    margin: null,
    dewMargin: null,
  });
});

// A film's water does not come to the wood alone: each of the four is tried, and the least that is enough is told.
test("what would help does: the value told is enough by itself, and a little less is not", () => {
  const given = setup("95 % ethanol", 40, 0.62, 18);
  const now = judged("95 % ethanol", 40, 0.62, 18);
  const help = new Map(whatWouldHelp(given, now).map((h) => [h.change, h]));
  expect([...help.keys()]).toEqual(["warmer wood", "drier air", "thinner coat", "slower alcohol"]);
  const woodC = celsiusFromKelvin(kelvin(help.get("warmer wood")?.value ?? 0));
  expect(judged("95 % ethanol", 40, 0.62, woodC).word).toBe("unlikely");
  expect(judged("95 % ethanol", 40, 0.62, woodC - 0.3).word).toBe("possible");
  const humidity = help.get("drier air")?.value ?? 0;
  expect(judged("95 % ethanol", 40, humidity, 18).word).toBe("unlikely");
  expect(judged("95 % ethanol", 40, humidity + 0.01, 18).word).toBe("possible");
  const slow = help.get("slower alcohol");
  expect(slow?.blush.word).toBe("unlikely");
  expect(slow?.value).toBeGreaterThan(0);
  expect(slow?.value).toBeLessThan(0.25);
});

test("a change that is not enough is told as far as a shop goes, with what comes of it", () => {
  const given = setup("95 % ethanol", 100, 0.8, 20);
  const now = judged("95 % ethanol", 100, 0.8, 20);
  const thin = whatWouldHelp(given, now).find((h) => h.change === "thinner coat");
  expect(thin?.blush.word).not.toBe("unlikely");
  expect(thin?.blush.margin).toBeGreaterThan(now.margin ?? 0);
  expect(thin?.value).toBeCloseTo(25e-6, 12);
});

test("unlikely already, nothing needs to help", () => {
  const given = setup("95 % ethanol", 40, 0.62, 18);
  expect(whatWouldHelp(given, { word: "unlikely", margin: 1, dewMargin: 5 })).toEqual([]);
});

test("a threshold learned from the log is taken off the margin", () => {
  const given = setup("95 % ethanol", 40, 0.5, 20);
  const [plain, own] = [blushOfSetup(given), blushOfSetup(given, 10)];
  expect((plain?.margin ?? 0) - (own?.margin ?? 0)).toBeCloseTo(10, 9);
  expect([plain?.word, own?.word]).toEqual(["unlikely", "likely"]);
});
