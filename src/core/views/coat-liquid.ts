import { type Amounts, combined, cutOf, liquidOf, massOf, volumeOf } from "../jar/amounts.ts";
import { foldJar } from "../jar/fold-jar.ts";
import { cutFigure } from "../jar/reckoning.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import type { Composition } from "../solution/composition.ts";
import type { Cut, KilogramPerCubicMetre } from "../units.ts";
import type { Place } from "./place.ts";
import { trialView } from "./trial.ts";

/** What went on, as the jar was at that time. */
export interface CoatLiquid {
  readonly jars: readonly string[];
  readonly composition: Composition;
  readonly cut: Cut;
  /** Standard uncertainty of the cut as a part of it. */
  readonly cutDoubt: number;
  readonly density: KilogramPerCubicMetre;
}

/** What was in a jar at an instant: after the last step until then, or as it was filled. */
function stepAt(read: NotebookReader, jar: string, at: string) {
  const steps = foldJar(read, jar)?.steps ?? [];
  return (steps.findLast((step) => step.at <= at && massOf(step.after.value) > 0) ?? steps[0])?.after;
}

function liquidFrom(
  read: NotebookReader,
  parts: readonly { readonly jar: string; readonly share: number }[],
  at: string,
): CoatLiquid | null {
  const found = parts.map(({ jar, share }) => ({ share, after: stepAt(read, jar, at) }));
  let all: Amounts = {};
  let cutDoubt = 0;
  for (const { share, after } of found) {
    const mass = after === undefined ? 0 : massOf(after.value);
    if (after === undefined || mass === 0) return null;
    all = combined([1, all], [share / mass, after.value]);
    const cut = cutFigure(after);
    if (cut !== null && cut.value > 0) cutDoubt += share * (cut.standardUncertainty / cut.value);
  }
  const cut = cutOf(all);
  if (cut === null) return null;
  return {
    jars: parts.map(({ jar }) => jar),
    composition: liquidOf(all).composition,
    cut,
    cutDoubt,
    density: (massOf(all) / volumeOf(all)) as KilogramPerCubicMetre, // of two positive quantities
  };
}

/** Jars that a layer of a trial with a shut key may have come from: all of its own, or the one that the key names. */
function jarsOfTrial(read: NotebookReader, place: Place): readonly string[] {
  if (!("trial" in place)) return [];
  const trial = trialView(read, place.trial);
  const patch = trial?.patches.find((p) => p.patch === place.patch);
  if (patch?.batch) return [patch.batch];
  return trial?.jars.flatMap((jar) => jar.batch ?? []) ?? [];
}

/**
 * What a layer was made of: one liquid, or, while a trial's key is shut, every one that it may have been. Nothing where a
 * source is no jar or cannot be reckoned.
 */
export function liquidsOf(read: NotebookReader, layer: NotebookEntry, place: Place): readonly CoatLiquid[] {
  const { from } = layer.body as Body<"layer-applied">;
  if (from.length === 0)
    return jarsOfTrial(read, place).flatMap(
      (jar) => liquidFrom(read, [{ jar, share: 1 }], layer.happened) ?? [],
    );
  const parts = from.flatMap(({ batch, share }) =>
    batch === undefined ? [] : [{ jar: batch, share: share ?? 1 / from.length }],
  );
  return parts.length < from.length ? [] : [liquidFrom(read, parts, layer.happened) ?? []].flat();
}

/** Why nobody can know what a layer was made of: it came from no jar, or from jars whose cut cannot be reckoned. */
export type WhyUnknown = "no jar" | "cut";

/** Why a layer that `liquidsOf` finds nothing for has none. */
export function whyNoLiquid(read: NotebookReader, layer: NotebookEntry, place: Place): WhyUnknown {
  const { from } = layer.body as Body<"layer-applied">;
  if (from.length === 0) return jarsOfTrial(read, place).length === 0 ? "no jar" : "cut";
  return from.some(({ batch }) => batch === undefined) ? "no jar" : "cut";
}

/** What is in a jar now. */
export const liquidNow = (read: NotebookReader, jar: string): CoatLiquid | null =>
  liquidFrom(read, [{ jar, share: 1 }], "9999");
