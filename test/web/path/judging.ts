import { hexToBytes } from "@noble/hashes/utils.js";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { openKey, type SealedKey } from "../../../src/core/notebook/blind-key.ts";
import type { TrialKey } from "../../../src/core/notebook/trial-key.ts";
import { entryTexts } from "./notebook.ts";
import { comeIn, reads, type Shop, shot } from "./shop.ts";

interface Patch {
  readonly code: string;
  readonly board: string;
}

/** This device's half of a sealed key, where the page keeps it. */
const keptHere = (page: Page, keySha256: string): Promise<string> =>
  page.evaluate(
    (name) =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open("lacbench-keys");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const asked = opening.result.transaction("keys").objectStore("keys").get(name);
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result as string);
          };
          asked.onerror = () => reject(asked.error);
        };
      }),
    keySha256,
  );

/**
 * What the gloss meter reads of each code. The page's judge sees codes alone; the world behind the meter is this
 * function, which must know what is on each patch and so opens the key as the holder could, with this device's half.
 *
 * Ethanol 50, denatured half a unit more, isopropanol 12 more; ash 3 above cherry, birch 4 below; and of the two patches
 * of an alcohol on a board one reads a unit above that and one a unit below.
 */
async function meterReadings(shop: Shop, address: string): Promise<ReadonlyMap<string, string>> {
  const bodies = (await entryTexts(address)).map(
    (text) => JSON.parse(text) as { readonly kind: string; readonly body: unknown },
  );
  const bodyOf = <T>(kind: string) => bodies.find((entry) => entry.kind === kind)?.body as T;
  const sealed = bodyOf<SealedKey>("trial-key");
  const { patches } = bodyOf<{ readonly patches: readonly Patch[] }>("trial-laid-out");
  const opened = openKey(sealed, { deviceKey: hexToBytes(await keptHere(shop.page, sealed.keySha256)) });
  if (!opened.ok) throw new Error("This device's half does not open the key.");
  const { codes } = JSON.parse(opened.value) as TrialKey;
  const alcohols: Record<string, number> = { ethanol: 50, denatured: 50.5, isopropanol: 62 };
  const woods: Record<string, number> = { cherry: 0, ash: 3, birch: -4 };
  const seen = new Set<string>();
  return new Map(
    patches.map(({ code, board }) => {
      const alcohol = codes[code]?.treatment.alcohol ?? "";
      const twin = `${board} ${alcohol}`;
      const by = seen.has(twin) ? -1 : 1;
      seen.add(twin);
      const wood = board.split(" ")[0] ?? "";
      return [code, String((alcohols[alcohol] as number) + (woods[wood] as number) + by)];
    }),
  );
}

/** Four weeks on: every patch by its code, in the order drawn. */
export async function judgeAll(shop: Shop, trial: string, address: string): Promise<void> {
  const { page } = shop;
  await comeIn(shop, "2026-11-05", "19:30", trial);
  await reads(page, "To be judged", "3 of 3 coats on every patch");
  const readings = await meterReadings(shop, address);
  expect(readings.size).toBe(18);
  await page.getByRole("link", { name: "Judge it" }).click();
  await page.getByLabel("Who judges").fill("Ada");
  await page.getByRole("button", { name: "Begin" }).click();
  for (let n = 1; n <= readings.size; n++) {
    await page.getByText(`${n} of 18`, { exact: true }).waitFor();
    const code = (await page.locator(".code-to-judge").textContent())?.trim() ?? "";
    if (n === 1) {
      await shot(shop, "judging");
      expect(await page.locator("body").textContent()).not.toMatch(/ethanol|isopropanol|denatured/i);
    }
    await page.getByLabel("Gloss units").fill(readings.get(code) ?? "");
    await page.getByRole("button", { name: "Write it down" }).click();
  }
  await reads(page, "All of them are judged");
}
