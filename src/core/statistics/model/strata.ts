import { householderQr } from "../numeric/qr.ts";
import { at, mean, type Vector } from "../numeric/vector.ts";
import { type AnovaLine, anovaLines } from "./linear-model.ts";
import { type ModelData, modelColumns } from "./model-matrix.ts";

export const withinTerm = "Within";

export interface Stratum {
  readonly stratum: string;
  readonly table: readonly AnovaLine[];
}

/**
 * Analysis of variance in error strata (split plots): the response and the model are projected on what varies
 * between the outer units, between the inner units within those, and within them all, and each part has a table with
 * an error of its own.
 *
 * @param response  n numbers
 * @param terms     the model's terms in order
 * @param strata    the units, outer to inner (`block`, `block:plot`)
 * @param data      n rows, with the factors of terms and strata
 * @returns         one table a stratum, `Within` last; a stratum with no degree of freedom has none
 * @throws DomainError for an unknown name
 *
 * Source: J. A. Nelder, Proc. R. Soc. A 283 (1965) 147
 */
export function anovaInStrata(
  response: Vector,
  terms: readonly string[],
  strata: readonly string[],
  data: ModelData,
): Stratum[] {
  const unitColumns = modelColumns(strata, data);
  const units = householderQr(unitColumns.map((c) => c.values));
  const placeOf = units.kept.map((j) => unitColumns[j]?.term);
  const columns = modelColumns(terms, data).slice(1);
  const centre = mean(response);
  const y = units.rotate(Array.from(response, (v) => v - centre));
  const x = columns.map((c) => units.rotate(c.values));
  const lengths = columns.map((c) => Math.hypot(...Array.from(c.values)));
  const within = Array.from(y, (_, i) => i).slice(placeOf.length);
  const places: (readonly [string, readonly number[]])[] = strata.map((stratum) => [
    stratum,
    placeOf.flatMap((term, i) => (term === stratum ? [i] : [])),
  ]);
  return [...places, [withinTerm, within] as const]
    .filter(([, rows]) => rows.length > 0)
    .map(([stratum, rows]) => {
      const take = (v: Vector): number[] => rows.map((i) => at(v, i));
      const qr = householderQr(x.map(take), lengths);
      return { stratum, table: anovaLines(terms, columns, qr.kept, qr.rotate(take(y))) };
    });
}
