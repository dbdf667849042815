import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { Desk } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { type Size, sizes } from "./rig.ts";

/** A notebook with nothing on the shelf. */
function bare(): Desk {
  const desk = new Desk();
  desk.write(100, "notebook-begun", { name: "Test bench" });
  return desk;
}

const line = (page: Page, name: string) =>
  page.getByRole("listitem").filter({ has: page.getByRole("heading", { name, exact: true }) });
const press = (page: Page, name: string | RegExp) => page.getByRole("button", { name }).click();
const put = (page: Page) => press(page, "Put it on the shelf");
const says = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();
const absent = async (page: Page, text: string | RegExp) =>
  expect(await page.getByText(text).count()).toBe(0);

async function putFlakes(page: Page): Promise<void> {
  // Pressed with nothing typed: each field says what would do.
  await put(page);
  await says(page, "Give it a name.");
  await says(page, /^Choose the nearest grade/);
  await page.getByLabel("Name", { exact: true }).fill("Lemon flakes");
  await page.getByLabel("Grade").selectOption({ label: "another, in your words" });
  await page.getByLabel("Grade, as the seller calls it").fill("dewaxed lemon");
  await page.getByRole("radio", { name: /^as told/ }).check();
  await page.getByLabel("Wax in the flakes").fill("120 %");
  await page.getByLabel("Paid").fill("24");
  await put(page);
  await says(page, /^A price needs the amount/);
  await says(page, /“120 %” is out of range/);
  expect(await page.getByLabel("Name", { exact: true }).inputValue()).toBe("Lemon flakes");
  await page.getByLabel("Wax in the flakes").fill("1 %");
  await page.getByLabel("How much was bought").fill("1 lb");
  await page.getByLabel("Lot").fill("117");
  await page.getByLabel("Bought on").fill("2999-01-01");
  await says(page, "That day is still to come.");
  await page.getByLabel("Bought on").fill("2024-03-01");
  await put(page);
  await says(page, "Lemon flakes stands on the shelf.");
}

async function putEthanol(page: Page): Promise<void> {
  await page.getByRole("radio", { name: "An alcohol" }).check();
  const strength = page.getByLabel("How strong");
  await strength.fill("101");
  await says(page, "“101” does not fit: above 0 and up to 100 %, or up to 200 proof.");
  // Of ethanol, 96 % by volume at 20 °C is 93.84 % by mass, 95 % is 92.41 % (OIML R 22).
  await strength.fill("96");
  await says(page, "By weight: 93.8 % ethanol, 6.16 % water.");
  await page.getByRole("radio", { name: "US proof" }).check();
  await strength.fill("190");
  await says(page, /^By weight: 92\.4 % ethanol/);
  // Proof is of ethanol alone: another alcohol takes the figure as something that it can be.
  await page.getByLabel("Alcohol", { exact: true }).selectOption({ label: "isopropanol" });
  await says(page, /“190” does not fit/);
  expect(await page.getByRole("radio", { name: "% by volume" }).isChecked()).toBe(true);
  await page.getByLabel("Alcohol", { exact: true }).selectOption({ label: "ethanol" });
  await strength.fill("96");
  await page.getByLabel("How much was bought").fill("1 l");
  await page.getByLabel("Paid").fill("12");
  await put(page);
  await says(page, "Ethanol 96 % stands on the shelf.");
}

async function putDenatured(page: Page): Promise<void> {
  await page.getByRole("radio", { name: "from its data sheet" }).check();
  await page.getByLabel("Share of ethanol, %").fill("95");
  await page.getByLabel("Share of methanol, %").fill("10");
  await says(page, "The shares come to 105 %. 100 is the most.");
  await page.getByLabel("Share of ethanol, %").fill("some");
  await says(page, "Each share is a number from 0 to 100, or empty.");
  await page.getByLabel("Share of ethanol, %").fill("85");
  // By hand: 85 + 10 leaves 5 % that the sheet does not name.
  await says(page, "By weight: 85.0 % ethanol, 10.0 % methanol, 5.00 % not named.");
  await says(page, /There is methanol in it: poisonous/);
  await says(page, /An estimate, not a clearance: the supplier’s safety data sheet/);
  await put(page);
  await says(page, "Give it a name.");
  await page.getByLabel("Name", { exact: true }).fill("Denatured");
  await page.getByLabel("How much was bought").fill("32 fl oz");
}

async function putInstruments(page: Page): Promise<void> {
  await page.getByRole("radio", { name: "A scale, a jug, a meter" }).check();
  await page.getByLabel("Name", { exact: true }).fill("Kitchen scale");
  await page.getByLabel("Good to, give or take").fill("0");
  await put(page);
  await says(page, "No instrument is exact: half of its last figure would do.");
  await page.getByLabel("Good to, give or take").fill("0.5");
  await put(page);
  await says(page, "Kitchen scale stands on the shelf.");
  await page.getByRole("radio", { name: "hygrometer" }).check();
  await page.getByLabel("Name", { exact: true }).fill("Dial by the door");
  await page.getByLabel("Good to, give or take").fill("3");
  await put(page);
  await says(page, "Dial by the door stands on the shelf.");
}

async function putOthers(page: Page): Promise<void> {
  await page.getByRole("radio", { name: "Dye, oil, a bought product" }).check();
  await put(page);
  await says(page, "Give it a name.");
  await page.getByRole("radio", { name: "oil", exact: true }).check();
  await page.getByLabel("Name", { exact: true }).fill("Walnut oil");
  await page.getByLabel("How much was bought").fill("250 ml");
  await page.getByLabel("Paid").fill("9");
  await page.getByLabel("Where its safety data sheet is").fill("sheets/oil.pdf");
  await put(page);
  await says(page, "Walnut oil stands on the shelf.");
  await page.getByRole("radio", { name: "a finish bought ready-mixed" }).check();
  await page.getByLabel("Name", { exact: true }).fill("Sanding sealer");
  await put(page);
  await says(page, "Sanding sealer stands on the shelf.");
  await press(page, "Undo");
}

async function correctEthanol(page: Page): Promise<void> {
  await line(page, "Ethanol 96 %").getByRole("link", { name: "Correct" }).click();
  await page.getByRole("heading", { name: "Correct Ethanol 96 %" }).waitFor();
  expect(await page.getByLabel("How strong").inputValue()).toBe("96");
  expect(await page.getByLabel("How much was bought").inputValue()).toBe("1 l");
  await page.getByLabel("How strong").fill("95");
  await page.getByLabel("Name", { exact: true }).fill("Ethanol 95 %");
  await press(page, "Keep the correction");
  await says(page, /^Ethanol 95 % is corrected\./);
  await press(page, "Undo");
  await page.getByRole("heading", { name: "Correct Ethanol 96 %" }).waitFor();
  expect(await page.getByLabel("How strong").inputValue()).toBe("96");
  await page.getByLabel("How strong").fill("95");
  await page.getByLabel("Name", { exact: true }).fill("Ethanol 95 %");
  await press(page, "Keep the correction");
  await page.getByRole("link", { name: "Back to the shelf" }).click();
  await line(page, "Ethanol 95 %").getByText("95 % by volume. By weight: 92.4 % ethanol").waitFor();
}

describe.each(Object.keys(sizes) as Size[])("the shelf on a %s", (size) => {
  const { come } = houseVisits((address) => bare().send(address));

  test("what was bought is written down, corrected, priced, used up and struck", {
    timeout: 240_000,
  }, async () => {
    const seen = await come(size);
    const { page } = seen;
    await page.goto("/shelf");
    await page.getByRole("heading", { name: "Nothing on the shelf yet" }).waitFor();
    await expectWellMade(page, `shelf-empty-${size}`);
    await page.getByRole("link", { name: "Put flakes on the shelf" }).click();
    await putFlakes(page);
    await expectWellMade(page, `shelf-new-flakes-${size}`);
    await putEthanol(page);
    await putDenatured(page);
    await expectWellMade(page, `shelf-new-denatured-${size}`);
    await put(page);
    await putInstruments(page);
    await expectWellMade(page, `shelf-new-instrument-${size}`);
    await putOthers(page);
    await expectWellMade(page, `shelf-new-other-${size}`);

    await page.getByRole("link", { name: "Shelf", exact: true }).last().click();
    const flakes = line(page, "Lemon flakes");
    // A pound is 453.6 g (NIST Handbook 44); 24 for it is 5.29 for 100 g.
    await flakes
      .getByText(/454 g left, lot 117, bought Fri 1 Mar 2024, \d years ago, 5\.29 EUR for 100 g/)
      .waitFor();
    await flakes.getByText("dewaxed lemon, 1 % wax").waitFor();
    // 32 US fl oz is 946 mL (NIST Handbook 44).
    await line(page, "Denatured")
      .getByText(/946 mL left/)
      .waitFor();
    await line(page, "Denatured")
      .getByText(/There is methanol in it/)
      .waitFor();
    await line(page, "Kitchen scale").getByText("good to 0.5 g").waitFor();
    // By hand: 9 for 250 mL is 36 a litre.
    await line(page, "Walnut oil")
      .getByText(/^oil, 250 mL left, 36\.00 EUR a litre/)
      .waitFor();
    await line(page, "Walnut oil").getByText("Safety data sheet: sheets/oil.pdf").waitFor();
    await absent(page, "Sanding sealer");
    await line(page, "Dial by the door").getByText("good to 3 % RH").waitFor();
    await correctEthanol(page);
    await expectWellMade(page, `shelf-filled-${size}`);

    await flakes.getByRole("link", { name: "Correct" }).click();
    await says(page, "So far: 5.29 EUR for 100 g.");
    await press(page, "Write the price down");
    await says(page, "A price is missing, as 46.50.");
    await page.getByLabel("Price", { exact: true }).fill("46");
    await page.getByLabel("For how much").fill("1 kg");
    await expectWellMade(page, `shelf-correct-${size}`);
    await press(page, "Write the price down");
    await says(page, "Lemon flakes: the price is written down.");
    await page.getByRole("link", { name: "Back to the shelf" }).click();
    await flakes.getByText(/4\.60 EUR for 100 g/).waitFor();

    await flakes.getByRole("button", { name: "It is used up" }).click();
    await flakes.getByText(/^used up/).waitFor();
    await flakes.getByRole("button", { name: "There is some left" }).click();
    await flakes.getByText(/454 g left/).waitFor();

    // A corrected entry is struck out whole: the one before the correction does not come back.
    await line(page, "Ethanol 95 %").getByRole("button", { name: "Strike out" }).click();
    await says(page, /^Ethanol 95 % is struck out\./);
    expect(await page.getByRole("heading", { name: /^Ethanol/ }).count()).toBe(0);
    await press(page, "Undo");
    await line(page, "Ethanol 95 %").waitFor();
    await absent(page, "Ethanol 96 %");

    await page.getByText("All in the notebook").waitFor();
    await page.reload();
    await line(page, "Ethanol 95 %")
      .getByText("95 % by volume. By weight: 92.4 % ethanol, 7.59 % water.")
      .waitFor();
    await page.goto("/shelf/018f0000-0000-7000-8000-000000000000");
    await page.getByRole("heading", { name: "This is not on the shelf" }).waitFor();
    await leaveQuiet(seen);
  });
});
