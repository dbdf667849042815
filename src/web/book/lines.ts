import type { KeptEntry, NotebookEntry } from "../../core/notebook/entry.ts";
import { isKnownKind, type Kind } from "../../core/notebook/kinds/all.ts";
import type { Notebook } from "../../core/notebook/notebook.ts";
import { whoDid } from "../../core/notebook/who-did.ts";
import { isStub } from "../../core/notebook/withdrawal.ts";
import { sayings } from "../words/en/entries/all.ts";
import * as words from "../words/words.ts";
import { namingFor, thingName } from "./naming.ts";

/** One entry as the Book shows it. */
export interface BookLine {
  readonly id: string;
  readonly says: string;
  readonly happened: string;
  readonly zone: string;
  readonly knownTo: NotebookEntry["happenedKnownTo"];
  readonly recorded: string;
  /** Who wrote it, where the device knew; else null. */
  readonly by: string | null;
  /** Whose hands it was, where that was said. */
  readonly who: string | null;
  readonly device: string;
  readonly seq: number;
  /** Written down well after it happened. */
  readonly writtenLater: boolean;
  readonly remembered: boolean;
  readonly state: "live" | "struck" | "withdrawn";
  /** The live entries that strike this one: striking them brings it back. */
  readonly struckBy: readonly string[];
  readonly kind: string;
  readonly about: readonly string[];
}

const laterMs = 5 * 60_000;

/** What an entry says in plain words. One of a kind or body that is not understood says so, and is kept. */
export function saying(notebook: Notebook, kept: KeptEntry): string {
  const { entry } = kept;
  if (isStub(entry)) return words.book.withdrawn;
  if (kept.understanding?.as === "not-understood") return words.book.notUnderstood(entry.kind);
  if (kept.understanding?.as === "unusable") return words.book.unusable(kept.understanding.problem.message);
  if (!isKnownKind(entry.kind)) return words.book.notUnderstood(entry.kind);
  const naming = namingFor(notebook, entry);
  if (entry.kind === "struck") return words.book.struckOut(strikesSay(notebook, entry), whyOf(entry));
  const say = sayings[entry.kind] as (body: unknown, name: typeof naming) => string; // the body was read by its kind
  return say(entry.body, naming);
}

const whyOf = (entry: NotebookEntry): string | undefined => (entry.body as { why?: string }).why;

function strikesSay(notebook: Notebook, entry: NotebookEntry): readonly string[] {
  return entry.strikes.flatMap((id) => {
    const struck = notebook.kept(id);
    if (struck === undefined) return [];
    return [struck.entry.kind === "struck" ? words.book.aStrike : saying(notebook, struck)];
  });
}

function lineOf(notebook: Notebook, entry: NotebookEntry): BookLine {
  const kept = notebook.kept(entry.id) as KeptEntry; // it came from this notebook's own list
  const struckBy = notebook.struckBy(entry.id).map((striker) => striker.id);
  const late = Date.parse(entry.recorded) - Date.parse(entry.happened) > laterMs;
  return {
    id: entry.id,
    says: saying(notebook, kept),
    happened: entry.happened,
    zone: entry.zone,
    knownTo: entry.happenedKnownTo,
    recorded: entry.recorded,
    by: entry.by,
    who: whoDid(entry),
    device: entry.device,
    seq: entry.seq,
    writtenLater: late,
    remembered: entry.remembered === true,
    state: isStub(entry) ? "withdrawn" : notebook.isLive(entry.id) ? "live" : "struck",
    struckBy,
    kind: entry.kind,
    about: entry.about,
  };
}

/** Every entry, the newest first. */
export const bookLines = (notebook: Notebook): readonly BookLine[] =>
  notebook
    .ordered()
    .map((entry) => notebook.derive(`line:${entry.id}`, () => lineOf(notebook, entry)))
    .reverse();

/** A thing that lines can be looked up by. */
export interface Thing {
  readonly id: string;
  readonly name: string;
  readonly sort: "jar" | "shelf" | "trial" | "piece" | "board";
}

const makers: Partial<Record<Kind, Thing["sort"]>> = {
  "batch-mixed": "jar",
  "batch-filtered": "jar",
  "batch-thinned": "jar",
  "batch-blended": "jar",
  "batch-decanted": "jar",
  "material-bought": "shelf",
  "trial-asked": "trial",
  "piece-described": "piece",
  "board-cut": "board",
};

/** Everything that has a name, jars first. */
export function thingsOf(notebook: Notebook): readonly Thing[] {
  const things = new Map<string, Thing>();
  for (const [kind, sort] of Object.entries(makers) as [Kind, Thing["sort"]][]) {
    for (const entry of notebook.ofKind(kind)) {
      const id = notebook.thingOf(entry);
      const name = thingName(notebook, id);
      if (name !== "") things.set(id, { id, name, sort });
    }
  }
  return [...things.values()];
}
