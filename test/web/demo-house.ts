import { expect } from "vitest";
import { demoEntries } from "../../src/core/demo/demo.ts";
import { houseVisits } from "./house-visits.ts";
import type { Size, Visit } from "./rig.ts";

/** The demo, as of now, in a house of its own with a browser for all tests of the file; gives how to come visiting. */
export const demoVisits = (): ((size: Size) => Promise<Visit>) => houseVisits(bringDemo).come;

async function bringDemo(address: string): Promise<void> {
  const entries = demoEntries({ seed: "1", now: new Date().toISOString(), zone: "Europe/Berlin" });
  const answer = await fetch(`${address}/api/notebooks/${entries[0]?.entry.notebook}/entries`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: `[${entries.map((kept) => kept.text).join(",")}]`,
  });
  expect(answer.status).toBe(200);
}
