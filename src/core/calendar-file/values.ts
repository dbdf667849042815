import type { ContentLine } from "./content-lines.ts";

const dayForm = /^(\d{4})(\d{2})(\d{2})$/;
const timeForm = /^(\d{8})T([01]\d|2[0-3])([0-5]\d)([0-5]\d|60)(Z?)$/;
const time = "(?:\\d+H(?:\\d+M(?:\\d+S)?)?|\\d+M(?:\\d+S)?|\\d+S)";
const durationForm = new RegExp(`^[+-]?P(?:\\d+W|\\d+D(?:T${time})?|T${time})$`);

/** A duration, as PT1H30M. RFC 5545, section 3.3.6. */
export const isDuration = (text: string): boolean => durationForm.test(text);

/** A day that is in the calendar, as 20260302. */
export function isDay(text: string): boolean {
  const [year = 0, month = 0, day = 0] = (dayForm.exec(text) ?? []).slice(1).map(Number);
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const longest = [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return day >= 1 && day <= longest;
}

/** A time of a day that is in the calendar, as 20260302T090000, with or without Z. */
export const isTime = (text: string): boolean => isDay(timeForm.exec(text)?.[1] ?? "");
/** The same in UTC. */
export const isUtcTime = (text: string): boolean => isTime(text) && text.endsWith("Z");

export type TimeType = "DATE" | "DATE-TIME" | "PERIOD" | "DURATION";

/** What kind of time a line says that it holds. */
export function timeType(line: ContentLine): TimeType {
  const said = line.params.VALUE?.[0]?.toUpperCase();
  if (said === "DATE" || said === "PERIOD" || said === "DURATION" || said === "DATE-TIME") return said;
  return line.name === "TRIGGER" ? "DURATION" : "DATE-TIME";
}

/** A period: a time, and a time or a duration after it. */
export function isPeriod(text: string): boolean {
  const [from = "", to = ""] = text.split("/");
  return isTime(from) && (isTime(to) || isDuration(to));
}

/** Hours since the year 0, near enough to compare: a month counts 31 days. Undefined for what is no time. */
export function hourOf(text: string): number | undefined {
  if (!isDay(text) && !isTime(text)) return undefined;
  const part = (from: number, to: number): number => Number(text.slice(from, to) || "0");
  const day = (part(0, 4) * 12 + part(4, 6)) * 31 + part(6, 8);
  return day * 24 + part(9, 11) + part(11, 13) / 60 + part(13, 15) / 3600;
}
