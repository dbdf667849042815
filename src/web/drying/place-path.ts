import type { NotebookEntry } from "../../core/notebook/entry.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { type Place, placeKey } from "../../core/views/place.ts";

/** The page of a coat at one of the places that it went on. */
export const coatPath = (layer: string, place: Place): string =>
  `/bench/coat/${layer}?at=${encodeURIComponent(kindOf(place) + placeKey(place))}`;

const kindOf = (place: Place): string => ("trial" in place ? "t/" : "board" in place ? "b/" : "p/");

/** A place as it stands in an address; nothing for one that cannot be read. */
export function placeFrom(text: string | null): Place | undefined {
  const [kind, thing = "", rest = ""] = (text ?? "").split("/");
  if (thing === "") return undefined;
  if (kind === "t") return rest === "" ? undefined : { trial: thing, patch: rest };
  if (kind === "b") return { board: thing };
  if (kind !== "p") return undefined;
  return rest === "" ? { piece: thing } : { piece: thing, part: rest };
}

/** The first place that a layer went on. */
export function firstPlaceOf(layer: NotebookEntry): Place | undefined {
  const [target] = (layer.body as Body<"layer-applied">).targets;
  if (target?.trial !== undefined && target.patch !== undefined)
    return { trial: target.trial, patch: target.patch };
  if (target?.board !== undefined) return { board: target.board };
  if (target?.piece === undefined) return undefined;
  return target.part === undefined ? { piece: target.piece } : { piece: target.piece, part: target.part };
}
