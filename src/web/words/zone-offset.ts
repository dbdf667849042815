/** Minutes by which a zone is ahead of UTC at an instant. */
export function zoneOffset(instant: string, zone: string): number {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
  }).formatToParts(new Date(instant));
  const of = (type: string) => Number(parts.find((p) => p.type === type)?.value);
  const local = Date.UTC(of("year"), of("month") - 1, of("day"), of("hour"), of("minute"));
  return Math.round((local - Math.floor(Date.parse(instant) / 60_000) * 60_000) / 60_000);
}
