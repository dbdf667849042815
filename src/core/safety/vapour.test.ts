import { expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { expectNear } from "../../../test/near.ts";
import { molarLiquid } from "../evaporation/molar-liquid.ts";
import type { Volatile } from "../evaporation/volatiles.ts";
import { aqueous, type Composition } from "../solution/composition.ts";
import { massFractionFromVolumeFraction, strengthAt20C } from "../solution/strength.ts";
import { celsiusFromKelvin, cubicMetre, massFraction, volumeFraction } from "../units.ts";
import { flashPoint } from "./flash-point.ts";
import { hazardsOf } from "./hazards.ts";
import { shareInRoom, timeAbove } from "./room-vapour.ts";
import { cubicMetresPerCubicFoot, dilutionForFire, dilutionForHealth } from "./ventilation.ts";

const flashC = (composition: Composition): number => {
  const found = flashPoint(molarLiquid(composition));
  return found === undefined ? Number.NaN : celsiusFromKelvin(found);
};
const byVolume = (alcohol: Volatile, percent: number): Composition =>
  aqueous(alcohol, massFractionFromVolumeFraction(alcohol, volumeFraction(percent / 100), strengthAt20C));

// A printed list of ethanol with water, the same as in the NFPA hazard guide, read as volume percent: its source allows 4 K.
test.each(checkTable("solutions/flash_points_aqueous.csv"))(
  "$alcohol of $percent % by volume: $flash_point_C °C",
  (row) => {
    expectNear(flashC(byVolume(row.alcohol as Volatile, Number(row.percent))), Number(row.flash_point_C), {
      absolute: 4,
    });
  },
);

test("alone, each liquid flashes where the lists say", () => {
  for (const liquid of ["ethanol", "isopropanol", "mek", "n-butanol"] as const)
    expectNear(flashC({ [liquid]: massFraction(1) }), hazardsOf(liquid)?.flashPoint ?? Number.NaN, {
      absolute: 1e-6,
    });
});

test("water raises it, a little ketone lowers it, and water alone has none", () => {
  const strengths = [100, 90, 70, 50, 30, 10].map((p) => flashC(byVolume("isopropanol", p)));
  for (let i = 1; i < strengths.length; i++) expect(strengths[i]).toBeGreaterThan(strengths[i - 1] ?? 0);
  const denatured = { ethanol: massFraction(0.94), mek: massFraction(0.03), water: massFraction(0.03) };
  expect(flashC(denatured)).toBeLessThan(flashC({ ethanol: massFraction(0.97), water: massFraction(0.03) }));
  expect(flashPoint(molarLiquid({ water: massFraction(1) }))).toBeUndefined();
});

const room = { volume: cubicMetre(40), freshAir: 0 };
/** Vapour of 100 mL at 25 °C, m³. */
const vapour = (density: number, molarMass: number): number =>
  ((1e-4 * density) / molarMass) * ((8.314462618 * 298.15) / 101_325);

// The trade's own arithmetic: 100 mL in a closed room of 40 m³ makes about 1050 ppm of ethanol, 1510 of methanol, 800 of
// isopropanol.
test.each([
  ["ethanol", 789.2, 0.046069, 1050],
  ["methanol", 791.4, 0.032042, 1510],
  ["isopropanol", 785.5, 0.060096, 800],
] as const)("100 mL of %s in a closed room of 40 m³", (_, density, molarMass, ppm) => {
  const source = { rate: vapour(density, molarMass) / 3600, duration: 3600 };
  expectNear(shareInRoom(source, room, 3600) * 1e6, ppm, { relative: 0.005 });
});

test("fresh air: the share tends to rate over flow, and falls by itself afterwards; a closed room is the limit", () => {
  const source = { rate: 1e-5, duration: 1e6 };
  const aired = { volume: cubicMetre(40), freshAir: 0.01 };
  expectNear(shareInRoom(source, aired, 1e6), 1e-3, { relative: 1e-9 });
  const ended = { ...source, duration: 3600 };
  const falls = shareInRoom(ended, aired, 3600 + 4000) / shareInRoom(ended, aired, 3600);
  expectNear(falls, Math.exp(-1), { relative: 1e-9 });
  expectNear(shareInRoom(ended, { ...aired, freshAir: 1e-9 }, 3600), shareInRoom(ended, room, 3600), {
    relative: 1e-6,
  });
});

test("the time above a level is the time between the two moments at which the share is the level", () => {
  const source = { rate: 1e-5, duration: 3600 };
  const aired = { volume: cubicMetre(40), freshAir: 0.01 };
  const level = 3e-4;
  const time = timeAbove(source, aired, level);
  const begins = -4000 * Math.log(1 - (level * 0.01) / 1e-5);
  expectNear(shareInRoom(source, aired, begins), level, { relative: 1e-9 });
  expectNear(shareInRoom(source, aired, begins + time), level, { relative: 1e-9 });
  expect(timeAbove(source, aired, 1)).toBe(0);
  expect(timeAbove(source, room, 1e-4)).toBe(Number.POSITIVE_INFINITY);
});

// The printed formula in metric: Q = 24·SG·ER·K·10⁶/(MW·C), m³ and litres. 403 is 24 in its own units.
test("the two printed forms of the dilution formula agree within 1 percent", () => {
  const cfm = dilutionForHealth({ specificGravity: 0.789, molarMass: 46.07, pintPerMinute: 1 / 60 }, 1000, 5);
  const litres = 0.473176473; // a US pint
  const metric = (24 * 0.789 * litres * 5 * 1e6) / (46.07 * 1000);
  expectNear(cfm * cubicMetresPerCubicFoot * 60, metric, { relative: 0.01 });
  const fire = { specificGravity: 0.88, molarMass: 106, pintPerMinute: 2 / 60 };
  expectNear(dilutionForFire(fire, 1, 10, 0.7, 350) / dilutionForFire(fire, 1, 10, 0.7, 70), 810 / 530, {
    relative: 1e-12,
  });
});

test("a flash point outside the range is none", () => {
  expect(flashPoint({ components: ["ethanol", "water"], moleFractions: [1e-4, 0.9999] })).toBeUndefined();
});
