import { massOf } from "../jar/amounts.ts";
import { foldJar, glassOf } from "../jar/fold-jar.ts";
import { figureOf } from "../jar/reckoning.ts";
import type { NotebookReader } from "../notebook/reader.ts";

/** What a jar would weigh on the scale had nothing left it by itself. */
export interface GrossDue {
  readonly kg: number;
  readonly standardUncertainty: number;
  /** When it was weighed to compare with; null where it is compared with the empty glass. */
  readonly since: string | null;
}

/**
 * The gross weight that a jar should show now: its last weighing of the same kind (with or without lid) less what
 * was poured since, or the empty glass with what is reckoned to be in it. Null where neither is known.
 *
 * @param read     the notebook
 * @param jar      the jar's id
 * @param withLid  how it is to be weighed
 */
export function grossDue(read: NotebookReader, jar: string, withLid: boolean): GrossDue | null {
  const fold = foldJar(read, jar);
  if (fold === null || fold.steps.length === 0) return null;
  const now = figureOf(fold.now, massOf);
  const then = fold.weighed?.withLid === withLid ? fold.weighed : null;
  if (then !== null)
    return {
      kg: then.grossKg - (massOf(then.contents.value) - now.value),
      standardUncertainty: then.standardUncertainty,
      since: then.at,
    };
  const vessel = (read.making(jar)?.body as { readonly vessel?: string } | undefined)?.vessel;
  const glass = withLid ? glassOf(read, vessel) : null;
  return glass === null
    ? null
    : {
        kg: glass.emptyKg + now.value,
        standardUncertainty: Math.hypot(glass.standardUncertainty, now.standardUncertainty),
        since: null,
      };
}
