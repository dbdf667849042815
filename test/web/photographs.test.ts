import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { deflateSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { blindNotebook } from "./bench-notebook.ts";
import { entriesIn } from "./kept-here.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";
import { House, openBrowser, visit } from "./rig.ts";

let browser: Browser;
const house = new House();
beforeAll(async () => {
  browser = await openBrowser();
  await house.start();
  await blindNotebook(false).send(house.address);
}, 60_000);
afterAll(async () => {
  await browser.close();
  await house.leave();
}, 30_000);

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  let crc = 0xffffffff;
  for (const byte of body) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(data.length, 0);
  ends.writeUInt32BE((crc ^ 0xffffffff) >>> 0, 4);
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
}

/** A grey wedge, as a PNG (ISO/IEC 15948) of that size. */
function png(width: number, height: number): Buffer {
  const header = Buffer.from([0, 0, 0, 0, 0, 0, 0, 0, 8, 0, 0, 0, 0]); // eight bits of grey
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = (x * 255) / width;
  const signature = Buffer.from("89504e470d0a1a0a", "hex");
  const parts = [chunk("IHDR", header), chunk("IDAT", deflateSync(rows)), chunk("IEND", Buffer.alloc(0))];
  return Buffer.concat([signature, ...parts]);
}

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
  readonly kind: string;
  readonly body: { readonly sha256: string; readonly bytes: number; readonly board?: string };
}
const photographEntries = async (): Promise<readonly Told[]> =>
  ((await entriesIn(house.address)) as unknown as readonly Told[]).filter((one) => one.kind === "photograph");

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
