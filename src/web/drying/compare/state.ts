import type { DryingSetup } from "../../../core/evaporation/drying.ts";
import { calculate } from "../../../core/registry/calculation.ts";
import { vapour } from "../../../core/registry/vapour.ts";
import type { WaitAnswer } from "../../../core/views/wait-question.ts";
import { solventOf } from "../../vapour/state.ts";
import type { Dried } from "../task.ts";

/** One jar's coat in today's air. */
export interface Compared {
  readonly id: string;
  readonly code: string;
  readonly says: string;
  readonly run: Dried;
  readonly wait: WaitAnswer;
  /** Fresh air for a square metre coated in an hour, m³; null where a part has no name. */
  readonly freshAirM3: number | null;
}

const hour = 60;

/** What a square metre of wet coat gives to the air, as the ventilation that the published formula asks for over an hour. */
export function freshAirPerM2({ applied }: DryingSetup): number | null {
  const liquid = applied.thickness / (1 + applied.cut / applied.partialDensity);
  const found = calculate(vapour, {
    solvent: solventOf(applied.composition),
    amountMl: liquid * 1e6,
    minutes: hour,
    room: { volumeM3: 50 },
  });
  return found.ok ? (found.value as ReturnType<typeof vapour.run>).ventilationM3PerH : null;
}

const dryAt = ({ run }: Compared): number => run.touchDryMin ?? Number.POSITIVE_INFINITY;

/** The jar that is touch-dry first and the one that is last; null for fewer than two, or no difference worth a word. */
export function firstAndLast(jars: readonly Compared[]): readonly [Compared, Compared] | null {
  const ordered = [...jars].sort((a, b) => dryAt(a) - dryAt(b));
  const [first, last] = [ordered[0], ordered.at(-1)];
  if (first === undefined || last === undefined || first === last) return null;
  return dryAt(last) - dryAt(first) < 0.5 ? null : [first, last];
}

export const mostCompared = 6;

/** Which jars stand in the comparison after one was pressed; no more than fit beside one another. */
export function turned(chosen: readonly string[], id: string): readonly string[] {
  if (chosen.includes(id)) return chosen.filter((one) => one !== id);
  return [...chosen, id].slice(-mostCompared);
}
