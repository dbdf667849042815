import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { combined } from "./amounts.ts";
import { type IngredientBody, poured } from "./ingredient.ts";
import { cannotUse, emptyFold, type JarFold, namedOnce, stepped } from "./jar-fold.ts";
import { propagated, type Reckoned } from "./reckoning.ts";

/** How a batch came to be. */
export const waysMade = ["mixed", "filtered", "thinned", "blended", "decanted"] as const;
export type WayMade = (typeof waysMade)[number];

/** How an entry makes a batch, or null when it is of another kind. */
export const wayMade = (entry: NotebookEntry): WayMade | null =>
  waysMade.find((way) => entry.kind === `batch-${way}`) ?? null;

/** Whether this entry fills a vessel of its own: mixing and blending always do, the others when they give it a code. */
export const makesBatch = (entry: NotebookEntry): boolean =>
  entry.kind === "batch-mixed" ||
  entry.kind === "batch-blended" ||
  (wayMade(entry) !== null && (entry.body as { code?: string }).code !== undefined);

/** The batches that this one was poured from, the first named first. */
export function parentsOf(entry: NotebookEntry, id: string): readonly string[] {
  if (entry.kind === "batch-mixed") return [];
  if (entry.kind === "batch-blended")
    return [...new Set((entry.body as Body<"batch-blended">).parts.map((part) => part.batch))];
  const parent = entry.about.find((thing) => thing !== id && thing !== entry.id);
  return parent === undefined ? [] : [parent];
}

/** Resin and solvent put into what is there already (nothing, for a new jar). */
export function putIn(
  read: NotebookReader,
  fold: JarFold,
  entry: NotebookEntry,
  lists: { readonly resins?: readonly IngredientBody[]; readonly solvents?: readonly IngredientBody[] },
): JarFold {
  const added = poured(read, lists, entry.id);
  if (typeof added === "string") return cannotUse(fold, entry, added);
  const now = propagated([fold.now], added.readings, ([all = {}], figures) =>
    combined([1, all], ...added.amounts(figures).map((amounts) => [1, amounts] as const)),
  );
  const resinCount = lists.resins?.length ?? 0;
  const dated = entry.happenedKnownTo !== "unknown";
  return {
    ...stepped(fold, entry, now),
    resins: [...fold.resins, ...added.resins],
    resinNames: namedOnce(fold.resinNames, added.named.slice(0, resinCount)),
    solventNames: namedOnce(fold.solventNames, added.named.slice(resinCount)),
    resinSince: fold.resinSince ?? (resinCount > 0 && dated ? entry.happened : null),
  };
}

const earliest = (times: readonly (string | null)[]): string | null =>
  times.reduce<string | null>(
    (first, at) => (first === null || (at !== null && at < first) ? at : first),
    null,
  );

/** What a parent gave in this entry, with everything that is inherited with the liquid. */
function inherited(parents: readonly JarFold[], entry: NotebookEntry): JarFold | null {
  const streams = parents.map((parent) => parent.steps.find((step) => step.entry === entry.id)?.poured);
  if (streams.length === 0 || streams.some((stream) => stream == null)) return null;
  const now = propagated(streams as Reckoned[], [], (all) =>
    combined(...all.map((amounts) => [1, amounts] as const)),
  );
  return {
    ...emptyFold,
    now,
    resins: parents.flatMap((parent) => parent.resins),
    resinNames: namedOnce(...parents.map((parent) => parent.resinNames)),
    solventNames: namedOnce(...parents.map((parent) => parent.solventNames)),
    resinSince: earliest(parents.map((parent) => parent.resinSince)),
  };
}

/** The jar as it was filled. */
export function madeFold(
  read: NotebookReader,
  maker: NotebookEntry,
  parents: readonly (JarFold | null)[],
): JarFold {
  if (maker.kind === "batch-mixed") {
    const body = maker.body as Body<"batch-mixed">;
    return putIn(read, emptyFold, maker, { resins: body.resins, solvents: body.solvents });
  }
  const known = parents.filter((parent) => parent !== null);
  const started = known.length < parents.length ? null : inherited(known, maker);
  if (started === null) return cannotUse(emptyFold, maker, "parent-unknown");
  if (maker.kind === "batch-thinned")
    return putIn(read, started, maker, { solvents: (maker.body as Body<"batch-thinned">).added });
  return stepped(started, maker, started.now);
}
