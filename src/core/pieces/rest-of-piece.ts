import { DomainError, inRange } from "../domain-error.ts";
import type { ShopClock } from "../schedule/shop-clock.ts";
import { type Begun, eveningsFrom, finishedAt, readyAfter } from "./begun.ts";
import { type Span, spansOf } from "./evening.ts";
import type { Laid } from "./laid-schedule.ts";
import type { PieceToPlan } from "./piece-to-plan.ts";
import type { Lane, Task } from "./task.ts";

/** What is still to be done, and the evenings for it. */
export interface Rest {
  readonly lanes: readonly Lane[];
  readonly evenings: readonly Span[];
}

/** What is on, by surface; nothing where none of it is. */
function begunBy(laid: Laid, { begun, begunOn }: Pick<PieceToPlan, "begun" | "begunOn">) {
  const coats = laid.steps.slice(0, laid.cure).filter(({ step }) => step.what === "coat").length;
  if (begun !== undefined) inRange("begun.coats", begun.coats, { min: 1, max: coats });
  const by = new Map<number, Begun>();
  if (begun !== undefined) for (const i of laid.surfaces.keys()) by.set(i, begun);
  begunOn?.forEach((on, i) => {
    const surface = laid.surfaces.findIndex(({ name }) => name === on.surface);
    if (surface < 0)
      throw new DomainError({
        code: "unknown-name",
        field: `begunOn[${i}].surface`,
        value: on.surface,
        ...(laid.surfaces[0]?.name === ""
          ? { because: "The piece is planned as one; begun tells of the whole." }
          : { limits: { allowed: laid.surfaces.map(({ name }) => name) } }),
      });
    inRange(`begunOn[${i}].coats`, on.coats, { min: 1, max: coats });
    by.set(surface, on);
  });
  return by;
}

/** What of a lane is left after the coats that are on, and what these still hold. */
function leftOf(tasks: readonly Task[], by: ReadonlyMap<number, Begun>, clock: ShopClock): Lane {
  const last = new Map<number, { readonly begun: Begun; readonly coat: Task }>();
  for (const surface of new Set(tasks.map((task) => task.surface))) {
    const begun = by.get(surface);
    const coats = tasks.filter((task) => task.surface === surface && task.what === "coat");
    const coat = coats[(begun?.coats ?? 0) - 1]; // counted in whole numbers from 1
    if (begun !== undefined && coat !== undefined) last.set(surface, { begun, coat });
  }
  if (last.size === 0) return { tasks };
  const left = tasks.filter(({ surface, step }) => step > (last.get(surface)?.coat.step ?? -1));
  const ready = new Map(
    [...new Set(left.map((task) => task.surface))].map((surface) => {
      const from = [...last].map(([on, { begun, coat }]) =>
        on === surface ? readyAfter(begun, coat, clock) : finishedAt(begun, clock) + coat.turn,
      );
      return [surface, Math.max(...from)] as const;
    }),
  );
  const heldUntil = Math.max(
    ...[...last.values()].map(({ begun, coat }) => finishedAt(begun, clock) + coat.dries),
  );
  return { tasks: left, ready, heldUntil };
}

/**
 * What is left of a schedule after the coats that are on.
 *
 * @throws DomainError for more coats than there are, and for a surface that is none of the piece's
 */
export function restOf(
  laid: Laid,
  piece: Pick<PieceToPlan, "begun" | "begunOn" | "evenings">,
  clock: ShopClock,
): Rest {
  const by = begunBy(laid, piece);
  const lanes = laid.lanes.map((tasks) => leftOf(tasks, by, clock));
  const from = lanes.flatMap(({ tasks, ready }) =>
    [...new Set(tasks.map(({ surface }) => surface))].map(
      (surface) => ready?.get(surface) ?? Number.NEGATIVE_INFINITY,
    ),
  );
  const evenings = spansOf(piece.evenings, clock);
  return { lanes, evenings: from.length === 0 ? evenings : eveningsFrom(evenings, Math.min(...from)) };
}
