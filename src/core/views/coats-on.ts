import { latestMs } from "../notebook/entry-time.ts";
import type { Body } from "../notebook/kinds/all.ts";
import { coatNumbers } from "../pieces/planned-evenings.ts";
import type { PieceView } from "./piece.ts";

/** A coat of a plan, on the side or part that it is planned for; on the whole piece where none is named. */
export interface PlannedCoat {
  readonly coat: number;
  readonly surface?: string;
}

/** The same as it was written down. */
interface LoggedCoat extends PlannedCoat {
  /** An instant, UTC. */
  readonly at: string;
  readonly entry: string;
}

export interface CoatsOn {
  /** What was written down, in its order. */
  readonly logged: readonly LoggedCoat[];
  /** What was written down of a coat on a surface: of it alone, or of the whole piece. */
  readonly of: (coat: PlannedCoat) => LoggedCoat | undefined;
  /** Coats that are on every surface, by number, with the last that was written down of each. */
  readonly whole: ReadonlyMap<number, LoggedCoat>;
  /** The first that is not on. */
  readonly next: PlannedCoat | undefined;
}

/** The coats of a plan in its order, each as often as it has surfaces. */
export function plannedCoats(schedule: PieceView["schedule"]): readonly PlannedCoat[] {
  if (schedule === null) return [];
  const planned = [...coatNumbers(schedule.steps)].map(([{ surface }, coat]) => ({
    coat,
    ...(surface === undefined ? {} : { surface }),
  }));
  const numbers = new Set(planned.map(({ coat }) => coat));
  const others = Array.from({ length: schedule.recipe.coats }, (_, i) => ({ coat: i + 1 }));
  return [...planned, ...others.filter(({ coat }) => !numbers.has(coat))];
}

/** Which coats of its plan a piece has. A coat of several surfaces is on when it is on all of them. */
export function coatsOn(piece: PieceView): CoatsOn {
  const logged = piece.layers.flatMap((entry): LoggedCoat[] => {
    const { planned } = entry.body as Body<"layer-applied">; // a piece's layers
    if (planned === undefined) return [];
    const at = new Date(latestMs(entry)).toISOString();
    return [
      { coat: planned.coat, ...(planned.surface && { surface: planned.surface }), at, entry: entry.id },
    ];
  });
  const of = ({ coat, surface }: PlannedCoat) =>
    logged.findLast(
      (one) =>
        one.coat === coat && (one.surface === undefined || surface === undefined || one.surface === surface),
    );
  const planned = plannedCoats(piece.schedule);
  const isWhole = (coat: number) => planned.filter((one) => one.coat === coat).every((one) => of(one));
  return {
    logged,
    of,
    whole: new Map(logged.filter(({ coat }) => isWhole(coat)).map((one) => [one.coat, one])),
    next: planned.find((one) => of(one) === undefined),
  };
}
