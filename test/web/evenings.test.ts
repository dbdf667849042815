import { readFile } from "node:fs/promises";
import ICAL from "ical.js";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { Desk } from "./bench-notebook.ts";
import { demoVisits } from "./demo-house.ts";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { House, openBrowser, type Size, sizes, visit } from "./rig.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => browser.close());

const demo = demoVisits();

const windows = ["05", "06", "07", "08", "09", "10"].map((day) => [
  `2026-10-${day}T18:00`,
  `2026-10-${day}T21:00`,
]);
/** By hand: 20 minutes to sand, five coats of 30 minutes with two hours between: one on the first evening, two on each after. */
const workedOutFrom = {
  areaM2: 1,
  method: "brush",
  coats: 5,
  cutLbPerGal: 2,
  solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  steps: [
    { what: "sand", minutesPerM2: 20, leastWaitMinutes: 0 },
    { what: "coat", times: 5, millilitresPerM2: 100, minutesPerM2: 30, leastWaitMinutes: 120 },
  ],
  windows,
};
const step = (n: number, what: "sand" | "coat", day: string, at: string) => ({
  ...{ step: String(n), what, day: `2026-10-${day}`, at },
  ...(what === "coat"
    ? { minutes: 30, leastWaitMinutes: 120, method: "brush" as const, cutLbPerGal: 2, millilitres: 100 }
    : { minutes: 20, leastWaitMinutes: 0 }),
});
const steps = [
  step(1, "sand", "05", "18:00"),
  step(2, "coat", "05", "18:20"),
  step(3, "coat", "06", "18:00"),
  step(4, "coat", "06", "20:30"),
  step(5, "coat", "07", "18:00"),
  step(6, "coat", "07", "20:30"),
];

async function newHouse(): Promise<{ readonly house: House; readonly piece: string }> {
  const house = new House();
  await house.start();
  const desk = new Desk();
  const ago = (Date.now() - Date.parse("2026-10-01T10:00:00Z")) / 60_000;
  desk.write(ago, "notebook-begun", { name: "Shed" });
  const piece = desk.write(ago - 10, "piece-described", {
    name: "Hall table",
    area: { typed: "1 m²", unit: "m2", si: 1 },
  });
  const recipe = { cutLbPerGal: 2, coats: 5, method: "brush" as const };
  desk.write(ago - 20, "piece-scheduled", { recipe, steps, millilitresPerM2PerCoat: 100, workedOutFrom }, [
    piece,
  ]);
  await desk.send(house.address);
  return { house, piece };
}

/** It is this o'clock for the page, by the clock on the wall in Berlin in summer time. */
const itIs = (page: Page, day: string, at: string) =>
  page.clock.setFixedTime(new Date(`2026-10-${day}T${at}:00+02:00`));
/** What another author's reader finds in the calendar file that the page gives. */
async function takenTo(page: Page) {
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Take it to a calendar" }).click(),
  ]);
  await page.getByText(/^Saved as .*\.ics/).waitFor();
  const calendar = new ICAL.Component(ICAL.parse(await readFile(await file.path(), "utf8")));
  return calendar.getAllSubcomponents("vevent").map((event) => {
    const { uid, startDate, sequence } = new ICAL.Event(event);
    return { uid, start: String(startDate), sequence };
  });
}
const rows = (page: Page) => page.locator(".evening-row b").allTextContents();

describe.each(Object.keys(sizes) as Size[])("the evenings of a piece on a %s", (size) => {
  test("tonight is marked and ticked, an evening moves and the rest follows, a late coat is planned around", {
    timeout: 180_000,
  }, async () => {
    const { house, piece } = await newHouse();
    const seen = await visit(browser, house.address, size);
    const { page } = seen;
    await itIs(page, "05", "18:55");
    await page.goto(`/pieces/${piece}`);
    await page.getByRole("heading", { name: "Tonight, Mon 5 Oct" }).waitFor();
    expect(await rows(page)).toEqual(["Mon 5 Oct", "Tue 6 Oct", "Wed 7 Oct"]);
    await page.getByRole("button", { name: "Coat 1 is on" }).click();
    // Finished at 18:55, so ready two hours later.
    await page.getByText("Not before 20:55: coat 1 dries until then.").waitFor();
    await page.getByRole("img", { name: "Mon 5 Oct, 18:00 to 18:50: sand and coat 1; done" }).waitFor();
    expect(await page.getByRole("img", { name: "done", exact: true }).count()).toBe(2);
    await expectWellMade(page, `evenings-tonight-${size}`);

    // By hand: coats 2 and 3 are done at 18:30 and 21:00, and two hours later, half an hour: 23:30, or 150 minutes too late.
    await page.getByRole("heading", { name: "Coat 4 comes due while you are asleep" }).waitFor();
    await page.getByText("It may go on from 23:00; the evening of Tue 6 Oct ends at 21:00.").waitFor();
    await page.getByRole("button", { name: "Start at 15:30" }).click();
    await page.getByText("Tue 6 Oct begins at 15:30.").waitFor();
    await page.getByRole("img", { name: "Tue 6 Oct, 15:30 to 21:00: coat 2, coat 3 and coat 4" }).waitFor();
    await page.locator(".piece-strip").getByRole("button", { name: "Undo" }).click();
    await page.getByRole("img", { name: "Tue 6 Oct, 18:00 to 21:00: coat 2 and coat 3" }).waitFor();

    await page.getByRole("button", { name: "Move the evening of Tue 6 Oct" }).click();
    await page.getByRole("button", { name: "Move it, the rest follows" }).click();
    await page.getByText("It is there already").waitFor();
    await page.getByLabel("To which day?").fill("2026-10-05");
    await page.getByLabel("Until").fill("18:30");
    await page.getByText("That time has passed.").waitFor();
    await page.getByLabel("Until").fill("17:00");
    await page.getByLabel("To which day?").fill("2026-10-12");
    await page.getByText("An evening ends after it begins.").waitFor();
    await page.getByLabel("Until").fill("21:00");
    await page.getByText("It ends on Thu 8 Oct instead of Wed 7 Oct.").waitFor();
    await expectWellMade(page, `evenings-move-${size}`);
    await page.getByRole("button", { name: "Move it, the rest follows" }).click();
    await page.getByText("The evening of Tue 6 Oct is moved.").waitFor();
    expect(await rows(page)).toEqual(["Mon 5 Oct", "Wed 7 Oct", "Thu 8 Oct"]);
    await page.locator(".piece-strip").getByRole("button", { name: "Undo" }).click();
    await page.getByRole("img", { name: /^Tue 6 Oct, 18:00/ }).waitFor();

    // By hand: two coats in the rest of tonight would take until 21:25, and three on one evening 330 minutes.
    await page.getByText("Could it be done sooner?").click();
    await page.getByText("it would end on Tue 6 Oct.").waitFor();

    await itIs(page, "06", "20:10");
    await page.reload();
    await page
      .getByRole("heading", { name: "Coat 2 was planned for Tue 6 Oct 18:00 and is not written down" })
      .waitFor();
    // Off the printed sheet: a time counts as exact; one from memory is marked so, and what is too early is refused.
    await page.getByText("Coat 2 went on earlier").click();
    await page.getByRole("textbox", { name: "The day" }).fill("2026-10-04");
    await page.getByLabel("Time", { exact: true }).fill("19:00");
    await page.getByRole("button", { name: "Write it down" }).first().click();
    await page.getByText(/A later time would do/).waitFor();
    await page.getByRole("radio", { name: /^Only the day/ }).check();
    await page.getByRole("textbox", { name: "The day" }).fill("2026-10-06");
    await page.getByRole("button", { name: "Write it down" }).first().click();
    await page.getByText("Coat 2 is written down.").waitFor();
    await page.locator(".piece-mix").getByRole("button", { name: "Undo" }).click();
    await page.getByRole("button", { name: "Coat 2 is on" }).waitFor();

    await page.getByRole("button", { name: "Plan the rest from now" }).click();
    // One coat from 20:10 to 20:40 tonight, then two, and one: a day later.
    await page.getByText("The rest is planned anew. It ends on Thu 8 Oct instead of Wed 7 Oct.").waitFor();
    expect(await rows(page)).toEqual(["Mon 5 Oct", "Tue 6 Oct", "Wed 7 Oct", "Thu 8 Oct"]);
    await expectWellMade(page, `evenings-late-${size}`);

    // Coats 2 and 3 went on that same night: two are left, and they fit into Wednesday.
    for (const [coat, at] of [
      [2, "20:40"],
      [3, "23:10"],
    ] as const) {
      await itIs(page, "06", at);
      await page.reload();
      await page.getByRole("button", { name: `Coat ${coat} is on` }).click();
      await page.getByText(`Coat ${coat} is written down.`).waitFor();
    }
    await page
      .getByRole("heading", { name: /the rest could end on Wed 7 Oct instead of Thu 8 Oct/ })
      .waitFor();
    await page.getByRole("button", { name: "Plan the rest from now" }).click();
    await page.getByText("The rest is planned anew. It ends on Wed 7 Oct instead of Thu 8 Oct.").waitFor();
    expect(await rows(page)).toEqual(["Mon 5 Oct", "Tue 6 Oct", "Wed 7 Oct"]);
    await leaveQuiet(seen);
    await house.leave();
  });
});

describe.each(Object.keys(sizes) as Size[])("the evenings of a trial on a %s", (size) => {
  test("what is left to coat goes into the evenings that one has, an evening is left out, they are kept", {
    timeout: 180_000,
  }, async () => {
    const seen = await demo(size);
    const { page } = seen;
    await page.goto("/trials");
    await page
      .getByRole("link", { name: /n-propanol/ })
      .first()
      .click();
    await page.getByRole("link", { name: "Plan its evenings" }).click();
    await page.getByRole("heading", { name: "When are you free?" }).waitFor();
    await page.getByText(/^The last coat is done on/).waitFor();
    await page.getByLabel("First evening").fill("2030-03-04");
    await page.getByLabel("Until").fill("21:30");
    // The running trial of the demo has four padded coats left from four jars; three fit into an evening of three hours.
    await page.getByText(/^The last coat is done on Tue 5 Mar, .*, on two evenings\.$/).waitFor();
    await page.getByText("Nothing ends earlier, takes fewer evenings or waits less.").waitFor();
    expect(await rows(page)).toEqual(["Mon 4 Mar", "Tue 5 Mar"]);
    await expectWellMade(page, `trial-evenings-${size}`);
    // By hand: four jars of six minutes and three changes of ten are 54, the next coat an hour after the last: D is done with coat 6
    // at 22:12, 42 minutes after the evening, so that a quarter past five is the latest start in steps of five minutes.
    await page.getByRole("heading", { name: "Six patches come due while you are asleep" }).waitFor();
    await page
      .getByText(/B 6, C 6 and D 6 may go on from 21:34 to 22:06; Mon 4 Mar ends at 21:30\./)
      .waitFor();
    await page.getByRole("button", { name: "Start at 17:15" }).click();
    await page.getByText(/^The last coat is done on Mon 4 Mar, .*, on one evening\.$/).waitFor();
    await page.getByText("Mon 4 Mar begins at 17:15.").waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("img", { name: /^Tue 5 Mar/ }).waitFor();
    const move = async (day: string) => {
      await page.getByRole("button", { name: `Move the evening of ${day}` }).click();
      await expectWellMade(page, `trial-evenings-move-${size}`);
    };
    await move("Tue 5 Mar");
    await page.getByRole("button", { name: "Move it, the rest follows" }).click();
    await page.getByText("It is there already").waitFor();
    await page.getByLabel("To which day?").fill("2030-03-09");
    await page.getByRole("button", { name: "Move it, the rest follows" }).click();
    await page.getByText("The evening of Tue 5 Mar is moved.").waitFor();
    await page.getByRole("img", { name: /^Wed 6 Mar/ }).waitFor();
    expect(await rows(page)).toEqual(["Mon 4 Mar", "Wed 6 Mar"]);
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("img", { name: /^Tue 5 Mar/ }).waitFor();

    const taken = await takenTo(page);
    await move("Tue 5 Mar");
    await page.getByRole("button", { name: "Not on Tue 5 Mar at all" }).click();
    await page.getByRole("img", { name: /^Wed 6 Mar/ }).waitFor();
    const again = await takenTo(page);
    expect(taken.map((e) => e.start)).toEqual(["2030-03-04T18:00:00", "2030-03-05T18:00:00"]);
    expect(again.map((e) => e.start)).toEqual(["2030-03-04T18:00:00", "2030-03-06T18:00:00"]);
    expect(again.map((e) => e.sequence)).toEqual(taken.map((e) => e.sequence + 1));
    expect(again.map((e) => e.uid)).toEqual(taken.map((e) => e.uid));
    // On paper: the evenings with blanks, and no field.
    await page.emulateMedia({ media: "print" });
    expect(await page.getByRole("columnheader", { name: "Began" }).count()).toBe(2);
    expect(await page.getByLabel("First evening").isVisible()).toBe(false);
    await page.emulateMedia({ media: "screen" });
    await page.getByLabel("Minutes for one patch").fill("0");
    await page.getByText("0.5 to 120 minutes would do.").waitFor();
    await page.getByLabel("Minutes for one patch").fill("3");
    await page.getByLabel("Until").fill("18:05");
    await page.getByRole("heading", { name: "This cannot be planned yet" }).waitFor();
    await page
      .getByText(
        "takes 6 minutes in one go, and the longest evening has 5. An evening of 6 minutes would do.",
      )
      .waitFor();
    await page.getByLabel("Until").fill("20:00");
    await page.getByRole("img", { name: /^Wed 6 Mar/ }).waitFor();
    await page.getByRole("button", { name: "Keep these evenings" }).click();
    await page.getByText("These evenings are kept").waitFor();
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await page.reload();
    await page.getByRole("img", { name: /^Mon 4 Mar/ }).waitFor();
    expect(await rows(page)).not.toContain("Tue 5 Mar");
    await leaveQuiet(seen);
  });
});
