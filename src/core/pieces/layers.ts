import { DomainError } from "../domain-error.ts";
import { dewaxedUpTo } from "../jar/dewaxed.ts";
import type { MassFraction, Metre } from "../units.ts";

export const layersUnder = [
  "bare wood",
  "oily wood",
  "water stain",
  "spirit stain",
  "oil stain",
  "oil",
  "wax",
  "old spirit varnish",
  "old oil varnish",
  "old lacquer",
  "old polyurethane",
  "old paint",
] as const;
export type LayerUnder = (typeof layersUnder)[number];

export const layersOver = [
  "nothing",
  "more of the same",
  "wax",
  "oil varnish",
  "polyurethane",
  "waterborne",
  "lacquer",
] as const;
export type LayerOver = (typeof layersOver)[number];

/** What is to be done or minded where two layers meet; the words for each are the page's. */
export type LayerNote =
  | "holds"
  | "melts in"
  | "wait"
  | "wipe first"
  | "clear first"
  | "clean first"
  | "scuff"
  | "drop test"
  | "pulls colour"
  | "isolate"
  | "lead"
  | "dewaxed only"
  | "waxy"
  | "wax not told"
  | "thin only"
  | "too thick"
  | "last of all"
  | "scrap";

/** Where a rule of the table comes from. */
export type LayerSource = "common practice" | "from memory";

interface Meeting {
  readonly notes: readonly LayerNote[];
  /** Least wait between the two [h]. */
  readonly waitHours?: number;
  readonly source: LayerSource;
}

/**
 * What spirit varnish meets when it is put on it.
 *
 * Wax and oil make craters and must come off, an uncured oil stain wrinkles, thin dry coats isolate it, dye is pulled by
 * the alcohol, oily woods are wiped with a fast solvent and sealed with one or two dewaxed coats, an old spirit varnish is
 * cleaned of wax, tried with a drop of alcohol where nobody looks, and rejoins: common practice. How long stains and oils
 * dry, and that films which alcohol does not open hold by scuffing alone: common practice too.
 */
export const underneath: Readonly<Record<LayerUnder, Meeting>> = {
  "bare wood": { notes: ["holds"], source: "common practice" },
  "oily wood": { notes: ["wipe first", "isolate"], source: "common practice" },
  "water stain": { notes: ["wait"], waitHours: 12, source: "common practice" },
  "spirit stain": { notes: ["wait", "pulls colour"], waitHours: 1, source: "from memory" },
  "oil stain": { notes: ["wait", "isolate"], waitHours: 72, source: "common practice" },
  oil: { notes: ["wait", "isolate"], waitHours: 14 * 24, source: "common practice" },
  wax: { notes: ["clear first", "isolate"], source: "common practice" },
  "old spirit varnish": { notes: ["clean first", "drop test", "melts in"], source: "common practice" },
  "old oil varnish": { notes: ["clean first", "scuff"], source: "common practice" },
  "old lacquer": { notes: ["clean first", "drop test", "scuff"], source: "common practice" },
  "old polyurethane": { notes: ["clean first", "scuff"], source: "common practice" },
  "old paint": { notes: ["lead", "clean first", "scuff"], source: "common practice" },
};

/**
 * What is put on spirit varnish. Under anything else only a dewaxed film, thin and scuffed, as wax lets go and waterborne
 * finishes crawl or craze on a thick one; wax goes on a film of two or three days at the least, and nothing sticks to it
 * afterwards: common practice.
 */
export const overneath: Readonly<Record<LayerOver, Meeting>> = {
  nothing: { notes: [], source: "common practice" },
  "more of the same": { notes: ["melts in"], source: "common practice" },
  wax: { notes: ["wait", "last of all"], waitHours: 72, source: "common practice" },
  "oil varnish": {
    notes: ["dewaxed only", "wait", "scuff", "thin only"],
    waitHours: 24,
    source: "common practice",
  },
  polyurethane: {
    notes: ["dewaxed only", "wait", "scuff", "thin only"],
    waitHours: 24,
    source: "common practice",
  },
  waterborne: {
    notes: ["dewaxed only", "wait", "scuff", "thin only"],
    waitHours: 72,
    source: "common practice",
  },
  lacquer: {
    notes: ["dewaxed only", "wait", "scuff", "thin only"],
    waitHours: 24,
    source: "common practice",
  },
};

/** Two coats of 2 lb, each 4 mil wet and 17 µm dry: the most that a sealer under another finish is said to be. Common practice. */
export const thinUpTo = 34e-6 as Metre;

export interface LayersAsked {
  readonly under: string;
  readonly over: string;
  /** Of the flakes; null where it is not known. */
  readonly wax: MassFraction | number | null;
  /** Of the finish planned [m]; null where it is not known. */
  readonly dryFilm: Metre | number | null;
}

export interface LayerAdvice {
  readonly side: "under" | "over" | "both";
  readonly note: LayerNote;
  /** With a wait, and only there [h]. */
  readonly hours?: number;
  /** It will not hold as it stands. */
  readonly stops: boolean;
  readonly source: LayerSource;
}

function named<T>(table: Readonly<Record<string, T>>, field: string, name: string): T {
  const found = Object.hasOwn(table, name) ? table[name] : undefined;
  if (found === undefined)
    throw new DomainError({
      code: "unknown-name",
      field,
      value: name,
      limits: { allowed: Object.keys(table) },
    });
  return found;
}

/** What the table's note comes to for these flakes and this film; null where it asks nothing. */
function settled(note: LayerNote, { wax, dryFilm }: LayersAsked): LayerNote | null {
  if (note === "dewaxed only") {
    if (wax === null) return "wax not told";
    return wax > dewaxedUpTo ? "waxy" : null;
  }
  if (note === "thin only") return dryFilm !== null && dryFilm > thinUpTo ? "too thick" : null;
  return note;
}

const stopping: readonly LayerNote[] = ["clear first", "waxy"];

/**
 * What to do and to mind where a spirit varnish meets what lies under it and what goes over it. A try on a scrap is
 * advised whatever the table says.
 *
 * @param asked  what lies under and over, as in `layersUnder` and `layersOver`; wax of the flakes, film [m]
 * @returns      advice in the order in which it is done, the scrap last
 * @throws DomainError for a layer that is not in the table, with those that are
 *
 * Source: the tables of this module; every rule carries its mark
 */
export function layerAdvice(asked: LayersAsked): readonly LayerAdvice[] {
  const sides = [
    ["under", named(underneath, "under", asked.under)],
    ["over", named(overneath, "over", asked.over)],
  ] as const;
  const found = sides.flatMap(([side, { notes, waitHours, source }]) =>
    notes.flatMap((written): LayerAdvice[] => {
      const note = settled(written, asked);
      if (note === null) return [];
      const hours = note === "wait" && waitHours !== undefined ? { hours: waitHours } : {};
      return [{ side, note, ...hours, stops: stopping.includes(note), source }];
    }),
  );
  return [...found, { side: "both", note: "scrap", stops: false, source: "common practice" }];
}
