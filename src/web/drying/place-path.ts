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
