import type { Page } from "playwright-core";
import { choose, goTo, reads, type Shop, shot } from "./shop.ts";

const put = async (page: Page, name: string): Promise<void> => {
  await page.getByRole("button", { name: "Put it on the shelf" }).click();
  await reads(page, `${name} stands on the shelf.`);
};

/** Flakes, and three alcohols to try: two as their labels say, one as its data sheet says. */
export async function fillShelf(shop: Shop): Promise<void> {
  const { page } = shop;
  await goTo(shop, "Shelf");
  await page.getByRole("link", { name: "Put flakes on the shelf" }).click();
  await flakes(page, "Lemon flakes", "lemon", ["500 g", "23"]);
  await flakes(page, "Seedlac", "seedlac", ["250 g", "8"]);
  await page.getByRole("radio", { name: "An alcohol" }).check();
  await label(page, "ethanol", "95", ["1 l", "12"]);
  // Ethanol of 95 % by volume is 92.4 % by weight (OIML R 22).
  await reads(page, /^By weight: 92\.4 % ethanol, 7\.59 % water\.$/);
  await put(page, "Ethanol 95 %");
  await label(page, "isopropanol", "99", ["1 l", "14"]);
  await put(page, "Isopropanol 99 %");
  await sheet(page);
  await shot(shop, "shelf-data-sheet");
  await put(page, "Denatured");
  await page.getByRole("link", { name: "Shelf", exact: true }).last().click();
  await page.getByRole("heading", { name: "Denatured" }).waitFor();
  await shot(shop, "shelf");
}

async function bought(page: Page, [amount, paid]: readonly [string, string]): Promise<void> {
  await page.getByLabel("How much was bought").fill(amount);
  await page.getByLabel("Paid").fill(paid);
}

async function flakes(
  page: Page,
  name: string,
  grade: string,
  paid: readonly [string, string],
): Promise<void> {
  await page.getByLabel("Name", { exact: true }).fill(name);
  await choose(page, "Grade", `${grade}$`);
  await bought(page, paid);
  await put(page, name);
}

async function label(
  page: Page,
  alcohol: string,
  percent: string,
  paid: readonly [string, string],
): Promise<void> {
  await choose(page, "Alcohol", `${alcohol}$`);
  await page.getByLabel("How strong").fill(percent);
  await bought(page, paid);
}

/** An invented one; what it is called on its front says nothing of the ketone. */
async function sheet(page: Page): Promise<void> {
  await page.getByRole("radio", { name: "from its data sheet" }).check();
  const shares = { ethanol: "85", isopropanol: "5", "methyl ethyl ketone": "3", water: "7" };
  for (const [name, share] of Object.entries(shares))
    await page.getByLabel(`Share of ${name}, %`).fill(share);
  await page.getByLabel("Name", { exact: true }).fill("Denatured");
  await reads(page, /There is MEK in it/);
  await bought(page, ["1 l", "6"]);
}

/** What was weighed and poured is gone from the shelf. */
export async function readShelf(shop: Shop): Promise<void> {
  const { page } = shop;
  await goTo(shop, "Shelf");
  const line = (name: string) => page.getByRole("listitem").filter({ hasText: name });
  // By hand: 500 − 57 − 56.7 − 100 = 286 g; 1000 − 238 = 762 mL; 1000 − 236.6 = 763 mL; 1000 − 278 = 722 mL.
  await line("Lemon flakes").getByText("286 g left").waitFor();
  await line("Ethanol 95 %").getByText("762 mL left").waitFor();
  await line("Isopropanol 99 %").getByText("763 mL left").waitFor();
  await line("Denatured").getByText("722 mL left").waitFor();
}
