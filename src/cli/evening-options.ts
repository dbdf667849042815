import { calendarDay } from "../core/pieces/calendar-day.ts";
import { type EveningChoice, eveningChoices, windowsFrom } from "../core/pieces/free-evenings.ts";
import type { OptionSpecs } from "./command.ts";
import { optionRefused } from "./factor-options.ts";
import type { ShopOptions } from "./shop-options.ts";

/** Options that say when somebody is at the bench. */
export const eveningOptions = {
  evenings: {
    type: "string",
    value: "18:00-21:00",
    description: "hours at the bench; from 18:00 to 21:00 unless told",
  },
  days: {
    type: "string",
    value: "every",
    description: `which days: ${eveningChoices.join(", ")}; every one unless told`,
  },
  first: { type: "string", value: "2026-10-05", description: "the first evening; today's unless told" },
  zone: {
    type: "string",
    value: "NAME",
    description: "whose clocks, as Europe/Berlin; your own unless told",
  },
} as const satisfies OptionSpecs;

const hours = /^\s*(\d{1,2}:\d{2})\s*(?:-|–|to)\s*(\d{1,2}:\d{2})\s*$/;
const isChoice = (text: string): text is EveningChoice =>
  (eveningChoices as readonly string[]).includes(text);

/** Windows for a plan, from and until, by the clock on the wall. */
export function windowsTyped(typed: ShopOptions, today: string): [string, string][] {
  const evenings = typed.text("evenings") ?? "18:00-21:00";
  const [, from, until] = hours.exec(evenings) ?? [];
  if (from === undefined || until === undefined) throw optionRefused("evenings", evenings, "18:00-21:00");
  const days = typed.text("days") ?? "every";
  if (!isChoice(days)) throw optionRefused("days", days, eveningChoices.join(" or "));
  const first = calendarDay(typed.text("first") ?? today, "--first");
  return windowsFrom(first, days, from.padStart(5, "0"), until.padStart(5, "0"));
}
