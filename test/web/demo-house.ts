import { expect } from "vitest";
import { demoEntries } from "../../src/core/demo/demo.ts";
import { House } from "./rig.ts";

/** A house with the demo in it, as of now. */
export async function demoHouse(): Promise<House> {
  const house = new House();
  await house.start();
  const entries = demoEntries({ seed: "1", now: new Date().toISOString(), zone: "Europe/Berlin" });
  const answer = await fetch(`${house.address}/api/notebooks/${entries[0]?.entry.notebook}/entries`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: `[${entries.map((kept) => kept.text).join(",")}]`,
  });
  expect(answer.status).toBe(200);
  return house;
}
