import type { NotebookReader } from "../notebook/reader.ts";
import { type TimesVerdict, usualMatters, verdictTimes } from "../statistics/verdict/verdict-times.ts";
import { type ReadyModel, watchedTimes } from "./ready.ts";

/** What the looks say of each two recipes, where half as long again would matter; it takes longer than the times. */
export const readyCompared = (read: NotebookReader, model: ReadyModel): TimesVerdict | null =>
  read.derive(`ready-compared:${model}`, (r) => {
    const { spans, times } = watchedTimes(r, model);
    return times === null ? null : verdictTimes(times, spans, usualMatters);
  });
