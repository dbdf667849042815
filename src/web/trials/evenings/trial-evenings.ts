import { type Accessor, createMemo, createSignal, untrack } from "solid-js";
import type { ShopWindow } from "../../../core/pieces/shop-windows.ts";
import { trialAgenda } from "../../../core/registry/trial-agenda.ts";
import { eveningsToKeep } from "../../../core/registry/trial-events.ts";
import type { Trial } from "../../../core/views/trial.ts";
import { trialPlans } from "../../../core/views/trial-plans.ts";
import { useHeldKeys } from "../../bench/held-keys.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import { now } from "../../shell/now.ts";
import { clock, dayOf } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { draftOf, type FreeTime, keptWindows, windowsOf } from "./free-time.ts";
import { plannedTrial } from "./planned.ts";
import { createPlanner } from "./planner.ts";

/** Minutes as typed: a half to two hours; undefined where that is not what it says. */
export const readMinutes = (typed: string): number | undefined => {
  const value = Number(typed.trim().replace(",", "."));
  return typed.trim() !== "" && value >= 0.5 && value <= 120 ? value : undefined;
};

/** Minutes after midnight of a time by the clock on the wall. */
export const minuteOf = (wall: string): number =>
  Number(wall.slice(11, 13)) * 60 + Number(wall.slice(14, 16));

export type TrialEvenings = ReturnType<typeof createTrialEvenings>;

/** When somebody is free, what is left of a trial, and the plan that comes of both. */
export function createTrialEvenings(book: OpenBook, trial: Accessor<Trial>) {
  const wallOf = (ms: number) => {
    const instant = new Date(ms).toISOString();
    return `${dayOf(instant, book.zone)}T${clock(instant, book.zone)}`;
  };
  /** To the quarter of an hour, so that a plan stands still while it is read. */
  const quarter = createMemo(() => wallOf(Math.ceil(Date.parse(now()) / 900_000) * 900_000));
  const [free, setFree] = createSignal<FreeTime>(
    untrack(() => {
      const kept = keptWindows(book.whole(), quarter());
      return { kept, draft: draftOf(kept, dayOf(now(), book.zone)), changes: [] };
    }),
  );
  const [typed, setTyped] = createSignal({ patch: "3", change: "10" });
  const windows = createMemo(() => windowsOf(free(), quarter()));
  const held = useHeldKeys(() => [trial()]);
  const asked = () => {
    const [minutesPerPatch, changeMinutes, given] = [
      readMinutes(typed().patch),
      readMinutes(typed().change),
      windows(),
    ];
    if (minutesPerPatch === undefined || changeMinutes === undefined || given === undefined) return undefined;
    const { id } = trial();
    return book.look(`trial-agenda:${id}:${JSON.stringify([typed(), given])}`, (read) =>
      trialAgenda(read, id, held(id), {
        ...{ windows: given, zone: book.zone, minutesPerPatch, wallOf },
        changeMinutes: Math.ceil(changeMinutes),
      }),
    );
  };
  /** Writing in the book is no reason to plan anew while the same is asked. */
  const agenda = createMemo(asked, undefined, {
    equals: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  });
  const hasRoom = () => windows()?.length !== 0;
  const planner = createPlanner(() => (hasRoom() ? (agenda()?.input ?? null) : null));
  const found = () => {
    const last = planner.told();
    return last === undefined || "refused" in last ? undefined : last;
  };
  const planned = createMemo(() => {
    const [asked, plan] = [agenda(), found()?.plan];
    return asked == null || plan == null ? undefined : plannedTrial(asked, plan);
  });
  /** Why there can be no plan; a coat that is longer than every evening is the likeliest, and is said as one says it. */
  const refused = () => {
    const why = planner.refused();
    if (why === undefined) return undefined;
    const longest = (agenda()?.coats ?? []).toSorted((a, b) => b.minutes - a.minutes)[0];
    const evening = Math.max(
      0,
      ...(windows() ?? []).map(([from, until]) => minuteOf(until) - minuteOf(from)),
    );
    return longest !== undefined && longest.minutes > evening
      ? words.trialEvenings.tooShort(longest.coat, longest.patches, longest.minutes, evening)
      : why;
  };
  const plans = () => trialPlans(book.whole().ordered(), trial().id);
  /** Writes the evenings that are free, and those that the plan takes; returns the entry, to be struck by an undo. */
  const keep = (given: readonly ShopWindow[]): string => {
    const sessions = planned()?.sessions ?? [];
    return book.write({
      kind: "free-time",
      about: [trial().id],
      body: {
        windows: given.map(([from, to]) => ({ from, to })),
        evenings: eveningsToKeep(sessions, plans(), Date.parse(now()) / 60_000).map((one) => ({ ...one })),
      },
    });
  };
  return {
    free,
    setFree,
    typed,
    setTyped,
    windows,
    hasRoom,
    agenda,
    planner,
    refused,
    found,
    planned,
    plans,
    keep,
    /** By the clock on the wall. */
    wall: () => wallOf(Date.parse(now())),
  };
}
