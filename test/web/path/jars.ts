import { choose, comeIn, goTo, reads, type Shop, shot } from "./shop.ts";

const fillIn = async (shop: Shop, code: string, amounts: Readonly<Record<string, string>>) => {
  const { page } = shop;
  for (const [field, typed] of Object.entries(amounts))
    await page.getByLabel(field, { exact: true }).fill(typed);
  await page.getByLabel("Code for the new jar").fill(code);
};

async function openNewJar(shop: Shop, alcohol: string): Promise<void> {
  const { page } = shop;
  await goTo(shop, "Jars");
  await page.getByRole("link", { name: "Start a jar" }).click();
  await choose(page, "Resin off the shelf", "Lemon flakes");
  await choose(page, "Alcohol off the shelf", alcohol);
}

/** An amount that follows from the two that were typed, and the same said another way. */
const follows = ({ page }: Shop, ...parts: readonly (string | RegExp)[]) =>
  parts
    .reduce((found, hasText) => found.filter({ hasText }), page.getByRole("button"))
    .filter({ hasText: "worked out" })
    .waitFor();

/** 57 g to a 2 lb cut, the alcohol by the jug or on the scale. */
export async function mixEthanol(shop: Shop): Promise<void> {
  const { page } = shop;
  await openNewJar(shop, "Ethanol 95 %");
  await fillIn(shop, "E1", { Flakes: "57 g", Cut: "2 lb" });
  // By hand: a 2 lb cut is 2 · 453.592 g in 3.785412 L, 239.65 g/L, so 57 g take 237.8 mL; ethanol of 95 % by volume weighs
  // 0.8114 g/mL (OIML R 22), so 193 g; 57 g of flakes at 1.205 g/mL add 47.3 mL (2 lb in a gallon make 1.2 gallons: published).
  await follows(shop, "Alcohol", "238 mL", "or 193 g on the scale");
  await follows(shop, "Makes", "285 mL", "the flakes add 47 mL");
  // Two standard uncertainties by hand, of a scale ± 0.5 g, a jug ± 5 mL and flakes ± 0.6 % damp (common practice):
  // 2 · 2 · √((0.5/57)² + (5/237.8)² + 0.006²) = 0.09 lb; with the alcohol weighed, 0.5 g in 193 in the jug's place, 0.04 lb.
  await reads(
    page,
    "2.00 lb, give or take 0.09.",
    "Most of that is the jug: weigh the alcohol and it is 0.04.",
  );
  await shot(shop, "mix");
  await page.getByRole("button", { name: "I weighed 57 g: start the jar" }).click();
  await page.getByRole("heading", { name: "E1, Lemon flakes in Ethanol 95 %" }).waitFor();
  await reads(page, /True cut now: 2\.0\d? lb/);
}

/** The ounce that is asked about: by the jug it is 2 lb, weighed it is less. */
export async function mixIsopropanol(shop: Shop): Promise<void> {
  const { page } = shop;
  await openNewJar(shop, "Ethanol 95 %");
  await fillIn(shop, "P1", { Flakes: "2 oz", Alcohol: "8 oz" });
  await page.getByRole("heading", { name: "“8 oz” of alcohol: which ounce?" }).waitFor();
  await page.getByRole("button", { name: /2\.0 lb.*I measured it/ }).waitFor();
  await shot(shop, "ounce");
  await page.getByRole("button", { name: /1\.7 lb.*I weighed it/ }).click();
  // Weighed: 226.8 g of ethanol 95 % at 0.8114 g/mL are 279.5 mL; 56.70 g in them are 202.9 g/L, 1.69 lb (worked example).
  await follows(shop, "Cut", "1.69 lb", "203 g to a litre");
  await page.getByLabel("Alcohol", { exact: true }).fill("8 oz");
  await choose(page, "Alcohol off the shelf", "Isopropanol 99 %");
  await page.getByRole("button", { name: /2\.0 lb.*I measured it/ }).click();
  // By the jug: 2 oz to 8 fl oz is 2 lb whatever the alcohol (common practice): 56.70 g in 236.6 mL, and 47.1 mL of flakes.
  await follows(shop, "Cut", /2\.00? lb/, "240 g to a litre");
  await follows(shop, "Makes", "284 mL", "the flakes add 47 mL");
  await page.getByRole("button", { name: "I weighed 2 oz: start the jar" }).click();
  await page.getByRole("heading", { name: "P1, Lemon flakes in Isopropanol 99 %" }).waitFor();
  await reads(page, /True cut now: 2\.0\d? lb/);
}

/** A stock of 3 lb in the denatured alcohol. */
export async function mixDenatured(shop: Shop): Promise<void> {
  const { page } = shop;
  await openNewJar(shop, "Denatured");
  await fillIn(shop, "D1", { Flakes: "100 g", Cut: "3 lb" });
  // By hand: 3 lb is 359.48 g/L, so 100 g take 278.2 mL; at 1.205 g/mL the flakes add 83.0 mL: 361 mL.
  await follows(shop, "Alcohol", "278 mL");
  await follows(shop, "Makes", "361 mL", "the flakes add 83 mL");
  await page.getByRole("button", { name: "I weighed 100 g: start the jar" }).click();
  await page.getByRole("heading", { name: /^D1, Lemon flakes in Denatured/ }).waitFor();
  // Said where the bottle's front does not: its data sheet names methyl ethyl ketone.
  await reads(page, /There is MEK in it/);
}

async function lookAt(shop: Shop, code: string, undissolved: string, clarity: string): Promise<void> {
  const { page } = shop;
  await goTo(shop, "Jars");
  await page.getByRole("link", { name: new RegExp(`^${code}: `) }).click();
  await page.getByRole("heading", { name: new RegExp(`^${code}, `) }).waitFor();
  await page.getByRole("button", { name: "Look at it" }).click();
  await page.getByRole("radio", { name: undissolved, exact: true }).check();
  if (undissolved !== "None") {
    await page.getByText("To warm it").click();
    await reads(page, "Warm it only in hot water drawn elsewhere.");
  }
  await page.getByRole("radio", { name: clarity }).check();
  await page.getByRole("button", { name: "I looked" }).click();
  await reads(page, `Looked: ${undissolved.toLowerCase()} undissolved.`);
}

/** Not yet at four hours, ready at twenty-four: the time to ready lies between the two. */
export async function lookTwice(shop: Shop): Promise<void> {
  await comeIn(shop, "2026-10-05", "22:00", "/jars");
  for (const code of ["E1", "P1", "D1"]) await lookAt(shop, code, "Some", "cloudy");
  await comeIn(shop, "2026-10-06", "18:00", "/jars");
  for (const code of ["E1", "P1", "D1"]) await lookAt(shop, code, "None", "clear");
  await goTo(shop, "Jars");
  await shop.page.getByRole("img", { name: /Between 4(\.\d)? h and 24 h/ }).waitFor();
  await shot(shop, "jars");
}

/** The 3 lb stock let down to a working 2 lb and, for a wash coat, to 1 lb. */
export async function thinTwice(shop: Shop): Promise<void> {
  const { page } = shop;
  await page.getByRole("link", { name: /^D1: / }).click();
  await thin(
    shop,
    { to: "1 lb", by: "what I take", amount: ["How much of this jar?", "100 ml"], code: "D2" },
    [
      // By hand: 100 mL of 3 lb hold 77.02 mL of alcohol (1/(1 + 359.48/1205)); a 1 lb cut has three times that, so 154.0 mL
      // are added, 1.54 parts. By the simple ratio 2 parts, and 3 · 77.02/(77.02 + 200) = 0.834 lb.
      "Take 100 mL of D1, add 154 mL of alcohol",
      "Makes 254 mL of 1",
      "The simple ratio says 200 mL, and would have given 0.834 lb",
    ],
  );
  await page.getByRole("link", { name: "Jars", exact: true }).first().click();
  await page.getByRole("link", { name: /^D1: / }).click();
  await thin(shop, { to: "2 lb", by: "what I want", amount: ["How much of it?", "200 ml"], code: "D3" }, [
    // By hand: 1 mL of 3 lb makes 1 + 0.7702/2 = 1.3851 mL of 2 lb, so 200 mL take 144.4 mL and 55.6 mL more alcohol.
    "Take 144 mL of D1, add 56 mL of alcohol",
    "Makes 200 mL of 2",
  ]);
}

async function thin(
  shop: Shop,
  how: {
    readonly to: string;
    readonly by: string;
    readonly amount: readonly [string, string];
    readonly code: string;
  },
  says: readonly string[],
): Promise<void> {
  const { page } = shop;
  await page.getByText("Other things to do with it").click();
  await page.getByRole("button", { name: "Thin to a working cut" }).click();
  await page.getByLabel("To which cut?").fill(how.to);
  await page.getByRole("radio", { name: how.by }).check();
  await page.getByLabel(how.amount[0]).fill(how.amount[1]);
  await page.getByLabel("Code for the new jar").fill(how.code);
  await reads(page, ...says);
  await shot(shop, `thin-${how.code}`);
  await page.getByRole("button", { name: "Poured and shaken" }).click();
  await reads(page, `Thinned into ${how.code}.`);
}
