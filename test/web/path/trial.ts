import { choose, goTo, reads, type Shop, shot } from "./shop.ts";

/** Three alcohols on three woods, one board of each with six patches, three coats. Returns the trial's path. */
export async function layDownTrial(shop: Shop): Promise<string> {
  const { page } = shop;
  await goTo(shop, "Trials");
  await page.getByRole("link", { name: "Ask a question" }).click();
  await fillBlank(shop, "Ethanol and isopropanol", {
    "Which alcohols are tried": "ethanol, isopropanol, denatured",
  });
  await fillBlank(shop, /boards of cherry/, {
    Woods: "cherry, ash, birch",
    "Boards of each wood": "1",
    "Sawn from how many planks": "1",
    "Patches on a board": "6",
  });
  await fillBlank(shop, "four coats", { Coats: "3", "Evenings you have": "3" });
  await page
    .getByRole("heading", { level: 1 })
    .filter({ hasText: "Three alcohols, on one board each of cherry, ash and birch, three coats" })
    .waitFor();
  await readPlan(shop);
  await choose(page, "ethanol · jar 1", "E1,");
  await choose(page, "isopropanol · jar 1", "P1,");
  await choose(page, "denatured · jar 1", "D3,");
  await shot(shop, "ask");
  await page.getByRole("radio", { name: /^This device/ }).check();
  await page.getByRole("button", { name: "Keep it" }).click();
  await reads(page, "Laid out, no coat yet");
  await shot(shop, "laid-out");
  return new URL(page.url()).pathname;
}

async function readPlan({ page }: Shop): Promise<void> {
  // By hand: 18 patches, 3 coats, 3 mL each and a quarter more in brush and cup (common practice): 202.5 mL, 67.5 mL of it
  // from each of three jars; 18 · 3 · 2 + 3 · 20 + 18 minutes are 3.1 h.
  await reads(page, "in three jars, about 68 mL each", "3.1 h", "evenings, then 28 days");
  await reads(page, "An alcohol and its jar.", "A wood and its plank.");
  await reads(page, /^Two jars of each recipe would part alcohol from what it goes with/);
  const said = (await page.getByRole("heading", { name: /^It can show/ }).textContent()) ?? "";
  const [, smallest = "?"] = /^It can show (\S+) gloss units/.exec(said) ?? [];
  await page
    .getByRole("img", { name: new RegExp(`four times in five: .*\\b${smallest.replace(".", "\\.")}[;.] `) })
    .waitFor();
}

async function fillBlank(
  { page }: Shop,
  blank: string | RegExp,
  fields: Readonly<Record<string, string>>,
): Promise<void> {
  await page.getByRole("button", { name: blank }).click();
  for (const [label, typed] of Object.entries(fields))
    await page.getByLabel(label, { exact: true }).fill(typed);
  await page.getByRole("button", { name: "Done" }).click();
}
