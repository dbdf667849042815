import { createSignal, onCleanup } from "solid-js";
import type { Fitness } from "../../core/jar/fitness.ts";
import { jarFitness, jarIds, jarView } from "../../core/views/jar.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { now } from "../shell/now.ts";
import type { ShelvedJar } from "./shelf-plan.ts";

/** True while the page has room for the shelves beside the jar. */
export function useWide(): () => boolean {
  const query = matchMedia("(min-width: 1180px)");
  const [wide, setWide] = createSignal(query.matches);
  const hear = () => setWide(query.matches);
  query.addEventListener("change", hear);
  onCleanup(() => query.removeEventListener("change", hear));
  return wide;
}

/** A jar and its state are judged by the day: the key changes when the answer may. */
const today = (): string => now().slice(0, 10);

export const lookAtJar = (book: OpenBook, id: string) => book.look(`jar:${id}`, (read) => jarView(read, id));

export const lookAtFitness = (book: OpenBook, id: string): Fitness =>
  book.look(`fitness:${id}:${today()}`, (read) => jarFitness(read, id, `${today()}T23:59:59.000Z`));

/** Every jar on the shelves, emptied ones only when asked for. */
export const jarsOnShelves = (book: OpenBook, emptied: boolean): readonly ShelvedJar[] =>
  book.look("jars", jarIds).flatMap((id) => {
    const jar = lookAtJar(book, id);
    return jar === null || (jar.emptied !== null && !emptied)
      ? []
      : [{ jar, fitness: lookAtFitness(book, id) }];
  });

/** The jar that was touched last: the one that a person comes back to. */
export function lastTouched(jars: readonly ShelvedJar[]): string | undefined {
  const at = ({ jar }: ShelvedJar): string => jar.steps.at(-1)?.at ?? jar.madeAt;
  return [...jars].sort((a, b) => (at(a) < at(b) ? 1 : -1))[0]?.jar.id;
}
