import { DomainError } from "../domain-error.ts";
import {
  type Cut,
  cubicMetre,
  type Kelvin,
  type Kilogram,
  kilogram,
  massFraction,
  poundsPerUsGallonFromCut,
} from "../units.ts";
import { findRoot } from "./find-root.ts";
import type { ResinBlend } from "./resin.ts";
import {
  blendOfSolutions,
  cutOfSolution,
  massOfSolution,
  partOfSolution,
  type Solution,
  volumeOfLiquid,
  volumeOfSolution,
} from "./solution.ts";
import { strengthAt20C } from "./strength.ts";

/**
 * Flakes as weighed, as if they were a solution: what is not resin in them is water.
 *
 * Valid:    any flakes
 * Source:   conservation of mass
 */
export const solutionOfFlakes = (mass: Kilogram, resin: ResinBlend): Solution => ({
  resin: kilogram(mass * resin.dry),
  wax: kilogram(mass * resin.wax),
  insoluble: kilogram(mass * resin.insoluble),
  resinVolume: cubicMetre((mass * resin.dry) / resin.partialDensity),
  liquid: { mass: kilogram(mass * resin.moisture), composition: { water: massFraction(1) } },
});

export interface Correction {
  /** Of what is added. */
  readonly added: Kilogram;
  readonly result: Solution;
}

const withPart = (jar: Solution, addition: Solution, share: number): Solution =>
  share === 0 ? jar : blendOfSolutions([jar, partOfSolution(addition, share)]);

/** The cut of an addition by itself; dry flakes have no end of it. */
const cutOfAddition = (addition: Solution): number =>
  addition.liquid.mass === 0 ? Number.POSITIVE_INFINITY : cutOfSolution(addition);

function refuse(jar: Cut, target: Cut, addition: number): never {
  const [low, high] = [Math.min(jar, addition), Math.max(jar, addition)];
  const limit = (x: number): number => poundsPerUsGallonFromCut(x as Cut);
  throw new DomainError({
    code: Number.isNaN(target) ? "not-a-number" : "out-of-range",
    field: "toCutLbPerGal",
    value: limit(target),
    limits: { min: limit(low), ...(high === Number.POSITIVE_INFINITY ? {} : { max: limit(high) }) },
    because: "What comes of two lies between them.",
  });
}

/**
 * How much of something brings a jar to a wanted cut: solvent, flakes, or another jar.
 *
 *     m(resin in both) / V(liquid of both, 20 °C) = target
 *
 * @param jar       what is there
 * @param target    [kg resin / m³ liquid at 20 °C], scalar, between the jar's cut and the addition's
 * @param addition  any amount of it: only what it is made of counts
 * @returns         the mass of it to add [kg], and what is there then
 * @throws DomainError `out-of-range` for a target that does not lie between the two
 *
 * Valid:    the density's range
 * Accuracy: as the densities; liquids of two jars contract as the density of their mixture says
 * Source:   conservation of mass
 * @example
 * massToAdd(solutionOfCut(cutFromPoundsPerUsGallon(1), { ethanol: massFraction(1) }, { mass: kilogram(1) }), cutFromPoundsPerUsGallon(2), solutionOfFlakes(kilogram(1), blendOfResins([plainResin]))).added // => 0.1318
 */
export function massToAdd(jar: Solution, target: Cut, addition: Solution): Correction {
  const [now, other] = [cutOfSolution(jar), cutOfAddition(addition)];
  if (!(Math.min(now, other) < target && target < Math.max(now, other))) refuse(now, target, other);
  const missing = (share: number): number => {
    const both = withPart(jar, addition, share);
    return both.resin - target * volumeOfLiquid(both.liquid, strengthAt20C);
  };
  const volume = (s: Solution): number => (s.liquid.mass === 0 ? 0 : volumeOfLiquid(s.liquid, strengthAt20C));
  // without contraction the shares are exact; with it they are near
  let most = (target * volume(jar) - jar.resin) / (addition.resin - target * volume(addition));
  for (let step = 0; missing(0) * missing(most) > 0 && step < 60; step++) most *= 2;
  const share = findRoot(missing, 0, most);
  return { added: kilogram(massOfSolution(addition) * share), result: withPart(jar, addition, share) };
}

/** What is usually reckoned, with the cut that it gives by mass balance. */
export interface SimpleAddition {
  readonly added: Kilogram;
  readonly cut: Cut;
}

/**
 * The simple reckoning, shown beside `massToAdd`: liquids by volumes of *solution* as if a cut were by those, flakes as
 * if the solution were all solvent.
 *
 *     by volume: V = V(jar)·(c − t)/(t − c2),   by weight, of flakes: m = (t − c)·V(jar)
 *
 * @returns the mass that it would add [kg], and the cut that comes of it
 *
 * Valid:    the density's range; volumes at the temperature
 * Source:   common practice, which takes cut and volume ratio for one
 */
export function simpleAddition(
  jar: Solution,
  target: Cut,
  addition: Solution,
  by: "volume" | "weight",
  temperature: Kelvin,
): SimpleAddition {
  const volume = volumeOfSolution(jar, temperature);
  const now = cutOfSolution(jar);
  const share =
    by === "weight"
      ? ((target - now) * volume) / massOfSolution(addition)
      : (volume * (now - target)) /
        (target - cutOfAddition(addition)) /
        volumeOfSolution(addition, temperature);
  return {
    added: kilogram(massOfSolution(addition) * share),
    cut: cutOfSolution(withPart(jar, addition, share)),
  };
}
