import type { Block, Crew } from "./crew.ts";
import type { Engine, Statement } from "./engine/engine.ts";

/**
 * The crew in the engine, where variable k + 1 is the start of task k: a variable for who does each block, and two for the
 * order of each pair of blocks. Of two blocks of the same person one comes before the other, with time to change between.
 * People whom nothing tells apart yet are taken in their order, since it is all the same who is called the first.
 */
export function addCrew(engine: Engine, crew: Crew, distance: readonly Int32Array[]): void {
  const { bounds, lags } = engine;
  const begun = [...new Set(crew.blocks.map((b) => b.doneBy).filter((who) => who >= 0))];
  let unlike = begun.length;
  const whose = crew.blocks.map(({ doneBy }) => {
    if (doneBy >= 0) return bounds.variable(begun.indexOf(doneBy), begun.indexOf(doneBy));
    return bounds.variable(0, Math.min(crew.people - 1, unlike++));
  });
  engine.decideLast.push(...whose);
  const start = ({ tasks: [first = 0] }: Block): number => first + 1;
  const between = (a: Block, b: Block): number => a.minutes + (crew.change[a.kit]?.[b.kit] ?? 0);
  const isApart = (a: Block, b: Block): boolean => {
    const [i, j, least] = [start(a), start(b), between(a, b)];
    return (distance[i]?.[j] as number) >= least || bounds.most(i) + least <= bounds.least(j);
  };
  const ordered = (a: Block, b: Block): Statement => {
    const isBefore = bounds.variable(0, 1);
    lags.add(start(a), start(b), between(a, b), { side: 2 * isBefore, value: 1 });
    return [2 * isBefore, 1];
  };
  crew.blocks.forEach((a, i) => {
    crew.blocks.slice(i + 1).forEach((b, k) => {
      if ((a.doneBy >= 0 && b.doneBy >= 0) || isApart(a, b) || isApart(b, a)) return;
      const orders = [ordered(a, b), ordered(b, a)];
      const [whoseA, whoseB] = [whose[i] as number, whose[i + 1 + k] as number];
      for (let person = 0; person < crew.people; person++)
        engine.addClause(...orders, ...isNot(whoseA, person), ...isNot(whoseB, person));
    });
  });
}

/** The variable is another number. */
const isNot = (variable: number, number: number): Statement[] => [
  [2 * variable + 1, 1 - number],
  [2 * variable, number + 1],
];
