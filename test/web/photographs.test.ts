import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { blindNotebook } from "./bench-notebook.ts";
import { entriesIn } from "./kept-here.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";
import { png } from "./png.ts";
import { House, openBrowser, visit } from "./rig.ts";

let browser: Browser;
const house = new House();
const desk = blindNotebook(false);
const piece = desk.write(500, "piece-described", {
  name: "Box lid",
  area: { typed: "0.4 m²", unit: "m2", si: 0.4 },
});
beforeAll(async () => {
  browser = await openBrowser();
  await house.start();
  await desk.send(house.address);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await house.leave();
}, 30_000);

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const pictureFile = { name: "board.png", mimeType: "image/png", buffer: png(2000, 500) };
const row = (page: Page) => page.getByRole("listitem").getByRole("img");
const width = (page: Page) =>
  row(page)
    .first()
    .evaluate(async (img: HTMLImageElement) => {
      await img.decode();
      return [img.naturalWidth, img.naturalHeight];
    });

interface Told {
  readonly id: string;
  readonly kind: string;
  readonly body: { readonly sha256: string; readonly bytes: number; readonly board?: string };
}
const photographEntries = async (): Promise<readonly Told[]> =>
  ((await entriesIn(house.address)) as unknown as readonly Told[]).filter((one) => one.kind === "photograph");

/** The names of what the browser keeps, read from its database past the program. */
const keptPictures = (page: Page): Promise<readonly string[]> =>
  page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const open = indexedDB.open("lacbench-photographs");
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const all = open.result.transaction("pictures").objectStore("pictures").getAll();
          all.onerror = () => reject(all.error);
          all.onsuccess = () => {
            open.result.close();
            resolve(all.result.map((one: { sha256: string }) => one.sha256));
          };
        };
      }),
  );

async function openBoard(page: Page): Promise<string> {
  await page.goto("/trials");
  await page
    .getByRole("link", { name: /Which alcohol for the chairs/ })
    .first()
    .click();
  await page.getByRole("link", { name: "Codes and session sheet" }).waitFor();
  const board = `${new URL(page.url()).pathname}/boards/ash%201.5`;
  await page.goto(board);
  await page.getByRole("heading", { name: "Photographs" }).waitFor();
  return board;
}

test("taken out of reach of the house, kept over a reload, sent when it is back, seen at another device", {
  timeout: 180_000,
}, async () => {
  const seen = await visit(browser, house.address, "phone");
  const { page } = seen;
  const board = await openBoard(page);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.getByText("All in the notebook").waitFor();
  await page.waitForLoadState("networkidle");

  await house.stop();
  await page.getByLabel("Choose a picture").setInputFiles({
    name: "list.png",
    mimeType: "image/png",
    buffer: Buffer.from("flakes, jars, tape"),
  });
  await page.getByText("This is no picture that the browser can read").waitFor();
  expect(await row(page).count()).toBe(0);

  await page.getByLabel("What the next photograph shows").fill("haze after coat 2");
  await page.getByLabel("Take a photograph").setInputFiles(pictureFile);
  await page.getByText(/^Kept: 1600 × 400 pixels/).waitFor();
  await page.getByAltText(/^haze after coat 2, /).waitFor();
  await page.reload();
  await page.getByAltText(/^haze after coat 2, /).waitFor();
  expect(await width(page)).toEqual([1600, 400]);
  await page.getByRole("button", { name: /^Enlarge: haze after coat 2/ }).click();
  await page.getByRole("figure").waitFor();
  await expectWellMade(page, "photographs-phone");
  await page.goto("/book/keeping");
  await page.getByText("One photograph to send.").waitFor();

  await house.start();
  await page.getByText("All in the notebook").waitFor({ timeout: 70_000 });
  expect(await page.getByText("One photograph to send.").count()).toBe(0);
  const [entry, ...others] = await photographEntries();
  if (entry === undefined) throw new Error("The house has no photograph.");
  expect([others.length, entry.body.board]).toEqual([0, "ash 1.5"]);
  const answer = await fetch(`${house.address}/api/photographs/${entry.body.sha256}`);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  expect([answer.headers.get("content-type"), bytes.length]).toEqual(["image/jpeg", entry.body.bytes]);
  expect(sha256(bytes)).toBe(entry.body.sha256);

  // Another device has it from the house, and then keeps it.
  const other = await visit(browser, house.address, "desktop");
  await other.page.goto(board);
  expect(await width(other.page)).toEqual([1600, 400]);
  await expectWellMade(other.page, "photographs-desktop");
  await other.page.goto(board.replace("ash", "cherry"));
  await other.page.getByText("None yet.").waitFor(); // it is of one board alone
  await other.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await house.stop();
  await other.page.goto(board);
  expect(await width(other.page)).toEqual([1600, 400]);
  await house.start();

  // Into the file, struck out, and brought back in the same place.
  await other.page.goto("/book");
  const download = other.page.waitForEvent("download");
  await other.page.getByRole("button", { name: "Save all entries" }).click();
  const elements = JSON.parse(readFileSync(await (await download).path(), "utf8"));
  const inFile = elements.find((one: { photograph?: string }) => one.photograph === entry.body.sha256);
  expect(sha256(Buffer.from(inFile.base64, "base64"))).toBe(entry.body.sha256);
  await other.page.goto(board);
  await other.page.getByRole("button", { name: /^Enlarge/ }).click();
  await other.page.getByRole("button", { name: "Strike it out" }).click();
  await other.page.getByText("None yet.").waitFor();
  await other.page.getByRole("button", { name: "Undo" }).click();
  await row(other.page).first().waitFor();
  await other.page.getByText("All in the notebook").waitFor({ timeout: 70_000 });
  for (const one of [seen, other]) {
    expectQuiet(one);
    await one.context.close();
  }
});

test("of a jar and of a piece; one that was withdrawn before its bytes went is not sent for ever", {
  timeout: 120_000,
}, async () => {
  const seen = await visit(browser, house.address, "phone");
  const { page } = seen;
  let puts = 0;
  await page.route("**/api/photographs/*", async (route) => {
    if (route.request().method() === "PUT") puts++;
    await route.fulfill({ status: 503 }); // busy: that says nothing against the photograph
  });
  await page.goto("/jars");
  await page.getByRole("link", { name: /^L4/ }).first().click();
  await page.getByLabel("Choose a picture").setInputFiles({ ...pictureFile, buffer: png(40, 30) });
  await page.getByText(/^Kept: 40 × 30 pixels/).waitFor();
  await page.getByText("Kept here, one photograph to send").waitFor({ timeout: 20_000 });
  await page.goto(`/pieces/${piece}`);
  await page.getByText("None yet.").waitFor(); // the jar’s is not the piece’s
  await page.getByLabel("Choose a picture").setInputFiles({ ...pictureFile, buffer: png(50, 30) });
  await page.getByText(/^Kept: 50 × 30 pixels/).waitFor();
  await page.getByText("Kept here, 2 photographs to send").waitFor({ timeout: 20_000 });

  const [ofJar, ofPiece] = (await photographEntries()).slice(-2);
  if (ofJar === undefined || ofPiece === undefined) throw new Error("The entries are not in the house.");
  desk.write(0, "withdrawn", { entries: [ofJar.id] });
  await desk.send(house.address);
  expect(puts).toBeGreaterThan(0);
  await page.unroute("**/api/photographs/*");
  await page.getByText("All in the notebook").waitFor({ timeout: 20_000 });
  const statusOf = async ({ body }: Told) =>
    (await fetch(`${house.address}/api/photographs/${body.sha256}`)).status;
  expect([await statusOf(ofJar), await statusOf(ofPiece)]).toEqual([404, 200]);
  await row(page).first().waitFor();

  // Withdrawn later, it leaves the devices that kept it as well.
  expect(await keptPictures(page)).toEqual([ofPiece.body.sha256]);
  await page.clock.setSystemTime(Date.now() + 120_000);
  desk.write(0, "withdrawn", { entries: [ofPiece.id] });
  await desk.send(house.address);
  await page.getByText("None yet.").waitFor({ timeout: 20_000 });
  await expect.poll(() => keptPictures(page), { timeout: 20_000 }).toEqual([]);
  expectQuiet(seen);
  await seen.context.close();
});
