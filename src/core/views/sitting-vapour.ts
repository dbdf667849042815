import { volumeSolids } from "../film/film.ts";
import { amountRead, isGuessed } from "../jar/typed-amount.ts";
import type { NotebookEntry } from "../notebook/entry.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { type Composition, pouredTogether } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { kilogram } from "../units.ts";
import { openSitting } from "./bench.ts";
import { type CoatLiquid, liquidsOf } from "./coat-liquid.ts";
import { defaultValue } from "./default-value.ts";
import { coatDefaults } from "./film-defaults.ts";
import { areaOfTarget, placeOfTarget } from "./place.ts";

type Layer = Body<"layer-applied">;

/** What the coats of the sitting under way have given to the room's air, or will within the hour. */
export interface SittingVapour {
  /** Without the resin, m³ at 20 °C; null while no coat is known. */
  readonly solvent: { readonly composition: Composition; readonly volume: number } | null;
  readonly beganMs: number;
  readonly coats: number;
  /** Coats of which no amount was written: the method's usual is taken. */
  readonly assumed: number;
  /** Coats that cannot be counted: of a liquid or an area that nobody knows. */
  readonly unknown: number;
}

interface Given {
  readonly kg: number;
  readonly composition: Composition;
  readonly assumed: boolean;
}

/** Solvent in a volume of a liquid, kg/m³: all of it but the resin. */
function solventIn({ cut, density }: CoatLiquid): number {
  const solids = volumeSolids(cut);
  return density - cut * (1 - solids);
}

/** Spent on the layer, m³; null where neither an amount nor every area is written. */
function spent(read: NotebookReader, layer: NotebookEntry, density: number): number | null {
  const { amount, targets, method } = layer.body as Layer;
  const found =
    amount === undefined || amount.by === "wet film" || amount.weighed === "board"
      ? null
      : amountRead(read, amount.total, layer.id, isGuessed(amount.by));
  if (found !== null) return found.by === "mass" ? found.reading.value / density : found.reading.value;
  const areas = targets.map((target) => areaOfTarget(read, target));
  const thickness = defaultValue(read, coatDefaults[method].spent) / 1e6;
  return areas.includes(null) ? null : areas.reduce<number>((sum, area) => sum + (area ?? 0), 0) * thickness;
}

function givenBy(read: NotebookReader, layer: NotebookEntry): Given | null {
  const { targets, amount } = layer.body as Layer;
  const place = targets[0] === undefined ? null : placeOfTarget(targets[0]);
  const liquids = place === null ? [] : liquidsOf(read, layer, place);
  // while a key is shut it may be any of the trial's jars: as much of each
  const parts = liquids.map((liquid) => {
    const volume = spent(read, layer, liquid.density);
    return volume === null || volume <= 0
      ? null
      : { liquid, kg: (volume * solventIn(liquid)) / liquids.length };
  });
  if (parts.length === 0) return null;
  const known = parts.filter((part) => part !== null);
  if (known.length < parts.length) return null;
  const { mass, composition } = pouredTogether(
    known.map(({ liquid, kg }) => ({ mass: kilogram(kg), composition: liquid.composition })),
  );
  return { kg: mass, composition, assumed: amount === undefined };
}

function solventOf(given: readonly Given[]): NonNullable<SittingVapour["solvent"]> {
  const { mass, composition } = pouredTogether(
    given.map((one) => ({ mass: kilogram(one.kg), composition: one.composition })),
  );
  return { composition, volume: mass / densityOfSolvent(composition, strengthAt20C).value };
}

/** The vapour of the sitting that is open now; null where none is. */
export const sittingVapour = (read: NotebookReader): SittingVapour | null =>
  read.derive("sitting-vapour", (r) => {
    const sitting = openSitting(r);
    if (sitting === null) return null;
    const layers = r
      .ofKind("layer-applied")
      .filter((layer) => epochMilliseconds(layer.happened) >= sitting.beganMs);
    const given = layers.map((layer) => givenBy(r, layer));
    const known = given.filter((one) => one !== null);
    return {
      solvent: known.length === 0 ? null : solventOf(known),
      beganMs: sitting.beganMs,
      coats: layers.length,
      assumed: known.filter((one) => one.assumed).length,
      unknown: given.length - known.length,
    };
  });
