import type { NotebookEntry } from "../notebook/entry.ts";
import { isToTheHour } from "../notebook/entry-time.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { PatchState } from "./trial-patches.ts";

/** One look at one patch: a number, a step of a scale, or a rank. */
export interface Reading {
  readonly entry: string;
  readonly at: string;
  readonly patch: string;
  readonly response: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly level: string | null;
  readonly rank: number | null;
  readonly who: string | null;
  readonly light: string | null;
  readonly occasion: number;
  readonly afterCoat: number;
  readonly daysSinceLayer: number | null;
  readonly seen: "code" | "recipe";
  /** Written after the key was opened. */
  readonly keyOpen: boolean;
}

const dayMs = 86_400_000;

/** The readings of a trial in the order in which they were taken. */
export function readingsOf(
  entries: readonly NotebookEntry[],
  patches: readonly PatchState[],
  keyOpenedEntry: string | null,
): readonly Reading[] {
  const byName = new Map(patches.map((p) => [p.patch, p]));
  const opened = keyOpenedEntry === null ? -1 : entries.findIndex((e) => e.id === keyOpenedEntry);
  return entries.flatMap((e, i) => {
    if (e.kind !== "judged" && e.kind !== "measured") return [];
    const body = e.body as Body<"judged"> & Partial<Body<"measured">>;
    const patch = byName.get(body.patch);
    if (patch === undefined) return [];
    const keyOpen = opened >= 0 && i > opened;
    return [
      {
        entry: e.id,
        at: e.happened,
        patch: body.patch,
        response: body.response,
        value: body.value?.si ?? null,
        unit: body.value?.unit ?? null,
        level: body.level ?? null,
        rank: body.rank ?? null,
        who: body.who ?? e.for?.[0] ?? e.by ?? null,
        light: body.light ?? null,
        occasion: body.occasion ?? 1,
        afterCoat: body.afterCoat ?? coatsAt(patch, e.happened),
        daysSinceLayer: body.daysSinceLayer ?? (isToTheHour(e) ? daysSince(patch, e.happened) : null),
        seen: body.seen ?? (keyOpen ? "recipe" : "code"),
        keyOpen,
      },
    ];
  });
}

const coatsAt = (patch: PatchState, at: string): number =>
  patch.layers.filter((l) => (l.sort === "coat" || l.sort === "session") && l.at <= at).length;

/** Null too where the layer's time is remembered: a verdict that counts ages then says that it misses one. */
function daysSince(patch: PatchState, at: string): number | null {
  const last = patch.layers.findLast((l) => l.at <= at);
  return last === undefined || !last.timed
    ? null
    : (epochMilliseconds(at) - epochMilliseconds(last.at)) / dayMs;
}
