import type { z } from "zod";
import { formatQuantity } from "../../../core/quantity/format-quantity.ts";
import { area } from "../../../core/registry/area.ts";
import type { AreaPartInput } from "../../../core/registry/area-input.ts";
import { calculate } from "../../../core/registry/calculation.ts";
import type { Problem } from "../../../core/registry/problem.ts";
import type { Result } from "../../../core/result.ts";
import type { PartDraft } from "./part-draft.ts";
import { type BareUnit, bareUnitOf, type PartReading, readPart } from "./read-part.ts";

export type AreaFound = z.output<typeof area.output>;

/** One part as typed, as read, and what it comes to; undefined while it cannot be read. */
export interface PartFigures {
  readonly draft: PartDraft;
  readonly reading: PartReading;
  readonly found: Result<AreaFound, Problem> | undefined;
}

export interface PartsFigures {
  readonly parts: readonly PartFigures[];
  readonly unit: BareUnit;
  /** Of the parts that can be worked out; undefined where there is none. */
  readonly total: AreaFound | undefined;
  readonly notCounted: number;
}

const work = (parts: readonly AreaPartInput[], endGrainTimes: number): Result<AreaFound, Problem> =>
  calculate(area, { parts, endGrainTimes }) as Result<AreaFound, Problem>; // what this calculation gives

/** What parts come to, each by itself and all together; one that does not fit holds up none of the others. */
export function partsFigures(drafts: readonly PartDraft[], endGrainTimes: number): PartsFigures {
  const unit = bareUnitOf(drafts);
  const parts = drafts.map((draft): PartFigures => {
    const reading = readPart(draft, unit);
    const found = reading.input === undefined ? undefined : work([reading.input], endGrainTimes);
    return { draft, reading, found };
  });
  const inputs = parts.flatMap(({ reading, found }) =>
    found?.ok && reading.input !== undefined ? [reading.input] : [],
  );
  const total = inputs.length === 0 ? undefined : work(inputs, endGrainTimes);
  return {
    parts,
    unit,
    total: total?.ok ? total.value : undefined,
    notCounted: parts.length - inputs.length,
  };
}

/** An area as it is written into the field: square metres, or square feet for one who measures in inches. */
export const areaText = (areaM2: number, unit: BareUnit, significantDigits = 3): string =>
  formatQuantity(areaM2, unit === "in" ? "ft2" : "m2", { significantDigits });

/** How many times as much end grain takes, as typed; undefined for what does not fit. */
export function timesFrom(text: string): number | undefined {
  const times = Number(text.trim().replace(",", "."));
  return text.trim() !== "" && times >= 1 && times <= 10 ? times : undefined;
}
