import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { House, openBrowser, type Size, type Visit, visit } from "./rig.ts";

export interface HouseVisits {
  readonly house: House;
  /** A browser of its own that comes to the house. */
  readonly come: (size: Size) => Promise<Visit>;
}

/** A house for the tests beside this call, with what `bring` puts into it before the first of them. */
export function houseVisits(bring: (address: string) => Promise<void>): HouseVisits {
  const house = new House();
  let browser: Browser;
  beforeAll(async () => {
    await house.start();
    await bring(house.address);
    browser = await openBrowser();
  }, 60_000);
  afterAll(async () => {
    await browser.close();
    await house.leave();
  }, 30_000);
  return { house, come: (size) => visit(browser, house.address, size) };
}
