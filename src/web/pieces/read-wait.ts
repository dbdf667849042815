const units: readonly (readonly [RegExp, number])[] = [
  [/^(min|mins|minute|minutes)?$/, 1],
  [/^(h|hr|hrs|hour|hours)$/, 60],
  [/^(d|day|days)$/, 1440],
  [/^(w|week|weeks)$/, 7 * 1440],
];

/** Minutes of `15 min`, `2 h`, `1 h 30 min`, `14 days`; a bare number is minutes. Undefined for what is no length of time. */
export function readWait(typed: string): number | undefined {
  const text = typed.trim().toLowerCase();
  const parts = [...text.matchAll(/(\d+(?:[.,]\d+)?)\s*([a-z]*)/g)];
  if (parts.length === 0 || text.replace(/(\d+(?:[.,]\d+)?)\s*([a-z]*)/g, "").trim() !== "") return undefined;
  let minutes = 0;
  for (const [, number = "", unit = ""] of parts) {
    const factor = units.find(([name]) => name.test(unit))?.[1];
    if (factor === undefined) return undefined;
    minutes += Number(number.replace(",", ".")) * factor;
  }
  return Math.round(minutes);
}

/** As one would type it: `15 min`, `1 h 30 min`, `14 days`. */
export function waitTyped(minutes: number): string {
  if (minutes >= 1440 && minutes % 1440 === 0) return minutes === 1440 ? "1 day" : `${minutes / 1440} days`;
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
