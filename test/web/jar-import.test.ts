import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { Desk } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { type Size, sizes } from "./rig.ts";

const says = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();
const press = (page: Page, name: string | RegExp) => page.getByRole("button", { name }).click();

const list = [
  "Jar;Mixed;Resin;Flakes;Alcohol;Alcohol (ml);Left;Remark",
  "A1;05/06/2026;Lemon flakes;57;Ethanol 95 %;237,84;200 ml;by the window",
  "A2;06/06/2026;Seedlac;2 oz;Ethanol 95 %;236,6;;",
  "A2;07/06/2026;Seedlac;some;Ethanol 95 %;236,6;;",
].join("\n");

describe.each(Object.keys(sizes) as Size[])("jars from a list on a %s", (size) => {
  const { come } = houseVisits((address) => {
    const desk = new Desk();
    desk.write(100, "notebook-begun", { name: "Test bench" });
    return desk.send(address);
  });

  test("columns are matched, a dry run names what does not fit, and all of it is undone at once", {
    timeout: 240_000,
  }, async () => {
    const seen = await come(size);
    const { page } = seen;
    await page.goto("/jars");
    await page.getByRole("link", { name: "From a list" }).click();
    await page.getByRole("heading", { name: "Jars from a list" }).waitFor();
    await press(page, "Take the jars in");
    await says(page, "There is no list yet");
    await expectWellMade(page, `import-empty-${size}`);
    await page.getByLabel("Or paste it here").fill("only words\nand more");
    await says(page, "Only one column");

    await page.getByLabel("Or paste it here").fill(list);
    await says(page, "They allow both: choose which comes first.");
    await page.getByLabel("Dates of “Mixed” begin with").selectOption({ label: "the day" });
    await says(page, "Its numbers have no unit: choose it.");
    await page.getByLabel("Bare numbers of “Flakes” are in").selectOption({ label: "g" });
    // Row 4 has a code twice and an amount that is none: both are said with row, column and value.
    await says(page, /^Row 4, column “Flakes”: “some”/);
    await press(page, "Take the jars in");
    await says(page, /^Nothing is written while a row does not fit/);
    await expectWellMade(page, `import-dry-run-${size}`);
    await press(page, "Leave row 4 out");
    await says(page, "Every row fits.");
    // 57 g in 237.84 mL is the 2 lb of the worked example (mass balance, swelling published): 285 mL.
    await says(page, /2\.00 lb, 57 in|2\.00 lb, 57 g in/);
    await says(page, /285 mL when mixed/);
    await press(page, "Take the two jars in");
    await says(page, "two jars are in the book.");
    await page.getByRole("link", { name: "All jars" }).click();
    await page.getByRole("link", { name: /^A1:/ }).first().waitFor();
    await page.getByRole("link", { name: /^A2:/ }).first().click();
    await page.getByRole("heading", { name: "A2, Seedlac in Ethanol 95 %" }).waitFor();
    expect(await page.getByText(/^True cut now: 2\.0/).count()).toBe(1);

    await page.goto("/jars/import");
    await page
      .getByLabel("Or paste it here")
      .fill("Jar,Cut,Resin,Alcohol,Makes\nB1,2 lb,Lemon flakes,Ethanol 95 %,285 ml\n");
    await press(page, "Take the jar in");
    await says(page, "One jar is in the book.");
    await press(page, "Undo");
    await page.goto("/jars");
    await page.getByRole("link", { name: /^A1:/ }).first().waitFor();
    expect(await page.getByRole("link", { name: /^B1:/ }).count()).toBe(0);
    await leaveQuiet(seen);
  });
});
