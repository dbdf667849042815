import { compare } from "./compare.ts";
import { readFolder, type Unread } from "./read-folder.ts";
import type { CaseReport, TopicReport } from "./report.ts";
import { type CheckCase, NotReadable, type Topic } from "./topic.ts";

interface Folders {
  readonly cases: string;
  /** The project's own copy of the topic, for constants. */
  readonly constants: string;
}

/** Reads a folder, computes and compares every case in it, one after another. */
export async function runTopic(name: string, topic: Topic, folders: Folders): Promise<TopicReport> {
  const { cases, unread } = readFolder(folders.cases, topic, folders.constants);
  const reports: CaseReport[] = [];
  const notRead: Unread[] = [...unread];
  try {
    for (const checkCase of cases) {
      const report = await runCase(checkCase);
      if ("outcome" in report) reports.push(report);
      else notRead.push(report);
    }
  } finally {
    await topic.close?.();
  }
  return {
    topic: name,
    passed: reports.filter((r) => r.outcome === "passed").length,
    failed: reports.filter((r) => r.outcome === "failed").length,
    notRead: notRead.length,
    cases: reports,
    unread: notRead,
    sources: topic.sources ?? {},
  };
}

async function runCase(given: CheckCase): Promise<CaseReport | Unread> {
  const { id, published } = given;
  const shared = published === undefined ? { id } : { id, published };
  let got: unknown;
  try {
    got = await given.compute();
  } catch (error) {
    if (error instanceof NotReadable) return { id, why: error.message };
    // Whatever else goes wrong in a calculation is a failed case, and the other cases still run.
    const why = error instanceof Error ? error.message : String(error);
    return { ...shared, outcome: given.shown === undefined ? "failed" : "shown", why, quantities: [] };
  }
  const quantities = compare(given.expected, got, given.tol);
  if (given.shown !== undefined)
    return {
      ...shared,
      outcome: "shown",
      why: given.shown,
      quantities: quantities.map((q) => ({ ...q, ok: null })),
    };
  const compared = quantities.filter((q) => q.ok !== null);
  if (compared.length === 0) return { ...shared, outcome: "shown", why: "nothing to compare", quantities };
  return { ...shared, outcome: compared.every((q) => q.ok) ? "passed" : "failed", quantities };
}
