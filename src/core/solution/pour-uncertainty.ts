import {
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
import { solutionOfFlakes } from "./correct.ts";
import { densityOfSolvent } from "./density.ts";
import type { Instruments, UncertaintySource } from "./instruments.ts";
import { type Propagated, propagated, type UncertainInput } from "./propagation.ts";
import { movedResin, type ResinBlend, usualPartialDensity } from "./resin.ts";
import { afterLoss } from "./restore.ts";
import { blendOfSolutions, cutOfSolution, type Solution, solutionOfCut } from "./solution.ts";
import { strengthAt20C } from "./strength.ts";
import { labelledStrength } from "./strength-shift.ts";

/** Something that is poured in: a jar of a known cut, or solvent, whose cut is none. */
export interface Poured {
  readonly cut: Cut;
  /** Standard, kg/m³. */
  readonly cutUncertainty: number;
  readonly solvent: Composition;
  readonly partialDensity: KilogramPerCubicMetre;
  /** Cubic metres by jug, kilograms by scale. */
  readonly amount: number;
  readonly by: "jug" | "scale";
}

/** Solvent by itself as something poured: cubic metres by jug, kilograms by scale. */
export const solventAsPoured = (solvent: Composition, amount: number, by: Poured["by"]): Poured => ({
  cut: cutOf(0),
  cutUncertainty: 0,
  solvent,
  partialDensity: usualPartialDensity,
  amount,
  by,
});

/** Flakes weighed into what is poured. */
export interface FlakesAdded {
  readonly mass: Kilogram;
  readonly resin: ResinBlend;
}

/** What else happens to what is poured together. */
export interface Besides {
  readonly flakes?: FlakesAdded | undefined;
  /** Liquid that left, by two weighings. */
  readonly lost?: Kilogram;
}

export type PouringSource = UncertaintySource | "jarCut";

type Moved = Readonly<Record<string, number>>;
const moveOf = (moved: Moved, quantity: string): number => moved[quantity] ?? 0;

function besidesInputs(
  { flakes, lost }: Besides,
  i: Instruments,
): readonly UncertainInput<string, PouringSource>[] {
  const weighed = { source: "scaleG", standardUncertainty: i.scaleG / 1e3 } as const;
  const inputs: UncertainInput<string, PouringSource>[] = [];
  if (flakes !== undefined)
    inputs.push(
      { quantity: "flakes", ...weighed, least: -0.9 * flakes.mass },
      {
        quantity: "moisture",
        source: "moistureMassFraction",
        standardUncertainty: i.moistureMassFraction,
        least: -flakes.resin.moisture,
        most: 0.9 * flakes.resin.dry,
      },
    );
  if (lost !== undefined)
    inputs.push(
      { quantity: "weight then", ...weighed, least: -lost },
      { quantity: "weight now", ...weighed, most: lost },
    );
  return inputs;
}

function inputsOf(
  poured: readonly Poured[],
  temperature: Kelvin,
  i: Instruments,
): readonly UncertainInput<string, PouringSource>[] {
  const t = celsiusFromKelvin(temperature);
  const labels = poured.flatMap((p) => labelledStrength(p.solvent)?.volumeFraction ?? []);
  const weighed = poured.filter((p) => p.by === "scale");
  const density = Math.max(
    0,
    ...weighed.map((p) => densityOfSolvent(p.solvent, strengthAt20C).standardUncertainty),
  );
  return [
    ...poured.flatMap(({ cut, cutUncertainty, amount, by }, n): UncertainInput<string, PouringSource>[] => [
      { quantity: `cut ${n}`, source: "jarCut", standardUncertainty: cutUncertainty, least: -cut },
      {
        quantity: `amount ${n}`,
        source: by === "jug" ? "jugMl" : "scaleG",
        standardUncertainty: by === "jug" ? i.jugMl / 1e6 : i.scaleG / 1e3,
        least: -0.9 * amount,
      },
    ]),
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
      standardUncertainty: labels.length === 0 ? 0 : i.strengthVolumeFraction,
      least: -Math.min(1, ...labels),
      most: 1 - Math.max(0, ...labels),
    },
    {
      quantity: "partialDensity",
      source: "partialDensityKgM3",
      standardUncertainty: i.partialDensityKgM3,
      least: 100 - Math.min(...poured.map((p) => p.partialDensity)),
    },
    { quantity: "density", source: "solventDensityKgM3", standardUncertainty: density },
  ];
}

/** One part as it truly was, when what was taken for granted was a little other. */
function partIfMoved(p: Poured, n: number, temperature: Kelvin, moved: Moved): Solution {
  const strength = moveOf(moved, "strength");
  const solvent = strength === 0 ? p.solvent : (labelledStrength(p.solvent)?.shifted(strength) ?? p.solvent);
  const cut = cutOf(p.cut + moveOf(moved, `cut ${n}`));
  const amount = p.amount + moveOf(moved, `amount ${n}`);
  const at20C = densityOfSolvent(solvent, strengthAt20C).value;
  return solutionOfCut(
    cut,
    solvent,
    p.by === "jug"
      ? { volume: cubicMetre(amount), temperature: kelvin(temperature + moveOf(moved, "temperature")) }
      : // To first order a denser liquid is a smaller volume of the same liquid.
        { mass: kilogram(amount * (1 - moveOf(moved, "density") / (at20C + cut))) },
    kilogramPerCubicMetre(p.partialDensity + moveOf(moved, "partialDensity")),
  );
}

const flakesIfMoved = ({ mass, resin }: FlakesAdded, moved: Moved): Solution =>
  solutionOfFlakes(
    kilogram(mass + moveOf(moved, "flakes")),
    movedResin(resin, moveOf(moved, "moisture"), moveOf(moved, "partialDensity")),
  );

/**
 * How sure the cut is of what was poured together: a stock thinned, jars blended, flakes added, liquid lost.
 *
 * Each part's own cut, each amount as read, the temperature of what was read as a volume, the labels' strength (all
 * off together, as from one bottle), the density of what was weighed, and the resin's volume in what was not.
 *
 * @param poured       n parts, their amounts as read
 * @param temperature  of what was read as a volume [K], scalar
 * @param instruments  standard uncertainties
 * @param besides      flakes weighed in with their moisture; liquid that left the first part, by two weighings
 * @returns            standard uncertainty of the cut [kg/m³], and each source's share of the variance
 * @throws DomainError as the densities
 *
 * Valid:    uncertainties small beside the amounts
 * Accuracy: first order
 * Source:   JCGM 100:2008 (GUM), 5.1
 */
export function uncertaintyOfPouring(
  poured: readonly Poured[],
  temperature: Kelvin,
  instruments: Instruments,
  besides: Besides = {},
): Propagated<PouringSource> {
  const { flakes, lost } = besides;
  const cutIfMoved = (moved: Moved): number => {
    const parts = poured.map((p, n) => partIfMoved(p, n, temperature, moved));
    const [first] = parts;
    if (lost !== undefined && first !== undefined)
      parts[0] = afterLoss(
        first,
        kilogram(lost + moveOf(moved, "weight then") - moveOf(moved, "weight now")),
      );
    if (flakes !== undefined) parts.push(flakesIfMoved(flakes, moved));
    return cutOfSolution(blendOfSolutions(parts));
  };
  return propagated(cutIfMoved, [
    ...inputsOf(poured, temperature, instruments),
    ...besidesInputs(besides, instruments),
  ]);
}
