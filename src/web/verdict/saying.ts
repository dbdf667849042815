import type { Problem } from "../../core/registry/problem.ts";
import type { Saying } from "../words/en/verdict.ts";
import { withPlaces } from "../words/number.ts";
import * as words from "../words/words.ts";
import { figuresOf } from "./figures.ts";
import type { Look, VerdictAnswer, VerdictInput, VerdictPair } from "./questions.ts";

export const sayingOf = (look: Look): Saying => ({
  unit: look.unit ?? "",
  more: look.more ?? words.verdict.usualMore,
  less: look.less ?? words.verdict.usualLess,
  shares: look.scale !== "measured",
});

export function sayPair(pair: VerdictPair, how: Saying, matters: number): string {
  const figures = figuresOf(pair, matters, how.shares);
  if (pair.verdict === "different") return words.verdict.different(pair, figures, how);
  if (pair.verdict === "equal") return words.verdict.equal(pair, figures);
  return pair.directionSure
    ? words.verdict.directionSure(pair, figures, how)
    : words.verdict.unclear(pair, figures, how);
}

/** What would settle the unclear pairs, in words; nothing when all is settled. */
export function sayMore(more: { readonly jars: number | null; readonly boards: number | null }): string {
  const { jars, boards } = more;
  if (boards === 0 || jars === 0) return "";
  if (boards !== null && (jars === null || boards <= jars)) return words.verdict.boards(boards);
  return jars === null ? words.verdict.settlesNone : words.verdict.jars(jars);
}

/** The page's own sentence: what is known first, and beside it what is as good as equal or cannot be told. */
export function headline(pairs: readonly VerdictPair[], how: Saying, matters: number): string {
  const of = (word: VerdictPair["verdict"]) => pairs.filter((p) => p.verdict === word);
  const [different, equal, unclear] = [of("different")[0], of("equal")[0], of("unclear")[0]];
  const sure = of("unclear").find((p) => p.directionSure);
  if (different !== undefined) {
    const first = words.verdict.headDifferent(different, how);
    if (equal !== undefined) return `${first} ${words.verdict.headEqualBetween(equal)}`;
    return unclear === undefined ? first : `${first} ${words.verdict.headUnclearToo(unclear)}`;
  }
  if (equal !== undefined) {
    const first =
      unclear === undefined
        ? words.verdict.headEqual(how, figuresOf(equal, matters, how.shares).matters)
        : words.verdict.headEqualBetween(equal);
    return unclear === undefined ? first : `${first} ${words.verdict.headUnclearToo(unclear)}`;
  }
  return sure === undefined ? words.verdict.headUnclear : words.verdict.headDirection(sure, how);
}

/** What the calculation remarks on: the ages in the page's words, the noise in its own; what it assumed is said beside the band. */
export function sayFlags(answer: VerdictAnswer, input: VerdictInput): string {
  const days = input.rows.flatMap((r) => r.daysSinceCoat ?? []);
  return answer.flags
    .map((f) => {
      if (f.code === "unequal-days")
        return words.verdict.unequalDays(withPlaces(Math.min(...days), 0), withPlaces(Math.max(...days), 0));
      if (f.code === "days-missing") return words.verdict.daysMissing;
      return f.code === "matters-assumed" ? "" : f.message;
    })
    .join(" ")
    .trim();
}

/** Why a comparison cannot be made, in a finisher's words; the calculation's own sentence where there are none. */
export function sayRefusal(problem: Problem): string {
  if (problem.code === "no-variation") return words.verdict.noVariation;
  if (problem.field === "rows.block") return words.verdict.noBlocks;
  return problem.message;
}
