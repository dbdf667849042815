import type { DueCoat } from "../../core/views/bench.ts";
import type { Reminder } from "../reminders/reminder-clock.ts";
import * as words from "../words/words.ts";
import { type ComingUp, coatKey, isReady } from "./state.ts";

/** The next patches of a coat whose wait is still on, by their codes alone: a screen that others see must not name the jar. */
function ofCoat(coat: DueCoat, nowMs: number): readonly Reminder[] {
  const waiting = coat.patches.filter((patch) => !isReady(patch, nowMs));
  if (waiting.length === 0) return [];
  const atMs = Math.min(...waiting.map(({ dueMs }) => dueMs ?? nowMs));
  const codes = waiting.filter(({ dueMs }) => dueMs === atMs).map(({ code }) => code);
  return [{ key: coatKey({ ...coat, jar: null }), atMs, says: words.bench.coatDue(coat.coat, codes) }];
}

/** What the bench has to remind of: coats as their waits end, jars to look at, pieces to go on with. */
export function toRemind(
  coats: readonly DueCoat[],
  comingUp: readonly ComingUp[],
  nowMs: number,
): readonly Reminder[] {
  const others = comingUp.flatMap(({ atMs, jar, piece }): Reminder[] => {
    if (jar !== null) return [{ key: `jar ${jar.jar}`, atMs, says: words.bench.lookAt(jar.code) }];
    if (piece !== null)
      return [
        {
          key: `piece ${piece.piece}`,
          atMs,
          says: words.bench.pieceCoat(piece.name, piece.coat, piece.surface),
        },
      ];
    return [];
  });
  return [...coats.flatMap((coat) => ofCoat(coat, nowMs)), ...others];
}
