import type { NotebookEntry } from "../notebook/entry.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { kitchenInstruments } from "../solution/instruments.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { type Amounts, combined, liquidMassOf, liquidOf, massOf, only, solidsOf } from "./amounts.ts";
import { cannotUse, type JarFold, stepped } from "./jar-fold.ts";
import { cutFigure, type Figure, propagated, type Reading, type Reckoned } from "./reckoning.ts";

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

function redivided(now: Reckoned, wet: Reading, dry: Reading): Reckoned {
  const held: Reading = {
    key: `${dry.key}.held`,
    source: "moistureMassFraction",
    value: 0,
    standardUncertainty: kitchenInstruments.moistureMassFraction,
  };
  const composition = liquidOf(now.value).composition;
  const density = densityOfSolvent(composition, strengthAt20C);
  const relative: Reading = {
    key: `${dry.key}.density`,
    source: "solventDensityKgM3",
    value: 0,
    standardUncertainty: density.standardUncertainty / density.value,
  };
  return propagated([now], [wet, dry, held, relative], ([all = {}], [w = 1, d = 0, h = 0, r = 0]) =>
    divided(all, Math.min(1, ((d * (1 - h)) / w) * (1 + r))),
  );
}

const disagree = (a: Figure, b: Figure): boolean =>
  Math.abs(a.value - b.value) > 2 * Math.hypot(a.standardUncertainty, b.standardUncertainty);

/**
 * A spoonful weighed wet and dry. From here on the jar is as strong as that says, whatever was reckoned before; the
 * reckoned cut stays beside it, with a warning where the two are further apart than both allow.
 */
export function afterDryingDown(fold: JarFold, entry: NotebookEntry, wet: Reading, dry: Reading): JarFold {
  if (!(dry.value >= 0 && dry.value < wet.value)) return cannotUse(fold, entry, "dry-not-lighter");
  const reckoned = cutFigure(fold.now);
  if (reckoned === null) return cannotUse(fold, entry, "nothing-known-in-it");
  const now = redivided(fold.now, wet, dry);
  const cut = cutFigure(now) as Figure; // there is liquid, since the dried spoonful is lighter
  return {
    ...stepped(fold, entry, now),
    driedDown: { entry: entry.id, at: entry.happened, cut, reckoned, disagrees: disagree(cut, reckoned) },
  };
}
