import type { TypedQuantity } from "../../core/notebook/kinds/parts.ts";

/** A likelier meaning of what was typed, to press instead of typing it again. */
export interface Meaning {
  readonly label: string;
  readonly typed: string;
}

export interface ReadingProblem {
  /** What does not fit and what would do. */
  readonly says: string;
  readonly meanings: readonly Meaning[];
  /** A question rather than a fault: it is asked at once. */
  readonly ask: boolean;
}

/** What a typed amount comes to. `understood` says it back where the unit typed is not the one reckoned in. */
export type QuantityReading = (
  | { readonly ok: true; readonly value: TypedQuantity; readonly understood?: string | undefined }
  | { readonly ok: false; readonly problem: ReadingProblem }
) & {
  /** Where a number and a unit will do: the units to press, none where the number alone is enough. */
  readonly units?: readonly string[];
};
