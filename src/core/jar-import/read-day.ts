import { type CalendarDay, calendarDay } from "../pieces/calendar-day.ts";

/** How a date of three numbers is written. */
export const dayOrders = ["year-month-day", "day-month-year", "month-day-year"] as const;
export type DayOrder = (typeof dayOrders)[number];

const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

interface Numbers {
  readonly parts: readonly [string, string, string];
  readonly dotted: boolean;
}

function numbersIn(text: string): Numbers | undefined {
  const found = /^(\d{1,4})([./-]) ?(\d{1,2})\2 ?(\d{1,4})$/.exec(text.trim());
  const [, a, mark, b, c] = found ?? [];
  return a === undefined || b === undefined || c === undefined
    ? undefined
    : { parts: [a, b, c], dotted: mark === "." };
}

/** The orders that one text allows; all three for one that is not of numbers. */
function ordersOf(text: string): readonly DayOrder[] {
  const numbers = numbersIn(text);
  if (numbers === undefined) return dayOrders;
  const [first, second] = numbers.parts;
  if (first.length === 4) return ["year-month-day"];
  if (numbers.dotted || Number(first) > 12) return ["day-month-year"];
  return Number(second) > 12 ? ["month-day-year"] : ["day-month-year", "month-day-year"];
}

/** The one order that all dates of a column allow; null when they allow more than one, or none. */
export function dayOrderOf(texts: readonly string[]): DayOrder | null {
  const allowed = texts.reduce<readonly DayOrder[]>(
    (left, text) => left.filter((order) => ordersOf(text).includes(order)),
    dayOrders,
  );
  const written = texts.some((text) => numbersIn(text) !== undefined);
  if (!written) return "year-month-day"; // named months say it themselves
  return allowed.length === 1 ? (allowed[0] as DayOrder) : null;
}

/** Two digits are of this century. */
const fullYear = (year: string): number => (year.length <= 2 ? 2000 + Number(year) : Number(year));

function dayOf(year: number, month: number, day: number): CalendarDay | undefined {
  const text = `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
  try {
    return calendarDay(text);
  } catch {
    return undefined; // not in the calendar: the only thing that it throws for
  }
}

/** `5 Oct 2026`, `Oct 5, 2026`. */
function withMonthName(text: string): CalendarDay | undefined {
  const words = text
    .toLowerCase()
    .replace(/(\d)(st|nd|rd|th)\b/g, "$1")
    .split(/[ ,./-]+/)
    .filter(Boolean);
  const month = words.findIndex((word) => months.includes(word.slice(0, 3)) && /^[a-z]+$/.test(word));
  const numbers = words.filter((word) => /^\d+$/.test(word));
  const [day, year] = numbers;
  if (month < 0 || words.length !== 3 || day === undefined || year === undefined) return undefined;
  return dayOf(fullYear(year), months.indexOf((words[month] as string).slice(0, 3)) + 1, Number(day));
}

/** A date as lists have it, in the order that its column has; undefined for one that is none. */
export function readDay(text: string, order: DayOrder): CalendarDay | undefined {
  const numbers = numbersIn(text);
  if (numbers === undefined) return withMonthName(text);
  const [a, b, c] = numbers.parts;
  if (a.length === 4) return dayOf(Number(a), Number(b), Number(c));
  if (order === "year-month-day") return undefined;
  return order === "day-month-year"
    ? dayOf(fullYear(c), Number(b), Number(a))
    : dayOf(fullYear(c), Number(a), Number(b));
}
