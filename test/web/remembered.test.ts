import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { twoJarsDue } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { entriesIn } from "./kept-here.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";
import { type Size, sizes } from "./rig.ts";

/** So many minutes ago as a person in Berlin writes it; the small hours belong to the evening before. */
function berlin(minutesAgo: number): {
  readonly day: string;
  readonly clock: string;
  readonly instant: string;
} {
  const at = new Date(Date.now() - minutesAgo * 60_000);
  const say = (date: Date, options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat("sv-SE", { timeZone: "Europe/Berlin", ...options }).format(date);
  const evening = new Date(at.getTime() - 5 * 3_600_000);
  return {
    day: say(evening, { year: "numeric", month: "2-digit", day: "2-digit" }),
    clock: say(at, { hour: "2-digit", minute: "2-digit" }),
    instant: `${new Date(Math.floor(at.getTime() / 60_000) * 60_000).toISOString()}`,
  };
}

async function chooseDay(page: Page, day: string): Promise<void> {
  await page.getByText("Another day", { exact: true }).click();
  await page.getByLabel("The day", { exact: true }).fill(day);
}
const layersOf = async (address: string) =>
  (await entriesIn(address)).filter(
    (entry) => entry.kind === "layer-applied" && entry.body.planned?.coat === 3,
  );

describe.each(Object.keys(sizes) as Size[])("an evening afterwards on a %s", (size) => {
  const { house, come } = houseVisits((address) => twoJarsDue().send(address));

  test("the printed sheet is typed back down its own numbered lines, and undone in one", {
    timeout: 90_000,
  }, async () => {
    const seen = await come(size);
    const { page } = seen;
    await page.goto("/trials");
    await page
      .getByRole("link", { name: /Which alcohol for the chairs/ })
      .first()
      .click();
    await page.getByRole("link", { name: "Codes and session sheet" }).click();
    const sheet = page.getByRole("region", { name: /^Coat 3,/ });
    await sheet.waitFor();
    const rows = await sheet.locator("tbody tr").allInnerTexts();
    const printed = rows.map((row) => row.trim().split(/\s+/));
    expect(printed.map(([number]) => number)).toEqual(printed.map((_, i) => String(i + 1)));
    const codes = await sheet.locator("tbody b").allInnerTexts();
    for (const column of ["Time", "Jar", "Left out, why"])
      await sheet.getByRole("columnheader", { name: column }).waitFor();

    await page.getByRole("link", { name: "Type a pencilled sheet back" }).click();
    await page.getByRole("heading", { name: "Coat 3, in the order of the sheet" }).waitFor();
    const lines = page.locator(".sheet-lines li");
    expect(await lines.locator(".number").allInnerTexts()).toEqual(codes.map((_, i) => String(i + 1)));
    expect(await lines.locator(".patch > b").allInnerTexts()).toEqual(codes);
    const [first, second] = [berlin(100), berlin(95)];
    await chooseDay(page, first.day);
    await page.getByLabel("Ended", { exact: true }).fill(berlin(85).clock);
    await page.getByText("It ended without a beginning.").waitFor();
    await page.getByLabel("Began", { exact: true }).fill(berlin(110).clock);
    await page.getByLabel("Air temperature").fill("13.5");
    await page.getByLabel("Relative humidity").fill("62");
    const time = (n: number) => page.getByLabel(`Time, line ${n}, ${codes[n - 1]}`);
    await time(1).fill("soon");
    await page.getByText("“soon” is not a time of day. 19:30 would do.").waitFor();
    await time(1).fill(first.clock.replace(":", ""));
    await time(1).press("Enter"); // on to the next line, as the pencil went
    expect(await time(2).evaluate((field) => field === document.activeElement)).toBe(true);
    for (let n = 2; n < 7; n++) await page.keyboard.press("Enter");
    await page.keyboard.type(second.clock);
    await page.getByRole("button", { name: `It is on, line 3, ${codes[2]}` }).click();
    await page.getByLabel(`Why, line 3, ${codes[2]}`).selectOption({ label: "Not this time" });
    await page.getByLabel(`In words, line 3, ${codes[2]}`).fill("still wet");
    const jar = page.getByLabel(`Jar, line 5, ${codes[4]}`);
    const meant = await page.locator(".sheet-lines select option:checked").allInnerTexts(); // of the lines that are on
    meant.splice(2, 0, "");
    const other = meant[4] === "L4" ? "P4" : "L4";
    await jar.selectOption({ label: other });
    await page.getByLabel(`Remark, line 6, ${codes[5]}`).fill("a run at the edge");
    await expectWellMade(page, `remembered-sheet-${size}`);
    await page.getByRole("button", { name: "Write down eleven patches, one left out" }).click();
    await page.getByText("Written on eleven patches, one left out.").waitFor();
    await page.getByText("All in the notebook").waitFor();

    const layers = await layersOf(house.address);
    const on = new Map<string, (typeof layers)[number]>();
    for (const layer of layers) for (const { patch } of layer.body.targets ?? []) on.set(patch, layer);
    expect(on.size).toBe(11);
    const byLine = codes.map((code) => [...on].find(([patch]) => patchOf(patch, code, printed))?.[1]);
    expect(byLine[0]).toMatchObject({ happened: first.instant, happenedKnownTo: "minute" });
    expect(byLine[2]).toBeUndefined();
    expect(byLine[5]?.happened).toBe(first.instant); // as the line above
    expect(byLine[6]?.happened).toBe(second.instant);
    expect(byLine[11]?.happened).toBe(second.instant);
    expect(byLine[0]).not.toHaveProperty("remembered");
    expect(byLine[4]?.body.from).toEqual(byLine[meant.indexOf(other)]?.body.from);
    const kinds = (await entriesIn(house.address)).map(({ kind }) => kind);
    for (const kind of ["sitting-begun", "sitting-ended"])
      expect(kinds.filter((one) => one === kind)).toHaveLength(1);
    expect(kinds.filter((one) => one === "note")).toHaveLength(2); // why it was left out, and the remark
    expect(kinds.filter((one) => one === "air-read")).toHaveLength(2); // and the one that was there before

    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("button", { name: "Write down eleven patches, one left out" }).waitFor();
    expect(await time(7).inputValue()).toBe(second.clock); // what was typed is still there
    await page.getByText("All in the notebook").waitFor();
    await page.goto("/bench");
    await page.getByRole("heading", { name: /^Coat 3 on/ }).waitFor();
    expectQuiet(seen);
    await seen.context.close();
  });

  test("from memory it is marked so in the book, on the bench and on the board, and waits from the latest it may have been", {
    timeout: 90_000,
  }, async () => {
    const seen = await come(size);
    const { page } = seen;
    await page.goto("/bench");
    await page.getByRole("link", { name: "An evening, remembered" }).click();
    await page.getByText("I remember about when").click();
    await page.getByRole("button", { name: /^Write down twelve/ }).click();
    await page.getByText("12 lines do not fit yet.").waitFor();
    await page.getByText("No time stands here or above.").first().waitFor();
    const evening = berlin(100);
    await chooseDay(page, evening.day);
    await page.getByLabel(/^Time, line 1,/).fill(evening.clock);
    await page.getByRole("button", { name: /^It is on, line 12,/ }).click();
    await page.getByLabel(/^Why, line 12,/).selectOption({ label: "Dropped: out of the trial" });
    await expectWellMade(page, `remembered-${size}`);
    await page.getByRole("button", { name: "Write down eleven patches, one left out" }).click();
    await page.getByText("Written on eleven patches, one left out.").waitFor();
    await page.getByText("All in the notebook").waitFor();
    const layers = (await layersOf(house.address)).filter(({ remembered }) => remembered === true);
    expect(layers.every((one) => one.happenedKnownTo === "hour")).toBe(true);

    await page.goto("/bench");
    // A padded coat waits an hour (common practice); about a hundred minutes ago may be seventy.
    await page.getByRole("heading", { name: /^Coat 4 on/ }).waitFor();
    await page.getByText(/^The coat before is not known to the minute on/).waitFor();
    await expectWellMade(page, `remembered-bench-${size}`);
    await page.goto("/book");
    await page.getByText("(remembered)").first().waitFor();
    expect(await page.getByText("(remembered)").count()).toBe(layers.length + 1); // and the one that was dropped
    await page
      .getByText(/^about \d\d:\d\d$/)
      .first()
      .waitFor();
    await page.goto("/trials");
    await page
      .getByRole("link", { name: /Which alcohol for the chairs/ })
      .first()
      .click();
    await page.getByRole("link", { name: "Codes and session sheet" }).waitFor();
    const trial = new URL(page.url()).pathname;
    await page.goto(`${trial}/boards/cherry%201`);
    await page.getByText("Coat by coat").click();
    await page.getByRole("link", { name: /^Coat 3, .*about \d\d:\d\d \(remembered\)$/ }).waitFor();
    expectQuiet(seen);
    await seen.context.close();
  });
});

/** Patches are named `board-place`; the sheet has both beside the code. */
function patchOf(patch: string, code: string, printed: readonly (readonly string[])[]): boolean {
  const row = printed.find((cells) => cells.includes(code));
  return row !== undefined && patch === `${row[1]} ${row[2]}-${row[3]}`;
}
