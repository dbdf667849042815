import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { notebookFile, textsInFile } from "../../src/core/notebook/notebook-file.ts";
import { partsOfFile, photographText } from "../../src/core/notebook/photographs-in-file.ts";
import { Desk } from "./bench-notebook.ts";
import { keptHere, keptInHouse, writeNotes } from "./kept-here.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";
import { PlainHost } from "./plain-host.ts";
import { png } from "./png.ts";
import { chromiumPath, chromiumSwitches, House, visit } from "./rig.ts";
import { homeThatTrusts } from "./shop-trust.ts";

const host = new PlainHost("pages.test", "/shop/");
const folder = mkdtempSync(join(tmpdir(), "lacbench-plain-"));
let home: string;
let browser: Browser;
beforeAll(async () => {
  const authority = join(folder, "authority.crt");
  writeFileSync(authority, host.authority);
  await host.start();
  home = homeThatTrusts(authority);
  browser = await chromium.launch({
    executablePath: chromiumPath,
    args: [...chromiumSwitches, "--host-resolver-rules=MAP *.test 127.0.0.1"],
    env: { ...process.env, HOME: home },
  });
}, 60_000);
afterAll(async () => {
  await browser.close();
  await host.stop();
  for (const one of [home, folder]) rmSync(one, { recursive: true, force: true });
}, 30_000);

const status = (page: Page, says: string) =>
  page.getByRole("status").filter({ hasText: says }).first().waitFor({ timeout: 60_000 });
const act = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();
const jsonFile = (text: string) => ({
  name: "shed.json",
  mimeType: "application/json",
  buffer: Buffer.from(text),
});
const openFile = (page: Page, text: string) => page.getByLabel("Open a file").setInputFiles(jsonFile(text));

/** The picker of files is the browser's own window, which no test can press; the file it gives is one of the page's own. */
const givesFile = async (): Promise<void> => {
  const root = await navigator.storage.getDirectory();
  Object.assign(window, { showSaveFilePicker: () => root.getFileHandle("shed.json", { create: true }) });
};
const fileText = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const root = await navigator.storage.getDirectory();
    return (await (await root.getFileHandle("shed.json")).getFile()).text();
  });
const textsOf = (text: string): readonly string[] => {
  const read = textsInFile(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};

test("with no server at all: written and reckoned out of reach, saved to one file, opened elsewhere, joined to a house later", {
  timeout: 240_000,
}, async () => {
  const seen = await visit(browser, host.address, "phone");
  const { page, context } = seen;
  await page.goto(host.address);
  await page.getByText("send nothing anywhere").waitFor();
  await act(page, "Start an empty book");
  await page.getByText("Kept on this device, 1 not in your file yet").waitFor();
  expect(new URL(page.url()).pathname).toBe("/shop/bench");
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);

  await host.stop();
  await page.goto("/shop/book"); // a deep link, with nobody there to answer it
  await writeNotes(page, ["the stove was out", "the pad dragged"]);
  await status(page, "Kept on this device, 3 not in your file yet");
  // Wood Handbook (FPL-GTR-282), table 4-2: 21.1 °C and 50 % give 9.2 %.
  await page.getByRole("link", { name: "Bench", exact: true }).click();
  await page.getByRole("link", { name: "Wood and air" }).click();
  await page.getByLabel("Air temperature").first().fill("21.1 °C");
  await page.getByLabel("Relative humidity").first().fill("50 %");
  await page.getByText(/^Its moisture goes from 9\.2 to/).waitFor();

  await page.goto("/shop/book/keeping");
  await page.evaluate(givesFile);
  await page
    .getByRole("heading", { name: "Three entries are not in your file yet" })
    .or(page.getByText("3 entries are not in your file yet"))
    .first()
    .waitFor();
  await expectWellMade(page, "no-house-phone");
  await act(page, "Save all entries");
  await page.getByText("Saved. The next time it goes into the same file.").waitFor();
  await status(page, "All in your file");
  await page.goto("/shop/book");
  await writeNotes(page, ["wiped the jar"]);
  await status(page, "1 not in your file yet");
  await page.evaluate(givesFile);
  await act(page, "Save all entries");
  await page.getByText("Saved into your file.").waitFor();
  const file = await fileText(page);
  expect(textsOf(file)).toHaveLength(4);
  const here = await keptHere(page);
  expectQuiet(seen);

  // At another device, and first what cannot be opened.
  await host.start();
  const other = await visit(browser, host.address, "desktop");
  await other.page.goto(`${host.address}book`); // not there: the host answers with the pages all the same
  await openFile(other.page, file.slice(0, -20));
  await other.page.getByText("This file cannot be opened").waitFor();
  const [begun = "", ...later] = textsOf(file);
  await openFile(other.page, notebookFile([begun, ...later.slice(1)]));
  await other.page.getByText("One entry is missing between those there.").waitFor();
  await expectWellMade(other.page, "no-house-file-desktop");
  await openFile(other.page, file);
  await status(other.page, "All in your file");
  expect(await keptHere(other.page)).toMatchObject({ count: here.count, hash: here.hash });
  await other.page.goto(`${host.address}book/keeping`);
  await other.page.getByText("All that was written here is in the file").waitFor();
  await expectWellMade(other.page, "no-house-desktop");
  expectQuiet({ ...other, faults: other.faults.filter((one) => !/404/.test(one)) });
  await other.context.close();

  await joinHouse(page, file);
  expect(host.asked.filter((one) => !one.startsWith("GET ") || one.includes("/api"))).toEqual([]);
  expectQuiet(seen);
  await context.close();
});

/** The file goes to a house's first page; what is written here afterwards goes over by a later file, once. */
async function joinHouse(page: Page, file: string): Promise<void> {
  const house = new House();
  await house.start();
  const shop = await visit(browser, house.address, "desktop");
  await shop.page.goto("/");
  await openFile(shop.page, file);
  await shop.page.getByRole("status").filter({ hasText: "All in the notebook" }).first().waitFor();
  expect(await keptInHouse(house.address)).toMatchObject(await hashedHere(page));

  await writeNotes(page, ["a week later"]);
  await status(page, "1 not in your file yet");
  await act(page, "Save all entries");
  await page.getByText("Saved into your file.").waitFor();
  await shop.page.goto("/book");
  await shop.page.getByLabel("Take a file in").setInputFiles(jsonFile(await fileText(page)));
  await shop.page.getByText("One new entry; 4 were here already.").waitFor();
  await shop.page.getByRole("status").filter({ hasText: "All in the notebook" }).first().waitFor();
  expect(await keptInHouse(house.address)).toMatchObject(await hashedHere(page));
  expectQuiet(shop);
  await shop.context.close();
  await house.leave();
}

async function hashedHere(page: Page): Promise<{ readonly count: number; readonly hash: string }> {
  const { count, hash } = await keptHere(page);
  return { count, hash };
}

test("a photograph goes into the file with its entry, and a spoiled one is named at the next device", {
  timeout: 120_000,
}, async () => {
  const desk = new Desk();
  desk.write(20, "notebook-begun", { name: "Shed" });
  const piece = desk.write(10, "piece-described", {
    name: "Box lid",
    area: { typed: "0.4 m²", unit: "m2", si: 0.4 },
  });
  const seen = await visit(browser, host.address, "phone");
  const { page } = seen;
  await page.goto(host.address);
  await openFile(page, notebookFile(desk.texts));
  await status(page, "All in your file");
  await page.goto(`${host.address}pieces/${piece}`);
  await page.getByLabel("What the next photograph shows").fill("haze");
  await page
    .getByLabel("Choose a picture")
    .setInputFiles({ name: "lid.png", mimeType: "image/png", buffer: png(60, 40) });
  await page.getByText(/^Kept: 60 × 40 pixels/).waitFor();
  await page.goto(`${host.address}book/keeping`);
  await page.getByText("One photograph not in your file yet.").waitFor();
  await page.evaluate(givesFile);
  await act(page, "Save all entries");
  await status(page, "All in your file");
  const file = await fileText(page);
  const parts = partsOfFile(file);
  if (!parts.ok) throw new Error(parts.error.message);
  const [photograph] = parts.value.photographs;
  if (photograph === undefined) throw new Error("The file holds no photograph.");

  const other = await visit(browser, host.address, "desktop");
  await other.page.goto(host.address);
  const spoiled = photographText({ ...photograph, bytes: photograph.bytes.slice(1) });
  await openFile(other.page, notebookFile([...parts.value.texts, spoiled]));
  await other.page.getByText(/haze: spoiled$/).waitFor();
  await openFile(other.page, file);
  await status(other.page, "All in your file");
  await other.page.goto(`${host.address}pieces/${piece}`);
  await other.page.getByAltText(/^haze, /).waitFor();
  for (const one of [seen, other]) {
    expectQuiet({ ...one, faults: one.faults.filter((fault) => !/404/.test(fault)) });
    await one.context.close();
  }
});
