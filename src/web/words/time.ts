/** Instants in words, in the zone they are read in. The zone is an argument so that tests and prints are the same everywhere. */
const formats = new Map<string, Intl.DateTimeFormat>();
function format(zone: string, name: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${zone} ${name}`;
  const made = formats.get(key) ?? new Intl.DateTimeFormat("en-GB", { ...options, timeZone: zone });
  formats.set(key, made);
  return made;
}
const part = (parts: readonly Intl.DateTimeFormatPart[], type: string): string =>
  parts.find((p) => p.type === type)?.value ?? "";

/** `2026-10-14` in that zone. */
export const dayOf = (instant: string, zone: string): string => {
  const parts = format(zone, "iso", { year: "numeric", month: "2-digit", day: "2-digit" }).formatToParts(
    new Date(instant),
  );
  return `${part(parts, "year")}-${part(parts, "month")}-${part(parts, "day")}`;
};

/** `19:42` */
export const clock = (instant: string, zone: string): string =>
  format(zone, "clock", { hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(new Date(instant));

/** `Tue 14 Oct`, with the year when it is not `now`'s. */
export function dayInWords(instant: string, zone: string, now?: string): string {
  const parts = format(zone, "day", {
    weekday: "short",
    day: "numeric",
    month: "short",
    year: "numeric",
  }).formatToParts(new Date(instant));
  const year = part(parts, "year");
  const short = `${part(parts, "weekday")} ${part(parts, "day")} ${part(parts, "month").slice(0, 3)}`;
  return now !== undefined && dayOf(now, zone).startsWith(year) ? short : `${short} ${year}`;
}

/** `20:25` today, `tomorrow 08:10`, `Thu 16 Oct, 18:00` otherwise. */
export function whenInWords(instant: string, zone: string, now: string): string {
  const day = dayOf(instant, zone);
  if (day === dayOf(now, zone)) return clock(instant, zone);
  const tomorrow = new Date(Date.parse(now) + 86_400_000).toISOString();
  if (day === dayOf(tomorrow, zone)) return `tomorrow ${clock(instant, zone)}`;
  const yesterday = new Date(Date.parse(now) - 86_400_000).toISOString();
  if (day === dayOf(yesterday, zone)) return `yesterday ${clock(instant, zone)}`;
  return `${dayInWords(instant, zone, now)}, ${clock(instant, zone)}`;
}

/** When an entry happened, no better than it is known: `about 19:30`, `yesterday`, with a word for what is remembered. */
export function happenedInWords(
  entry: {
    readonly happened: string;
    readonly happenedKnownTo: string;
    readonly remembered?: boolean | undefined;
  },
  zone: string,
  now: string,
): string {
  const known = {
    minute: () => whenInWords(entry.happened, zone, now),
    hour: () => whenInWords(entry.happened, zone, now).replace(/\d\d:\d\d$/, "about $&"),
    day: () => dayAsSaid(entry.happened, zone, now),
  }[entry.happenedKnownTo];
  const said = known === undefined ? "at a time not known" : known();
  return entry.remembered === true ? `${said} (remembered)` : said;
}

function dayAsSaid(instant: string, zone: string, now: string): string {
  const day = dayOf(instant, zone);
  if (day === dayOf(now, zone)) return "today";
  const yesterday = new Date(Date.parse(now) - 86_400_000).toISOString();
  return day === dayOf(yesterday, zone) ? "yesterday" : dayInWords(instant, zone, now);
}

/** A stretch of time as one says it: `40 minutes`, `3 h 20 min`, `2 days`. */
export function lengthInWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 1) return "less than a minute";
  if (whole < 60) return whole === 1 ? "1 minute" : `${whole} minutes`;
  if (whole < 48 * 60) {
    const rest = whole % 60;
    return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${rest} min`;
  }
  return `${Math.round(whole / 1440)} days`;
}

/** How long ago a calendar day was, as one says it: `today`, `10 days ago`, `6 weeks ago`, `3 months ago`, `2 years ago`. */
export function agoInWords(day: string, today: string): string {
  const days = Math.round((Date.parse(today) - Date.parse(day)) / 86_400_000);
  if (days <= 0) return "today";
  if (days === 1) return "yesterday";
  if (days < 21) return `${days} days ago`;
  if (days < 91) return `${Math.round(days / 7)} weeks ago`;
  if (days < 731) return `${Math.round(days / 30.44)} months ago`;
  return `${Math.floor(days / 365.25)} years ago`;
}
