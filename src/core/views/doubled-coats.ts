import type { NotebookReader } from "../notebook/reader.ts";
import { whoDid } from "../notebook/who-did.ts";
import { trialView } from "./trial.ts";

/** One coat of the plan written down twice on the same patches: on two phones, most likely. */
export interface DoubledCoat {
  readonly trial: string;
  readonly coat: number;
  readonly codes: readonly string[];
  /** The entries that say so, in the notebook's order. */
  readonly entries: readonly {
    readonly entry: string;
    readonly at: string;
    readonly device: string;
    readonly who: string | null;
  }[];
}

/** Coats of the plan that more than one live entry says were given to the same patch. Nobody but the person knows which is right. */
export function doubledCoats(read: NotebookReader, trial: string): readonly DoubledCoat[] {
  const doubled = new Map<string, { coat: number; ids: readonly string[]; codes: string[] }>();
  for (const patch of trialView(read, trial)?.patches ?? []) {
    const byCoat = new Map<number, string[]>();
    for (const { coat, entry } of patch.layers)
      if (coat !== null) byCoat.set(coat, [...(byCoat.get(coat) ?? []), entry]);
    for (const [coat, ids] of byCoat) {
      if (ids.length < 2) continue;
      const key = ids.join();
      const known = doubled.get(key) ?? { coat, ids, codes: [] };
      known.codes.push(patch.code);
      doubled.set(key, known);
    }
  }
  return [...doubled.values()].map(({ coat, ids, codes }) => ({
    trial,
    coat,
    codes,
    entries: ids.flatMap((id) => {
      const entry = read.entry(id);
      return entry === undefined
        ? []
        : [{ entry: id, at: entry.happened, device: entry.device, who: whoDid(entry) }];
    }),
  }));
}
