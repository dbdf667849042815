/** Whole or part minutes as typed; undefined where nothing is, `wrong` where it is no length of time. */
export function readMinutes(typed: string): number | "wrong" | undefined {
  if (typed.trim() === "") return undefined;
  const value = Number(typed.trim().replace(",", "."));
  return value > 0 && value <= 1440 ? value : "wrong";
}
