/** When something comes due that nobody is there for; at night somebody is asleep. */
export function whenDue(hour: number, isInTime: boolean): string {
  if (isInTime) return "too late to be done that evening";
  return hour >= 22 || hour < 6 ? "while you are asleep" : "after you have stopped";
}
