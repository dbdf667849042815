import type { NotebookEntry } from "../../core/notebook/entry.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import type { NotebookReader } from "../../core/notebook/reader.ts";
import type { Naming } from "../words/en/entries/naming.ts";

/** What a thing is called by the entry that made it; empty for one that nothing here makes. */
export function thingName(read: NotebookReader, id: string | undefined): string {
  if (id === undefined) return "";
  const [trial, patch] = id.split("/");
  if (patch !== undefined) return codeOf(read, trial ?? "", patch);
  const made = read.making(id) ?? read.entry(id);
  return made === undefined ? "" : nameInBody(made);
}

function nameInBody(made: NotebookEntry): string {
  const { code, name, question } = made.body as { code?: unknown; name?: unknown; question?: unknown };
  if (made.kind.startsWith("batch-")) return typeof code === "string" ? code : "";
  if (typeof name === "string") return name;
  return typeof question === "string" ? `“${question}”` : "";
}

/** Patches are known by their codes; one that no layout names keeps the name that it was given. */
function codeOf(read: NotebookReader, trial: string, patch: string): string {
  const codes = read.derive(`codes:${trial}`, (r) => {
    const layout = r.touching(trial).findLast((entry) => entry.kind === "trial-laid-out");
    const patches = (layout?.body as Body<"trial-laid-out"> | undefined)?.patches ?? [];
    return new Map(patches.map((p) => [p.patch, p.code]));
  });
  return codes.get(patch) ?? patch;
}

export function namingFor(read: NotebookReader, entry: NotebookEntry): Naming {
  return {
    of: (id) => thingName(read, id),
    get about() {
      const names = entry.about.map((id) => thingName(read, id)).filter((name) => name !== "");
      return [...new Set(names)].join(", ");
    },
    entry,
  };
}
