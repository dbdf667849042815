import { type Factor, type LaidPatch, type Plan, withinBoards } from "../plan.ts";
import { indicators, residual, type Span, spanOf } from "./span.ts";

/** An effect by the names of its factors: one by itself, or two together. */
export type Effect = readonly string[];

/** Effects that a layout shows only as one: whatever is seen of one is seen of the others. */
export interface SameThing {
  readonly effect: Effect;
  readonly with: readonly Effect[];
}

/**
 * Which effects of the things that change on the boards are wholly mixed up with each other: each by itself, and
 * every two of them together (what one does depends on the other).
 *
 * Two effects are the same thing where the columns of one lie in the span of mean, boards and the other's, and are
 * not explained by mean and boards alone.
 *
 * @param patches  the layout, n
 * @returns        one item for each effect that is the same thing as others; none for a full grid
 *
 * Source: aliasing by rank, G. E. P. Box and J. S. Hunter, Technometrics 3 (1961) 311, for any layout
 */
export function sameThings(plan: Plan, patches: readonly LaidPatch[]): readonly SameThing[] {
  const factors = withinBoards(plan).filter((f) => f.levels.length > 1);
  const own = factors.map((f) => contrastsOf(patches, f));
  const effects = [
    ...factors.map((f, i) => ({ names: [f.name], columns: own[i] as Columns })),
    ...factors.flatMap((f, i) =>
      factors.slice(i + 1).map((g, j) => ({
        names: [f.name, g.name],
        columns: products(own[i] as Columns, own[i + 1 + j] as Columns),
      })),
    ),
  ];
  const base = spanOf([patches.map(() => 1), ...indicators(patches.map((p) => p.board))]);
  const spans = effects.map((e) => spanOf(e.columns, base));
  return effects.flatMap((e, i) => {
    const others = effects.filter((_, j) => j !== i && liesIn(e.columns, spans[j] as Span, base));
    return others.length === 0 ? [] : [{ effect: e.names, with: others.map((o) => o.names) }];
  });
}

type Columns = readonly (readonly number[])[];

/** Differences from the first level, of no mean. */
function contrastsOf(patches: readonly LaidPatch[], factor: Factor): Columns {
  const k = factor.levels.length;
  return factor.levels.slice(1).map((level) =>
    patches.map((p) => {
      const here = p.treatment[factor.name];
      return here === level ? k - 1 : here === factor.levels[0] ? -(k - 1) : 0;
    }),
  );
}

const products = (a: Columns, b: Columns): Columns =>
  a.flatMap((x) => b.map((y) => x.map((value, i) => value * (y[i] as number))));

const length = (column: readonly number[]): number => Math.sqrt(column.reduce((sum, x) => sum + x * x, 0));

function liesIn(columns: Columns, span: Span, base: Span): boolean {
  return columns.every((column) => {
    const beyond = length(residual(column, base));
    return beyond > 1e-9 * length(column) && length(residual(column, span)) <= 1e-9 * length(column);
  });
}
