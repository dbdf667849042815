import { type DomainCode, DomainError } from "../domain-error.ts";
import { type Board, type Factor, isWood, type Plan, type Treatment, withinBoards } from "./plan.ts";

function refuse(
  code: DomainCode,
  field: string,
  value: unknown,
  because: string,
  allowed?: readonly string[],
): never {
  throw new DomainError({
    code,
    field,
    value,
    because,
    ...(allowed === undefined ? {} : { limits: { allowed } }),
  });
}

const repeated = (names: readonly string[]): string | undefined =>
  names.find((name, i) => names.indexOf(name) !== i);

function checkFactor(factor: Factor, i: number): void {
  const field = `factors[${i}]`;
  const twice = repeated(factor.levels);
  if (twice !== undefined) refuse("contradiction", `${field}.levels`, twice, "A level is named once.");
  if (isWood(factor) && (factor.appliedTo === "jar" || factor.appliedTo === "patch"))
    refuse("contradiction", `${field}.appliedTo`, factor.appliedTo, "A wood is a whole plank or board.", [
      "plank",
      "board",
    ]);
}

function checkWoods(plan: Plan): void {
  const wood = plan.factors.find(isWood);
  if (wood === undefined) return;
  plan.boards.forEach((b, i) => {
    if (!wood.levels.includes(b.wood))
      refuse(
        "unknown-name",
        `boards[${i}].wood`,
        b.wood,
        `Board ${b.board} is of a wood that the trial does not ask about.`,
        wood.levels,
      );
  });
  const bare = wood.levels.find((level) => !plan.boards.some((b) => b.wood === level));
  if (bare !== undefined) refuse("not-enough-data", "boards", bare, `No board is of ${bare}.`);
}

function checkPlanks(boards: readonly Board[]): void {
  const woodOf = new Map<string, string>();
  boards.forEach((b, i) => {
    const wood = woodOf.get(b.plank) ?? b.wood;
    if (wood !== b.wood)
      refuse(
        "contradiction",
        `boards[${i}].wood`,
        b.wood,
        `Plank ${b.plank} is of ${wood} on another board.`,
      );
    woodOf.set(b.plank, wood);
  });
}

function checkPattern(plan: Plan, pattern: Treatment, field: string): void {
  const known: Record<string, readonly string[]> = {
    board: plan.boards.map((b) => b.board),
    plank: plan.boards.map((b) => b.plank),
    wood: plan.boards.map((b) => b.wood),
    ...Object.fromEntries(plan.factors.map((f) => [f.name, f.levels])),
  };
  if (Object.keys(pattern).length === 0)
    refuse("contradiction", field, pattern, "It names nothing, and so would be everything.");
  for (const [name, level] of Object.entries(pattern)) {
    const levels = known[name];
    if (levels === undefined)
      refuse("unknown-name", `${field}.${name}`, name, "It is no factor of this trial.", Object.keys(known));
    if (!levels.includes(level))
      refuse("unknown-name", `${field}.${name}`, level, "No such level.", [...new Set(levels)]);
  }
}

function checkMoreOften(plan: Plan): void {
  const [first] = plan.moreOften ?? [];
  if (first === undefined) return;
  if ((plan.kind ?? "every-board") !== "every-board")
    refuse(
      "contradiction",
      "moreOften",
      first.what,
      "Here everything has its place, as often as the rest. Everything on every board would do.",
    );
  const within = withinBoards(plan).map((f) => f.name);
  plan.moreOften?.forEach(({ what }, i) => {
    const field = `moreOften[${i}].what`;
    checkPattern(plan, what, field);
    const other = Object.keys(what).find((name) => !within.includes(name));
    if (other !== undefined)
      refuse("contradiction", `${field}.${other}`, other, "It does not change from patch to patch.", within);
  });
}

/**
 * Refuses a plan that contradicts itself, before anything is drawn.
 *
 * @throws DomainError naming the field: a factor, level or board named twice, a board of a wood that is not asked
 *         about, a wood without a board, a plank of two woods, a forbidden pattern that names what is not there
 */
export function checkPlan(plan: Plan): void {
  const factorTwice = repeated(plan.factors.map((f) => f.name));
  if (factorTwice !== undefined)
    refuse("contradiction", "factors", factorTwice, "Two factors have this name.");
  const boardTwice = repeated(plan.boards.map((b) => b.board));
  if (boardTwice !== undefined) refuse("contradiction", "boards", boardTwice, "Two boards have this name.");
  plan.factors.forEach(checkFactor);
  checkWoods(plan);
  checkPlanks(plan.boards);
  checkMoreOften(plan);
  plan.forbidden.forEach((p, i) => {
    checkPattern(plan, p, `forbidden[${i}]`);
  });
  plan.neighboursForbidden.forEach((pair, i) => {
    pair.forEach((p, j) => {
      checkPattern(plan, p, `neighboursForbidden[${i}][${j}]`);
    });
  });
}
