import type { CalendarEvent } from "./write-calendar.ts";

/**
 * Events that earlier files had and this one has not, cancelled: a calendar that took them in lets go of them.
 *
 * @param events   as they stand now (n)
 * @param earlier  as they stood, oldest first (m)
 * @returns        the ones that fell away, each as it stood last
 * @throws DomainError never
 *
 * Source: RFC 5545, section 3.8.1.11
 */
export function fallenAway(
  events: readonly CalendarEvent[],
  earlier: readonly CalendarEvent[],
): CalendarEvent[] {
  const last = new Map(earlier.map((event) => [event.uid, event]));
  for (const { uid } of events) last.delete(uid);
  return [...last.values()].map((event) => ({ ...event, cancelled: true }));
}
