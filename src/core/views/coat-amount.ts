import type { Doubt } from "../film/build-up.ts";
import { amountRead, isGuessed } from "../jar/typed-amount.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { unitNamed } from "../quantity/unit-table.ts";
import { defaultValue } from "./default-value.ts";
import { coatDefaults } from "./film-defaults.ts";
import { areaOfTarget, type Place, shareAt } from "./place.ts";
import type { CoatMethod } from "./waits.ts";

/** How thick a coat lay there wet, and what says so. */
export interface WetCoat {
  /** On the work [m]. */
  readonly wet: number;
  readonly doubts: readonly Doubt[];
  readonly from: "weighed" | "poured from a jug" | "guessed" | "read off a comb" | "method's usual";
}

/** Usual amounts and what stays of them are off by a third and a quarter; a comb's steps by a tenth. From memory. */
const doubt = { usual: 0.33, stays: 0.25, comb: 0.1 };

const stays = (read: NotebookReader, method: CoatMethod): number =>
  defaultValue(read, coatDefaults[method].stays) / 100;

const staysDoubt = (method: CoatMethod, share: number): Doubt[] =>
  share < 1 ? [{ source: `what stays: ${method}`, relative: doubt.stays }] : [];

/** A coat of the method's usual amount. */
export function usualCoat(read: NotebookReader, method: CoatMethod): WetCoat {
  const share = stays(read, method);
  return {
    wet: (defaultValue(read, coatDefaults[method].spent) / 1e6) * share,
    doubts: [{ source: `usual amount: ${method}`, relative: doubt.usual }, ...staysDoubt(method, share)],
    from: "method's usual",
  };
}

/** A coat as it was weighed, guessed or read off a comb, else the method's usual. */
export function wetCoat(read: NotebookReader, layer: NotebookEntry, place: Place, density: number): WetCoat {
  const { amount, method, targets } = layer.body as Body<"layer-applied">;
  const at = shareAt(read, targets, place);
  if (amount === undefined || at === undefined) return usualCoat(read, method);
  if (amount.by === "wet film" && unitNamed(amount.total.unit)?.dimension === "length")
    return {
      wet: amount.total.si,
      doubts: [{ source: layer.id, relative: doubt.comb }],
      from: "read off a comb",
    };
  const found = amountRead(read, amount.total, layer.id, isGuessed(amount.by));
  const area = areaOfTarget(read, at.target);
  if (found === null || area === null || !(found.reading.value > 0)) return usualCoat(read, method);
  const { value, standardUncertainty } = found.reading;
  const volume = found.by === "mass" ? value / density : value;
  const share = amount.weighed === "board" ? 1 : stays(read, method);
  return {
    wet: ((volume * at.share) / area) * share,
    doubts: [
      { source: layer.id, relative: standardUncertainty / value },
      ...(amount.weighed === "board" ? [] : staysDoubt(method, share)),
    ],
    from: isGuessed(amount.by) ? "guessed" : amount.by === "jug" ? "poured from a jug" : "weighed",
  };
}
