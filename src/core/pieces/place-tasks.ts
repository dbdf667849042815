import { BenchRoom, type Shop } from "./bench-room.ts";
import type { Span } from "./evening.ts";
import type { PieceToPlan } from "./piece-to-plan.ts";
import { beforeOnSurface, type Lane, type Place, type Task } from "./task.ts";

/** One person, and no want of places to dry, unless told. */
export const shopOf = ({
  hands = 1,
  dryingPlaces = Number.POSITIVE_INFINITY,
}: Pick<PieceToPlan, "hands" | "dryingPlaces">): Shop => ({
  hands,
  places: dryingPlaces,
});

/** Tasks of a lane, one after the other, that are placed before any other lane's. */
interface Block {
  readonly lane: number;
  readonly from: number;
  readonly until: number;
}

/** A lane cut wherever no most wait reaches over. */
function blocksOf({ tasks }: Lane, lane: number): Block[] {
  const starts: number[] = [];
  tasks.forEach((_, i) => {
    starts.push(i);
    const before = beforeOnSurface(tasks, i);
    if (before < 0 || tasks[before]?.mostWait === Number.POSITIVE_INFINITY) return;
    while ((starts.at(-1) ?? 0) > before) starts.pop();
  });
  return starts.map((from, k) => ({ lane, from, until: starts[k + 1] ?? tasks.length }));
}

/** The evening and the moment from which a task may begin, by what is before it in its lane. */
function startOf({ tasks, ready }: Lane, i: number, done: readonly Place[]) {
  const [task, previous] = [tasks[i] as Task, tasks[i - 1]];
  const [before, previously] = [beforeOnSurface(tasks, i), done[i - 1]];
  const [earlier, place] = [tasks[before], done[before]];
  const turned = previous === undefined || previous === earlier ? 0 : previous.turn;
  return {
    before,
    evening: Math.max(previously?.evening ?? 0, (place?.evening ?? 0) + (earlier?.overnight ? 1 : 0)),
    at: Math.max(
      ready?.get(task.surface) ?? Number.NEGATIVE_INFINITY,
      place === undefined ? Number.NEGATIVE_INFINITY : place.end + (earlier?.leastWait ?? 0),
      previously === undefined ? Number.NEGATIVE_INFINITY : previously.end + turned,
    ),
  };
}

/** Drawn waits are no whole minutes: what is later by less than this is on time, or it would be pushed for ever. */
const onTime = 1e-6;

/** How much later than may be waited after the one before. */
function tooLate(earlier: Task | undefined, place: Place | undefined, begins: number | undefined): number {
  if (earlier === undefined || place === undefined || begins === undefined) return 0;
  return begins - place.end - earlier.mostWait;
}

function placeBlock(lane: Lane, block: Block, room: BenchRoom, places: Place[]): void {
  const notBefore = lane.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (let i = block.from; i < block.until; ) {
    const task = lane.tasks[i] as Task;
    const { before, evening, at } = startOf(lane, i, places);
    const place = room.find(task, block.lane, evening, Math.max(at, notBefore[i] as number));
    const late = tooLate(lane.tasks[before], places[before], place.parts[0]?.from);
    const began = places[before]?.parts[0]?.from;
    if (late > onTime && began !== undefined) {
      notBefore[before] = began + late;
      for (; i > before; i--) {
        const last = places[i - 1] as Place;
        room.giveBack(lane.tasks[i - 1] as Task, block.lane, last);
        places.pop();
      }
      continue;
    }
    room.take(task, block.lane, place);
    places.push(place);
    i += 1;
  }
}

/**
 * Puts each task into the first room that the evenings, the hands and the drying places have for it after the waits before
 * it, step by step and lane by lane. Work that can be left is spread over evenings; a night is waited where one is asked.
 * What is tied by most waits is placed at once. Where the next task would come later than may be waited, the one before it
 * begins later by what was too much: since a later beginning never makes anything of its own lane earlier, what this comes
 * to rest at is the earliest that there is room for. With one lane that is the earliest plan that there is; with several it
 * is a good one, for what is placed first may stand in the way of what is placed after.
 *
 * @param lanes     each with its tasks in order
 * @param evenings  in order, none overlapping
 * @param shop      people, and places to dry
 * @returns         a place a task, by lane; those that the evenings do not reach have something left
 */
export function placeTasks(
  lanes: readonly Lane[],
  evenings: readonly Span[],
  shop: Shop,
): readonly (readonly Place[])[] {
  const room = new BenchRoom(
    evenings,
    shop,
    lanes.map(({ heldUntil }) => heldUntil ?? Number.NEGATIVE_INFINITY),
  );
  const places: Place[][] = lanes.map(() => []);
  const blocks = lanes
    .flatMap(blocksOf)
    .sort((a, b) => (lanes[a.lane]?.tasks[a.from]?.step ?? 0) - (lanes[b.lane]?.tasks[b.from]?.step ?? 0));
  for (const block of blocks)
    placeBlock(lanes[block.lane] as Lane, block, room, places[block.lane] as Place[]);
  return places;
}
