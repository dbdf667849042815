import { expect, test } from "vitest";
import { benchNotebook } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";

const { come } = houseVisits((address) => benchNotebook().send(address));

test("on a phone a number field brings the number pad, with its units to press beside it", {
  timeout: 60_000,
}, async () => {
  const seen = await come("phone");
  const { page } = seen;
  await page.goto("/bench");
  await page.getByRole("button", { name: "Read it again" }).tap();
  const air = page.getByLabel("Air temperature");
  expect(await air.getAttribute("inputmode")).toBe("decimal");
  const unit = (name: string) => page.getByRole("group", { name: "Unit" }).getByRole("button", { name });
  expect(await unit("°F").count()).toBe(0); // not before the field was entered: the form stays short
  await air.tap();
  await air.fill("57");
  await unit("°F").tap();
  expect(await air.inputValue()).toBe("57 °F");
  await page.getByText("13.9 °C", { exact: true }).waitFor(); // (57 − 32) / 1.8
  expect(await air.evaluate((field) => field === document.activeElement)).toBe(true); // the pad stays open
  expect(await unit("°F").getAttribute("aria-pressed")).toBe("true");
  await expectWellMade(page, "number-pad-phone");

  await air.fill("");
  await unit("°C").tap(); // the unit first, then the number
  await air.pressSequentially("14");
  await page.getByLabel("Relative humidity").tap();
  expect(await air.inputValue()).toBe("14 °C");
  expect(await unit("°F").count()).toBe(1); // it stays, and a per cent of damp has none to choose

  await page.goto("/jars/new");
  const alcohol = page.getByLabel("Alcohol", { exact: true });
  await alcohol.tap();
  await alcohol.pressSequentially("8 fl oz"); // any keyboard types what it likes
  await page.getByText(/^237 ml/).waitFor(); // 8 US fl oz is 236.588 ml (NIST Handbook 44, appendix C)
  await unit("cup").tap();
  expect(await alcohol.inputValue()).toBe("8 cup");
  await unit("Letters").tap();
  expect(await alcohol.getAttribute("inputmode")).toBe("text");
  expect(await alcohol.evaluate((field) => field === document.activeElement)).toBe(true);
  await alcohol.fill("1 1/2 cup");
  await page.getByText(/^355 ml/).waitFor();
  expectQuiet(seen);
  await seen.context.close();
});

test("at a desk there is nothing to press beside the field, and typing is as it was", {
  timeout: 60_000,
}, async () => {
  const seen = await come("desktop");
  const { page } = seen;
  await page.goto("/jars/new");
  const alcohol = page.getByLabel("Alcohol", { exact: true });
  await alcohol.fill("8 fl oz");
  await page.getByText(/^237 ml/).waitFor();
  expect(await page.getByRole("group", { name: "Unit" }).count()).toBe(0);
  expectQuiet(seen);
  await seen.context.close();
});
