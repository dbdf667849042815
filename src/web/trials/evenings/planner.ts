import { createEffect, createSignal, onCleanup } from "solid-js";
import type { AgendaInput } from "../../../core/registry/agenda-input.ts";
import type { ClockPlan, ScheduledAgenda } from "../../../core/registry/schedule-agenda.ts";

export interface Asked {
  readonly agenda: AgendaInput;
}

/** A plan, the best so far or the last word; or why there can be none. */
export type Told =
  | {
      readonly done: boolean;
      readonly plan: ClockPlan | null;
      readonly lowerBound: string | null;
      readonly provenBest: ScheduledAgenda["provenBest"];
    }
  | { readonly refused: string };

/** While somebody types, every letter is another agenda. */
const settledMs = 200;

/** The best plan of an agenda, planned anew as the agenda changes; a search under way can be ended with what it has. */
export function createPlanner(agenda: () => AgendaInput | null) {
  const [told, setTold] = createSignal<Told>();
  const [searching, setSearching] = createSignal(false);
  const [unfetched, setUnfetched] = createSignal(false);
  let worker: Worker | undefined;
  const end = () => {
    worker?.terminate();
    worker = undefined;
    setSearching(false);
  };
  createEffect(() => {
    const given = agenda();
    end();
    setTold(undefined);
    setUnfetched(false);
    if (given === null) return;
    setSearching(true);
    const timer = setTimeout(() => begin(given), settledMs);
    onCleanup(() => clearTimeout(timer));
  });
  function begin(given: AgendaInput): void {
    worker = new Worker(new URL("./evenings.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<Told>) => {
      setTold(data);
      if ("refused" in data || data.done) end();
    });
    worker.addEventListener("error", () => {
      setUnfetched(told() === undefined); // out of reach, and these pages are not kept yet
      end();
    });
    worker.postMessage({ agenda: given } satisfies Asked);
  }
  onCleanup(end);
  const refused = () => {
    const last = told();
    return last !== undefined && "refused" in last ? last.refused : undefined;
  };
  return { told, refused, searching, unfetched, end };
}
