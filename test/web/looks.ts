import type { Page } from "playwright-core";
import { expect } from "vitest";
import * as words from "../../src/web/words/words.ts";
import { accessibilityFaults, pictures, sidewaysScroll, smallTargets, type Visit } from "./rig.ts";

/** A page as it must always be: pictured in every light, readable by all, pressed by a thumb, no wider than the screen. */
export async function expectWellMade(page: Page, name: string): Promise<void> {
  await page.waitForLoadState("networkidle");
  expect(await pictures(page, name), `${name}: contrast in another light`).toEqual([]);
  expect(await accessibilityFaults(page), `${name}: accessibility`).toEqual([]);
  expect(await smallTargets(page), `${name}: targets under 48 px`).toEqual([]);
  expect(await sidewaysScroll(page), `${name}: wider than the screen`).toBeLessThanOrEqual(0);
}

/** A visit in which nothing went wrong that the person would not have seen, and which asked nothing of the network. */
export function expectQuiet({ faults, strayed }: Visit): void {
  expect(faults).toEqual([]);
  expect(strayed).toEqual([]);
}

/** Ends a visit in which nothing went wrong, once all that was written has gone to the house: what this browser keeps ends with it. */
export async function leaveQuiet(seen: Visit): Promise<void> {
  expectQuiet(seen);
  await seen.page
    .locator('.news a[href="/book/keeping"]', { hasText: words.keeping.allSent })
    .waitFor({ state: "attached" });
  await seen.context.close();
}
