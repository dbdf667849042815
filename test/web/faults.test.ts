import { randomBytes } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { createApp } from "../../src/server/app.ts";
import { listen, stop } from "../../src/server/listen.ts";
import { MemoryStore } from "../../src/store/memory-store.ts";
import { Desk } from "./bench-notebook.ts";
import { ChromiumPhone } from "./chromium-phone.ts";
import { keptHere, keptInHouse, writeNotes } from "./kept-here.ts";
import { expectWellMade } from "./looks.ts";
import { House, openBrowser, visit } from "./rig.ts";

let browser: Browser;
let house: House;
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => browser.close());
beforeEach(async () => {
  house = new House();
  await house.start();
  const desk = new Desk();
  desk.write(100, "notebook-begun", { name: "Shed" });
  await desk.send(house.address);
}, 60_000);
afterEach(async () => house.leave(), 30_000);

const said = (page: Page, text: string) =>
  page.getByRole("status").filter({ hasText: text }).first().waitFor({ timeout: 90_000 });
const notes = (n: number, what: string): string[] => Array.from({ length: n }, (_, i) => `${what} ${i + 1}`);
const pagesKept = (page: Page) =>
  page.waitForFunction(() => navigator.serviceWorker.controller !== null, undefined, { timeout: 60_000 });

async function open(page: Page, at = ""): Promise<void> {
  await page.goto(`${at}/book`);
  await said(page, "All in the notebook");
  await pagesKept(page);
}

/** Runs in the page: until it lets go, whatever is to be kept waits, as behind a disk that is busy with something else. */
function holdTheDisk(): Promise<void> {
  return new Promise((held) => {
    const open = indexedDB.open("lacbench");
    open.onsuccess = () => {
      const rows = open.result.transaction("rows", "readwrite").objectStore("rows");
      const goOn = () => {
        held();
        if ("letGo" in window) open.result.close();
        else rows.count().onsuccess = goOn;
      };
      rows.count().onsuccess = goOn;
    };
  });
}

/** The same entries here and in the house, none twice, none missing. */
async function expectSame(page: Page, count: number): Promise<void> {
  await said(page, "All in the notebook");
  const here = await keptHere(page);
  const { count: inHouse, hash } = await keptInHouse(house.address);
  expect({ count: inHouse, hash }).toEqual({ count: here.count, hash: here.hash });
  expect(inHouse).toBe(count);
}

test("server killed in the middle of sending: nothing lost, nothing doubled", {
  timeout: 120_000,
}, async () => {
  const { page, context } = await visit(browser, house.address, "phone");
  await open(page);
  await house.kill();
  await writeNotes(page, notes(450, "before the power went"));
  await said(page, "Kept here, 450 to send");
  await house.start();
  // More than one parcel: the power goes while the first is answered or the second is on the way.
  await page.waitForRequest((asked) => asked.method() === "POST");
  await house.kill();
  await said(page, "to send");
  await house.start();
  await expectSame(page, 451);
  await context.close();
});

test("page killed in the middle of writing: what was shown as kept is there, in order, without a gap", {
  timeout: 120_000,
}, async () => {
  const phone = new ChromiumPhone();
  try {
    await phone.start();
    const page = await phone.newPage();
    await open(page, house.address);
    await house.kill();
    await writeNotes(page, notes(30, "kept"));
    await said(page, "Kept here, 30 to send");
    await page.waitForTimeout(200); // these are in the database; the next ones are caught on the way
    void writeNotes(page, notes(300, "caught")).catch(() => undefined);
    await page.waitForTimeout(60);
    await phone.kill();
    await house.start();
    await phone.start();
    const again = await phone.newPage();
    await again.goto(`${house.address}/book`);
    await said(again, "All in the notebook");
    const { count, seqs } = await keptHere(again);
    expect(count).toBeGreaterThanOrEqual(31);
    const own = [...seqs].sort((a, b) => a - b).slice(1); // the first number is the other device's
    expect(own).toEqual(own.map((_, i) => i + 1));
    await expectSame(again, count);
  } finally {
    await phone.leave();
  }
});

test("server gone, a new tab, 40 entries, the page killed, the browser started again: all of them, once", {
  timeout: 150_000,
}, async () => {
  const phone = new ChromiumPhone();
  try {
    await phone.start();
    const first = await phone.newPage();
    await open(first, house.address);
    await house.kill();
    const tab = await phone.newPage();
    await tab.goto(`${house.address}/book`);
    await writeNotes(tab, notes(40, "in the shed"));
    await said(tab, "Kept here, 40 to send");
    const before = await keptHere(tab);
    await phone.kill();
    await phone.start();
    const later = await phone.newPage();
    await later.goto(`${house.address}/book/keeping`); // the house is still gone: the pages are this device's own
    await said(later, "Kept here, 40 to send");
    await later.getByRole("heading", { name: "40 entries wait to be sent" }).waitFor();
    await later.getByText("The house does not answer just now.").waitFor();
    const { count, hash } = await keptHere(later);
    expect({ count, hash }).toEqual({ count: before.count, hash: before.hash });
    await house.start();
    await expectSame(later, 41);
    await later.getByText("Nothing waits.").waitFor();
  } finally {
    await phone.leave();
  }
});

test("nothing is said to be kept before it is on the disk", { timeout: 60_000 }, async () => {
  const { page, context } = await visit(browser, house.address, "phone");
  await open(page);
  await context.setOffline(true);
  await page.evaluate(holdTheDisk);
  await writeNotes(page, notes(3, "on a slow disk"));
  await said(page, "Being kept: 3");
  expect(await page.getByText(/^Kept here/).count()).toBe(0);
  await page.evaluate(() => Object.assign(window, { letGo: true }));
  await said(page, "Kept here, 3 to send");
  expect((await keptHere(page)).count).toBe(4);
  await context.setOffline(false);
  await expectSame(page, 4);
  await context.close();
});

test("two devices whose clocks are a year apart come to the same book, strikes and all", {
  timeout: 120_000,
}, async () => {
  const right = await visit(browser, house.address, "phone");
  const slow = await visit(browser, house.address, "phone");
  await slow.context.clock.setFixedTime(Date.now() - 365 * 86_400_000);
  await open(right.page);
  await open(slow.page);
  await writeNotes(right.page, ["written by the right clock"]);
  await said(right.page, "All in the notebook");
  await slow.page.getByText("written by the right clock").first().waitFor();
  // The phone a year behind strikes the newer entry, and writes one of its own.
  await slow.page.getByText("written by the right clock").first().click();
  await slow.page.getByRole("button", { name: /^Strike out: .*right clock/ }).click();
  await writeNotes(slow.page, ["written a year behind"]);
  await right.page.locator("s", { hasText: "written by the right clock" }).first().waitFor();
  await right.page.getByText("written a year behind").first().waitFor();
  await expectSame(right.page, 4);
  await expectSame(slow.page, 4);
  await right.context.close();
  await slow.context.close();
});

test("storage full: it is said, nothing is lost, and it is kept again once there is room", {
  timeout: 120_000,
}, async () => {
  const { page, context } = await visit(browser, house.address, "phone");
  const cdp = await context.newCDPSession(page);
  await cdp.send("Storage.overrideQuotaForOrigin", { origin: house.address, quotaSize: 7e6 }); // room for the pages and for some entries
  await open(page);
  await context.setOffline(true);
  await writeNotes(page, ["while there was room"]);
  await said(page, "Kept here, 1 to send");
  let n = 1;
  for (; n < 40 && (await page.getByText("No room here").count()) === 0; n++) {
    await writeNotes(page, [`a long one ${randomBytes(300_000).toString("base64")}`]); // nothing to press together
    await page.waitForTimeout(50);
  }
  await writeNotes(page, ["after that"]);
  const alone = async () =>
    Number(/\d+/.exec((await page.getByText(/^No room here/).textContent()) ?? "")?.[0]);
  // With the notebook's first entry and the last note: each is kept, or counted among those on this page alone.
  await expect
    .poll(async () => (await keptHere(page)).count + (await alone()), { timeout: 10_000 })
    .toBe(n + 2);
  expect(await alone()).toBeGreaterThan(0);
  await page.getByRole("status").getByRole("link").first().click();
  await page.getByRole("heading", { name: "There is no room left in this browser" }).waitFor();
  await expectWellMade(page, "keeping-no-room-phone");
  await page.getByRole("button", { name: "Try again to keep it here" }).click();
  await page.getByText("There is still no room.").waitFor();
  await cdp.send("Storage.overrideQuotaForOrigin", { origin: house.address });
  await page.getByRole("button", { name: "Try again to keep it here" }).click();
  await said(page, `Kept here, ${n + 1} to send`);
  expect((await keptHere(page)).count).toBe(n + 2);
  await context.setOffline(false);
  await expectSame(page, n + 2);
  await context.close();
});

test("a week out of reach with 2 000 entries: all arrive, once", { timeout: 180_000 }, async () => {
  const { page, context } = await visit(browser, house.address, "phone");
  await open(page);
  await context.setOffline(true);
  await page.goto("/book/keeping"); // the list of the Book is not what is measured
  await page.goto("/book");
  for (let day = 0; day < 7; day++) {
    await page.clock.setFixedTime(Date.now() + day * 86_400_000);
    await writeNotes(page, notes(day === 6 ? 200 : 300, `day ${day + 1}, note`));
  }
  await said(page, "Kept here, 2000 to send");
  await page.clock.setFixedTime(Date.now() + 7 * 86_400_000);
  await context.setOffline(false);
  const began = performance.now();
  await expectSame(page, 2001);
  console.log(
    `2 000 entries of a week were in the house ${((performance.now() - began) / 1000).toFixed(1)} s after it was back.`,
  );
  await context.close();
});

test("two tabs write at once: one row of numbers, and both show the same", { timeout: 120_000 }, async () => {
  const { page, context } = await visit(browser, house.address, "phone");
  await open(page);
  await context.setOffline(true);
  const other = await context.newPage();
  await other.goto("/book");
  await Promise.all([writeNotes(page, notes(25, "tab one")), writeNotes(other, notes(25, "tab two"))]);
  for (const tab of [page, other]) await said(tab, "Kept here, 50 to send");
  const { seqs } = await keptHere(page);
  expect([...seqs].sort((a, b) => a - b).slice(1)).toEqual(Array.from({ length: 50 }, (_, i) => i + 1));
  await context.setOffline(false);
  await expectSame(page, 51);
  await said(other, "All in the notebook");
  await context.close();
});

test("a new version comes while work is unsent: it is said, taken over when asked, and the work goes on its way", {
  timeout: 120_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), "lacbench-pages-"));
  cpSync(join(import.meta.dirname, "../../dist/web"), folder, { recursive: true });
  const store = new MemoryStore();
  const app = createApp({
    store,
    calculations: [],
    version: "1",
    pagesFolder: folder,
    onError: console.error,
  });
  const { server, address } = await listen(app, { host: "127.0.0.1", port: 0 });
  try {
    const { page, context } = await visit(browser, address, "phone");
    const desk = new Desk();
    desk.write(100, "notebook-begun", { name: "Shed" });
    await desk.send(address);
    await open(page);
    // The notebook's house is out of reach, the files of the pages are not: as when a newer program was just started.
    await context.route("**/api/**", (route) => route.abort());
    await writeNotes(page, notes(5, "written with the old version"));
    await said(page, "Kept here, 5 to send");
    const worker = join(folder, "service-worker.js");
    writeFileSync(worker, readFileSync(worker, "utf8").replace(/"version":"\w+"/, '"version":"newer"'));
    const index = join(folder, "index.html");
    writeFileSync(
      index,
      readFileSync(index, "utf8").replace("<head>", '<head><meta name="newer" content="yes" />'),
    );
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await page.getByRole("link", { name: "A new version is here" }).click();
    await expectWellMade(page, "keeping-new-version-phone");
    await page.getByRole("button", { name: "Go over to it now" }).click();
    await page.locator('meta[name="newer"]').waitFor({ state: "attached", timeout: 30_000 });
    await said(page, "Kept here, 5 to send");
    expect((await keptHere(page)).count).toBe(6);
    await context.unroute("**/api/**");
    await said(page, "All in the notebook");
    const [{ entries } = { entries: 0 }] = await store.notebooks();
    expect(entries).toBe(6);
    await context.close();
  } finally {
    await stop(server);
    rmSync(folder, { recursive: true });
  }
});
