import { expect } from "vitest";
import { reads, type Shop, shot } from "./shop.ts";

/** What won goes onto a table top of one and a half square metres. */
export async function planPiece(shop: Shop): Promise<void> {
  const { page } = shop;
  await page.getByRole("link", { name: "Take isopropanol to the piece" }).click();
  await page.getByLabel("What is it?").fill("Table top");
  await page.getByLabel("Area to finish").fill("1.5 m²");
  await page.getByLabel("First evening").fill("2026-11-06");
  await figures(shop);
  // By hand: 65.6 g at 23 for 500 g and 274 mL at 14 for a litre: 3.02 + 3.83.
  await reads(page, /About 6\.85 EUR/);
  await shot(shop, "piece-plan");
  await page.getByRole("button", { name: "Keep this plan" }).click();
  await page.getByRole("heading", { name: "Table top" }).waitFor();
  await reads(page, "To repeat: Three coats of 2 lb Lemon flakes in Isopropanol 99 %, padded.");
  await shot(shop, "piece");
}

async function figures({ page }: Shop): Promise<void> {
  // By hand: padded 57 mL/m² a coat, the first 1.2 times (common practice): 57 · 1.5 · 3.2 = 274 mL, with a fifth spare 328 mL.
  await page.getByRole("heading", { name: "Mix 330 mL of 2 lb" }).waitFor();
  // By hand: 2 lb is 239.65 g/L of alcohol and swells to 1.199 of it, so 328 mL are 274 mL of alcohol and 66 g of flakes;
  // isopropanol of 99 % by volume weighs 0.791 g/mL (J. Am. Chem. Soc. 43 (1921) 1005): 217 g.
  await reads(page, "66 g of flakes in 270 mL of alcohol (220 g on the scale)");
  // By hand: 274 mL over 1.5 m² are 182 µm wet, 16.6 % of it solids, half of which the pad takes off again: 15 µm.
  await reads(page, "About 15 µm dry at the end");
  await reads(page, "Two evenings, the last coat on Sat 7 Nov. Rub out from Sat 21 Nov:");
}

/**
 * By hand, for 1.5 m² padded (minutes from memory, waits common practice): sanded 25 min/m² from 18:00, 37.5 min; a coat
 * 20 min/m², 30 min, the first of 57 · 1.5 · 1.2 = 103 mL and the others of 86 mL; after it 15 min, then de-nibbed
 * 8 min/m², 12 min; after the second coat 30 min, and from 20:35 half an hour more ends after nine, so the third waits for
 * the next evening. Rubbed out two weeks on, 30 min/m², 45 min.
 */
const steps = [
  ["Fri 6 Nov 18:00", "Sand to 220, wipe off the dust", "", "38 minutes", ""],
  ["Fri 6 Nov 18:38", "Coat 1", "100 mL", "30 minutes", "15 minutes"],
  ["Fri 6 Nov 19:23", "De-nib lightly with 320", "", "12 minutes", ""],
  ["Fri 6 Nov 19:35", "Coat 2", "86 mL", "30 minutes", "the night"],
  ["Sat 7 Nov 18:00", "Coat 3", "86 mL", "30 minutes", ""],
  ["Sat 7 Nov", "Leave to cure", "", "", "14 days"],
  ["Sat 21 Nov", "Rub out", "", "45 minutes", ""],
];

/** The steps on one sheet of paper. */
export async function printSteps(shop: Shop): Promise<void> {
  const { page } = shop;
  await page.getByRole("link", { name: "Print the schedule" }).click();
  await reads(page, "100 mm: measure me", "Three coats of 2 lb Lemon flakes in Isopropanol 99 %, padded.");
  await figures(shop);
  const rows = await page
    .locator("table.piece-plan tbody tr")
    .evaluateAll((all) =>
      all.map((row) => [...row.children].map((cell) => (cell.textContent ?? "").replace(/\s+/g, " ").trim())),
    );
  expect(rows.map((row) => row.slice(0, 5))).toEqual(steps);
  await shot(shop, "paper");
  const sheet = await page.pdf({ format: "A4", printBackground: true });
  expect(sheet.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
}
