import { type Cut, celsiusFromKelvin, cubicMetre, type Kelvin, kelvin, kilogram } from "../units.ts";
import type { Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import type { Instruments, UncertaintySource } from "./instruments.ts";
import { cutOfMix, type Mixed, type Recipe } from "./mix.ts";
import type { UncertainInput } from "./propagation.ts";
import { movedResin } from "./resin.ts";
import { strengthAt20C } from "./strength.ts";
import { labelledStrength } from "./strength-shift.ts";

/** Which two amounts are measured out; the cut follows from them. Resin is always weighed, a finished volume always read. */
export type Measured = "resin-and-solvent" | "resin-and-solution" | "solvent-and-solution";

export type SolventMeasuredBy = "jug" | "scale";

export const quantities = [
  "resin",
  "solvent",
  "solution",
  "temperature",
  "strength",
  "moisture",
  "partialDensity",
  "solventDensity",
] as const;
export type Quantity = (typeof quantities)[number];
/** How far each quantity is off, in SI; the strength as a volume fraction. */
export type Moved = Readonly<Record<Quantity, number>>;

/** A mix as it is measured out. */
export interface Measurement {
  readonly recipe: Recipe;
  readonly mixed: Mixed;
  readonly measured: Measured;
  readonly solventBy: SolventMeasuredBy;
}

/** Everything that a mix depends on, with how uncertain it is and how far it may be moved. */
export function uncertainInputs(
  m: Measurement,
  i: Instruments,
): readonly UncertainInput<Quantity, UncertaintySource>[] {
  const { resin, temperature } = m.recipe;
  const t = celsiusFromKelvin(temperature);
  const jug = { source: "jugMl", standardUncertainty: i.jugMl / 1e6 } as const;
  const scale = { source: "scaleG", standardUncertainty: i.scaleG / 1e3 } as const;
  const measuredOut: UncertainInput<Quantity, UncertaintySource>[] = [];
  if (m.measured !== "solvent-and-solution")
    measuredOut.push({ quantity: "resin", ...scale, least: -m.mixed.resin * 0.9 });
  if (m.measured !== "resin-and-solution")
    measuredOut.push({ quantity: "solvent", ...(m.solventBy === "jug" ? jug : scale) });
  if (m.measured !== "resin-and-solvent") measuredOut.push({ quantity: "solution", ...jug });
  const u = densityOfSolvent(m.recipe.solvent, temperature).standardUncertainty;
  const label = i.strengthVolumeFraction === 0 ? undefined : labelledStrength(m.recipe.solvent);
  const q = label?.volumeFraction ?? 0;
  return [
    ...measuredOut,
    {
      quantity: "temperature",
      source: "temperatureC",
      standardUncertainty: i.temperatureC,
      least: (t < -10 ? -20 : -10) - t,
      most: 40 - t,
    },
    {
      quantity: "strength",
      source: "strengthVolumeFraction",
      standardUncertainty: label === undefined ? 0 : i.strengthVolumeFraction,
      least: -q,
      most: 1 - q,
    },
    {
      quantity: "moisture",
      source: "moistureMassFraction",
      standardUncertainty: i.moistureMassFraction,
      least: -resin.moisture,
      most: resin.dry * 0.9,
    },
    {
      quantity: "partialDensity",
      source: "partialDensityKgM3",
      standardUncertainty: i.partialDensityKgM3,
      least: 100 - resin.partialDensity,
    },
    { quantity: "solventDensity", source: "solventDensityKgM3", standardUncertainty: u },
  ];
}

/** The solvent as it truly is when its label and its density are off, and how dense it is at a temperature. */
function solventIfMoved({ recipe }: Measurement) {
  const label = labelledStrength(recipe.solvent);
  return (moved: Moved) => {
    const solvent =
      moved.strength === 0 ? recipe.solvent : (label?.shifted(moved.strength) ?? recipe.solvent);
    return {
      solvent,
      densityAt: (t: Kelvin): number => densityOfSolvent(solvent, t).value + moved.solventDensity,
    };
  };
}

/** Filled up to a volume: what was not measured of the two follows from the rest. */
function cutOfFilled(m: Measurement, moved: Moved, solvent: Composition, solventMass: number): Cut {
  const { recipe, mixed } = m;
  const other: Recipe = {
    resin: movedResin(recipe.resin, moved.moisture, moved.partialDensity),
    solvent,
    temperature: kelvin(recipe.temperature + moved.temperature),
    densityOffset: moved.solventDensity,
  };
  const solutionVolume = cubicMetre(mixed.solutionVolume + moved.solution);
  return m.measured === "resin-and-solution"
    ? cutOfMix(other, { resin: kilogram(mixed.resin + moved.resin), solutionVolume })
    : cutOfMix(other, { solvent: kilogram(solventMass), solutionVolume });
}

/** The cut when the readings stand as they were read, and what was taken for granted was a little other. */
export function cutIfMoved(m: Measurement): (moved: Moved) => number {
  const { recipe, mixed, solventBy } = m;
  const poured = mixed.solvent / densityOfSolvent(recipe.solvent, recipe.temperature).value;
  const solventMoved = solventIfMoved(m);
  return (moved) => {
    const { solvent, densityAt } = solventMoved(moved);
    const solventMass =
      solventBy === "scale"
        ? mixed.solvent + moved.solvent
        : (poured + moved.solvent) * densityAt(kelvin(recipe.temperature + moved.temperature));
    if (m.measured !== "resin-and-solvent") return cutOfFilled(m, moved, solvent, solventMass);
    const dry = (mixed.resin + moved.resin) * (recipe.resin.dry - moved.moisture);
    return (dry * densityAt(strengthAt20C)) / solventMass;
  };
}
