import { type Random, randomIndex } from "../../random.ts";
import { factorsOn, type Plan, type Treatment } from "../plan.ts";
import { type Arrangement, refuseForbidden, refuseKind } from "./arrangement.ts";
import { dealToBoards } from "./deal-boards.ts";

/**
 * Step boards: one factor rises in steps from one end of each board to the other, from which end by lot; everything
 * else changes from board to board. The steps of a board share it, and their place goes with the step.
 *
 * @throws DomainError for other than one factor on the patch, and boards with another number of patches than steps
 */
export function arrangeSteps(plan: Plan, random: Random): Arrangement {
  const [steps, ...others] = factorsOn(plan, "patch");
  refuseForbidden("steps", plan);
  if (steps === undefined || others.length > 0)
    refuseKind(
      "steps",
      "factors",
      factorsOn(plan, "patch").map((f) => f.name),
      "A step board takes one thing that changes along it, such as the number of coats.",
    );
  const wrong = plan.boards.findIndex((b) => b.patches !== steps.levels.length);
  if (wrong >= 0)
    refuseKind(
      "steps",
      `boards[${wrong}].patches`,
      plan.boards[wrong]?.patches,
      `${steps.name} has ${steps.levels.length} steps, so every board needs ${steps.levels.length} patches.`,
    );
  if (plan.neighboursForbidden.length > 0)
    refuseKind(
      "steps",
      "neighboursForbidden",
      plan.neighboursForbidden,
      "On a step board the neighbours are the next steps.",
    );
  const fixed = dealToBoards(plan, random, factorsOn(plan, "jar"));
  return {
    rows: plan.boards.map((_, b) => {
      const levels = randomIndex(random, 2) === 0 ? steps.levels : [...steps.levels].reverse();
      return levels.map((level): Treatment => ({ ...fixed[b], [steps.name]: level }));
    }),
  };
}
