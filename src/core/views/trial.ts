/**
 * A trial as its entries tell it. The bodies that this view reads, as they are written (`about[0]` is the trial):
 *
 * `trial-asked` (makes the trial)
 *   {question: "Which alcohol, and which cut?",
 *    varies: [{factor: "alcohol", levels: ["ethanol", "isopropanol"], appliedTo: "jar"},
 *             {factor: "cut", levels: ["1 lb", "1½ lb"], appliedTo: "jar", fromOneStock: true},
 *             {factor: "wood", levels: ["cherry", "ash"], appliedTo: "plank"}],
 *    held: [{what: "method", at: "brush"}],
 *    looksAt: [{name: "gloss", scale: "measured", unit: "gloss units", matters: 5, more: "glossier", less: "duller"},
 *              {name: "grain raise", scale: "ordered", levels: ["none", "slight", "plain", "strong"]}],
 *    coats: 4, evenings: 5, jarsPerLevel: 2, millilitresPerPatchCoat: 2, daysToJudge: 28}
 *
 * `trial-laid-out`, about [trial, …boards that have entries, …batches]
 *   {boards: [{name: "cherry 1", plank: "C", wood: "cherry", patches: 6, board: id of its `board-cut` where there is one}],
 *    patches: [{patch: "cherry 1-1", board: "cherry 1", place: 1, code: "K7"}],
 *    orders: [["K7", "R4", …], …one a coat], keySha256, blinding, geometry, cannotTell,
 *    jars: [{jar: "ethanol · 1 lb · jar 1", recipe: {alcohol: "ethanol", cut: "1 lb"}, batch: id}]}
 *   `jars` says which jar on the shelf each jar of the plan is; never which patch it goes on. A jar chosen later is a
 *   correction of the layout with everything else as it was.
 *
 * `trial-key`, about [trial]: as `sealKey` makes it. `key-opened`, about [trial]: {key: the exact text}.
 *
 * `layer-applied`, about [trial, …]
 *   {sort: "coat", targets: [{trial: id, patch: "cherry 1-1"}], from: [], method: "brush", planned: {coat: 1}}
 *   While the key is shut `from` is empty: what each patch got is as the key says, and a batch written beside a
 *   patch would give the code away. Once it is open, or where nothing is blind, `from: [{batch}]` is right; a
 *   batch other than the plan's counts as a departure.
 *
 * `measured`, about [trial]
 *   {patch: "cherry 1-1", response: "gloss", value: {typed: "41", unit: "gloss units", si: 41}, who, light, seen: "code",
 *    order: 1, occasion: 1, afterCoat: 4}
 * `judged`, about [trial]: the same with `level: "slight"` (ordered) or `rank: 2` in place of `value`.
 */
import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { readTrialKey, type TrialKey } from "../notebook/trial-key.ts";
import { type Reading, readingsOf } from "./judging.ts";
import { type PatchState, patchesOf, type TrialJar } from "./trial-patches.ts";

/** `elsewhere`: laid out blind, and no sealed key is in the notebook; a device keeps it. `wrong`: what was opened is another key. */
export type KeyState = "none" | "sealed" | "elsewhere" | "open" | "wrong";

export interface Trial {
  readonly id: string;
  readonly asked: Body<"trial-asked">;
  readonly askedAt: string;
  readonly state: "asked" | "laid out" | "coating" | "judging" | "closed";
  readonly laidOut: {
    readonly entry: string;
    readonly body: Body<"trial-laid-out">;
    readonly at: string;
  } | null;
  readonly key: {
    readonly state: KeyState;
    readonly sealed: Body<"trial-key"> | null;
    readonly opened: TrialKey | null;
    readonly openedEntry: string | null;
    readonly openedAt: string | null;
  };
  readonly jars: readonly TrialJar[];
  readonly patches: readonly PatchState[];
  /** Coats that every patch still in the trial has. */
  readonly coatsDone: number;
  readonly readings: readonly Reading[];
  readonly changes: readonly {
    readonly entry: string;
    readonly what: string;
    readonly why: string;
    readonly keyOpen: boolean;
  }[];
  readonly closed: {
    readonly entry: string;
    readonly body: Body<"trial-closed">;
    readonly at: string;
  } | null;
}

/** Ids of all trials, the newest first. */
export const trialIds = (read: NotebookReader): readonly string[] =>
  read.derive("trials", (r) => [...new Set(r.ofKind("trial-asked").map((e) => r.thingOf(e)))].reverse());

export const trialView = (read: NotebookReader, id: string): Trial | null =>
  read.derive(`trial:${id}`, (r) => foldTrial(r, id));

const lastOf = (entries: readonly NotebookEntry[], kind: string): NotebookEntry | undefined =>
  entries.findLast((e) => e.kind === kind);

function foldTrial(read: NotebookReader, id: string): Trial | null {
  const making = read.making(id);
  if (making?.kind !== "trial-asked") return null;
  const asked = making.body as Body<"trial-asked">;
  const entries = read.touching(id);
  const layout = lastOf(entries, "trial-laid-out");
  const body = (layout?.body as Body<"trial-laid-out"> | undefined) ?? null;
  const key = keyOf(entries, body);
  const jars = jarsOf(read, body);
  const patches = body === null ? [] : patchesOf(entries, id, body, key.opened, jars, asked.coats);
  const readings = readingsOf(entries, patches, key.openedEntry);
  const closing = lastOf(entries, "trial-closed");
  const left = patches.filter((p) => p.leftOut === null);
  const coatsDone = left.length === 0 ? 0 : Math.min(...left.map((p) => p.coats));
  return {
    id,
    asked,
    askedAt: making.happened,
    laidOut: layout === undefined || body === null ? null : { entry: layout.id, body, at: layout.happened },
    state: stateOf(asked, body, patches, coatsDone, closing !== undefined),
    key,
    jars,
    patches,
    coatsDone,
    readings,
    changes: entries
      .filter((e) => e.kind === "trial-changed")
      .map((e) => ({ entry: e.id, ...(e.body as Body<"trial-changed">) })),
    closed:
      closing === undefined
        ? null
        : { entry: closing.id, body: closing.body as Body<"trial-closed">, at: closing.happened },
  };
}

function stateOf(
  asked: Body<"trial-asked">,
  layout: Body<"trial-laid-out"> | null,
  patches: readonly PatchState[],
  coatsDone: number,
  closed: boolean,
): Trial["state"] {
  if (closed) return "closed";
  if (layout === null) return "asked";
  if (coatsDone >= asked.coats) return "judging";
  return patches.some((p) => p.coats > 0) ? "coating" : "laid out";
}

function keyOf(entries: readonly NotebookEntry[], layout: Body<"trial-laid-out"> | null): Trial["key"] {
  const opening = lastOf(entries, "key-opened");
  const sealed = (lastOf(entries, "trial-key")?.body as Body<"trial-key"> | undefined) ?? null;
  const shut = { sealed, opened: null, openedEntry: null, openedAt: null };
  if (layout === null) return { state: "none", ...shut };
  if (opening === undefined) return { state: sealed === null ? "elsewhere" : "sealed", ...shut };
  const read = readTrialKey((opening.body as Body<"key-opened">).key, layout.keySha256);
  if (!read.ok) return { state: "wrong", ...shut };
  return { state: "open", sealed, opened: read.value, openedEntry: opening.id, openedAt: opening.happened };
}

function jarsOf(read: NotebookReader, layout: Body<"trial-laid-out"> | null): readonly TrialJar[] {
  return (layout?.jars ?? []).map((j) => ({
    jar: j.jar,
    recipe: j.recipe,
    batch: j.batch ?? null,
    stock: j.batch === undefined ? null : stockOf(read, j.batch),
  }));
}

const letDown = ["batch-thinned", "batch-filtered", "batch-decanted"];

/** Follows a batch back to the one that was mixed; a ring of links ends where it closes. */
export function stockOf(read: NotebookReader, batch: string): string {
  const seen = new Set<string>();
  let here = batch;
  while (!seen.has(here)) {
    seen.add(here);
    const made = read.making(here);
    const parent =
      made !== undefined && letDown.includes(made.kind) ? made.about.find((id) => id !== here) : undefined;
    if (parent === undefined) return here;
    here = parent;
  }
  return here;
}
