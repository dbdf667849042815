import { describe, expect, test } from "vitest";
import { jarOf } from "./air-notebook.ts";
import { Desk } from "./bench-notebook.ts";
import { houseVisits } from "./house-visits.ts";
import { expectWellMade, leaveQuiet } from "./looks.ts";
import { type Size, sizes } from "./rig.ts";

/** A jar that was mixed 8000 minutes ago; half of what is left goes every 40 hours. */
function dissolvingJar(): { readonly desk: Desk; readonly jar: string } {
  const desk = new Desk();
  desk.write(9100, "notebook-begun", { name: "Dissolving" });
  const jar = jarOf(desk, "L4", { alcohol: "ethanol", volumeFraction: 0.96 });
  return { desk, jar };
}
const look = (desk: Desk, jar: string, minutesAgo: number, percent: number) =>
  desk.write(
    minutesAgo,
    "batch-looked-at",
    {
      undissolved: "some",
      undissolvedShare: { typed: `${percent} %`, unit: "percent", si: percent / 100 },
    },
    [jar],
  );

describe.each(Object.keys(sizes) as Size[])("a jar in which flakes dissolve on a %s", (size) => {
  const { desk, jar } = dissolvingJar();
  look(desk, jar, 8000 - 80 * 60, 25);
  const { come } = houseVisits((address) => desk.send(address));

  test("one look tells how much is left; with more, when little is left, until nothing is", {
    timeout: 90_000,
  }, async () => {
    const seen = await come(size);
    const { page } = seen;
    await page.goto(`/jars/${jar}`);
    await page.getByText("about 25 % was still there, by eye. One more look").waitFor();
    const iLook = async (undissolved: string, share?: string) => {
      await page.getByRole("button", { name: "Look at it" }).first().click();
      await page.getByText(undissolved, { exact: true }).click();
      if (share !== undefined) await page.getByLabel(/^How much of the flakes, about/).fill(share);
      await page.getByRole("button", { name: "I looked" }).click();
    };
    await iLook("Some", "130 %");
    await page.getByText("“130 %” is out of range").waitFor(); // and nothing is written
    await page.getByLabel(/^How much of the flakes, about/).fill("10 %");
    await expectWellMade(page, `look-share-${size}`);
    await page.getByRole("button", { name: "I looked" }).click();
    // By hand: 133 hours are 3.3 halvings, so 10 %; 2 % after 226 hours, about 92 from now.
    const says = page.getByText(
      /^about 10 % was still there, by eye\. At this pace all but 2 % is dissolved/,
    );
    await says.waitFor();
    const inFourDays = new Date(Date.now() + 92 * 3_600_000).toLocaleDateString("en-GB", {
      ...{ timeZone: "Europe/Berlin", weekday: "short", day: "numeric", month: "short" },
    });
    const [weekday, day] = inFourDays.split(/[, ]+/);
    expect(await says.textContent()).toMatch(
      new RegExp(`is dissolved ${weekday} ${day} .*: between .*, if a look by eye is off by 5 %`),
    );
    await expectWellMade(page, `dissolving-${size}`);
    await iLook("None");
    await says.waitFor({ state: "detached" });
    await leaveQuiet(seen);
  });
});
