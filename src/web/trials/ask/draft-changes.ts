import type { Mend } from "../../../core/design/foresight/more-of-it.ts";
import type { Asked, Draft } from "./draft.ts";
import { listOf } from "./field-reader.ts";

/** What a change of the plan is in the draft. */
export function changeFor(draft: Draft, asked: Asked, mend: Mend): Partial<Draft> {
  const jarsPerLevel = String(mend.jarsPerLevel);
  if (mend.change === "jars") return { jarsPerLevel };
  if (mend.change === "planks") return { planksPerWood: draft.boardsPerWood };
  const more = (mend.boards.length - asked.boards.length) / asked.woods.length;
  const and = (typed: string): string => String(Number(typed) + more);
  return { jarsPerLevel, boardsPerWood: and(draft.boardsPerWood), planksPerWood: and(draft.planksPerWood) };
}

/** A first look at the ends of everything that changes on the boards. */
export const screenOf = (draft: Draft): Partial<Draft> => ({
  kind: "screen",
  factors: draft.factors.map((f) => {
    const levels = listOf(f.levels);
    return f.appliedTo === "board" ? f : { ...f, levels: [levels[0], levels.at(-1)].join(", ") };
  }),
});
