import { DomainError } from "../../domain-error.ts";
import { type Random, shuffled } from "../../random.ts";
import { type Board, factorsOn, jarLabel, type Plan, type Treatment } from "../plan.ts";

const keyOf = (names: readonly string[], t: Treatment): string => JSON.stringify(names.map((n) => t[n]));

/**
 * Deals the jars of each recipe over its patches, so that every jar is used and as evenly as the numbers allow:
 * the first patch of a recipe takes a drawn jar, the next the following one, and what is done to the patch
 * itself shifts the start, so that no jar goes with one method. Patches take their turn board by board, so that a
 * board that holds a recipe often enough holds all its jars alike: then no board's luck passes for a jar's.
 *
 * @param treatments  what stands on each patch, n
 * @param boards      what each patch lies on, paired with treatments: woods are evened out over first, then boards
 * @param standsOn    what a treatment stands on, for the refusal
 * @returns           the number of the jar for each patch from 1, paired with treatments
 * @throws DomainError when a recipe has fewer patches than jars
 *
 * Source:   Lacbench's own; counts of any two jars of a recipe differ by at most one for each method
 */
export function dealJars(
  plan: Plan,
  treatments: readonly Treatment[],
  boards: readonly Board[],
  random: Random,
  standsOn: "patch" | "board" = "patch",
): readonly number[] {
  const jarNames = factorsOn(plan, "jar").map((f) => f.name);
  const patchNames = factorsOn(plan, "patch").map((f) => f.name);
  const numbers = new Array<number>(treatments.length).fill(1);
  const recipes = new Map<string, number[]>();
  treatments.forEach((t, i) => {
    const recipe = keyOf(jarNames, t);
    recipes.set(recipe, [...(recipes.get(recipe) ?? []), i]);
  });
  for (const patches of recipes.values()) {
    if (patches.length < plan.jarsPerLevel)
      refuse(plan, jarNames, treatments[patches[0] as number], patches, standsOn);
    const turn = shuffled([...Array(plan.jarsPerLevel).keys()], random);
    const methods = shuffled(
      [...new Set(patches.map((i) => keyOf(patchNames, treatments[i] as Treatment)))],
      random,
    );
    const woods = shuffled([...new Set(patches.map((i) => boards[i]?.wood))], random);
    const lying = woods.flatMap((wood) =>
      shuffled([...new Set(boards.filter((b) => b.wood === wood))], random),
    );
    methods.forEach((method, shift) => {
      const inMethod = patches.filter((i) => keyOf(patchNames, treatments[i] as Treatment) === method);
      const inTurn = lying.flatMap((board) =>
        shuffled(
          inMethod.filter((i) => boards[i] === board),
          random,
        ),
      );
      inTurn.forEach((i, n) => {
        numbers[i] = (turn[(n + shift) % plan.jarsPerLevel] as number) + 1;
      });
    });
  }
  return numbers;
}

function refuse(
  plan: Plan,
  names: readonly string[],
  t: Treatment | undefined,
  patches: readonly number[],
  standsOn: "patch" | "board",
): never {
  const recipe = names.map((n) => t?.[n]).join(" · ") || "the one recipe";
  throw new DomainError({
    code: "not-enough-data",
    field: "jarsPerLevel",
    value: plan.jarsPerLevel,
    limits: { max: patches.length },
    because: `${recipe} stands on ${patches.length} ${patches.length === 1 ? standsOn : standsOn === "patch" ? "patches" : "boards"}, so ${plan.jarsPerLevel} jars of it cannot all be used.`,
  });
}

/** The recipe of a treatment: what is in the jar, without what is done to wood or patch. */
export const recipeOf = (plan: Pick<Plan, "factors">, t: Treatment): Treatment =>
  Object.fromEntries(factorsOn(plan, "jar").map((f) => [f.name, t[f.name] as string]));

/** The label of the jar that a treatment is taken from. */
export const jarOf = (plan: Pick<Plan, "factors">, t: Treatment, number: number): string =>
  jarLabel(recipeOf(plan, t), number);
