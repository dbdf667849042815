import { type Accessor, createSignal } from "solid-js";
import { strikesToCorrect } from "../../core/notebook/write-entry.ts";
import { type CoatsOn, type PlannedCoat, plannedCoats } from "../../core/views/coats-on.ts";
import type { PieceView } from "../../core/views/piece.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { coatSteps } from "./kept-plan.ts";
import { usePieceJar } from "./piece-jar.tsx";
import type { WentOnAt } from "./went-on-earlier.tsx";

export type PuttingOn = ReturnType<typeof createPuttingOn>;

/** The coat that is next, as it is written down and taken back. */
export function createPuttingOn(
  book: OpenBook,
  piece: Accessor<PieceView>,
  schedule: Accessor<PieceView["schedule"]>,
  on: Accessor<CoatsOn>,
) {
  const [wrote, setWrote] = createSignal<PlannedCoat | null>(null);
  const [picked, setPicked] = createSignal<string>();
  const number = () => on().next?.coat;
  /** The surfaces that the coat is not on yet. */
  const left = (): readonly PlannedCoat[] =>
    plannedCoats(schedule()).filter((one) => one.coat === number() && on().of(one) === undefined);
  const next = () => left().find(({ surface }) => surface === picked()) ?? on().next;
  const from = usePieceJar(piece, number);
  const putOn = (planned: PlannedCoat, when?: WentOnAt) => {
    const recipe = schedule()?.recipe;
    if (recipe === undefined) return;
    const jar = from.jar();
    book.write({
      ...when,
      kind: "layer-applied",
      about: [piece().id, ...(jar === undefined ? [] : [jar])],
      body: {
        sort: "coat",
        targets: [{ piece: piece().id, ...(planned.surface && { part: planned.surface }) }],
        from: jar === undefined ? [] : [{ batch: jar }],
        method: coatSteps(schedule(), planned)[0]?.method ?? recipe.method,
        planned: { ...planned },
      },
    });
    setWrote(planned);
    setPicked(undefined);
  };
  const undo = (planned: PlannedCoat) => {
    const current = book.whole().entry(on().of(planned)?.entry ?? "");
    if (current !== undefined) book.strike(strikesToCorrect(current));
    setWrote(null);
  };
  return {
    wrote,
    next,
    left,
    pick: setPicked,
    from,
    putOn,
    undo,
    /** When the coat before went on: the next cannot be earlier. */
    before: ({ coat, surface }: PlannedCoat) => on().of({ coat: coat - 1, ...(surface && { surface }) })?.at,
    /** None of it is on: it may be written down of all at once. */
    isWholeLeft: () =>
      left().length > 1 && coatSteps(schedule(), { coat: number() ?? 0 }).length === left().length,
  };
}
