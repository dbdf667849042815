import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { leaveQuiet } from "./looks.ts";
import { shelfWith } from "./piece-shelf.ts";
import { House, openBrowser, visit } from "./rig.ts";

let browser: Browser;
const house = new House();
beforeAll(async () => {
  browser = await openBrowser();
  await house.start();
  await shelfWith(500).send(house.address);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await house.leave();
}, 30_000);

/** What has the focus is called: a field by its label, anything else by what stands on it. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const on = document.activeElement;
    const isField = on instanceof HTMLInputElement || on instanceof HTMLSelectElement;
    return (isField ? on.labels?.[0]?.textContent : on?.textContent)?.trim() ?? "";
  });

async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 120; presses++) {
    if ((await focused(page)).startsWith(name)) return;
    await page.keyboard.press("Tab");
  }
  expect(await focused(page)).toBe(name);
}

async function typed(page: Page, field: string, text: string): Promise<void> {
  await tabTo(page, field);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type(text);
}

test("a table top is planned underside, then top, on a phone by keyboard alone", {
  timeout: 60_000,
}, async () => {
  const seen = await visit(browser, house.address, "phone");
  const { page } = seen;
  await page.clock.setFixedTime(new Date("2026-10-05T17:00:00+02:00"));
  await page.goto("/pieces/new");
  await page.getByLabel("What is it?").waitFor();
  await typed(page, "What is it?", "Table top");
  await typed(page, "Area to finish", "2 m²");
  await tabTo(page, "Flakes");
  await page.keyboard.type("Lemon");
  await tabTo(page, "Alcohol");
  await page.keyboard.type("Ethanol 95");
  await typed(page, "Cut", "2 lb");
  await typed(page, "Coats", "2");
  await tabTo(page, "Sides and parts");
  await page.keyboard.press("Enter");
  await tabTo(page, "Underside, then top");
  await page.keyboard.press("Enter");
  await page.getByText("2. top, 50 in 100, by turning").waitFor();
  await tabTo(page, "2. top");
  await page.keyboard.press("Enter");
  await typed(page, "Share, in 100", "60");
  await page.getByText("The shares come to 110 in 100.").waitFor();
  await typed(page, "Share, in 100", "50");
  await typed(page, "Drying places", "1");
  await tabTo(page, "Keep this plan");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Table top" }).waitFor();
  await leaveQuiet(seen);
});
