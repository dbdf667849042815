import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { shelfWith } from "./piece-shelf.ts";
import { House, openBrowser, type Size, sizes, visit } from "./rig.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => browser.close());

/** It is this o'clock for the page, by the clock on the wall in Berlin in summer time. */
const itIs = (page: Page, day: string, at: string) =>
  page.clock.setFixedTime(new Date(`2026-10-${day}T${at}:00+02:00`));
const row = (page: Page, says: string) => page.getByRole("img", { name: says, exact: true }).waitFor();
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

describe.each(Object.keys(sizes) as Size[])("a piece of several surfaces on a %s", (size) => {
  const house = new House();
  beforeAll(async () => {
    await house.start();
    await shelfWith(500).send(house.address);
  }, 60_000);
  afterAll(async () => house.leave(), 30_000);

  async function planned(page: Page, name: string): Promise<void> {
    await page.goto("/pieces/new");
    await page.getByLabel("What is it?").fill(name);
    await page.getByLabel("Area to finish").fill("2 m²");
    await page.getByLabel("Flakes").selectOption({ label: "Lemon flakes" });
    await page.getByLabel("Alcohol").selectOption({ label: "Ethanol 95 %" });
    await page.getByLabel("Cut").fill("2 lb");
    await page.getByLabel("Coats", { exact: true }).fill("2");
    await page.getByRole("radio", { name: "Brush" }).check();
    await page.getByLabel("First evening").fill("2026-10-05");
    await page.getByText("Sides and parts").click();
  }

  test("a table top is planned underside, then top, and put on side by side", {
    timeout: 180_000,
  }, async () => {
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await itIs(page, "05", "17:00");
    await planned(page, "Table top");
    await press(page, "Underside, then top");
    // By hand, a square metre a side: 25 min to sand, 12 for a coat that is left for two hours, 8 to de-nib.
    await row(page, "Mon 5 Oct, 18:00 to 19:02: sand on all of it and coat 1 on underside");
    await row(page, "Tue 6 Oct, 18:00 to 20:40: coat 1 on top, de-nib on all of it and coat 2 on underside");
    await row(page, "Wed 7 Oct, 18:00 to 18:12: coat 2 on top");
    await page.getByText("Nothing ends earlier, takes fewer evenings or waits less.").waitFor();

    await page.getByText("2. top, 50 in 100, by turning").click();
    const share = page.getByRole("listitem").filter({ hasText: "2. top" }).getByLabel("Share, in 100");
    await share.fill("40");
    await page.getByText("The shares come to 90 in 100. Together they are the whole, 100.").waitFor();
    await share.fill("50");
    await page.getByLabel("Drying places").fill("0");
    await page.getByText("1 to 12 would do.").waitFor();
    await page.getByLabel("Drying places").fill("1");
    await page.getByLabel("People who work at once").selectOption("2");
    // Turned after half an hour: 19:02 and 30 min; a second person and one place change nothing for one top.
    await page.getByLabel("Until it may be turned onto a coat").fill("30 min");
    await row(page, "Mon 5 Oct, 18:00 to 19:44: sand on all of it and coat 1 on all of it");
    await row(page, "Tue 6 Oct, 18:00 to 19:10: de-nib on all of it and coat 2 on all of it");
    await expectWellMade(page, `piece-surfaces-plan-${size}`);
    await press(page, "Keep this plan");

    await itIs(page, "05", "19:05");
    await page.getByRole("heading", { name: /^(Tonight|Next), Mon 5 Oct/ }).waitFor();
    await page.reload();
    await press(page, "Coat 1 is on: underside");
    await page.getByText("Coat 1 is written down: underside.").waitFor();
    await page.getByText("Not before 19:35: coat 1 on underside dries until then.").waitFor();
    expect(await page.locator(".tonight-list li").allTextContents()).toEqual([
      "18:00Sand to 220, wipe off the dust: underside",
      "18:25Sand to 220, wipe off the dust: top",
      "18:50Coat 1: underside",
      "19:32Coat 1: top",
    ]);
    await press(page, "Undo");
    await press(page, "Coat 1 is on: underside");
    await itIs(page, "05", "19:50");
    await press(page, "Coat 1 is on: top");
    await row(page, "Mon 5 Oct, 18:00 to 19:44: sand on all of it and coat 1 on all of it; done");
    await page.getByRole("button", { name: "Coat 2 is on all of it" }).waitFor();
    await page.getByLabel("Which side or part").selectOption("top");
    await page.getByRole("button", { name: "Coat 2 is on: top" }).waitFor();
    await page.getByRole("rowheader", { name: "1: underside" }).waitFor();
    await expectWellMade(page, `piece-surfaces-on-${size}`);

    // The other evening is an hour later: the rest follows, side by side.
    await page.getByRole("button", { name: "Move the evening of Tue 6 Oct" }).click();
    await page.getByLabel("From", { exact: true }).fill("19:00");
    await press(page, "Move it, the rest follows");
    await row(page, "Tue 6 Oct, 19:00 to 20:10: de-nib on all of it and coat 2 on all of it");
    await press(page, "Coat 2 is on all of it");
    await page.getByText("All coats are on.").waitFor();
    await page.getByRole("link", { name: "Print the schedule" }).click();
    await page.getByRole("cell", { name: "Coat 2: top" }).waitFor();
    await leaveQuiet(seen);
  });

  test("eight chairs with a helper and room for three to dry", { timeout: 120_000 }, async () => {
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await itIs(page, "05", "17:00");
    await planned(page, "Chairs");
    await press(page, "Divide it so");
    await page.getByText("2 to 12 would do.").waitFor();
    await page.getByLabel("Number alike").fill("8");
    await press(page, "Divide it so");
    await page.getByLabel("People who work at once").selectOption("2");
    await page.getByLabel("Drying places").fill("3");
    // By hand: four rounds of 6 min to sand by twos; 18:24 two coats, 18:29 a third, and three more in the places free from 20:29.
    await row(
      page,
      "Mon 5 Oct, 18:00 to 20:44: sand on all of it, coat 1 on part 1, part 2, part 3, part 4, part 5 and part 6 and de-nib on part 1, part 2 and part 3",
    );
    await expectWellMade(page, `piece-chairs-plan-${size}`);
    await press(page, "All at once");
    await page.getByLabel("Drying places").waitFor({ state: "detached" });
    await leaveQuiet(seen);
  });

  test("eight chairs are a row a step and evening in the table and on paper", {
    timeout: 120_000,
  }, async () => {
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await itIs(page, "05", "17:00");
    await planned(page, "Eight chairs");
    await page.getByLabel("Number alike").fill("8");
    await press(page, "Divide it so");
    await press(page, "Keep this plan");
    // By hand: eight times 6 minutes from 18:00, then eight coats of 5; the first is dry at 20:53, the others tomorrow.
    const cells = async () => {
      await page.getByRole("cell", { name: "Coat 2: part 1 to part 8" }).waitFor();
      const rows = await page.locator("table.piece-plan tbody tr").allTextContents();
      return rows.map((text) => text.replace(/\s+/g, " ").trim()).slice(0, 6);
    };
    const starts = [
      /^Mon 5 Oct 18:00 to 18:48 ?Sand .*: part 1 to part 8/,
      /^Mon 5 Oct 18:48 ?Coat 1: part 1/,
      /^Mon 5 Oct 18:53 to 19:28 ?Coat 1: part 2 to part 8/,
      /^Mon 5 Oct 20:53 ?De-nib .*: part 1/,
      /^Tue 6 Oct 18:00 to 18:35 ?De-nib .*: part 2 to part 8/,
      /^Tue 6 Oct 18:35 to 19:15 ?Coat 2: part 1 to part 8/,
    ];
    expect(await cells()).toEqual(starts.map((start) => expect.stringMatching(start)));
    await expectWellMade(page, `piece-chairs-kept-${size}`);
    await page.getByRole("link", { name: "Print the schedule" }).click();
    await page.getByText("100 mm: measure me").waitFor();
    expect(await cells()).toEqual(starts.map((start) => expect.stringMatching(start)));
    await expectWellMade(page, `piece-chairs-paper-${size}`);
    await leaveQuiet(seen);
  });
});
