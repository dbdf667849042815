import { usuallyTakesMore } from "../../core/area/total.ts";
import type { NotebookReader } from "../../core/notebook/reader.ts";
import type { WrittenStep } from "../../core/pieces/finishing-schedules.ts";
import { layersOver, layersUnder } from "../../core/pieces/layers.ts";
import type { PieceMethod } from "../../core/pieces/method-defaults.ts";
import { pieceMethods } from "../../core/pieces/method-defaults.ts";
import type { ScheduleBeside } from "../../core/registry/piece-schedule.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import { methodOf } from "../../core/views/bench.ts";
import { jarView } from "../../core/views/jar.ts";
import type { PieceView } from "../../core/views/piece.ts";
import { trialView } from "../../core/views/trial.ts";
import { upToDigits } from "../words/number.ts";
import { shortCut } from "./cut-text.ts";
import type { PieceDraft } from "./draft.ts";
import type { Lies } from "./layer-notes.tsx";
import { draftsFromKept } from "./parts/kept-parts.ts";
import { stepDraft } from "./step-draft.ts";
import { surfacesKept } from "./surface-draft.ts";

/** What the winner of a trial fills in. The jar of the recipe, where there is one, says which alcohol it was. */
export interface FromTrial {
  readonly trial: string;
  readonly question: string;
  readonly recipe: Readonly<Record<string, string>>;
  readonly batch: string | null;
  readonly filled: Partial<PieceDraft>;
}

function readRecipe(text: string | null): Record<string, string> {
  if (text === null) return {};
  try {
    const found: unknown = JSON.parse(text);
    if (typeof found !== "object" || found === null) return {};
    return Object.fromEntries(
      Object.entries(found).filter((pair): pair is [string, string] => typeof pair[1] === "string"),
    );
  } catch (error) {
    if (error instanceof SyntaxError) return {}; // an address that was cut short fills nothing in
    throw error;
  }
}

const methodIn = (text: string | undefined): PieceMethod | undefined =>
  pieceMethods.find((method) => text?.toLowerCase().includes(method));

/** A jar's cut by its label, or by what went into it where it has none. */
function cutOfJar(read: NotebookReader, batch: string | null): string | undefined {
  const jar = batch === null ? null : jarView(read, batch);
  const known = jar?.labelCut ?? jar?.cut?.value;
  return known === undefined ? undefined : `${shortCut(poundsPerUsGallonFromCut(known))} lb`;
}

/** The draft that a trial's winner begins with, or null when the address names no trial of this notebook. */
export function fromTrial(read: NotebookReader, query: URLSearchParams): FromTrial | null {
  const id = query.get("trial");
  const trial = id === null ? null : trialView(read, id);
  if (trial === null || id === null) return null;
  const recipe = readRecipe(query.get("recipe"));
  const held = (what: string): string | undefined => trial.asked.held?.find((h) => h.what === what)?.at;
  const method = methodIn(recipe.method ?? methodOf(read, trial));
  const wood = recipe.wood ?? held("wood");
  const jar = trial.jars.find((j) =>
    Object.entries(recipe).every(([factor, level]) => (j.recipe[factor] ?? level) === level),
  );
  const batch = jar?.batch ?? null;
  const cut = recipe.cut ?? held("cut") ?? cutOfJar(read, batch);
  return {
    trial: id,
    question: trial.asked.question,
    recipe,
    batch,
    filled: {
      coats: recipe.coats ?? String(trial.asked.coats),
      ...(method === undefined ? {} : { method }),
      ...(cut === undefined ? {} : { cut }),
      ...(wood === undefined ? {} : { wood }),
    },
  };
}

/** What lies under and over a piece, as far as the book says it in words of the table. */
export const liesOf = ({ lies }: PieceView): Lies => ({
  under: layersUnder.find((under) => under === lies?.under) ?? "bare wood",
  over: layersOver.find((over) => over === lies?.over) ?? "nothing",
});

/** The draft of a new plan for a piece that is in the book: as it was described, and as it was planned last. */
export function fromPiece(piece: PieceView): Partial<PieceDraft> {
  const { workedOutFrom: input, resin, solvent } = (piece.schedule ?? {}) as Partial<ScheduleBeside>;
  const recipe = piece.schedule?.recipe;
  const [from, until] = input?.windows[0] ?? [];
  return {
    name: piece.name,
    area: piece.areaTyped,
    parts: draftsFromKept(piece.parts),
    endGrainTimes: String(piece.endGrainTimes ?? usuallyTakesMore.endGrainTimes),
    wood: piece.wood ?? "",
    ...liesOf(piece),
    wanted: piece.wanted ?? "",
    ...surfacesKept(input),
    ...(recipe === undefined
      ? {}
      : { coats: String(recipe.coats), cut: `${shortCut(recipe.cutLbPerGal)} lb` }),
    ...(input === undefined
      ? {}
      : { method: input.method, spare: String(Math.round((input.spareShare ?? 0) * 100)) }),
    ...(from === undefined || until === undefined
      ? {}
      : { firstEvening: from.slice(0, 10), from: from.slice(11), until: until.slice(11) }),
    ...(input?.millilitresPerM2PerCoat === undefined
      ? {}
      : { perM2: upToDigits(input.millilitresPerM2PerCoat, 3) }),
    ...(input?.steps === undefined
      ? {}
      : { schedule: "kept" as const, steps: input.steps.map((step) => stepDraft(step as WrittenStep)) }),
    ...(resin === undefined ? {} : { resin }),
    ...(solvent === undefined ? {} : { solvent }),
  };
}

/** The draft of another piece with the recipe of one done before: its name, its size, its evenings and what it takes a coat are its own. The parts come along, to have their sizes changed. */
export function repeated(piece: PieceView, today: string): Partial<PieceDraft> {
  return { ...fromPiece(piece), name: "", area: "", perM2: "", firstEvening: today, wanted: "" };
}
