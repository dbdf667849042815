import { reads, type Shop, shot } from "./shop.ts";

/** The key is opened for everyone, and the verdict read. */
export async function readVerdict(shop: Shop): Promise<void> {
  const { page } = shop;
  await page.getByRole("link", { name: "Back to the trial" }).click();
  await page.getByRole("button", { name: "Open the key" }).click();
  await page.getByRole("link", { name: "Read the verdict" }).click();
  await page
    .getByRole("heading", {
      name: "Isopropanol is glossier than ethanol. Between denatured and ethanol no difference that matters is left.",
    })
    .waitFor();
  // By hand: every patch lies 1 unit off its alcohol and board, so the residual sum of squares is 18 on 18 − 1 − 2 − 2 = 13
  // degrees of freedom, and its mean square 18/13. Each alcohol has 6 patches; the studentized range q(0.95; 3, 13) is 3.73
  // (tables of the studentized range), so every difference is known to 3.73 · √(18/13/6) = 1.79.
  await reads(
    page,
    "Isopropanol against ethanol: 12.0 gloss units glossier, somewhere from 10.2 to 13.8. Five matters to you.",
    "Isopropanol against denatured: 11.5 gloss units glossier, somewhere from 9.7 to 13.3. Five matters to you.",
    "Denatured against ethanol: no difference that matters was seen, and one of 5 would have been.",
    "This is about these jars: each came out of one mixing, so a lucky jar looks like a lucky recipe.",
  );
  // The woods likewise: 7, 3 and 4 ± 1.79, of which the last holds the 5 that matters.
  await reads(
    page,
    "Ash against birch: 7.0 gloss units glossier, somewhere from 5.2 to 8.8. Five matters to you.",
    "Ash against cherry: no difference that matters was seen, and one of 5 would have been.",
    "Cherry is glossier than birch, but it may be by less than the 5 that matters: from 2.2 to 5.8.",
    "This is about these planks: each wood came from one, so a lucky plank looks like a lucky wood.",
  );
  await page.getByText("How this was reckoned").click();
  await reads(
    page,
    "Every difference in alcohol was taken between patches on the same board",
    "patch to patch (13 degrees of freedom)",
    "Judged by codes. Whoever coated could know the jar.",
  );
  await shot(shop, "verdict");
}
