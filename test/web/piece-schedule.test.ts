import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { shelfWith } from "./piece-shelf.ts";
import { House, openBrowser, type Size, sizes, visit } from "./rig.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => browser.close());

describe.each(Object.keys(sizes) as Size[])("a finishing schedule on a %s", (size) => {
  const house = new House();
  beforeAll(async () => {
    await house.start();
    await shelfWith(100).send(house.address);
  }, 60_000);
  afterAll(async () => house.leave(), 30_000);

  test("a common schedule is taken, edited, refused, kept and worked", { timeout: 180_000 }, async () => {
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await page.goto("/pieces/new");
    await page.getByLabel("What is it?").fill("Table top");
    await page.getByLabel("Area to finish").fill("1 m²");
    await page.getByLabel("Flakes").selectOption({ label: "Lemon flakes" });
    await page.getByLabel("Alcohol").selectOption({ label: "Ethanol 95 %" });
    await page.getByLabel("First evening").fill("2027-03-01");
    await page.getByLabel("Schedule").selectOption({ label: "Brushed, then padded" });

    // By hand, a square metre with a fifth spare, liquid from common practice: of 1 lb a sealing coat of 114 · 1.2 = 137 mL
    // and two padded of 57, 251 · 1.2 = 300 mL; of 2 lb two of 114, 270 mL; of 1½ lb three of 57, 210 mL.
    await page.getByRole("heading", { name: "Mix three jars" }).waitFor();
    for (const jar of ["300 mL of 1 lb", "270 mL of 2 lb", "210 mL of 1½ lb"])
      await page.getByText(jar, { exact: true }).waitFor();

    await page.getByText("Waits from the air that you expect").click();
    await page.getByLabel("Air temperature").fill("20 °C");
    await page.getByLabel("Relative humidity").fill("50 %");
    await page.getByText(/^Coat × 2: brush, 2 lb: firm enough for the next after .*\d/).waitFor();
    await page.getByLabel("Relative humidity").fill("95 %");
    await page
      .getByText(/white in this air/)
      .first()
      .waitFor();
    await page.getByRole("button", { name: "Put these waits in" }).click();
    await page.getByText("The waits are those of this air.").waitFor();
    await expectWellMade(page, `piece-air-waits-${size}`);
    await page.getByRole("button", { name: "Undo" }).click();

    await page.getByText("2. Seal: brush, 1 lb").click();
    const seal = page.locator(".step-list > li").nth(1);
    await seal.getByLabel("Cut").fill("thin");
    await seal.locator(".wrong:not(:empty)").waitFor();
    await seal.getByLabel("Cut").fill("½ lb");
    // by hand: the sealing coat alone, 137 · 1.2
    await page.getByText("160 mL of ½ lb", { exact: true }).waitFor();
    await seal.getByLabel("Least wait after it").fill("2 h");
    await seal.getByLabel("Most wait after it").fill("1 h");
    await seal.getByText("The most is less than the least.").waitFor();
    // By hand: an evening from six to nine holds no coat of 12 minutes, four hours and the next; the night between is of 21 h, of 20 where the clocks go forward.
    await seal.getByLabel("Least wait after it").fill("4 h");
    await seal.getByLabel("Most wait after it").fill("5 h");
    await seal.getByText("No two of the evenings lie so near: 20 h or more would do.").waitFor();
    await seal.getByLabel("Most wait after it").fill("1 day");
    await page.getByRole("heading", { name: "Mix four jars" }).waitFor();
    // By hand, 119.83 g of flakes a litre of alcohol and pound, which swells the liquid by 0.0994 of itself a pound: 9.4 + 54.7
    // + 32.1 + 14.9 = 111 g. The shelf has 100 g, so 11 g at 4.60 for 100 g; of alcohol 690 mL of the litre.
    await page.getByText("11 g of flakes", { exact: true }).waitFor();
    await page.getByText("About 0.51 EUR, at what was paid last.").waitFor();
    await page.getByText("From the shelf, in this order: 100 g Lemon flakes; 690 mL Ethanol 95 %.").waitFor();
    await page.getByText("More than one lot: blend them all before the first coat").waitFor();
    // The sentence comes from the worker; its figures are held to the distribution beside the calculation.
    await page.getByText(/^In 9 cases of 10 it is done by /).waitFor();
    await page.getByLabel("Waits vary, times").fill("1");
    // By hand: without spread it is done when the plan says: rubbed out from the fifth of March and a fortnight.
    await page.getByText("In 9 cases of 10 it is done by Fri 19 Mar").waitFor();
    await page.getByLabel("Wanted by").fill("2027-03-18");
    await page.getByText("By Thu 18 Mar, when it is wanted, it is done in hardly any case.").waitFor();
    await page.getByLabel("Waits vary, times").fill("0.5");
    await page.getByText("1 to 5 would do.").waitFor();
    await page.getByLabel("Waits vary, times").fill("1.4");
    // What lies under and over, from the trade reference: wax is cleared, an oil stain is waited for, and wax under a varnish lets go.
    await page.getByText("Try the whole of it on a scrap of the same wood first.").waitFor();
    await page.getByLabel("What lies under it").selectOption({ label: "Wax" });
    await page.getByRole("heading", { name: "It will not hold like this" }).waitFor();
    await page.getByText("Wax under: it will not stick. Clear it first with naphtha").waitFor();
    await expectWellMade(page, `schedule-plan-${size}`);
    await page.getByLabel("What lies under it").selectOption({ label: "Oil stain" });
    await page.getByText("Oil stain: wait 3 days between the two").waitFor();
    await page.getByLabel("What goes over it").selectOption({ label: "Polyurethane" });
    await page.getByText("the shelf does not say how much wax these hold").waitFor();

    await page.getByRole("button", { name: "Keep this plan" }).click();
    await page
      .getByText(
        "To repeat: Eight coats of ½, 2, 1½ and 1 lb Lemon flakes in Ethanol 95 %, brushed and padded.",
      )
      .waitFor();
    await page.getByRole("table").getByText("Coat 1, seal").waitFor();
    await page.getByText("Oil stain: wait 3 days between the two").waitFor();
    await page.getByRole("link", { name: "Print the schedule" }).click();
    await page.getByText("Lots: blend Lemon flakes and what is bought before the first coat").waitFor();
    await page.getByText(/^Retained sample: an offcut of the same wood/).waitFor();
    await page.getByText(/^Care: a soft dry cloth\. No alcohol/).waitFor();
    await expectWellMade(page, `schedule-paper-${size}`);
    await page.getByRole("link", { name: "Table top" }).click();
    await page.getByRole("button", { name: "Coat 1 is on" }).click();
    await page.getByText("Coat 1 is written down.").waitFor();
    await expectWellMade(page, `schedule-piece-${size}`);

    await page.getByRole("link", { name: "Change the plan" }).click();
    await page.getByText("2. Seal: brush, ½ lb").waitFor();
    await page.getByLabel("What lies under it").selectOption({ label: "Wax" });
    await page.getByRole("button", { name: "Keep this plan" }).click();
    await page.getByRole("heading", { name: "It will not hold like this" }).waitFor();
    await page.getByRole("link", { name: "Change the plan" }).click();
    await expect.poll(() => page.getByLabel("What lies under it").inputValue()).toBe("wax");
    await leaveQuiet(seen);
  });
});
