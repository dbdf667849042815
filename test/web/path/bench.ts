import type { Locator } from "playwright-core";
import { expect } from "vitest";
import { comeIn, goTo, reads, type Shop, shot } from "./shop.ts";

/** What the bench says of the three jars. */
const liquids = ["Denatured", "Ethanol 95 %", "Isopropanol 99 %"].map(
  (name) => `Lemon flakes 2 lb in ${name}`,
);

/** The air of the shop: 20 °C at 50 % has its dew point at 9.3 °C (psychrometric tables), and a coat on wood of 18 °C stays above it. */
export async function readAir({ page }: Shop): Promise<void> {
  await page.getByRole("button", { name: /^Read (the air|it again)$/ }).click();
  await page.getByLabel("Air temperature").fill("20 °C");
  await page.getByLabel("Relative humidity").fill("50 %");
  await page.getByLabel("Wood temperature").fill("18 °C");
  await page.getByRole("button", { name: "Put it down" }).click();
  await page.getByRole("heading", { name: /°C to spare$/ }).waitFor();
  await page.getByText("9.3", { exact: true }).waitFor();
}

/** The coat that is due; returns what it is of. */
export async function coatDue({ page }: Shop, coat: number): Promise<string> {
  await page.getByRole("heading", { name: `Coat ${coat} on six patches` }).waitFor();
  await page.getByRole("button", { name: `Coat ${coat} is on these six` }).click();
  await reads(page, `Coat ${coat} written on`);
  return (
    (await page
      .getByText(/^Lemon flakes 2 lb in/)
      .first()
      .textContent()) ?? ""
  );
}

/** What else is due now stands below; the next of it is taken up. */
async function takeUpNext({ page }: Shop, coat: number): Promise<void> {
  await page
    .getByRole("button", { name: new RegExp(`^Coat ${coat} on six patches`) })
    .first()
    .click();
}

/** Each of the three jars once; something may happen after the first. */
export async function coatAll(shop: Shop, coat: number, afterFirst = async () => {}): Promise<void> {
  const coated = [await coatDue(shop, coat)];
  await afterFirst();
  while (coated.length < liquids.length) {
    await takeUpNext(shop, coat);
    coated.push(await coatDue(shop, coat));
  }
  expect(coated.sort()).toEqual(liquids);
}

/** Written too soon: undone in the very place of the act, and the act stands there again. */
async function undoInPlace({ page }: Shop, coat: number): Promise<void> {
  const act = page.getByRole("button", { name: `Coat ${coat} is on these six` });
  const before = await boxOf(act);
  await act.click();
  const undo = page
    .getByRole("status")
    .filter({ hasText: `Coat ${coat} written on` })
    .getByRole("button");
  const between = await boxOf(undo);
  expect(between.y + between.height / 2).toBeGreaterThan(before.y);
  expect(between.y + between.height / 2).toBeLessThan(before.y + before.height);
  await undo.click();
  expect(await boxOf(act)).toEqual(before);
}

async function boxOf(thing: Locator) {
  await thing.waitFor();
  const box = await thing.boundingBox();
  if (box === null) throw new Error("It is not in sight.");
  return box;
}

/** The first two coats, an evening each. */
export async function firstEvenings(shop: Shop): Promise<void> {
  const { page } = shop;
  await goTo(shop, "Bench");
  await readAir(shop);
  await reads(page, "Due now", /Lemon flakes 2 lb in/);
  await shot(shop, "bench");
  await undoInPlace(shop, 1);
  await coatAll(shop, 1);
  await comeIn(shop, "2026-10-07", "19:00", "/bench");
  await coatAll(shop, 2);
  await shot(shop, "bench-second-evening");
}
