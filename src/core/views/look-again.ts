import { epochMilliseconds } from "../notebook/instant.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { defaultValue, type TradeDefault } from "./default-value.ts";
import { jarIds, jarView } from "./jar.ts";
import { readyView } from "./ready.ts";

/**
 * How long to leave a jar before looking again, while nothing is known of its recipe's time; once jars of the recipe were
 * seen ready, the look that teaches most takes its place, no sooner and no later than these two. The first look after an hour, then after half as long again as it has stood,
 * so that looks lie close where most jars clear and apart later; shaken half-hourly, a few hours to overnight for fine
 * flakes, one to three days for button and seed: common practice. The spacing itself is our own.
 */
export const lookDefaults = {
  first: { name: "first-look-after-minutes", value: 60, unit: "minutes", known: "from memory" },
  most: { name: "longest-between-looks-minutes", value: 720, unit: "minutes", known: "from memory" },
} as const satisfies Record<string, TradeDefault>;

export interface JarToLookAt {
  readonly jar: string;
  readonly code: string;
  readonly dueMs: number;
  /** What the last look found; null where nobody has looked yet. */
  readonly lastSeen: string | null;
}

/** Jars in which something is still dissolving, the one to look at first before the others. */
export const jarsToLookAt = (read: NotebookReader): readonly JarToLookAt[] =>
  read.derive("jars-to-look-at", (r) =>
    jarIds(r)
      .flatMap((id) => jarToLookAt(r, id) ?? [])
      .sort((a, b) => a.dueMs - b.dueMs),
  );

function jarToLookAt(read: NotebookReader, id: string): JarToLookAt | null {
  const jar = jarView(read, id);
  if (jar === null || jar.made !== "mixed" || jar.emptied !== null || jar.contaminated.length > 0)
    return null;
  const last = jar.looks.looks.at(-1);
  if (last?.undissolved === "none" || jar.children.length > 0) return null;
  const first = defaultValue(read, lookDefaults.first) * 60_000;
  const made = epochMilliseconds(jar.madeAt);
  if (last === undefined) return { jar: id, code: jar.code, dueMs: made + first, lastSeen: null };
  const at = epochMilliseconds(last.at);
  const telling = tellingLook(read, id);
  const asked = telling === null ? (at - made) / 2 : telling - at;
  const wait = Math.min(defaultValue(read, lookDefaults.most) * 60_000, Math.max(first, asked));
  return { jar: id, code: jar.code, dueMs: at + wait, lastSeen: last.undissolved };
}

/** When the jar is as likely ready as not, by the time of its recipe: the answer that is least known beforehand. */
function tellingLook(read: NotebookReader, id: string): number | null {
  const group = readyView(read).groups.find(({ jars }) => jars.some((jar) => jar.id === id));
  const at = group?.jars.find((jar) => jar.id === id)?.lookAgainAt ?? null;
  return group === undefined || group.medianH === null || at === null ? null : epochMilliseconds(at);
}
