import { isToTheMinute, latestMs } from "../notebook/entry-time.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import type { TrialKey } from "../notebook/trial-key.ts";
import { type Trial, trialIds, trialView } from "./trial.ts";
import type { PatchState } from "./trial-patches.ts";
import { type CoatMethod, waitMinutes } from "./waits.ts";

/** A patch that a coat is to go on. Times are milliseconds since 1970. */
export interface DuePatch {
  readonly patch: string;
  readonly code: string;
  readonly board: string;
  /** The id of the board's own entry, where it has one. */
  readonly boardId: string | null;
  readonly wood: string;
  /** Coats that it has. */
  readonly coats: number;
  /** The latest that its last layer can have gone on. */
  readonly lastAtMs: number | null;
  /** Whether that time is remembered, or known only roughly: `dueMs` is then as late as it may be. */
  readonly lastIsRough: boolean;
  /** The entry of its last layer. */
  readonly lastLayer: string | null;
  /** When the wait after its last layer is over; null for bare wood. */
  readonly dueMs: number | null;
}

/** One coat from one jar: the patches that it goes on, in the order drawn for this coat. */
export interface DueCoat {
  readonly trial: string;
  readonly question: string;
  readonly coat: number;
  readonly coats: number;
  readonly method: CoatMethod;
  /** What the key says, where it is open or this device holds it; null where nobody here can know. */
  readonly jar: {
    readonly name: string;
    readonly batch: string | null;
    readonly recipe: Readonly<Record<string, string>>;
  } | null;
  /** May the jar be written beside the patches? Not while the key is shut: it would give the codes away. */
  readonly keyOpen: boolean;
  readonly patches: readonly DuePatch[];
  /** When the first of them may have it; null: at once. */
  readonly dueMs: number | null;
}

const isMethod = (text: string): text is CoatMethod =>
  ["pad", "brush", "spray", "wipe", "dip"].includes(text);

/** How this trial is coated: as it was asked, else as it was last done, else padded. */
export function methodOf(read: NotebookReader, trial: Trial): CoatMethod {
  const held = trial.asked.held?.find((one) => one.what === "method")?.at ?? "";
  if (isMethod(held)) return held;
  const last = trial.patches.flatMap((p) => p.layers).at(-1);
  const body = last === undefined ? undefined : (read.entry(last.entry)?.body as Body<"layer-applied">);
  return body?.method ?? "pad";
}

/** Waits after layers in seconds, by entry, where they have been worked out; a method's usual one elsewhere. */
export type KnownWaits = ReadonlyMap<string, number>;

function duePatch(read: NotebookReader, trial: Trial, patch: PatchState, waits?: KnownWaits): DuePatch {
  const board = trial.laidOut?.body.boards.find((b) => b.name === patch.board);
  const last = patch.layers.at(-1);
  const layer = last === undefined ? undefined : read.entry(last.entry);
  const method = (layer?.body as Body<"layer-applied"> | undefined)?.method;
  const lastAtMs = layer === undefined ? null : latestMs(layer);
  const known = last === undefined ? undefined : waits?.get(last.entry);
  const usual = method ? waitMinutes(read, method) * 60 : undefined;
  const wait = known ?? usual;
  return {
    patch: patch.patch,
    code: patch.code,
    board: patch.board,
    boardId: board?.board ?? null,
    wood: patch.wood,
    coats: patch.coats,
    lastAtMs,
    lastIsRough: layer !== undefined && !isToTheMinute(layer),
    lastLayer: last?.entry ?? null,
    dueMs: lastAtMs === null || wait === undefined ? null : lastAtMs + wait * 1e3,
  };
}

/** Patches in the order in which this coat is to go on, as it was drawn. */
function inDrawnOrder(trial: Trial, coat: number, patches: readonly PatchState[]): readonly PatchState[] {
  const order = trial.laidOut?.body.orders[coat - 1] ?? [];
  const turn = new Map(order.map((code, i) => [code, i]));
  const at = (p: PatchState) => turn.get(p.code) ?? order.length + p.place;
  return [...patches].sort((a, b) => at(a) - at(b));
}

function grouped(
  patches: readonly PatchState[],
  groupOf: (p: PatchState) => string,
): readonly PatchState[][] {
  const groups = new Map<string, PatchState[]>();
  for (const p of patches) groups.set(groupOf(p), [...(groups.get(groupOf(p)) ?? []), p]);
  return [...groups.values()];
}

const earliest = (patches: readonly DuePatch[]): number | null =>
  patches.reduce<number | null>(
    (least, p) => (p.dueMs === null || least === null ? null : Math.min(least, p.dueMs)),
    patches[0]?.dueMs ?? null,
  );

/**
 * The coats that a trial waits for: for each number of coats so far, one for every jar where the key is known here, one
 * for all patches where it is not.
 *
 * @param held   the key, where this device holds it while it is shut for everyone
 * @param waits  as `waitAnswer` has them
 */
export function coatsOfTrial(
  read: NotebookReader,
  id: string,
  held: TrialKey | null,
  waits?: KnownWaits,
): readonly DueCoat[] {
  const trial = trialView(read, id);
  if (trial === null || trial.laidOut === null || trial.closed !== null) return [];
  const key = trial.key.opened ?? held;
  const jarOf = (p: PatchState): string => key?.codes[p.code]?.jar ?? "";
  const waiting = trial.patches.filter((p) => p.leftOut === null && p.coats < trial.asked.coats);
  const coats = [...new Set(waiting.map((p) => p.coats + 1))].sort((a, b) => a - b);
  const method = methodOf(read, trial);
  return coats.flatMap((coat) => {
    const its = inDrawnOrder(
      trial,
      coat,
      waiting.filter((p) => p.coats + 1 === coat),
    );
    return grouped(its, jarOf).map((group): DueCoat => {
      const patches = group.map((p) => duePatch(read, trial, p, waits));
      const name = jarOf(group[0] as PatchState);
      const jar = trial.jars.find((one) => one.jar === name);
      return {
        trial: trial.id,
        question: trial.asked.question,
        coat,
        coats: trial.asked.coats,
        method,
        jar:
          key === null
            ? null
            : {
                name,
                batch: jar?.batch ?? null,
                recipe: jar?.recipe ?? key.codes[group[0]?.code ?? ""]?.treatment ?? {},
              },
        keyOpen: trial.key.opened !== null,
        patches,
        dueMs: earliest(patches),
      };
    });
  });
}

/** What of these coats goes on one board. */
export const coatsOnBoard = (coats: readonly DueCoat[], board: string): readonly DueCoat[] =>
  coats.flatMap((coat) => {
    const patches = coat.patches.filter((patch) => patch.board === board);
    return patches.length === 0 ? [] : [{ ...coat, patches, dueMs: earliest(patches) }];
  });

/** Trials that have been laid out and not closed. */
export const trialsAtBench = (read: NotebookReader): readonly Trial[] =>
  read.derive("bench-trials", (r) =>
    trialIds(r)
      .map((id) => trialView(r, id))
      .filter((t): t is Trial => t !== null && t.laidOut !== null && t.closed === null),
  );

/** The coat due first; of those due at the same time, the one of fewest coats, as drawn. */
export const soonestFirst = (coats: readonly DueCoat[]): readonly DueCoat[] =>
  [...coats].sort((a, b) => (a.dueMs ?? 0) - (b.dueMs ?? 0) || a.coat - b.coat);

/** The sitting that was begun and not ended, if there is one. */
export function openSitting(read: NotebookReader): { readonly id: string; readonly beganMs: number } | null {
  const begun = read.ofKind("sitting-begun").at(-1);
  if (begun === undefined) return null;
  const ended = read.touching(begun.id).some((entry) => entry.kind === "sitting-ended");
  return ended ? null : { id: begun.id, beganMs: epochMilliseconds(begun.happened) };
}
