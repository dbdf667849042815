import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { readQr } from "../read-qr.ts";
import { blindNotebook } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { entriesIn } from "./kept-here.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";
import { type Size, sizes } from "./rig.ts";

/** The labels as a person reads them, and what a phone finds in the code of the second one. */
async function labelsOf(page: Page): Promise<{ readonly says: string; readonly address: string }> {
  await page.goto("/trials");
  await page
    .getByRole("link", { name: /Which alcohol for the chairs/ })
    .first()
    .click();
  await page.getByRole("link", { name: "Codes and session sheet" }).click();
  const labels = page.getByRole("region", { name: /^Board labels/ });
  await labels.getByText("ash 1.5").waitFor();
  const code = labels.locator("g g path").nth(1); // of ash 1.5; the address is known once the door was asked
  await page.waitForLoadState("networkidle");
  return { says: (await labels.textContent()) ?? "", address: readQr((await code.getAttribute("d")) ?? "") };
}

const boardPage = (page: Page) => page.getByRole("heading", { name: "Coat 3 on four patches" });

describe.each(Object.keys(sizes) as Size[])("a board’s label on a %s", (size) => {
  const { house, come } = houseVisits((address) => blindNotebook(false).send(address));

  test("its code opens that board at the bench with nobody to answer, and a coat goes on it alone", {
    timeout: 120_000,
  }, async () => {
    const seen = await come(size);
    const { page, context } = seen;
    const { address } = await labelsOf(page);
    expect(address).toMatch(
      new RegExp(`^${house.address}/bench/boards/[0-9a-f-]{36}/ash%201\\.5$`), // a trial, a board, and no more
    );
    await page.goto("/jars/labels");
    const jarCode = page.locator(".label-sheet .label > g path").first();
    await jarCode.waitFor({ state: "attached" });
    await page.waitForLoadState("networkidle");
    const jar = readQr((await jarCode.getAttribute("d")) ?? "");
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await page.close();
    await house.stop();

    const phone = await context.newPage();
    await phone.goto(address);
    await boardPage(phone).waitFor();
    await phone.getByText("Board ash 1.5", { exact: true }).last().waitFor();
    await expectWellMade(phone, `board-at-bench-${size}`);
    await phone.getByRole("button", { name: "Coat 3 is on these four" }).click();
    await phone.getByText("Coat 3 written on").waitFor();
    await phone.getByText("Kept here, 1 to send").waitFor();
    await phone.getByRole("link", { name: "The film on it" }).click();
    await phone.getByRole("heading", { name: "ash 1.5", level: 1 }).waitFor();
    await phone.getByRole("link", { name: "At the bench" }).click();
    await phone.getByText("Nothing to coat on ash 1.5 just now").waitFor();
    await phone.getByRole("button", { name: /^Coat 4 on four patches/ }).waitFor();
    await phone.goto(jar);
    await phone
      .getByRole("heading", { name: /^(L4|P4)/ })
      .first()
      .waitFor();

    await house.start();
    await phone.getByText("All in the notebook").waitFor({ timeout: 60_000 });
    const third = (await entriesIn(house.address)).find((one) => one.body.planned?.coat === 3);
    expect(third?.body.targets?.map(({ patch }) => patch.replace(/-\d$/, ""))).toEqual(
      Array.from({ length: 4 }, () => "ash 1.5"),
    );
    expectQuiet(seen);
    await context.close();
  });
});

const eitherRecipe = [false, true].map((swapped) =>
  houseVisits((address) => blindNotebook(swapped).send(address)),
);

test("behind a shut key the label, its address and the page are the same whichever recipe lies under a code", {
  timeout: 120_000,
}, async () => {
  const told = [];
  for (const { come } of eitherRecipe) {
    const { page, context } = await come("phone");
    const { says, address } = await labelsOf(page);
    await page.goto(address);
    await boardPage(page).waitFor();
    await page.getByText("All in the notebook").waitFor();
    await page.waitForLoadState("networkidle");
    const text = await page.locator("main").textContent();
    const within = await page.locator("main").innerHTML(); // nor anything that is only read out
    expect(`${says} ${address} ${within}`).not.toMatch(/\b(L4|P4|isopropanol · |ethanol · )/);
    told.push({ says, path: address.replace(/^.*\/boards\/[^/]+/, ""), text });
    await context.close();
  }
  expect(told[0]?.text).toContain("Coat by code, in this order");
  expect(told[1]).toEqual(told[0]);
});
