import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, onTestFailed, test } from "vitest";
import { leaveQuiet } from "./looks.ts";
import { firstEvenings } from "./path/bench.ts";
import { lookTwice, mixDenatured, mixEthanol, mixIsopropanol, thinTwice } from "./path/jars.ts";
import { judgeAll } from "./path/judging.ts";
import { planPiece, printSteps } from "./path/piece.ts";
import { thirdEvening } from "./path/power-cut.ts";
import { fillShelf, readShelf } from "./path/shelf.ts";
import { comeIn, type Shop, shot } from "./path/shop.ts";
import { layDownTrial } from "./path/trial.ts";
import { readVerdict } from "./path/verdict.ts";
import { House, openBrowser, type Size, sizes, visit } from "./rig.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => browser.close());

async function startEmptyBook(shop: Shop): Promise<void> {
  await shop.page.clock.install({ time: new Date("2026-10-05T18:00:00+02:00") });
  await comeIn(shop, "2026-10-05", "18:00", "/");
  await shop.page.getByLabel("Name on its cover").fill("Reading-room chairs");
  await shop.page.getByRole("button", { name: "Start an empty book" }).click();
  await shop.page.getByText("Nothing is at the bench yet").waitFor();
  await shot(shop, "empty");
}

describe.each(Object.keys(sizes) as Size[])("the whole path on a %s", (size) => {
  const house = new House();
  beforeAll(async () => house.start(), 60_000);
  afterAll(async () => house.leave(), 30_000);

  test("from flakes and alcohols to a verdict and the steps to repeat it", { timeout: 180_000 }, async () => {
    const seen = await visit(browser, house.address, size);
    const shop: Shop = { seen, page: seen.page, size };
    shop.page.setDefaultTimeout(20_000);
    onTestFailed(async () => shot(shop, "failed"));
    await startEmptyBook(shop);
    await fillShelf(shop);
    await mixEthanol(shop);
    await mixIsopropanol(shop);
    await mixDenatured(shop);
    await readShelf(shop);
    await lookTwice(shop);
    await thinTwice(shop);
    const trial = await layDownTrial(shop);
    await firstEvenings(shop);
    await thirdEvening(shop, house);
    await judgeAll(shop, trial, house.address);
    await readVerdict(shop);
    await planPiece(shop);
    await printSteps(shop);
    await leaveQuiet(seen);
  });
});
