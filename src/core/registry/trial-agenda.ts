import { latestMs } from "../notebook/entry-time.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import type { TrialKey } from "../notebook/trial-key.ts";
import type { ShopWindow } from "../pieces/shop-windows.ts";
import { methodOf } from "../views/bench.ts";
import { type Trial, trialView } from "../views/trial.ts";
import type { PatchState } from "../views/trial-patches.ts";
import { waitMinutes } from "../views/waits.ts";
import type { AgendaInput } from "./agenda-input.ts";

/** What a trial's plan is made from, besides the trial. */
export interface TrialTime {
  readonly windows: readonly ShopWindow[];
  readonly zone: string;
  /** For one patch, and to change pad and jar. */
  readonly minutesPerPatch: number;
  readonly changeMinutes: number;
  /** An instant as wall-clock time in the zone, as 2026-10-05T19:40. */
  readonly wallOf: (ms: number) => string;
}

/** One coat from one jar on all its patches; the jar is null where nobody here can know which patches it is for. */
export interface AgendaCoat {
  readonly task: string;
  readonly coat: number;
  readonly jar: string | null;
  readonly patches: number;
  readonly minutes: number;
  readonly leastWaitMinutes: number;
}

export interface TrialAgenda {
  readonly input: AgendaInput;
  readonly coats: readonly AgendaCoat[];
}

/** Patches by jar where the key is known here, else all together. */
function byJar(trial: Trial, key: TrialKey | null): ReadonlyMap<string | null, readonly PatchState[]> {
  const groups = new Map<string | null, PatchState[]>();
  for (const patch of trial.patches.filter((p) => p.leftOut === null)) {
    const jar = key?.codes[patch.code]?.jar ?? null;
    groups.set(jar, [...(groups.get(jar) ?? []), patch]);
  }
  return groups;
}

/** When the last layers of these patches have dried; undefined on bare wood. */
function driedMs(read: NotebookReader, patches: readonly PatchState[], waitMs: number): number | undefined {
  const lasts = patches.flatMap((patch) => {
    const layer = read.entry(patch.layers.at(-1)?.entry ?? "");
    return layer === undefined ? [] : [latestMs(layer) + waitMs];
  });
  return lasts.length === 0 ? undefined : Math.max(...lasts);
}

/**
 * What is left to coat in a trial, as an agenda for the planner: one task for each coat of each jar, the waits of the method
 * between them, and the change of pad and jar. Which patch gets what stands in it nowhere.
 *
 * @param id    the trial
 * @param held  the key, where this device holds it while it is shut for everyone
 * @param time  evenings, and how long things take
 * @returns     the agenda and its coats by task, or null where nothing is left to coat
 *
 * Valid:  a trial that is laid out and not closed
 * Source: waits as on the Bench; minutes a patch and a change are the person's
 */
export function trialAgenda(
  read: NotebookReader,
  id: string,
  held: TrialKey | null,
  time: TrialTime,
): TrialAgenda | null {
  const trial = trialView(read, id);
  if (trial === null || trial.laidOut === null || trial.closed !== null) return null;
  const groups = byJar(trial, trial.key.opened ?? held);
  const wait = Math.ceil(waitMinutes(read, methodOf(read, trial)));
  const coats: AgendaCoat[] = [];
  const tasks: AgendaInput["tasks"] = [];
  const waits: NonNullable<AgendaInput["waits"]> = [];
  for (const [jar, patches] of groups) {
    const changes = jar === null ? Math.max(0, trial.jars.length - 1) * time.changeMinutes : 0;
    let before: string | undefined;
    for (let coat = 1; coat <= trial.asked.coats; coat++) {
      const left = patches.filter((patch) => patch.coats < coat);
      if (left.length === 0) continue;
      const task = `${jar ?? ""} ${coat}`.trim();
      const minutes = Math.max(1, Math.ceil(left.length * time.minutesPerPatch + changes));
      const dried = before === undefined ? driedMs(read, left, wait * 60_000) : undefined;
      coats.push({ task, coat, jar, patches: left.length, minutes, leastWaitMinutes: wait });
      tasks.push({
        task,
        minutes,
        hands: true,
        ...(jar === null ? {} : { setup: jar }),
        ...(dried === undefined ? {} : { notBefore: time.wallOf(dried) }),
      });
      if (before !== undefined) waits.push({ from: before, to: task, leastMinutes: wait });
      before = task;
    }
  }
  if (tasks.length === 0) return null;
  const windows = time.windows.map(([from, until]): [string, string] => [from, until]);
  const setups = { anyOther: time.changeMinutes };
  return { coats, input: { tasks, waits, windows, zone: time.zone, setups } };
}
