import type { Problem } from "../registry/problem.ts";
import type { NotebookEntry, Understanding } from "./entry.ts";
import type { Refusal } from "./meeting.ts";
import type { Placed } from "./placed.ts";

/** Something about the notebook that a person should know of. Nothing was lost or changed by it. */
export type NotebookReport =
  | { readonly code: "link-ring"; readonly ids: readonly string[] }
  | { readonly code: "strike-ring"; readonly ids: readonly string[] }
  | { readonly code: "unusable"; readonly id: string; readonly kind: string; readonly problem: Problem }
  | { readonly code: "not-understood"; readonly id: string; readonly kind: string; readonly schema: number }
  | { readonly code: "unknown-fields"; readonly id: string; readonly fields: readonly string[] }
  | { readonly code: "gap"; readonly device: string; readonly from: number; readonly to: number }
  | {
      readonly code: "same-number";
      readonly device: string;
      readonly seq: number;
      readonly ids: readonly string[];
    }
  | ({ readonly about: "refused" } & Refusal);

export function reportOfUnderstanding(
  entry: NotebookEntry,
  understanding: Understanding,
): NotebookReport | null {
  const { id, kind, schema } = entry;
  if (understanding.as === "unusable") return { code: "unusable", id, kind, problem: understanding.problem };
  if (understanding.as === "not-understood") return { code: "not-understood", id, kind, schema };
  if (understanding.unknownFields.length === 0) return null;
  return { code: "unknown-fields", id, fields: understanding.unknownFields };
}

export const reportOfRing = (code: "link-ring" | "strike-ring", ring: readonly Placed[]): NotebookReport => ({
  code,
  ids: ring.map((node) => node.slot.id).sort(),
});

/** Where a device's running numbers leave a gap (something has not come yet, or is lost), or come twice. */
export function reportsOfNumbers(entries: Iterable<NotebookEntry>): NotebookReport[] {
  const byDevice = new Map<string, NotebookEntry[]>();
  for (const entry of entries) {
    const its = byDevice.get(entry.device);
    if (its === undefined) byDevice.set(entry.device, [entry]);
    else its.push(entry);
  }
  const reports: NotebookReport[] = [];
  for (const [device, its] of [...byDevice].sort(([a], [b]) => (a < b ? -1 : 1))) {
    its.sort((a, b) => a.seq - b.seq || (a.id < b.id ? -1 : 1));
    its.forEach((entry, i) => {
      const before = its[i - 1]?.seq ?? 0;
      if (entry.seq > before + 1) reports.push({ code: "gap", device, from: before + 1, to: entry.seq - 1 });
      if (entry.seq === before) {
        const ids = [its[i - 1]?.id ?? "", entry.id];
        reports.push({ code: "same-number", device, seq: entry.seq, ids });
      }
    });
  }
  return reports;
}
