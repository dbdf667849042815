import {
  type CubicMetre,
  type Cut,
  celsiusFromKelvin,
  cubicMetre,
  cut as cutOf,
  type Kelvin,
  type Kilogram,
  type KilogramPerCubicMetre,
  kelvin,
  kilogram,
  kilogramPerCubicMetre,
} from "../units.ts";
import type { Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import type { Instruments, UncertaintySource } from "./instruments.ts";
import { type Propagated, propagated } from "./propagation.ts";
import { cutOfSolution, solutionOfCut, withLiquid } from "./solution.ts";
import { labelledStrength } from "./strength-shift.ts";

/** A thinning as it is carried out: an amount of stock of a known cut, and an amount of solvent. */
export interface Thinning {
  readonly stockCut: Cut;
  readonly stockCutUncertainty: number;
  readonly stockSolvent: Composition;
  readonly partialDensity: KilogramPerCubicMetre;
  /** By jug, or by scale. */
  readonly stock: CubicMetre | Kilogram;
  readonly stockBy: "jug" | "scale";
  readonly added: Kilogram;
  readonly addedBy: "jug" | "scale";
  readonly addedSolvent: Composition;
  readonly temperature: Kelvin;
}

export type ThinningSource = UncertaintySource | "stockCut";

const reading = (by: "jug" | "scale", i: Instruments) =>
  by === "jug"
    ? ({ source: "jugMl", standardUncertainty: i.jugMl / 1e6 } as const)
    : ({ source: "scaleG", standardUncertainty: i.scaleG / 1e3 } as const);

/**
 * How sure the cut of a thinned jar is: the stock's own cut, the two amounts as read, the temperature of what was
 * read as volume, the strength and density of solvent that was weighed, and the resin's volume in stock that was not.
 *
 * @param t  the thinning
 * @param i  standard uncertainties
 * @returns  standard uncertainty of the cut [kg/m³], and each source's share of the variance
 * @throws DomainError as the densities
 *
 * Valid:    uncertainties small beside the amounts
 * Accuracy: first order
 * Source:   JCGM 100:2008 (GUM), 5.1
 */
export function uncertaintyOfThinning(t: Thinning, i: Instruments): Propagated<ThinningSource> {
  const label = i.strengthVolumeFraction === 0 ? undefined : labelledStrength(t.addedSolvent);
  const celsius = celsiusFromKelvin(t.temperature);
  const density = densityOfSolvent(t.addedSolvent, t.temperature);
  const addedVolume = t.added / density.value;
  return propagated(
    (moved) => {
      const temperature = kelvin(t.temperature + moved.temperature);
      const composition =
        moved.strength === 0 ? t.addedSolvent : (label?.shifted(moved.strength) ?? t.addedSolvent);
      const amount = t.stock + moved.stock;
      const stock = solutionOfCut(
        cutOf(t.stockCut + moved.stockCut),
        t.stockSolvent,
        t.stockBy === "scale" ? { mass: kilogram(amount) } : { volume: cubicMetre(amount), temperature },
        kilogramPerCubicMetre(t.partialDensity + moved.partialDensity),
      );
      const other = densityOfSolvent(composition, temperature).value;
      const mass =
        t.addedBy === "scale"
          ? (t.added + moved.added) * (1 - moved.density / other)
          : (addedVolume + moved.added) * other;
      return cutOfSolution(withLiquid(stock, { mass: kilogram(mass), composition }));
    },
    [
      { quantity: "stockCut", source: "stockCut", standardUncertainty: t.stockCutUncertainty },
      { quantity: "stock", ...reading(t.stockBy, i), least: -t.stock * 0.9 },
      {
        quantity: "added",
        ...reading(t.addedBy, i),
        least: -(t.addedBy === "scale" ? t.added : addedVolume),
      },
      {
        quantity: "temperature",
        source: "temperatureC",
        standardUncertainty: i.temperatureC,
        least: (celsius < -10 ? -20 : -10) - celsius,
        most: 40 - celsius,
      },
      {
        quantity: "strength",
        source: "strengthVolumeFraction",
        standardUncertainty: label === undefined ? 0 : i.strengthVolumeFraction,
        least: -(label?.volumeFraction ?? 0),
        most: 1 - (label?.volumeFraction ?? 1),
      },
      {
        quantity: "partialDensity",
        source: "partialDensityKgM3",
        standardUncertainty: i.partialDensityKgM3,
        least: 100 - t.partialDensity,
      },
      {
        quantity: "density",
        source: "solventDensityKgM3",
        standardUncertainty: t.addedBy === "scale" ? density.standardUncertainty : 0,
      },
    ],
  );
}
