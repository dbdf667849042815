import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { benchNotebook } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { expectQuiet, expectWellMade } from "./looks.ts";

const { house, come } = houseVisits((address) => benchNotebook().send(address));

const remindMe = (page: Page) => page.getByRole("button", { name: "Remind me when it is time" });
/** What the browser itself shows just now. */
const shown = (page: Page) =>
  page.evaluate(async () => {
    const worker = await navigator.serviceWorker.getRegistration();
    return (await worker?.getNotifications())?.map(({ body }) => body) ?? [];
  });

test("a coat that comes due is told of once, from whichever page is open, by its code and never its jar", {
  timeout: 90_000,
}, async () => {
  const seen = await come("phone");
  const { page, context } = seen;
  await context.grantPermissions(["notifications"], { origin: house.address });
  await page.clock.install();
  await page.goto("/bench");
  await page.getByText("All in the notebook").waitFor();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  // One patch had its second coat five minutes ago: by any wait it is due within the day, the other eleven are due now.
  const waits = page.getByRole("list", { name: /leave it out/ }).locator("li.out b");
  const [code] = /[A-Z]\d/.exec((await waits.textContent()) ?? "") ?? [];
  await remindMe(page).tap();
  await page.getByText("You are reminded when it is time").waitFor();
  await expectWellMade(page, "reminders-on-phone");
  await page.getByRole("link", { name: "Jars", exact: true }).click(); // the bench is left
  await page.getByRole("heading", { level: 1 }).first().waitFor();
  expect(await shown(page)).toEqual([]);
  await page.clock.fastForward("12:00:00");
  await expect.poll(() => shown(page), { timeout: 20_000 }).toHaveLength(1);
  expect(code).toMatch(/^[A-Z]\d$/);
  expect(await shown(page)).toEqual([`Coat 3 may go on: ${code}`]);

  await page.getByRole("link", { name: "Bench", exact: true }).click(); // it is kept, and not told again
  await page.getByText("You are reminded when it is time").waitFor();
  await page.clock.fastForward("01:00:00");
  expect(await shown(page)).toHaveLength(1);
  await page.getByRole("button", { name: "Do not remind me" }).tap();
  await remindMe(page).waitFor();
  expectQuiet(seen);
  await context.close();
});

test("nothing is asked before it is pressed; where the browser refuses, or the page is not secure, it is said why", {
  timeout: 60_000,
}, async () => {
  const seen = await come("desktop");
  const { page, context } = seen;
  await page.addInitScript(() => {
    Object.assign(window, { askedTimes: 0 });
    Notification.requestPermission = async () => {
      (window as unknown as { askedTimes: number }).askedTimes++;
      return "denied";
    };
  });
  const asked = () => page.evaluate(() => (window as unknown as { askedTimes: number }).askedTimes);
  await page.goto("/bench");
  await remindMe(page).waitFor();
  expect(await asked()).toBe(0);
  await remindMe(page).click();
  await page.getByText("The browser does not let this page remind you.").waitFor();
  expect(await asked()).toBe(1);
  await expectWellMade(page, "reminders-refused-desktop");
  expectQuiet(seen);
  await context.close();

  // As at a plain-HTTP address: `pairing.test.ts` holds that the browser says so there.
  const plain = await come("phone");
  await plain.page.addInitScript(() => Object.defineProperty(window, "isSecureContext", { value: false }));
  await plain.page.goto("/bench");
  await remindMe(plain.page).tap();
  await plain.page.getByText("Browsers show reminders only on a secure page").waitFor();
  await plain.page.getByRole("link", { name: "How to get a secure page" }).first().waitFor();
  await plain.context.close();
});
