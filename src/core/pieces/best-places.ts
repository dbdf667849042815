import type { Agenda, AgendaTask, AgendaWait } from "../schedule/agenda.ts";
import { measured } from "../schedule/good-agenda.ts";
import { layAgenda } from "../schedule/lay-agenda.ts";
import { type AgendaSearch, type ProvenGoals, planAgenda } from "../schedule/plan-agenda.ts";
import { compareMeasures } from "../schedule/plan-measures.ts";
import type { Shop } from "./bench-room.ts";
import type { Span } from "./evening.ts";
import { beforeOnSurface, type Lane, type Place, type Task } from "./task.ts";

export interface BestPlaces {
  readonly places: readonly (readonly Place[])[];
  /** The goals for which no plan is better that divides long work as this one does. */
  readonly provenBest: ProvenGoals | null;
}

/** A part of the work of a task, and where it stands among all. */
interface Part {
  readonly lane: number;
  readonly task: number;
  readonly part: number;
}

const nameOf = ({ lane, task, part }: Part): string => `${lane} ${task} ${part}`;
const driesOf = (part: Part): string => `${nameOf(part)} dries`;

/** What is held since before, and a side that is turned onto while it still dries, have no place in an agenda. */
function canBeAgenda(lanes: readonly Lane[], isShort: boolean): boolean {
  if (!isShort) return true;
  return lanes.every(
    ({ tasks, heldUntil }) =>
      heldUntil === undefined &&
      (new Set(tasks.map(({ surface }) => surface)).size < 2 ||
        tasks.every(({ turn, dries }) => turn >= dries)),
  );
}

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
function agendaOf(
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

/**
 * The same work, planned as early, in as few evenings and with as little waiting at the bench as a search finds.
 *
 * @param lanes     each with its tasks in order
 * @param evenings  in order, none overlapping
 * @param shop      people, and places to dry
 * @param known     where everything went by `placeTasks`, with nothing left
 * @param search    how long, and when to stop
 * @returns         places that are no worse, and for which goals none are better
 */
export function bestPlaces(
  lanes: readonly Lane[],
  evenings: readonly Span[],
  shop: Shop,
  known: readonly (readonly Place[])[],
  search: AgendaSearch,
): BestPlaces {
  if (!canBeAgenda(lanes, lanes.length > shop.places)) return { places: known, provenBest: null };
  const { agenda, parts, drying, origin } = agendaOf(lanes, known, evenings, shop);
  const laid = layAgenda(agenda);
  const knownAt = ({ lane, task, part }: Part) => known[lane]?.[task]?.parts[part] as Place["parts"][number]; // the parts are made of it
  const begins = parts.map((part) => knownAt(part).from - origin);
  const dries = drying.map((part) => knownAt(part).from + knownAt(part).minutes - origin);
  const before = measured(laid, Int32Array.from([...begins, ...dries]));
  const { plan, provenBest, lowerBound } = planAgenda(laid, search);
  if (plan === undefined || compareMeasures(plan, before) > 0)
    return { places: known, provenBest: before.finish <= lowerBound ? "finish" : null };
  if (compareMeasures(plan, before) === 0) return { places: known, provenBest };
  const starts = new Map(parts.map((part, k) => [nameOf(part), origin + (plan.starts[k] as number)]));
  const places = known.map((list, lane) =>
    list.map((place, task): Place => {
      const moved = place.parts.map(({ minutes }, part) => {
        const from = starts.get(nameOf({ lane, task, part })) as number;
        return { evening: evenings.findIndex(({ closes }) => from < closes), from, minutes };
      });
      const last = moved.at(-1) as Place["parts"][number]; // nothing is left of it
      return { parts: moved, left: 0, evening: last.evening, end: last.from + last.minutes };
    }),
  );
  return { places, provenBest };
}
