import { type CalendarDay, daysLater, weekday } from "./calendar-day.ts";

/** Which days of the week the person has. */
export const eveningChoices = ["every", "weekends", "weekdays"] as const;
export type EveningChoice = (typeof eveningChoices)[number];

const suits: Record<EveningChoice, (day: CalendarDay) => boolean> = {
  every: () => true,
  weekends: (day) => weekday(day) >= 5,
  weekdays: (day) => weekday(day) < 5,
};

/** Enough evenings for forty coats; the plan takes what it needs. */
const most = 60;

/** Windows for the plan, from the first evening on. */
export function windowsFrom(
  first: CalendarDay,
  choice: EveningChoice,
  from: string,
  until: string,
): [string, string][] {
  const days: CalendarDay[] = [];
  for (let day = first; days.length < most; day = daysLater(day, 1)) if (suits[choice](day)) days.push(day);
  return days.map((day) => [`${day}T${from}`, `${day}T${until}`]);
}
