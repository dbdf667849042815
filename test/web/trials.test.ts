import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openKey, type SealedKey } from "../../src/core/notebook/blind-key.ts";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { House, openBrowser, type Size, sizes, visit } from "./rig.ts";

const words = "a long enough phrase";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => browser.close());

interface Entry {
  readonly kind: string;
  readonly body: Readonly<Record<string, unknown>>;
}

async function entriesOf(address: string): Promise<readonly Entry[]> {
  const list = (await (await fetch(`${address}/api/notebooks`)).json()) as { notebooks: { id: string }[] };
  const id = list.notebooks[0]?.id;
  const answer = await fetch(`${address}/api/notebooks/${id}/entries?limit=1000`);
  return ((await answer.json()) as { entries: Entry[] }).entries;
}

/**
 * What a gloss meter reads of each code: ethanol 40 and 42 by its jars, isopropanol 52 and 54, and half a unit either
 * way from patch to patch. The helper's passphrase says which code is which; the judge in the page never sees it.
 */
async function meterReadings(address: string): Promise<ReadonlyMap<string, string>> {
  const entries = await entriesOf(address);
  const sealed = entries.find((e) => e.kind === "trial-key")?.body as SealedKey | undefined;
  if (sealed === undefined) throw new Error("no sealed key was sent");
  const opened = openKey(sealed, { passphrase: words });
  if (!opened.ok) throw new Error("the passphrase does not open it");
  const { codes } = JSON.parse(opened.value) as { codes: Record<string, { jar: string }> };
  const base: Record<string, number> = {
    "ethanol · jar 1": 40,
    "ethanol · jar 2": 42,
    "isopropanol · jar 1": 52,
    "isopropanol · jar 2": 54,
  };
  const seen = new Map<string, number>();
  return new Map(
    Object.entries(codes).map(([code, { jar }]) => {
      const nth = seen.get(jar) ?? 0;
      seen.set(jar, nth + 1);
      return [code, String((base[jar] as number) + (nth === 0 ? 0.5 : -0.5))];
    }),
  );
}

async function ask(page: Page): Promise<void> {
  await page.goto("/trials");
  await page.getByRole("link", { name: "Ask a question" }).click();
  await page.getByText("Each recipe comes out of one mixing").waitFor();
  await page.getByText(/^Two jars of each recipe would part alcohol from what it goes with/).waitFor();
  await page.getByRole("button", { name: "Take two jars each" }).click();
  await page.getByRole("button", { name: /boards of cherry/ }).click();
  await page.getByLabel("Boards of each wood").fill("1");
  await page.getByLabel("Sawn from how many planks").fill("1");
  await page.getByLabel("Patches on a board").fill("8");
  await page.getByRole("button", { name: "Done" }).click();
  await page.getByRole("button", { name: "four coats" }).click();
  await page.getByLabel("Coats", { exact: true }).fill("one");
  await page.getByText("“one” is not a number.").waitFor();
  await page.getByLabel("Coats", { exact: true }).fill("1");
  await page.getByRole("button", { name: "Done" }).click();
  await page.getByText("It tells everything apart").waitFor();
}

describe.each(Object.keys(sizes) as Size[])("a trial from asking to its verdict on a %s", (size) => {
  const house = new House();
  beforeAll(async () => house.start(), 60_000);
  afterAll(async () => house.leave(), 30_000);

  test("ask, lay down, coat, judge by code, open the key, read the verdict", {
    timeout: 240_000,
  }, async () => {
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await page.goto("/");
    await page.getByRole("button", { name: "Start an empty book" }).click();
    await page.getByRole("link", { name: "Trials" }).first().waitFor();
    await ask(page);
    await expectWellMade(page, `trial-ask-${size}`);

    await page.getByText("A helper’s passphrase").click();
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("Eight signs or more would do.").waitFor();
    await page.getByLabel("Passphrase", { exact: true }).fill(words);
    await page.getByLabel("The same again").fill(words);
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByRole("heading", { name: "Alcohol on cherry" }).waitFor();
    await page.getByText("Laid out, no coat yet").waitFor();
    await expectWellMade(page, `trial-laid-out-${size}`);
    const address = new URL(page.url()).pathname;
    await page.getByText("All in the notebook").waitFor();

    await page.getByRole("link", { name: "Codes and session sheet" }).click();
    const labels = page.getByRole("region", { name: "Board labels, Alcohol on cherry" });
    await labels.getByText("plank A").waitFor();
    expect(await labels.textContent()).not.toMatch(/ethanol|isopropanol/); // blind on the boards too
    await page.goto(address);
    await page.getByRole("link", { name: "Coat it on the bench" }).click();
    await page.getByRole("button", { name: /^Coat 1 is on/ }).click();
    await page.getByText("Coat 1 written on").waitFor();

    await page.goto(address);
    const readings = await meterReadings(house.address);
    await page.getByRole("link", { name: "Judge it" }).click();
    await page.getByLabel("Who judges").fill("Ada");
    await expectWellMade(page, `trial-judge-setup-${size}`);
    await page.getByRole("button", { name: "Begin" }).click();
    for (let n = 1; n <= readings.size; n++) {
      await page.getByText(`${n} of ${readings.size}`).waitFor();
      const code = (await page.locator(".code-to-judge").textContent())?.trim() ?? "";
      if (n === 1) {
        await expectWellMade(page, `trial-judging-${size}`);
        expect(await page.locator("body").textContent()).not.toMatch(/ethanol|isopropanol/);
        await page.getByRole("button", { name: "Write it down" }).click();
        await page.getByText("is not a number").waitFor();
      }
      await page.getByLabel("Gloss units").fill(readings.get(code) ?? "");
      await page.getByRole("button", { name: "Write it down" }).click();
    }
    await page.getByText("All of them are judged").waitFor();

    await page.getByRole("link", { name: "Back to the trial" }).click();
    await page.getByLabel("Passphrase", { exact: true }).fill("something else");
    await page.getByRole("button", { name: "Open the key" }).click();
    await page.getByText("This does not open the key.").waitFor();
    await page.getByLabel("Passphrase", { exact: true }).fill(words);
    await page.getByRole("button", { name: "Open the key" }).click();
    await page.getByRole("link", { name: "Read the verdict" }).click();

    // By hand: level means 41 and 53; jars 1 unit off their level's mean, 2 patches each, so MS between jars is
    // 2 · (4 · 1²)/2 = 4 on 2 degrees of freedom; s² of the difference is 2 · 4/4 = 2; t(0.975; 2) = 4.303 (NIST/SEMATECH
    // e-Handbook, 1.3.6.7.2): 12 ± 6.08.
    await page.getByRole("heading", { name: "Isopropanol is glossier than ethanol." }).waitFor();
    await page.getByRole("heading", { name: "Different" }).waitFor();
    await page
      .getByText(
        "Isopropanol against ethanol: 12 gloss units glossier, somewhere from 6 to 18. Five matters to you.",
      )
      .waitFor();
    await page.getByText("How this was reckoned").click();
    await page.getByText("jar to jar (2 degrees of freedom)").waitFor();
    await page.getByText("A helper held the key.").waitFor();
    await expectWellMade(page, `trial-verdict-${size}`);
    const file = page.waitForEvent("download");
    await page.getByRole("button", { name: "All rows as a table (CSV)" }).click();
    expect((await file).suggestedFilename()).toBe("alcohol-gloss.csv");
    expect(
      await page.getByRole("link", { name: /^Take isopropanol to the piece/ }).getAttribute("href"),
    ).toContain("/pieces/new?trial=");
    await leaveQuiet(seen);
  });

  test("a grid that is too large is asked in two stages", { timeout: 60_000 }, async () => {
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await page.goto("/trials/new");
    await page.getByRole("button", { name: "Ethanol and isopropanol" }).click();
    await page.getByLabel("Which alcohols are tried").fill("ethanol, n-propanol, isopropanol");
    for (const other of ["Cut", "Method"])
      await page.getByLabel("Vary something more").selectOption({ label: other });
    await page.getByLabel("Which cuts are tried").fill("½ lb, 1 lb, 2 lb");
    // By hand: 3 · 3 · 2 = 18 patches, and two boards of six hold 12; the ends of three things need 4 (a half of 2³).
    await page.getByRole("heading", { name: "In two stages it would fit" }).waitFor();
    await page.getByText(/^First three things at the two levels furthest apart, in \d+ patches/).waitFor();
    await expectWellMade(page, `trial-stages-${size}`);
    await page.getByRole("button", { name: "Take the first stage" }).click();
    await page.getByRole("heading", { name: "In two stages it would fit" }).waitFor({ state: "detached" });
    expect(await page.getByLabel("Which alcohols are tried").inputValue()).toBe("ethanol, isopropanol");
    await page.getByRole("button", { name: "Keep it" }).waitFor();
    await leaveQuiet(seen);
  });

  test("somebody's trial comes in from a table, its columns matched, and has its verdict", {
    timeout: 60_000,
  }, async () => {
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await page.goto("/trials/import");
    // D. C. Montgomery, Design and Analysis of Experiments (2013), ch. 4: four tips on each of four coupons.
    const values = [
      [9.3, 9.4, 9.6, 10],
      [9.4, 9.3, 9.8, 9.9],
      [9.2, 9.4, 9.5, 9.7],
      [9.7, 9.6, 10, 10.2],
    ];
    const rows = values.flatMap((row, tip) =>
      row.map((value, coupon) => `${coupon + 1}${"abcd"[tip]},${coupon + 1},tip ${tip + 1},${value}`),
    );
    const paste = page.getByLabel("Or paste it");
    const wrong = ["1a,1,tip 1,9.3", "2a,2,tip 2,9.5", "1a,1,tip 2,9.1", "2b,1,tip 1,hard"];
    await paste.fill(["Sample,Coupon,Tip,Hardness", ...wrong].join("\n"));
    await page.getByText("Row 3, “Tip”: patch 1a had something else in an earlier row.").waitFor();
    await page.getByText("Row 4, “Hardness”: “hard” is not a number.").waitFor();
    await paste.fill(["Sample,Coupon,Tip,Hardness", ...rows].join("\n"));
    await page.getByRole("combobox", { name: "“Coupon” is" }).selectOption({ label: "the board" });
    await page.getByText("16 patches on 4 boards, 1 jar, 16 readings.").waitFor();
    await expectWellMade(page, `trial-import-${size}`);
    await page.getByRole("button", { name: "Bring in 16 readings" }).click();
    await page.getByText("A number above 0 would do, as 5.").waitFor();
    await page.getByLabel("How large a difference would matter").fill("0.2");
    await page.getByRole("button", { name: "Bring in 16 readings" }).click();
    // The printed interval of tips 3 and 4: 0.425 ± 0.208, wholly above 0.2.
    await page.getByRole("heading", { name: "Different" }).first().waitFor();
    await page
      .getByText(/^Tip 4 against tip 3: 0\.4\d* harder|^Tip 4 against tip 3: 0\.4/)
      .first()
      .waitFor();
    await page.getByText("All in the notebook").waitFor();
    await leaveQuiet(seen);
  });
});
