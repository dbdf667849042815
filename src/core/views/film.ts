import { type Doubt, type FilmAct, type FilmBuilt, filmBuiltUp, type Sinking } from "../film/build-up.ts";
import { dryFromWet, volumeSolids } from "../film/film.ts";
import { type ReadyToRub, readyToRub } from "../film/rubbing-out.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { type Metre, metre } from "../units.ts";
import { type WetCoat, wetCoat } from "./coat-amount.ts";
import { liquidsOf, type WhyUnknown, whyNoLiquid } from "./coat-liquid.ts";
import { defaultValue } from "./default-value.ts";
import { rubbingDefaults, sinkingDefaults, workTakesOff } from "./film-defaults.ts";
import { entriesAt, type Place, placeKey } from "./place.ts";

type Layer = Body<"layer-applied">;

/** A coat of the film, from the wood up. */
export interface FilmCoat {
  readonly entry: string;
  readonly at: string;
  readonly sort: Layer["sort"];
  readonly method: Layer["method"];
  /** Jars that it came from; several where a shut key leaves open which. */
  readonly jars: readonly string[];
  readonly openWhich: boolean;
  /** Null where its thickness can be reckoned. */
  readonly whyUnknown: WhyUnknown | null;
  /** Thicknesses in m: wet on the work, and dry; null where nobody can know. */
  readonly wet: number | null;
  readonly wetFrom: WetCoat["from"] | null;
  readonly laid: number | null;
  readonly sunk: number;
  readonly left: number | null;
}

/** The film of one place, to be drawn as a section to scale. */
export interface FilmView {
  readonly coats: readonly FilmCoat[];
  /** m; what can be known of it. */
  readonly thickness: number;
  readonly standardUncertainty: number;
  readonly contributions: FilmBuilt["contributions"];
  /** Entries whose layer has a thickness that nobody can know. */
  readonly unknown: readonly string[];
  /** Entries of work that would have taken off more than was there. */
  readonly tooMuch: readonly string[];
  readonly cutThrough: boolean;
  readonly rubbing: ReadyToRub & { readonly needed: number; readonly least: number };
  /** The film that was there after each entry [m]. */
  readonly after: ReadonlyMap<string, number>;
}

const filmSorts: readonly Layer["sort"][] = ["coat", "session", "wash", "topcoat"];
/** What somebody measured the removal to be is off by a quarter, the usual one by half. From memory. */
const removalDoubt = { told: 0.25, usual: 0.5 };

interface CoatRead {
  readonly act: FilmAct;
  readonly coat: Omit<FilmCoat, "laid" | "sunk" | "left">;
}

/** A coat of one of several liquids: the middle of what they would lay, give or take an even spread between them. */
function amongThem(dries: readonly number[]): { readonly dry: number; readonly relative: number } {
  const [low, high] = [Math.min(...dries), Math.max(...dries)];
  const dry = (low + high) / 2;
  return { dry, relative: dry === 0 ? 0 : (high - low) / Math.sqrt(12) / dry };
}

function coatRead(read: NotebookReader, entry: NotebookEntry, place: Place): CoatRead {
  const { sort, method } = entry.body as Layer;
  const liquids = liquidsOf(read, entry, place);
  const common = { entry: entry.id, at: entry.happened, sort, method };
  const [first] = liquids;
  if (first === undefined)
    return {
      act: { what: "coat", entry: entry.id, dry: null, doubts: [] },
      coat: {
        ...common,
        jars: [],
        openWhich: false,
        whyUnknown: whyNoLiquid(read, entry, place),
        wet: null,
        wetFrom: null,
      },
    };
  const wets = liquids.map((liquid) => wetCoat(read, entry, place, liquid.density));
  const dries = liquids.map((liquid, i) => dryFromWet(metre(wets[i]?.wet ?? 0), volumeSolids(liquid.cut), 1));
  const { dry, relative } = amongThem(dries);
  const wet = wets[0] as WetCoat; // as many as there are liquids
  const ofCut: Doubt =
    liquids.length > 1
      ? { source: "which jar", relative }
      : { source: `cut: ${first.jars.join(" ")}`, relative: first.cutDoubt };
  return {
    act: { what: "coat", entry: entry.id, dry: metre(dry), doubts: [...wet.doubts, ofCut] },
    coat: {
      ...common,
      jars: liquids.flatMap((liquid) => liquid.jars),
      openWhich: liquids.length > 1,
      whyUnknown: null,
      wet: wet.wet,
      wetFrom: wet.from,
    },
  };
}

function workRead(read: NotebookReader, entry: NotebookEntry): FilmAct | undefined {
  const { how, removedUm } = entry.body as Body<"surface-worked">;
  if (how === "planed") return { what: "stripped", entry: entry.id };
  const usual = workTakesOff[how as keyof typeof workTakesOff];
  if (removedUm !== undefined)
    return {
      what: "taken off",
      entry: entry.id,
      removed: metre(removedUm / 1e6),
      doubts: [{ source: entry.id, relative: removalDoubt.told }],
    };
  if (usual === undefined) return undefined;
  return {
    what: "taken off",
    entry: entry.id,
    removed: metre(defaultValue(read, usual) / 1e6),
    doubts: [{ source: `usual removal: ${how}`, relative: removalDoubt.usual }],
  };
}

/** Work on wood that has no film yet takes nothing off one. */
function actsAt(read: NotebookReader, place: Place): { acts: FilmAct[]; coats: CoatRead["coat"][] } {
  const acts: FilmAct[] = [];
  const coats: CoatRead["coat"][] = [];
  for (const entry of entriesAt(read, place)) {
    if (entry.kind === "layer-applied" && filmSorts.includes((entry.body as Layer).sort)) {
      const found = coatRead(read, entry, place);
      acts.push(found.act);
      coats.push(found.coat);
    } else if (entry.kind === "surface-worked" && coats.length > 0)
      acts.push(...[workRead(read, entry) ?? []].flat());
    else if (entry.kind === "film-removed") {
      const { how } = entry.body as Body<"film-removed">;
      acts.push({ what: how === "cut through" ? how : "stripped", entry: entry.id });
    }
    if (acts.at(-1)?.what === "stripped") coats.length = 0;
  }
  return { acts, coats };
}

const sinkingOf = (read: NotebookReader): Sinking => ({
  shares: sinkingDefaults.map((one) => defaultValue(read, one) / 100),
  relative: 0.4,
});

function rubbingOf(read: NotebookReader, built: FilmBuilt): FilmView["rubbing"] {
  const um = (of: (typeof rubbingDefaults)["needed" | "least"]): Metre => metre(defaultValue(read, of) / 1e6);
  const [needed, least] = [um(rubbingDefaults.needed), um(rubbingDefaults.least)];
  const removes = metre(defaultValue(read, workTakesOff["rubbed out"]) / 1e6);
  const perCoat = built.layers.at(-1)?.laid ?? metre(0);
  const ready = readyToRub(built.thickness, built.standardUncertainty, perCoat, { needed, least, removes });
  return { ...ready, needed, least };
}

/** The film of a place, from its entries. */
export const filmView = (read: NotebookReader, place: Place): FilmView =>
  read.derive(`film:${placeKey(place)}`, (r) => {
    const { acts, coats } = actsAt(r, place);
    const built = filmBuiltUp(acts, sinkingOf(r));
    const layers = new Map(built.layers.map((layer) => [layer.entry, layer]));
    return {
      coats: coats.map((coat) => {
        const layer = layers.get(coat.entry);
        return { ...coat, laid: layer?.laid ?? null, sunk: layer?.sunk ?? 0, left: layer?.left ?? null };
      }),
      thickness: built.thickness,
      standardUncertainty: built.standardUncertainty,
      contributions: built.contributions,
      unknown: built.unknown,
      tooMuch: built.tooMuch,
      cutThrough: built.cutThrough,
      rubbing: rubbingOf(r, built),
      after: built.after,
    };
  });

/** The film that a layer was put on [m]: what was there just before it. */
export function filmBeneath(read: NotebookReader, place: Place, layer: string): number {
  const steps = [...filmView(read, place).after];
  const before = steps.findIndex(([entry]) => entry === layer) - 1;
  return steps[before]?.[1] ?? 0;
}
