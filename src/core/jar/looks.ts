import type { NotebookEntry } from "../notebook/entry.ts";
import { isToTheHour } from "../notebook/entry-time.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { UnusableReason } from "./jar-fold.ts";

export interface Look {
  readonly entry: string;
  readonly at: string;
  /** Hours since resin and solvent were put together. */
  readonly hours: number;
  readonly undissolved: Body<"batch-looked-at">["undissolved"];
  /** How much of the flakes was still there, 0 to 1, where the look told it. */
  readonly share: number | null;
  readonly clarity: NonNullable<Body<"batch-looked-at">["clarity"]> | null;
  readonly waxSettled: boolean;
}

/** Ready somewhere between two looks: after the last "not yet", by the first "none left". Hours since mixing. */
export interface ReadyBetween {
  /** 0 when it was ready at the first look. */
  readonly notYetH: number;
  /** Null when it was never seen ready. */
  readonly doneByH: number | null;
}

export interface Looks {
  readonly looks: readonly Look[];
  readonly ready: ReadyBetween | null;
  readonly unusable: readonly { readonly entry: string; readonly reason: UnusableReason }[];
}

const hourMs = 3_600_000;

/** A share that is none says nothing. */
const shareIn = (si: number | undefined): number | null =>
  si !== undefined && si >= 0 && si <= 1 ? si : null;

/** A look before the mixing cannot be. */
function placed(entry: NotebookEntry, mixedAt: string): Look | UnusableReason {
  const body = entry.body as Body<"batch-looked-at">;
  const hours = (epochMilliseconds(entry.happened) - epochMilliseconds(mixedAt)) / hourMs;
  if (hours < 0) return "look-out-of-order";
  return {
    entry: entry.id,
    at: entry.happened,
    hours,
    undissolved: body.undissolved,
    share: shareIn(body.undissolvedShare?.si),
    clarity: body.clarity ?? null,
    waxSettled: body.waxSettled ?? false,
  };
}

/**
 * The looks at a jar as interval-censored data. A look that finds something undissolved after one that found nothing
 * contradicts it: it is reported, and the first "none" stands.
 */
export function looksOf(entries: readonly NotebookEntry[], mixed: NotebookEntry): Looks {
  const seen = entries
    .filter((entry) => entry.kind === "batch-looked-at")
    .sort((a, b) => (a.happened < b.happened ? -1 : a.happened > b.happened ? 1 : 0));
  const unusable: { entry: string; reason: UnusableReason }[] = [];
  const looks: Look[] = [];
  let notYetH = 0;
  let doneByH: number | null = null;
  let timed = 0;
  for (const entry of seen) {
    const look = placed(entry, mixed.happened);
    if (typeof look === "string") {
      unusable.push({ entry: entry.id, reason: look });
      continue;
    }
    looks.push(look);
    if (!isToTheHour(entry) || !isToTheHour(mixed)) continue; // seen, but at no hour that could bound anything
    timed++;
    if (look.undissolved === "none") doneByH ??= look.hours;
    else if (doneByH === null) notYetH = look.hours;
    else unusable.push({ entry: entry.id, reason: "look-out-of-order" });
  }
  return { looks, ready: timed === 0 ? null : { notYetH, doneByH }, unusable };
}
