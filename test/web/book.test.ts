import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { Desk } from "./bench-notebook.ts";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { House, openBrowser, type Size, sizes, visit } from "./rig.ts";

let browser: Browser;
const houses: House[] = [];
async function newHouse(): Promise<House> {
  const house = new House();
  await house.start();
  houses.push(house);
  return house;
}
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => {
  await browser.close();
  for (const house of houses) await house.leave();
}, 30_000);

async function startBook(page: Page, name: string): Promise<void> {
  await page.goto("/");
  await page.getByLabel("Name on its cover").fill(name);
  await page.getByRole("button", { name: "Start an empty book" }).click();
  await page.getByRole("navigation").waitFor();
}
async function note(page: Page, text: string): Promise<void> {
  if (!(await page.getByLabel("The note").isVisible())) await page.getByText("Write a note").click();
  await page.getByLabel("The note").fill(text);
  await page.getByRole("button", { name: "Put it in the book" }).click();
}
const entry = (page: Page, text: string) => page.getByRole("listitem").filter({ hasText: text });

describe.each(Object.keys(sizes) as Size[])("the book on a %s", (size) => {
  test("from the first page to entries that are struck, found, and taken along", {
    timeout: 120_000,
  }, async () => {
    const house = await newHouse();
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await page.goto("/");
    await page.getByRole("button", { name: "Start an empty book" }).waitFor();
    await expectWellMade(page, `start-${size}`);
    await startBook(page, "My bench");
    await page.getByRole("link", { name: "Book", exact: true }).click();
    await page.getByRole("heading", { name: "Book", level: 1 }).waitFor();
    expect(await page.title()).toBe("Book · Lacbench");

    await page.getByText("Write a note").click();
    await page.getByRole("button", { name: "Put it in the book" }).click();
    await page.getByText("has no words yet").waitFor();
    await note(page, "The stove was out.");
    await note(page, "Second pad is the better one.");
    await entry(page, "The stove was out.").locator("summary").click();
    await page.getByRole("button", { name: "Strike out: The stove was out." }).click();
    await entry(page, "The stove was out.").locator("s").first().waitFor();
    await expectWellMade(page, `book-${size}`);

    await page.getByLabel("Look for words").fill("PAD better");
    await page.getByText("1 of 4 entries").waitFor();
    await page.getByLabel("Look for words").fill("");
    await page.getByText("All in the notebook").waitFor();

    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save all entries" }).click();
    const file = await (await download).path();
    const texts = readFileSync(file, "utf8");
    expect(JSON.parse(texts)).toHaveLength(4);

    // Each exactly as it was written: the house has the same bytes.
    const { notebooks } = (await (await fetch(`${house.address}/api/notebooks`)).json()) as {
      notebooks: { id: string }[];
    };
    const house4 = await (await fetch(`${house.address}/api/notebooks/${notebooks[0]?.id}/entries`)).text();
    for (const line of texts.split("\n").slice(1, -2)) expect(house4).toContain(line.replace(/,$/, ""));

    await page.locator("input[type=file]").setInputFiles(file);
    await page.getByText("Nothing new; 4 were here already.").waitFor();
    await page.locator("input[type=file]").setInputFiles({
      name: "list.json",
      mimeType: "application/json",
      buffer: Buffer.from("a shopping list"),
    });
    await page.getByText("This file is not a list of entries").waitFor();
    await leaveQuiet(seen);
  });
});

test("nothing waits for the house: written without it, kept over a reload, sent when it is back", {
  timeout: 120_000,
}, async () => {
  const house = await newHouse();
  const seen = await visit(browser, house.address, "phone");
  const { page } = seen;
  await startBook(page, "Far from the house");
  await page.getByText("All in the notebook").waitFor();
  await page.getByRole("link", { name: "Book", exact: true }).click();
  await page.getByRole("heading", { name: "Book", level: 1 }).waitFor();
  await house.kill();
  for (const text of ["one", "two", "three"]) await note(page, text);
  await page.getByText("Kept here, 3 to send").waitFor();
  expect(await page.getByRole("listitem").count()).toBe(4);
  await house.start();
  await page.reload(); // another page of the same browser: what it kept is all it has
  await page.getByText("All in the notebook").waitFor({ timeout: 70_000 });
  expect(await page.getByRole("listitem").count()).toBe(4);

  const other = await visit(browser, house.address, "desktop");
  await other.page.goto("/book");
  await entry(other.page, "three").waitFor();
  await note(other.page, "from the house");
  await entry(page, "from the house").waitFor({ timeout: 20_000 });
  await other.context.close();
  await seen.context.close();
});

test("two tabs of one browser count on, each from the other", { timeout: 120_000 }, async () => {
  const house = await newHouse();
  const seen = await visit(browser, house.address, "desktop");
  const first = seen.page;
  await startBook(first, "Two tabs");
  const second = await seen.context.newPage();
  await second.goto("/book");
  await first.goto("/book");
  for (const n of [1, 2, 3]) await Promise.all([note(first, `first ${n}`), note(second, `second ${n}`)]);
  await entry(first, "second 3").waitFor();
  await entry(second, "first 3").waitFor();
  await first.getByText("All in the notebook").waitFor();
  await second.getByText("All in the notebook").waitFor();
  const { notebooks } = (await (await fetch(`${house.address}/api/notebooks`)).json()) as {
    notebooks: { id: string; entries: number }[];
  };
  const answer = await fetch(`${house.address}/api/notebooks/${notebooks[0]?.id}/entries`);
  const { entries } = (await answer.json()) as { entries: { seq: number; device: string }[] };
  expect(new Set(entries.map((one) => one.device)).size).toBe(1);
  expect(entries.map((one) => one.seq).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7]);
  await leaveQuiet(seen);
});

test("the demo opens from the first page and says on every page that it is made up", {
  timeout: 120_000,
}, async () => {
  const house = await newHouse();
  const seen = await visit(browser, house.address, "phone");
  const { page } = seen;
  await page.goto("/");
  await page.getByRole("button", { name: "Open the demo (all of it made up)" }).click();
  await page.getByRole("navigation").waitFor();
  for (const link of await page.getByRole("navigation").getByRole("link").all()) {
    await link.click();
    await page.getByText("Demo: all of it made up").waitFor();
  }
  await page.getByText("All in the notebook").waitFor({ timeout: 30_000 });
  await leaveQuiet(seen);
});

test("a withdrawn entry leaves only its place", { timeout: 60_000 }, async () => {
  const house = await newHouse();
  const desk = new Desk();
  desk.write(50, "notebook-begun", { name: "Withdrawn" });
  const secret = desk.write(40, "note", { text: "a name that must go" });
  const seen = await visit(browser, house.address, "phone");
  await desk.send(house.address);
  await seen.page.goto("/book");
  await entry(seen.page, "a name that must go").waitFor();
  desk.write(1, "withdrawn", { entries: [secret] });
  await desk.send(house.address);
  await entry(seen.page, "Withdrawn: what it said is gone").waitFor({ timeout: 20_000 });
  await seen.page.reload();
  await entry(seen.page, "Withdrawn: what it said is gone").waitFor();
  expect(await seen.page.getByText("a name that must go").count()).toBe(0);
  await leaveQuiet(seen);
});
