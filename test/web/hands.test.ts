import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { twoJarsDue } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { entriesIn } from "./kept-here.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";
import { type Size, sizes } from "./rig.ts";

async function writeAs(page: Page, name: string): Promise<void> {
  await page.goto("/book/keeping");
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByRole("button", { name: "Write under this name" }).click();
  await page.goto("/bench");
  await page.getByRole("button", { name: /^Coat 3 is on/ }).waitFor();
}
const whose = (page: Page) => page.getByRole("group", { name: "Whose hands?" });

describe.each(Object.keys(sizes) as Size[])("several hands on a %s", (size) => {
  const { house, come } = houseVisits((address) => twoJarsDue().send(address));

  test("a helper is named once, chosen in one tap and kept; two phones of one evening say who did what", {
    timeout: 120_000,
  }, async () => {
    const [ada, ben] = [await come(size), await come(size)];
    await writeAs(ada.page, "Ada");
    await writeAs(ben.page, "Ben");
    expect(await whose(ada.page).count()).toBe(0); // nobody helps yet: nothing to choose
    await ada.page.getByText("Who helps here").click();
    await ada.page.getByRole("button", { name: "Add this helper" }).click();
    await ada.page.getByText("No name is typed yet.").waitFor();
    await ada.page.getByLabel("A helper’s name").fill("Cleo");
    await ada.page.getByRole("button", { name: "Add this helper" }).click();
    await ada.page.goto("/bench"); // it is kept
    expect(await whose(ada.page).getByLabel("Cleo").isChecked()).toBe(true);
    await expectWellMade(ada.page, `hands-${size}`);

    // One evening out of reach of each other: each coats half of what is due.
    const tiles = (page: Page) => page.getByRole("list", { name: /leave it out/ }).getByRole("button");
    for (const { context } of [ada, ben]) await context.setOffline(true);
    for (const i of [0, 1, 2]) await tiles(ada.page).nth(i).click();
    for (const i of [3, 4, 5]) await tiles(ben.page).nth(i).click();
    await ada.page.getByRole("button", { name: "Coat 3 is on these three" }).click();
    await ada.page.getByText("Coat 3, by Cleo, written on").waitFor();
    await ben.page.getByRole("button", { name: "Coat 3 is on these three" }).click();
    await ben.page.getByText("Coat 3 written on").waitFor();
    for (const { context } of [ben, ada]) await context.setOffline(false);
    for (const { page } of [ada, ben])
      await page.getByText("All in the notebook").waitFor({ timeout: 20_000 });
    await ada.page.goto("/bench");
    await whose(ada.page).getByText("Ada", { exact: true }).click(); // one tap back to her own hands
    await ada.page.getByRole("button", { name: "Coat 3 is on these six" }).click();
    await ada.page.getByText("Coat 3 written on").waitFor();
    await ada.page.getByText("All in the notebook").waitFor();

    const third = (await entriesIn(house.address)).filter((one) => one.body.planned?.coat === 3);
    expect(third.map((one) => [one.by, one.for, one.body.targets?.length]).sort()).toEqual([
      ["Ada", undefined, 6],
      ["Ada", ["Cleo"], 3],
      ["Ben", undefined, 3],
    ]);
    expect(await ada.page.getByRole("heading", { name: /twice/ }).count()).toBe(0);
    await ben.page.goto("/book");
    const written = (name: string) => ben.page.getByRole("listitem").filter({ hasText: name }).first();
    await written("Cleo").filter({ hasText: "Coat 3" }).waitFor();
    await written("Ada").waitFor();
    await ben.page.goto("/trials");
    await ben.page
      .getByRole("link", { name: /Which alcohol for the chairs/ })
      .first()
      .click();
    await ben.page.getByRole("link", { name: "Codes and session sheet" }).waitFor();
    const trial = new URL(ben.page.url()).pathname;
    const seen = new Set<string>();
    for (const wood of ["cherry", "ash", "birch"])
      for (const place of [1, 2, 3, 4]) {
        await ben.page.goto(`${trial}/boards/${wood}%201?patch=${wood}%201-${place}`);
        await ben.page.getByText("Coat by coat").click();
        const link = await ben.page.getByRole("link", { name: /^Coat 3,/ }).textContent();
        seen.add(/by (\w+)$/.exec(link ?? "")?.[1] ?? "nobody");
      }
    expect([...seen].sort()).toEqual(["Ada", "Ben", "Cleo"]);
    for (const one of [ada, ben]) {
      expectQuiet(one);
      await one.context.close();
    }
  });
});
