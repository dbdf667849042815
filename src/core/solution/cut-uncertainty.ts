import { kilogram } from "../units.ts";
import type { Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import { cutFromDryDown } from "./dry-down.ts";
import type { Instruments, UncertaintySource } from "./instruments.ts";
import { cutIfMoved, type Measurement, type SolventMeasuredBy, uncertainInputs } from "./measured-mix.ts";
import type { Mixed, Recipe } from "./mix.ts";
import { combinedVariances, type Propagated, propagated } from "./propagation.ts";
import { type SolventSlopes, solventSlopes } from "./solvent-slopes.ts";
import { strengthAt20C } from "./strength.ts";
import { labelledStrength } from "./strength-shift.ts";

/** The readings of a mix whose resin and solvent are measured out, as the closed form needs them. */
interface Weighed {
  readonly recipe: Recipe;
  readonly mixed: Mixed;
  readonly solventBy: SolventMeasuredBy;
  readonly instruments: Instruments;
  readonly slopes: SolventSlopes;
}

/**
 * Resin and solvent measured out: the cut is a quotient, and its relative slopes are sums.
 *
 *     by jug: c = m·dry·ρ20/(V·ρT),   by scale: c = m·dry·ρ20/ms
 */
function uncertaintyOfQuotient({ recipe, mixed, solventBy, instruments: i, slopes }: Weighed) {
  const byJug = solventBy === "jug";
  const poured = mixed.solvent / slopes.atT;
  const scale = i.scaleG / 1e3;
  const squares: Readonly<Record<UncertaintySource, number>> = {
    scaleG: (scale / mixed.resin) ** 2 + (byJug ? 0 : (scale / mixed.solvent) ** 2),
    jugMl: byJug ? (i.jugMl / 1e6 / poured) ** 2 : 0,
    temperatureC: byJug ? (slopes.perKelvin * i.temperatureC) ** 2 : 0,
    strengthVolumeFraction:
      ((slopes.perStrengthAt20C - (byJug ? slopes.perStrengthAtT : 0)) * i.strengthVolumeFraction) ** 2,
    moistureMassFraction: (i.moistureMassFraction / recipe.resin.dry) ** 2,
    partialDensityKgM3: 0,
    solventDensityKgM3: ((1 / slopes.at20C - (byJug ? 1 / slopes.atT : 0)) * slopes.uncertainty) ** 2,
  };
  const variances = new Map<UncertaintySource, number>();
  for (const source in squares) {
    const known = source as UncertaintySource; // the record's own key
    variances.set(known, squares[known] * mixed.cut ** 2);
  }
  return combinedVariances(variances);
}

/**
 * How sure the cut of a mix is, from what it is measured out with.
 *
 * Each instrument moves its own reading: the scale the flakes (and the solvent when it is weighed), the jug a
 * volume, the thermometer every volume, the label the solvent's strength, the flakes' moisture the dry resin, the
 * resin's partial density a finished volume. Where the solvent's density is itself uncertain, that counts too.
 *
 * @param recipe       resin, solvent, temperature of volumes
 * @param mixed        the mix as meant
 * @param how          which two amounts are measured, the solvent by jug or scale, the standard uncertainties, and
 *                     the solvent's slopes where they are known already
 * @returns            standard uncertainty of the cut [kg/m³], and each source's share of the variance
 * @throws DomainError as `mixFrom`
 *
 * Valid:    uncertainties small beside the amounts
 * Accuracy: first order, checked against Monte Carlo (JCGM 101) in the tests
 * Source:   JCGM 100:2008 (GUM), 5.1
 */
export function uncertaintyOfMix(
  recipe: Recipe,
  mixed: Mixed,
  how: Omit<Measurement, "recipe" | "mixed"> & {
    readonly instruments: Instruments;
    readonly slopes?: SolventSlopes;
  },
): Propagated<UncertaintySource> {
  if (how.measured === "resin-and-solvent") {
    const { solventBy, instruments, slopes = solventSlopes(recipe, instruments) } = how;
    return uncertaintyOfQuotient({ recipe, mixed, solventBy, instruments, slopes });
  }
  const measurement = { recipe, mixed, measured: how.measured, solventBy: how.solventBy };
  return propagated(cutIfMoved(measurement), uncertainInputs(measurement, how.instruments));
}

/**
 * How sure the cut from a dry-down is: two readings of the scale, the solvent's strength and density, and what the
 * dried film still holds (`moistureMassFraction`, of the dried mass). Jug, temperature and the resin's volume play no part.
 *
 * @param wet, dry     readings [kg], scalars
 * @param solvent      what dried off, mass fractions
 * @param instruments  standard uncertainties
 * @returns            standard uncertainty of the cut [kg/m³], and each source's share of the variance
 * @throws DomainError as `cutFromDryDown`
 *
 * Valid:    uncertainties small beside the weighings
 * Accuracy: first order
 * Source:   JCGM 100:2008 (GUM), 5.1
 */
export function uncertaintyOfDryDown(
  wet: number,
  dry: number,
  solvent: Composition,
  instruments: Instruments,
): Propagated<UncertaintySource> {
  const label = instruments.strengthVolumeFraction === 0 ? undefined : labelledStrength(solvent);
  const density = densityOfSolvent(solvent, strengthAt20C);
  const scale = { source: "scaleG", standardUncertainty: instruments.scaleG / 1e3 } as const;
  const room = (wet - dry) * 0.45; // wet and dry may not meet
  return propagated(
    (moved) => {
      const other = moved.strength === 0 ? solvent : (label?.shifted(moved.strength) ?? solvent);
      const resin = (dry + moved.dry) * (1 - moved.held);
      const { cut } = cutFromDryDown(kilogram(wet + moved.wet), kilogram(resin), other);
      return cut * (1 + moved.density / density.value);
    },
    [
      { quantity: "wet", ...scale, least: -room },
      { quantity: "dry", ...scale, least: -dry, most: room },
      {
        quantity: "strength",
        source: "strengthVolumeFraction",
        standardUncertainty: label === undefined ? 0 : instruments.strengthVolumeFraction,
        least: -(label?.volumeFraction ?? 0),
        most: 1 - (label?.volumeFraction ?? 1),
      },
      {
        quantity: "held",
        source: "moistureMassFraction",
        standardUncertainty: instruments.moistureMassFraction,
        least: 0,
        most: 0.9,
      },
      {
        quantity: "density",
        source: "solventDensityKgM3",
        standardUncertainty: density.standardUncertainty,
      },
    ],
  );
}
