import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { splitJsonArray } from "../../src/core/notebook/json-text.ts";
import { entryText } from "../../src/store/notebook-store.contract.ts";
import { startServer } from "./server-process.ts";

const root = mkdtempSync(join(tmpdir(), "lacbench-kill-"));
afterAll(() => rmSync(root, { recursive: true }));

const notebook = JSON.parse(entryText(0)).notebook as string;
const begun = entryText(0, { kind: "notebook-begun", body: { name: "Shop" } });
const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

/** Posts entries one by one until nobody answers any more; returns the texts that were answered as kept. */
async function postUntilKilled(address: string, first: number): Promise<string[]> {
  const answered: string[] = [];
  for (let i = first; ; i++) {
    const text = entryText(i, { body: { text: `½ lb ${i}` } });
    try {
      const answer = await fetch(`${address}/api/notebooks/${notebook}/entries`, {
        method: "POST",
        body: `[${text}]`,
      });
      const { accepted } = await answer.json();
      if (accepted.length === 1) answered.push(text);
    } catch (error) {
      if (error instanceof TypeError) return answered; // fetch's word for a connection that broke
      throw error;
    }
  }
}

async function keptTexts(address: string): Promise<readonly string[]> {
  const answer = await fetch(`${address}/api/notebooks/${notebook}/entries?limit=5000`);
  const text = await answer.text();
  const list = splitJsonArray(text.slice('{"entries":'.length, text.lastIndexOf(',"cursor"')));
  return list.ok ? list.value : [];
}

test("what was answered before a SIGKILL in the middle of posting is there after the next start", async () => {
  const folder = mkdtempSync(join(root, "data-"));
  const expected = new Set([sha256(begun)]);
  let server = await startServer({ LACBENCH_DATA: folder });
  await fetch(`${server.address}/api/notebooks/${notebook}/entries`, { method: "POST", body: `[${begun}]` });
  for (let round = 1; round <= 4; round++) {
    const { address, end } = server;
    const posting = [0, 1, 2].map((hand) => postUntilKilled(address, round * 100_000 + hand * 10_000));
    setTimeout(() => end("SIGKILL"), 150 + 100 * round);
    const answered = (await Promise.all(posting)).flat();
    expect(answered.length).toBeGreaterThan(0);
    for (const text of answered) expected.add(sha256(text));
    server = await startServer({ LACBENCH_DATA: folder });
    const kept = (await keptTexts(server.address)).map(sha256);
    expect(new Set(kept).size).toBe(kept.length);
    expect([...expected].filter((hash) => !kept.includes(hash))).toEqual([]);
    // Besides, at most the one that each hand had under way may have got to the disk unanswered.
    expect(kept.length - expected.size).toBeLessThanOrEqual(3 * round);
  }
  await server.end("SIGTERM");
});
