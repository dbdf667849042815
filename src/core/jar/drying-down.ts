import type { NotebookEntry } from "../notebook/entry.ts";
import { combinedCut } from "../solution/combine.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { kitchenInstruments } from "../solution/instruments.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { type Amounts, combined, liquidMassOf, liquidOf, massOf, only, solidsOf } from "./amounts.ts";
import { cannotUse, type JarFold, stepped } from "./jar-fold.ts";
import { type CutFigure, cutFigure, propagated, type Reading, type Reckoned } from "./reckoning.ts";

/** The same mass in the jar, divided into solids and liquid as the dried spoonful says. */
function divided(all: Amounts, solidShare: number): Amounts {
  const mass = massOf(all);
  const resin = solidsOf(all);
  const liquid = liquidMassOf(all);
  const kept = resin > 0 ? only(all, "solids") : { resin: 1 };
  return combined(
    [(mass * solidShare) / (resin > 0 ? resin : 1), kept],
    [liquid > 0 ? (mass * (1 - solidShare)) / liquid : 0, only(all, "liquids")],
  );
}

/** What the dried spoonful says of solids to liquid, at readings wet, dry, held back and density. */
const measuredRatio = ([w = 1, d = 0, held = 0, density = 0]: readonly number[]): number => {
  const share = Math.min(1, ((d * (1 - held)) / w) * (1 + density));
  return share / (1 - share);
};

function readingsOf(now: Reckoned, wet: Reading, dry: Reading): readonly Reading[] {
  const held: Reading = {
    key: `${dry.key}.held`,
    source: "moistureMassFraction",
    value: 0,
    standardUncertainty: kitchenInstruments.moistureMassFraction,
  };
  const density = densityOfSolvent(liquidOf(now.value).composition, strengthAt20C);
  const relative: Reading = {
    key: `${dry.key}.density`,
    source: "solventDensityKgM3",
    value: 0,
    standardUncertainty: density.standardUncertainty / density.value,
  };
  return [wet, dry, held, relative];
}

/**
 * The jar between what was reckoned and what was measured: solids to liquid as the mean of both, the measured with
 * `weight`. At one liquid the cut is this ratio times a density, so that the cuts are averaged with the same weight.
 */
const weighted = (now: Reckoned, readings: readonly Reading[], weight: number): Reckoned =>
  propagated([now], readings, ([all = {}], figures) => {
    const reckoned = solidsOf(all) / liquidMassOf(all);
    const ratio = (1 - weight) * reckoned + weight * measuredRatio(figures);
    return divided(all, ratio / (1 + ratio));
  });

/**
 * A spoonful weighed wet and dry. While it and the reckoning differ by no more than both allow, the jar stands at
 * their mean, each weighted by the inverse of its variance; when they differ by more, something happened that no
 * entry tells, and the jar stands at what was measured. All three figures are kept, with a warning.
 */
export function afterDryingDown(fold: JarFold, entry: NotebookEntry, wet: Reading, dry: Reading): JarFold {
  if (!(dry.value >= 0 && dry.value < wet.value)) return cannotUse(fold, entry, "dry-not-lighter");
  const reckoned = cutFigure(fold.now);
  if (reckoned === null) return cannotUse(fold, entry, "nothing-known-in-it");
  const readings = readingsOf(fold.now, wet, dry);
  const asMeasured = weighted(fold.now, readings, 1);
  const measured = cutFigure(asMeasured) as CutFigure; // there is liquid, since the dried spoonful is lighter
  const both = combinedCut(
    { cut: reckoned.value, standardUncertainty: reckoned.standardUncertainty },
    { cut: measured.value, standardUncertainty: measured.standardUncertainty },
  );
  const weight = (both.standardUncertainty / measured.standardUncertainty) ** 2;
  const together = weighted(fold.now, readings, weight);
  const combined = cutFigure(together) as CutFigure;
  const stands = both.disagree ? "measured" : "combined";
  return {
    ...stepped(fold, entry, both.disagree ? asMeasured : together),
    driedDown: {
      entry: entry.id,
      at: entry.happened,
      reckoned,
      measured,
      combined,
      apart: both.apart,
      disagrees: both.disagree,
      stands,
    },
  };
}
