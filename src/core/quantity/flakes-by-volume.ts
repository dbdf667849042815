import type { Reading } from "./reading.ts";
import { siFromUnit, type Unit, unitFromSi, unitNamed } from "./unit-table.ts";

/**
 * Loose flakes, kg/m³. From one maker who measured flakes by the cup: meant for 2 lb it came out near ¾, for 4 near 1½,
 * which is 360; between 250 and 500 by grade and size of flake, from memory. The uncertainty is of that range as a rectangle.
 */
export const bulkDensityOfFlakes = {
  usual: 360,
  least: 250,
  most: 500,
  standardUncertainty: 250 / Math.sqrt(12),
  known: "from memory",
} as const;

const named = (id: string): Unit => unitNamed(id) as Unit; // of the table's own ids
const fluidOunces: Readonly<Record<string, Unit>> = { us: named("floz-us"), imp: named("floz-imp") };

/** A fluid ounce taken for one of weight, a millilitre for a gram: what a cup of flakes is often thought to weigh. */
function asIfOfWeight(volume: Reading): Reading {
  const fluidOunce = fluidOunces[volume.unit.split("-")[1] ?? ""];
  if (fluidOunce === undefined) return { ...volume, unit: "g", si: volume.si * 1e3, dimension: "mass" };
  const ounces = unitFromSi(volume.si, fluidOunce);
  return { ...volume, unit: "oz", si: siFromUnit(ounces, named("oz")), dimension: "mass" };
}

/**
 * Flakes measured by volume, as the weights that may be meant: by their bulk, which is known to a fifth, and as if the
 * ounces of the cup were of weight.
 *
 * @param volume  what was typed, read as a volume
 * @returns       two readings as masses [kg], the likelier first, that one with its standard uncertainty
 *
 * Valid:    loose flakes; seed, buttons and powder are denser
 * Accuracy: 20 % (standard) for the first
 * Source:   `bulkDensityOfFlakes`; from memory
 * @example
 * flakesByVolume({ typed: "1 cup", unit: "cup-us", si: 236.588e-6, dimension: "volume" })[0].si // => 0.0852
 */
export const flakesByVolume = (volume: Reading): readonly [Reading, Reading] => [
  {
    ...volume,
    unit: "g",
    si: volume.si * bulkDensityOfFlakes.usual,
    dimension: "mass",
    standardUncertainty: volume.si * bulkDensityOfFlakes.standardUncertainty,
  },
  asIfOfWeight(volume),
];
