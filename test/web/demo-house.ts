import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
import { demoEntries } from "../../src/core/demo/demo.ts";
import { House, openBrowser, type Size, type Visit, visit } from "./rig.ts";

/** The demo, as of now, in a house of its own with a browser for all tests of the file; gives how to come visiting. */
export function demoVisits(): (size: Size) => Promise<Visit> {
  let house: House;
  let browser: Browser;
  beforeAll(async () => {
    house = new House();
    await house.start();
    await bringDemo(house.address);
    browser = await openBrowser();
  }, 60_000);
  afterAll(async () => {
    await browser.close();
    await house.leave();
  }, 30_000);
  return (size) => visit(browser, house.address, size);
}

async function bringDemo(address: string): Promise<void> {
  const entries = demoEntries({ seed: "1", now: new Date().toISOString(), zone: "Europe/Berlin" });
  const answer = await fetch(`${address}/api/notebooks/${entries[0]?.entry.notebook}/entries`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: `[${entries.map((kept) => kept.text).join(",")}]`,
  });
  expect(answer.status).toBe(200);
}
