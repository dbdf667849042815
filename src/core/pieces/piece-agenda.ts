import type { Agenda, AgendaTask, AgendaWait } from "../schedule/agenda.ts";
import type { Shop } from "./bench-room.ts";
import type { Span } from "./evening.ts";
import { beforeOnSurface, type Lane, type Place, type Task } from "./task.ts";

/** A part of the work of a task, and where it stands among all. */
export interface Part {
  readonly lane: number;
  readonly task: number;
  readonly part: number;
}

/** What a part is called in the agenda. */
export const nameOf = ({ lane, task, part }: Part): string => `${lane} ${task} ${part}`;
const driesOf = (part: Part): string => `${nameOf(part)} dries`;

/** Waits before a task of a lane: for the work before on its surface, and for the side before it to be lain on. */
function waitsBefore(lane: number, tasks: readonly Task[], i: number, lastPart: number[]): AgendaWait[] {
  const to = nameOf({ lane, task: i, part: 0 });
  const before = beforeOnSurface(tasks, i);
  const from = (task: number): string => nameOf({ lane, task, part: lastPart[task] as number });
  const waits: AgendaWait[] = [];
  const earlier = tasks[before];
  if (earlier !== undefined)
    waits.push({
      from: from(before),
      to,
      leastMinutes: earlier.leastWait,
      mostMinutes: earlier.mostWait === Number.POSITIVE_INFINITY ? null : earlier.mostWait,
      otherWindow: earlier.overnight,
    });
  const previous = tasks[i - 1];
  if (previous !== undefined && before !== i - 1)
    waits.push({ from: from(i - 1), to, leastMinutes: previous.turn, mostMinutes: null });
  return waits;
}

/** The lanes as an agenda, with long work in the parts that it has; minutes from the first evening. */
export function pieceAgenda(
  lanes: readonly Lane[],
  places: readonly (readonly Place[])[],
  evenings: readonly Span[],
  shop: Shop,
) {
  const origin = evenings[0]?.opens ?? 0;
  const isShort = lanes.length > shop.places;
  const tasks: AgendaTask[] = [];
  const waits: AgendaWait[] = [];
  const parts: Part[] = [];
  lanes.forEach(({ tasks: work, ready }, lane) => {
    const lastPart = (places[lane] ?? []).map((place) => place.parts.length - 1);
    work.forEach((task, i) => {
      const holds = isShort && task.what === "coat" ? { place: 1 } : {};
      places[lane]?.[i]?.parts.forEach(({ minutes }, part) => {
        const own = { lane, task: i, part };
        const notBefore = Math.max(0, (ready?.get(task.surface) ?? origin) - origin);
        parts.push(own);
        tasks.push({ task: nameOf(own), minutes, hands: true, needs: holds, notBefore });
        if (part > 0)
          waits.push({
            from: nameOf({ ...own, part: part - 1 }),
            to: nameOf(own),
            leastMinutes: 0,
            mostMinutes: null,
          });
      });
      waits.push(...waitsBefore(lane, work, i, lastPart));
    });
  });
  const taskOf = ({ lane, task }: Part): Task => lanes[lane]?.tasks[task] as Task; // a part is of a task
  const drying = isShort ? parts.filter((own) => taskOf(own).what === "coat" && taskOf(own).dries > 0) : [];
  for (const own of drying) {
    const minutes = taskOf(own).dries;
    tasks.push({ task: driesOf(own), minutes, hands: false, needs: { place: 1 }, notBefore: 0 });
    waits.push({ from: nameOf(own), to: driesOf(own), leastMinutes: 0, mostMinutes: 0 });
  }
  const agenda: Agenda = {
    tasks,
    waits,
    capacity: { person: shop.hands, ...(isShort ? { place: shop.places } : {}) },
    windows: evenings.map(({ opens, closes }) => [opens - origin, closes - origin] as const),
  };
  return { agenda, parts, drying, origin };
}
