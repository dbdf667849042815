import type { DryingSetup } from "../../core/evaporation/drying.ts";
import { methodDefaults } from "../../core/pieces/method-defaults.ts";
import { dryingInput, setupFromInput } from "../../core/registry/drying-input.ts";
import type { SolventInput } from "../../core/registry/solvent.ts";
import { celsiusFromKelvin, type Kelvin } from "../../core/units.ts";
import type { ShopAir } from "../../core/views/coat-setup.ts";
import { waitTyped } from "./read-wait.ts";
import { type StepDraft, writtenFrom } from "./step-draft.ts";

/** A coat whose wait hangs on the air, with the places of the steps that put it on. */
export interface CoatInAir {
  readonly steps: readonly number[];
  readonly setup: DryingSetup;
}

const longestHours = 72;
/** A plan is kept to the minutes of a clock, not of a model. */
const rounded = 5;

/** The coats of a schedule as they would dry in this air, each kind of coat once; the film beneath is left out. */
export function coatsInAir(
  steps: readonly StepDraft[],
  solvent: SolventInput,
  air: ShopAir,
): readonly CoatInAir[] {
  const kinds = new Map<string, { steps: number[]; setup: DryingSetup }>();
  steps.forEach((draft, i) => {
    const step = writtenFrom(draft);
    if (step?.what !== "coat" || step.millilitresPerM2 === undefined) return;
    const wetUm = step.millilitresPerM2 * methodDefaults[step.method ?? "pad"].transfer;
    const key = `${step.cutLbPerGal} ${wetUm}`;
    const known = kinds.get(key);
    if (known !== undefined) {
      known.steps.push(i);
      return;
    }
    const given = dryingInput.safeParse({
      film: { wetUm, cutLbPerGal: step.cutLbPerGal, solvent },
      air: {
        temperatureC: celsiusFromKelvin(air.temperature as Kelvin),
        relativeHumidity: air.relativeHumidity,
      },
      wood: { temperatureC: celsiusFromKelvin(air.wood as Kelvin) },
      hours: longestHours,
    });
    if (given.success) kinds.set(key, { steps: [i], setup: setupFromInput(given.data) });
  });
  return [...kinds.values()];
}

/** The steps with these waits after their coats; a coat that is not firm in three days keeps the wait that it has. */
export function withWaits(
  steps: readonly StepDraft[],
  coats: readonly CoatInAir[],
  minutes: readonly (number | null)[],
): readonly StepDraft[] {
  return steps.map((step, i) => {
    const at = coats.findIndex((coat) => coat.steps.includes(i));
    const wait = minutes[at];
    return wait == null ? step : { ...step, least: waitTyped(Math.ceil(wait / rounded) * rounded) };
  });
}
