import type { DryingSetup } from "../../../core/evaporation/drying.ts";
import type { NotebookEntry } from "../../../core/notebook/entry.ts";
import type { Body } from "../../../core/notebook/kinds/all.ts";
import type { NotebookReader } from "../../../core/notebook/reader.ts";
import { type CoatSetups, layerSetups } from "../../../core/views/coat-setup.ts";
import { type FilmCoat, filmView } from "../../../core/views/film.ts";
import type { Place } from "../../../core/views/place.ts";
import { type WaitQuestion, waitQuestion } from "../../../core/views/wait-question.ts";
import type { Dried } from "../task.ts";

type Layer = Body<"layer-applied">;

/** One coat at one place, with what is asked about it. */
export interface CoatPage {
  readonly layer: NotebookEntry;
  readonly body: Layer;
  readonly place: Place;
  /** Counted from the wood; null for one that no film is made of. */
  readonly number: number | null;
  readonly film: FilmCoat | null;
  readonly setups: CoatSetups;
  readonly question: WaitQuestion;
  readonly before: FilmCoat | null;
  readonly after: FilmCoat | null;
}

/** The coat, or null where nothing live is such a layer. */
export function coatPage(read: NotebookReader, id: string, place: Place): CoatPage | null {
  const layer = read.making(id);
  if (layer?.kind !== "layer-applied") return null;
  const { coats } = filmView(read, place);
  const at = coats.findIndex((coat) => coat.entry === layer.id);
  return {
    layer,
    body: layer.body as Layer,
    place,
    number: at < 0 ? null : at + 1,
    film: coats[at] ?? null,
    setups: layerSetups(read, layer, place),
    question: waitQuestion(read, layer, place),
    before: coats[at - 1] ?? null,
    after: at < 0 ? null : (coats[at + 1] ?? null),
  };
}

/** Of several runs of one coat, the one that dries last: of the jars that it may have come from, the one to go by. */
export function slowest(runs: readonly Dried[]): Dried | undefined {
  const last = (run: Dried): number => run.touchDryMin ?? Number.POSITIVE_INFINITY;
  return runs.reduce<Dried | undefined>(
    (slow, run) => (slow === undefined || last(run) > last(slow) ? run : slow),
    undefined,
  );
}

const leastShown = 10;

/** How long the curves are drawn, minutes: a good while past touch-dry, or all of it where it does not come to that. */
function shownMinutes(run: Dried): number {
  const end = (run.series.at(-1)?.s ?? 0) / 60;
  return Math.min(end, Math.max(leastShown, 2.4 * (run.touchDryMin ?? run.goneMin ?? end)));
}

export interface CurvePoint {
  /** Minutes. */
  readonly at: number;
  /** g/m² of all the liquids. */
  readonly liquid: number;
  readonly surfaceC: number;
  /** Parts of what is still liquid, by mass. */
  readonly shares: Readonly<Record<string, number>>;
}

/** The run as far as it is drawn; what is left of the liquids stays a part of a whole to the last trace. */
export function curveOf(run: Dried): readonly CurvePoint[] {
  const until = shownMinutes(run) * 60;
  const past = run.series.findIndex(({ s }) => s > until);
  return run.series.slice(0, past < 0 ? undefined : past).map(({ s, surfaceC, massGM2 }) => {
    const masses = Object.entries(massGM2).map(([name, mass]) => [name, Math.max(0, mass)] as const);
    const liquid = masses.reduce((sum, [, mass]) => sum + mass, 0);
    return {
      at: s / 60,
      liquid,
      surfaceC,
      shares: Object.fromEntries(masses.map(([name, mass]) => [name, liquid > 0 ? mass / liquid : 0])),
    };
  });
}

/** Resin of the coat alone, g/m²: what the curve of the mass comes down to. */
export const resinGM2 = ({ applied }: DryingSetup): number =>
  (applied.thickness * applied.cut * 1e3) / (1 + applied.cut / applied.partialDensity);

/** A dozen rows of the curve at even times, for who would rather read than look. */
export function tableOf(points: readonly CurvePoint[], rows = 9): readonly CurvePoint[] {
  const end = points.at(-1)?.at ?? 0;
  const wanted = Array.from({ length: rows }, (_, i) => (i * end) / (rows - 1));
  return wanted.flatMap((at) => {
    const nearest = points.reduce<CurvePoint | undefined>(
      (best, point) =>
        best === undefined || Math.abs(point.at - at) < Math.abs(best.at - at) ? point : best,
      undefined,
    );
    return nearest ?? [];
  });
}

/** The coldest that the surface is until it is touch-dry, and when. */
export function coldest(points: readonly CurvePoint[], touchDry: number | null): CurvePoint | undefined {
  const until = touchDry ?? Number.POSITIVE_INFINITY;
  return points
    .filter(({ at }) => at <= until)
    .reduce<CurvePoint | undefined>(
      (least, point) => (least === undefined || point.surfaceC < least.surfaceC ? point : least),
      undefined,
    );
}
