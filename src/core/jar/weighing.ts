import type { NotebookEntry } from "../notebook/entry.ts";
import { combined, liquidMassOf, massOf, only } from "./amounts.ts";
import { cannotUse, type JarFold, type SolventLost, stepped, type WeighedThen } from "./jar-fold.ts";
import { figureOf, propagated, type Reading } from "./reckoning.ts";

/** What the glass and its lid weigh empty. */
export interface Glass {
  readonly emptyKg: number;
  readonly standardUncertainty: number;
}

/** Solvent that left between two weighings, by what should be there [kg]. */
function lossAt(fold: JarFold, gross: Reading, then: WeighedThen | null, glass: Glass | null) {
  if (then !== null) {
    const earlier: Reading = {
      key: `${gross.key}.then`,
      source: "scaleG",
      value: then.grossKg,
      standardUncertainty: then.standardUncertainty,
    };
    return propagated(
      [fold.now, then.contents],
      [gross, earlier],
      ([now = {}, was = {}], [g = 0, g0 = 0]) => ({
        unknown: g0 - (massOf(was) - massOf(now)) - g,
      }),
    );
  }
  if (glass === null) return null;
  const tare: Reading = {
    key: `${gross.key}.glass`,
    source: "scaleG",
    value: glass.emptyKg,
    standardUncertainty: glass.standardUncertainty,
  };
  return propagated([fold.now], [gross, tare], ([now = {}], [g = 0, empty = 0]) => ({
    unknown: massOf(now) - (g - empty),
  }));
}

/** What leaves a shut jar is solvent, all of its parts alike: the fast ones leave first, which is not reckoned here. */
function without(fold: JarFold, lossKg: number, gross: Reading) {
  const loss: Reading = {
    key: `${gross.key}.loss`,
    source: "scaleG",
    value: lossKg,
    standardUncertainty: gross.standardUncertainty,
  };
  return propagated([fold.now], [loss], ([now = {}], [kg = 0]) => {
    const liquid = liquidMassOf(now);
    const gone = liquid > 0 ? Math.min(1, Math.max(0, kg / liquid)) : 0;
    return combined([1, now], [-gone, only(now, "liquids")]);
  });
}

const added = (lost: SolventLost | null, kg: number, u: number, since: string): SolventLost => ({
  kg: (lost?.kg ?? 0) + kg,
  standardUncertainty: Math.hypot(lost?.standardUncertainty ?? 0, u),
  since: lost?.since ?? since,
});

/**
 * A jar weighed. Compared with an earlier weighing of the same kind (with or without lid), else with the empty glass;
 * a difference within what the readings allow is none.
 */
export function afterWeighing(
  fold: JarFold,
  entry: NotebookEntry,
  gross: Reading,
  withLid: boolean,
  glass: Glass | null,
  mayHaveBeenUsed: boolean,
): JarFold {
  const then = fold.weighed?.withLid === withLid ? fold.weighed : null;
  const difference = lossAt(fold, gross, then, withLid ? glass : null);
  const noted = (next: JarFold): JarFold => ({
    ...next,
    weighed: {
      at: entry.happened,
      grossKg: gross.value,
      standardUncertainty: gross.standardUncertainty,
      withLid,
      contents: next.now,
    },
  });
  if (difference === null) return noted(stepped(fold, entry, fold.now));
  const figure = figureOf(difference, (amounts) => amounts.unknown ?? 0);
  const within = Math.abs(figure.value) <= 2 * figure.standardUncertainty;
  if (within) return noted(stepped(fold, entry, fold.now));
  if (figure.value < 0)
    return noted(
      stepped(
        cannotUse(fold, entry, "heavier-than-it-should-be", { of: "mass", si: -figure.value }),
        entry,
        fold.now,
      ),
    );
  if (mayHaveBeenUsed)
    return noted(
      stepped(
        cannotUse(fold, entry, "weighed-while-in-a-blind-trial", { of: "mass", si: figure.value }),
        entry,
        fold.now,
      ),
    );
  const since = then?.at ?? fold.steps[0]?.at ?? entry.happened;
  return noted({
    ...stepped(fold, entry, without(fold, figure.value, gross)),
    lost: added(fold.lost, figure.value, figure.standardUncertainty, since),
  });
}
