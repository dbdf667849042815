import { factorFrom, type ModelData, modelColumns } from "./model-matrix.ts";
import { householderQr } from "./qr.ts";

/** A term whose effect the layout mixes up with that of others, wholly or in part. */
export interface AliasedTerm {
  readonly term: string;
  readonly with: readonly string[];
}

const rankOf = (terms: readonly string[], data: ModelData): number =>
  householderQr(modelColumns(terms, data).map((c) => c.values)).kept.length;

/** The terms hidden in an interaction: `a:b:c` holds a, b, c, a:b, a:c and b:c. */
function marginsOf(term: string): string[] {
  const [first, ...rest] = term.split(":");
  const subsets = rest.reduce<string[][]>(
    (sets, part) => sets.flatMap((set) => [set, [...set, part]]),
    first === undefined ? [[]] : [[], [first]],
  );
  return subsets.map((set) => set.join(":")).filter((name) => name !== "" && name !== term);
}

/** Whether a term keeps all its degrees of freedom once the others are known. */
function standsApart(term: string, others: readonly string[], data: ModelData): boolean {
  const margins = marginsOf(term);
  const base = [...new Set([...margins, ...others.flatMap((o) => [...marginsOf(o), o])])].filter(
    (name) => name !== term && !marginsOf(name).includes(term),
  );
  const alone = rankOf([...margins, term], data) - rankOf(margins, data);
  return rankOf([...base, term], data) - rankOf(base, data) === alone;
}

/** The others that hide a term: each one that does so by itself, else a smallest set that does so together. */
function hiddenBy(term: string, others: readonly string[], data: ModelData): readonly string[] {
  if (standsApart(term, others, data)) return [];
  const single = others.filter((other) => !standsApart(term, [other], data));
  if (single.length > 0) return single;
  return others.reduce<readonly string[]>((set, other) => {
    const without = set.filter((x) => x !== other);
    return standsApart(term, without, data) ? set : without;
  }, others);
}

/**
 * Which terms of a layout cannot be told apart, by the rank of the model matrix: a term is listed when it loses a
 * degree of freedom once others are in the model, with those that take it.
 *
 *     rank[others, term] − rank[others] < rank[margins, term] − rank[margins]
 *
 * A thing that is always made for one level only (a jar of one alcohol, a plank of one wood) is by its nature not
 * apart from that level: give such a term only where each level has one of them.
 *
 * @param terms  names of columns of `rows`, `a:b` for an interaction
 * @param rows   n patches: one label for each name
 * @returns      the terms that are hidden, in the order given, each with those that hide it
 *
 * Source: G. E. P. Box, J. S. Hunter and W. G. Hunter, Statistics for Experimenters (2005), ch. 6, for confounding
 */
export function aliasedTerms(
  terms: readonly string[],
  rows: readonly Readonly<Record<string, string>>[],
): AliasedTerm[] {
  const names = [...new Set(terms.flatMap((term) => term.split(":")))];
  const factors = Object.fromEntries(
    names.map((name) => [name, factorFrom(rows.map((row) => row[name] ?? ""))]),
  );
  const data = { rows: rows.length, factors };
  return terms
    .map((term) => {
      const others = terms.filter((other) => other !== term && !marginsOf(term).includes(other));
      return { term, with: hiddenBy(term, others, data) };
    })
    .filter((found) => found.with.length > 0);
}
