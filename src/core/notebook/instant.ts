/** Milliseconds since 1970 of a UTC instant such as 2026-10-05T18:30:00Z, with or without a fraction of a second. */
export function epochMilliseconds(instant: string): number {
  const part = (from: number, to: number): number => Number(instant.slice(from, to));
  const milliseconds = Number(instant.slice(20, -1).slice(0, 3).padEnd(3, "0"));
  const [year, month, day] = [part(0, 4), part(5, 7), part(8, 10)];
  return Date.UTC(year, month - 1, day, part(11, 13), part(14, 16), part(17, 19), milliseconds);
}

/** To the nanosecond, so that the text compares as the time does. */
const inFull = (instant: string): string => instant.slice(0, 19) + instant.slice(20, -1).padEnd(9, "0");

/** Which of two instants comes first: negative, 0 or positive. Written alike they compare as they stand. */
export function compareInstants(a: string, b: string): number {
  if (a === b) return 0;
  if (a.length === b.length) return a < b ? -1 : 1;
  const [fullA, fullB] = [inFull(a), inFull(b)];
  return fullA < fullB ? -1 : fullA > fullB ? 1 : 0;
}
