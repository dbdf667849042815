import { expect } from "vitest";
import type { House } from "../rig.ts";
import { coatAll, readAir } from "./bench.ts";
import { entryTexts } from "./notebook.ts";
import { comeIn, reads, type Shop, shot } from "./shop.ts";

/**
 * The third evening: the server is killed between two coats. What it had answered is there after it, and what was
 * written without it arrives.
 */
export async function thirdEvening(shop: Shop, house: House): Promise<void> {
  const { page } = shop;
  await comeIn(shop, "2026-10-08", "19:00", "/bench");
  let answered: readonly string[] = [];
  await coatAll(shop, 3, async () => {
    await reads(page, "All in the notebook");
    answered = await entryTexts(house.address);
    // Three coats on each of two evenings, one of them undone and written again, and the first of this one.
    expect(answered.filter((text) => text.includes('"layer-applied"'))).toHaveLength(8);
    await house.kill();
  });
  await readAir(shop);
  await reads(page, "Kept here, 3 to send");
  await shot(shop, "without-the-server");

  await house.start();
  const found = await entryTexts(house.address);
  expect(found.slice(0, answered.length)).toEqual(answered);
  await page.clock.fastForward("01:00"); // no longer to the next try than a minute
  await reads(page, "All in the notebook");
  expect(await entryTexts(house.address)).toHaveLength(answered.length + 3);
}
