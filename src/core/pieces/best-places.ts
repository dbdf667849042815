import { measured } from "../schedule/good-agenda.ts";
import { layAgenda } from "../schedule/lay-agenda.ts";
import { type AgendaSearch, type ProvenGoals, planAgenda } from "../schedule/plan-agenda.ts";
import { compareMeasures, type Measures } from "../schedule/plan-measures.ts";
import type { Shop } from "./bench-room.ts";
import type { Span } from "./evening.ts";
import { nameOf, type Part, pieceAgenda } from "./piece-agenda.ts";
import type { Lane, Place } from "./task.ts";

export interface BestPlaces {
  readonly places: readonly (readonly Place[])[];
  /** The goals for which no plan is better that divides long work as this one does. */
  readonly provenBest: ProvenGoals | null;
}

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

/** An earlier end, or fewer evenings. Less waiting is worth it on one thing; with several it would mean going to and fro between them. */
const compared = (lanes: readonly Lane[], a: Measures, b: Measures): number =>
  lanes.length === 1 ? compareMeasures(a, b) : a.finish - b.finish || a.sessions - b.sessions;

/** Things that are alike are worked in their order. */
function inOrder(
  lanes: readonly Lane[],
  places: readonly (readonly Place[])[],
): readonly (readonly Place[])[] {
  const alike = new Map<string, number[]>();
  lanes.forEach(({ tasks, ready }, lane) => {
    const first = tasks[0]?.surface ?? 0;
    const key = ready === undefined ? tasks.map((t) => ({ ...t, surface: t.surface - first })) : lane;
    const same = JSON.stringify(key);
    alike.set(same, [...(alike.get(same) ?? []), lane]);
  });
  const ordered = [...places];
  for (const same of alike.values()) {
    const begins = (list: readonly Place[]): number => list[0]?.parts[0]?.from ?? 0;
    const sorted = same.map((lane) => places[lane] ?? []).sort((a, b) => begins(a) - begins(b));
    same.forEach((lane, i) => {
      ordered[lane] = sorted[i] ?? [];
    });
  }
  return ordered;
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
  const { agenda, parts, drying, origin } = pieceAgenda(lanes, known, evenings, shop);
  const laid = layAgenda(agenda);
  const knownAt = ({ lane, task, part }: Part) => known[lane]?.[task]?.parts[part] as Place["parts"][number]; // the parts are made of it
  const begins = parts.map((part) => knownAt(part).from - origin);
  const dries = drying.map((part) => knownAt(part).from + knownAt(part).minutes - origin);
  const before = measured(laid, Int32Array.from([...begins, ...dries]));
  const { plan, provenBest, lowerBound } = planAgenda(laid, search);
  if (plan === undefined || compared(lanes, plan, before) > 0)
    return { places: known, provenBest: before.finish <= lowerBound ? "finish" : null };
  if (compared(lanes, plan, before) === 0) {
    const isAll = before.idleMinutes <= plan.idleMinutes;
    return {
      places: known,
      provenBest: provenBest === "all goals" && !isAll ? "finish and sessions" : provenBest,
    };
  }
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
  return { places: inOrder(lanes, places), provenBest };
}
