import { DomainError } from "../domain-error.ts";
import type { Composition } from "../solution/composition.ts";
import { solventFromInput } from "./solution-input.ts";
import type { SolventInput } from "./solvent.ts";

/** A solvent whose every part is known well enough to evaporate; one with an unnamed part is refused. */
export function volatileFromInput(input: SolventInput, field = "solvent"): Composition {
  const composition = solventFromInput(input, field);
  if ((composition.unknown ?? 0) > 0)
    throw new DomainError({
      code: "not-enough-data",
      field,
      value: "unknown",
      because:
        "Nothing is known of how a part without a name evaporates or burns; name it, or share its part among the others.",
    });
  return composition;
}

/** What stands with every figure about fire and air. */
export const notAClearance =
  "An estimate, not a clearance: the supplier's safety data sheet, local codes and licensed practice come first.";
