import type { Page } from "playwright-core";
import type { Size, Visit } from "../rig.ts";
import { picture } from "../rig.ts";

/** Who works at the bench, and the clock on the wall of the shop. */
export interface Shop {
  readonly seen: Visit;
  readonly page: Page;
  readonly size: Size;
}

/** Berlin keeps summer time until 25 October 2026. */
const offset = (day: string): string => (day < "2026-10-25" ? "+02:00" : "+01:00");

/** The page is opened at this hour of this day, as on any evening. */
export async function comeIn({ page }: Shop, day: string, at: string, path: string): Promise<void> {
  await page.clock.setSystemTime(new Date(`${day}T${at}:00${offset(day)}`));
  await page.goto(path);
}

export async function goTo({ page }: Shop, place: string): Promise<void> {
  await page.getByRole("navigation").getByRole("link", { name: place, exact: true }).click();
}

/** Words that stand on the page somewhere in sight. */
export async function reads(page: Page, ...texts: readonly (string | RegExp)[]): Promise<void> {
  for (const text of texts) await page.getByText(text).filter({ visible: true }).first().waitFor();
}

/** Chooses the one option of a list that begins so. */
export async function choose(page: Page, list: string | RegExp, begins: string): Promise<void> {
  const select = page.getByRole("combobox", { name: list, exact: true });
  const option = select.locator("option").filter({ hasText: new RegExp(`^${begins}`) });
  await select.selectOption(await option.getAttribute("value"));
}

export const shot = ({ page, size }: Shop, name: string): Promise<void> =>
  picture(page, `whole-path-${name}-${size}`);
