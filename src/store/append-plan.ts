import type { KeptEntry } from "../core/notebook/entry.ts";
import { readShallowJson } from "../core/notebook/json-text.ts";
import { meeting, otherContent, otherNotebook } from "../core/notebook/meeting.ts";
import { parseEntry, readKeptEntry } from "../core/notebook/parse-entry.ts";
import { isStub, stubbable, stubOf, withdraws } from "../core/notebook/withdrawal.ts";
import type { Problem } from "../core/registry/problem.ts";
import type { Result } from "../core/result.ts";
import type { AppendRefusal, AppendReport } from "./notebook-store.ts";

/** One text that came in, read; with the id that it names, if any, to speak of it. */
export interface Incoming {
  readonly id: string | null;
  readonly read: Result<KeptEntry, Problem>;
}

/** What the store holds of the ids that come up in an append. */
export interface Held {
  /** Whether the notebook has begun. */
  readonly begun: boolean;
  readonly texts: ReadonlyMap<string, string>;
  readonly withdrawn: ReadonlySet<string>;
}

/** What to write, in one transaction. */
export interface AppendPlan {
  readonly report: AppendReport;
  readonly insert: readonly KeptEntry[];
  /** Stubs in place of texts held so far. */
  readonly empty: readonly KeptEntry[];
  /** Ids whose texts must not be taken in any more. */
  readonly withdraw: readonly string[];
  /** Photographs that emptied entries spoke of. */
  readonly photographs: readonly string[];
}

function idNamed(text: string): string | null {
  const json = readShallowJson(text);
  const id = json.ok ? (json.value as { id?: unknown } | null)?.id : null;
  return typeof id === "string" ? id : null;
}

export function readIncoming(texts: readonly string[]): Incoming[] {
  return texts.map((text) => {
    const read = parseEntry(text);
    return { id: read.ok ? read.value.entry.id : idNamed(text), read };
  });
}

/** The ids that a store must look up before the append can be planned. */
export function idsConcerned(incoming: readonly Incoming[]): Set<string> {
  const ids = new Set<string>();
  for (const { read } of incoming) {
    if (!read.ok) continue;
    ids.add(read.value.entry.id);
    for (const id of withdraws(read.value)) ids.add(id);
  }
  return ids;
}

/** The hash of the photograph that an entry speaks of. */
export function photographOf({ entry }: KeptEntry): string | null {
  const sha256 = entry.kind === "photograph" ? entry.body.sha256 : undefined;
  return typeof sha256 === "string" ? sha256 : null;
}

const unreadable = (id: string | null, { code, field, message, value }: Problem): AppendRefusal => ({
  ...{ id, code, message, field, value },
});

const notBegun = (id: string): AppendRefusal => ({
  id,
  code: "no-such-notebook",
  message: "There is no notebook of this id. One begins with an entry of kind notebook-begun.",
});

/** An append being worked out: what was held, and what comes on top of it. */
class Desk {
  readonly fresh = new Map<string, KeptEntry>();
  readonly emptied = new Map<string, KeptEntry>();
  readonly photographs: string[] = [];
  readonly #here = new Map<string, KeptEntry>();

  constructor(texts: ReadonlyMap<string, string>) {
    for (const [id, text] of texts) {
      const read = readKeptEntry(text);
      if (read.ok) this.#here.set(id, read.value);
    }
  }

  take(kept: KeptEntry): AppendRefusal | null {
    const { id } = kept.entry;
    const before = this.#here.get(id);
    const outcome = before === undefined ? "new" : meeting(before, kept);
    if (outcome === "refuse") return otherContent(id);
    if (outcome === "new") {
      this.fresh.set(id, kept);
      this.#here.set(id, kept);
    } else if (outcome === "replace") this.#empty(before as KeptEntry, kept);
    return null;
  }

  withdraw(id: string): void {
    const kept = this.#here.get(id);
    if (kept !== undefined && stubbable(kept.entry) && !isStub(kept.entry)) this.#empty(kept, stubOf(kept));
  }

  #empty(before: KeptEntry, stub: KeptEntry): void {
    const { id } = stub.entry;
    const photograph = photographOf(before);
    if (photograph !== null) this.photographs.push(photograph);
    (this.fresh.has(id) ? this.fresh : this.emptied).set(id, stub);
    this.#here.set(id, stub);
  }
}

/** Works out what an append does, from what came and what is held. */
export function planAppend(notebook: string, incoming: readonly Incoming[], held: Held): AppendPlan {
  const desk = new Desk(held.texts);
  const begins = ({ read }: Incoming) =>
    read.ok && read.value.entry.kind === "notebook-begun" && read.value.entry.notebook === notebook;
  const begun = held.begun || incoming.some(begins);
  const refusalFor = ({ id, read }: Incoming): AppendRefusal | null => {
    if (!read.ok) return unreadable(id, read.error);
    const { entry } = read.value;
    if (entry.notebook !== notebook) return otherNotebook(entry.id, entry.notebook, notebook);
    return begun ? desk.take(read.value) : notBegun(entry.id);
  };
  const accepted = new Set<string>();
  const refused: AppendRefusal[] = [];
  for (const one of incoming) {
    const refusal = refusalFor(one);
    if (refusal !== null) refused.push(refusal);
    else if (one.id !== null) accepted.add(one.id);
  }
  const withdraw = [...desk.fresh.values()].flatMap(withdraws);
  for (const id of [...held.withdrawn, ...withdraw]) desk.withdraw(id);
  return {
    report: { accepted: [...accepted], refused },
    insert: [...desk.fresh.values()],
    empty: [...desk.emptied.values()],
    withdraw,
    photographs: desk.photographs,
  };
}
