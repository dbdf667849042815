import type { NotebookEntry } from "../notebook/entry.ts";
import { isToTheHour } from "../notebook/entry-time.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { TrialKey } from "../notebook/trial-key.ts";

export interface TrialJar {
  readonly jar: string;
  readonly recipe: Readonly<Record<string, string>>;
  readonly batch: string | null;
  /** The first batch that this one was let down, strained or poured from: jars of one stock are one mixing. */
  readonly stock: string | null;
}

export interface PatchLayer {
  readonly entry: string;
  readonly at: string;
  /** Whether `at` is good enough to count an age from. */
  readonly timed: boolean;
  readonly sort: Body<"layer-applied">["sort"];
  readonly coat: number | null;
  readonly batches: readonly string[];
  readonly outsidePlan: string | null;
}

/** What happened to a patch that the layout did not foresee. */
export interface Departure {
  readonly what: "another jar" | "outside the plan" | "film removed" | "a coat too many";
  readonly entry: string;
}

export interface PatchState {
  readonly patch: string;
  readonly code: string;
  readonly board: string;
  readonly plank: string;
  readonly wood: string;
  readonly place: number;
  /** Its turn on its board in each session, from 1. */
  readonly turns: readonly number[];
  /** Coats and sessions that it has had. */
  readonly coats: number;
  readonly layers: readonly PatchLayer[];
  readonly lastLayerAt: string | null;
  readonly leftOut: {
    readonly entry: string;
    readonly why: string;
    readonly note: string | null;
    readonly keyOpen: boolean;
  } | null;
  /** Left out and brought back as often as it was, in order. */
  readonly comings: readonly { readonly entry: string; readonly out: boolean; readonly keyOpen: boolean }[];
  /** Known once the key is open. */
  readonly treatment: Readonly<Record<string, string>> | null;
  readonly jar: string | null;
  readonly batch: string | null;
  /** What departs from the layout; of jars and coats only what can be known yet. */
  readonly departures: readonly Departure[];
}

type Layout = Body<"trial-laid-out">;
type LaidPatch = Layout["patches"][number];

const isCoat = (sort: string): boolean => sort === "coat" || sort === "session";

/** Every patch of a layout with what its entries say happened to it. */
export function patchesOf(
  entries: readonly NotebookEntry[],
  trial: string,
  layout: Layout,
  key: TrialKey | null,
  jars: readonly TrialJar[],
  plannedCoats: number,
): readonly PatchState[] {
  const boards = new Map(layout.boards.map((b) => [b.name, b]));
  const turns = turnsOnBoards(layout);
  const hits = targetsByPatch(entries, trial, layout);
  return layout.patches.map((p) => {
    const board = boards.get(p.board);
    const mine = hits.get(p.patch) ?? [];
    const layers = mine.filter((e) => e.kind === "layer-applied").map(layerOf);
    const secret = key?.codes[p.code];
    const batch = jars.find((j) => j.jar === secret?.jar)?.batch ?? null;
    const comings = comingsOf(entries, p.patch);
    return {
      patch: p.patch,
      code: p.code,
      board: p.board,
      plank: board?.plank ?? "",
      wood: board?.wood ?? "",
      place: p.place,
      turns: turns.get(p.code) ?? [],
      coats: layers.filter((l) => isCoat(l.sort)).length,
      layers,
      lastLayerAt: layers.at(-1)?.at ?? null,
      leftOut: leftOutOf(entries, comings),
      comings,
      treatment: secret?.treatment ?? null,
      jar: secret?.jar ?? null,
      batch,
      departures: departuresOf(mine, layers, batch, plannedCoats),
    };
  });
}

function turnsOnBoards(layout: Layout): ReadonlyMap<string, readonly number[]> {
  const boardOf = new Map(layout.patches.map((p) => [p.code, p.board]));
  const turns = new Map<string, number[]>(layout.patches.map((p) => [p.code, []]));
  for (const order of layout.orders) {
    const soFar = new Map<string, number>();
    for (const code of order) {
      const board = boardOf.get(code) ?? "";
      const turn = (soFar.get(board) ?? 0) + 1;
      soFar.set(board, turn);
      turns.get(code)?.push(turn);
    }
  }
  return turns;
}

/** Entries with targets, by the patches that they reach: named themselves, or by their whole board. */
function targetsByPatch(
  entries: readonly NotebookEntry[],
  trial: string,
  layout: Layout,
): ReadonlyMap<string, readonly NotebookEntry[]> {
  const names = new Map(
    layout.boards.flatMap((b) => (b.board === undefined ? [] : [[b.board, b.name] as const])),
  );
  const hits = new Map<string, NotebookEntry[]>();
  for (const e of entries) {
    const targets = (e.body as { targets?: unknown }).targets;
    if (!Array.isArray(targets)) continue;
    const reached = (p: LaidPatch) =>
      (targets as Body<"layer-applied">["targets"]).some(
        (t) =>
          (t.trial === trial && t.patch === p.patch) ||
          (t.patch === undefined && t.board !== undefined && names.get(t.board) === p.board),
      );
    for (const p of layout.patches.filter(reached)) hits.set(p.patch, [...(hits.get(p.patch) ?? []), e]);
  }
  return hits;
}

function layerOf(entry: NotebookEntry): PatchLayer {
  const body = entry.body as Body<"layer-applied">;
  return {
    entry: entry.id,
    at: entry.happened,
    timed: isToTheHour(entry),
    sort: body.sort,
    coat: body.planned?.coat ?? null,
    batches: body.from.flatMap((f) => (f.batch === undefined ? [] : [f.batch])),
    outsidePlan: body.outsidePlan ?? null,
  };
}

function comingsOf(entries: readonly NotebookEntry[], patch: string): PatchState["comings"] {
  return entries.flatMap((e) => {
    if (e.kind !== "patch-left-out" && e.kind !== "patch-brought-back") return [];
    const body = e.body as Body<"patch-left-out">;
    return body.patch === patch
      ? [{ entry: e.id, out: e.kind === "patch-left-out", keyOpen: body.keyOpen }]
      : [];
  });
}

function leftOutOf(entries: readonly NotebookEntry[], comings: PatchState["comings"]): PatchState["leftOut"] {
  const last = comings.at(-1);
  if (last === undefined || !last.out) return null;
  const body = entries.find((e) => e.id === last.entry)?.body as Body<"patch-left-out">;
  return { entry: last.entry, why: body.why, note: body.note ?? null, keyOpen: last.keyOpen };
}

function departuresOf(
  mine: readonly NotebookEntry[],
  layers: readonly PatchLayer[],
  batch: string | null,
  plannedCoats: number,
): readonly Departure[] {
  const removed = mine
    .filter((e) => e.kind === "film-removed")
    .map((e) => ({ what: "film removed", entry: e.id }) as const);
  const outside = layers
    .filter((l) => l.outsidePlan !== null)
    .map((l) => ({ what: "outside the plan", entry: l.entry }) as const);
  const another = layers
    .filter((l) => batch !== null && l.outsidePlan === null && l.batches.some((b) => b !== batch))
    .map((l) => ({ what: "another jar", entry: l.entry }) as const);
  const tooMany = layers
    .filter((l) => isCoat(l.sort) && l.outsidePlan === null)
    .slice(plannedCoats)
    .map((l) => ({ what: "a coat too many", entry: l.entry }) as const);
  return [...removed, ...outside, ...another, ...tooMany];
}
