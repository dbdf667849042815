import type { Span } from "./evening.ts";
import type { PieceWork } from "./finishing-step.ts";
import type { Place, Task } from "./task.ts";

/** People who work at once, and how many things can lie drying at once. */
export interface Shop {
  readonly hands: number;
  readonly places: number;
}

interface Stretch {
  readonly from: number;
  readonly until: number;
}

/** Work that can be left and taken up again; a coat has a wet edge and is not. */
export const canBeLeft: readonly PieceWork[] = ["sand", "de-nib", "level", "rub out"];
/** Less than this is not worth beginning. */
export const leastPart = 15;

/** When the first of them ends that are under way at a moment, if they are so many or more. */
function freesAt(taken: readonly Stretch[], most: number, moment: number): number | undefined {
  let count = 0;
  let frees = Number.POSITIVE_INFINITY;
  for (const { from, until } of taken) {
    if (moment < from || moment >= until) continue;
    count += 1;
    frees = Math.min(frees, until);
  }
  return count >= most ? frees : undefined;
}

/** From when on not all of so many are taken, and until when; both at the end where they always are. */
function firstFree(taken: readonly Stretch[], most: number, from: number, end: number): Stretch {
  let begin = from;
  while (begin < end) {
    const frees = freesAt(taken, most, begin);
    if (frees === undefined) break;
    begin = frees;
  }
  let until = end;
  for (const { from: at } of taken)
    if (at > begin && at < until && freesAt(taken, most, at) !== undefined) until = at;
  return { from: Math.min(begin, end), until };
}

/** What is taken of the hands in the evenings, and of the places where things dry. */
export class BenchRoom {
  private readonly busy: Stretch[][];
  /** By lane: a thing lies in one place, however many of its sides are wet. */
  private readonly drying: Stretch[][];
  private readonly evenings: readonly Span[];
  private readonly shop: Shop;

  constructor(evenings: readonly Span[], shop: Shop, heldUntil: readonly number[]) {
    this.evenings = evenings;
    this.shop = shop;
    this.busy = evenings.map(() => []);
    this.drying = heldUntil.map((until) => [{ from: Number.NEGATIVE_INFINITY, until }]);
  }

  /** What dries at a moment, of other lanes' things; the latest of each is looked at first. */
  private dryingAt(lane: number, moment: number): readonly Stretch[] {
    const there: Stretch[] = [];
    this.drying.forEach((thing, other) => {
      if (other === lane) return;
      for (let k = thing.length - 1; k >= 0; k--) {
        const one = thing[k] as Stretch;
        if (one.until <= moment) return;
        if (one.from <= moment) {
          there.push(one);
          return;
        }
      }
    });
    return there;
  }

  /** When a place becomes free again that a lane's thing has not from a moment on for so long; nothing where it has one. */
  private lacksPlace(lane: number, at: number, minutes: number): number | undefined {
    const { places } = this.shop;
    const now = freesAt(this.dryingAt(lane, at), places, at);
    if (now !== undefined) return now;
    for (const [other, thing] of this.drying.entries()) {
      if (other === lane) continue;
      for (let k = thing.length - 1; k >= 0 && (thing[k] as Stretch).until > at; k--) {
        const { from } = thing[k] as Stretch;
        if (from <= at || from >= at + minutes) continue;
        const then = freesAt(this.dryingAt(lane, from), places, from);
        if (then !== undefined) return then;
      }
    }
    return undefined;
  }

  /** The first moment from one on at which a lane's thing finds a place and keeps it for so long. */
  private placeFrom(lane: number, from: number, minutes: number): number {
    if (this.drying.length <= this.shop.places) return from;
    let at = from;
    for (let frees = this.lacksPlace(lane, at, minutes); frees !== undefined; ) {
      at = frees;
      frees = this.lacksPlace(lane, at, minutes);
    }
    return at;
  }

  /** The first room for a task of a lane from an evening and a moment on. */
  find(task: Task, lane: number, first: number, ready: number): Place {
    const parts: Place["parts"][number][] = [];
    const isCoat = task.what === "coat";
    let left = task.minutes;
    let end = ready;
    let evening = first;
    while (evening < this.evenings.length) {
      const { opens, closes } = this.evenings[evening] as Span;
      const free = firstFree(this.busy[evening] ?? [], this.shop.hands, Math.max(opens, end), closes);
      const from = isCoat ? this.placeFrom(lane, free.from, task.minutes + task.dries) : free.from;
      const room = free.until - from;
      const minutes = canBeLeft.includes(task.what) && room >= leastPart ? Math.min(room, left) : left;
      if (minutes > room) {
        if (free.until >= closes) evening += 1;
        else end = free.until;
        continue;
      }
      parts.push({ evening, from, minutes });
      left -= minutes;
      end = from + minutes;
      if (left <= 0) break;
    }
    return { parts, left, evening, end };
  }

  take(task: Task, lane: number, { parts, left, end }: Place): void {
    for (const { evening, from, minutes } of parts) this.busy[evening]?.push({ from, until: from + minutes });
    if (task.what !== "coat" || left > 0) return;
    const thing = this.drying[lane] as Stretch[];
    const until = Math.max(end + task.dries, thing.at(-1)?.until ?? 0); // one side may dry on under another
    thing.push({ from: end - task.minutes, until });
  }

  /** Takes back the task that was taken last. */
  giveBack(task: Task, lane: number, { parts, left }: Place): void {
    for (const { evening } of parts) this.busy[evening]?.pop();
    if (task.what === "coat" && left <= 0) this.drying[lane]?.pop();
  }
}
