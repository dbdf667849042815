import type { DryingSetup } from "../../core/evaporation/drying.ts";
import { volumeSolids } from "../../core/film/film.ts";
import type { WrittenStep } from "../../core/pieces/finishing-schedules.ts";
import { methodDefaults } from "../../core/pieces/method-defaults.ts";
import { dryingInput, setupFromInput } from "../../core/registry/drying-input.ts";
import type { SolventInput } from "../../core/registry/solvent.ts";
import { celsiusFromKelvin, cutFromPoundsPerUsGallon, type Kelvin } from "../../core/units.ts";
import type { ShopAir } from "../../core/views/coat-setup.ts";
import { waitTyped } from "./read-wait.ts";
import { type StepDraft, writtenFrom } from "./step-draft.ts";

/** A coat whose wait hangs on the air: the step that puts it on, and the coat as it lies on what was put on before. */
export interface CoatInAir {
  readonly step: number;
  readonly setup: DryingSetup;
}

const longestHours = 72;
/** A plan is kept to the minutes of a clock, not of a model. */
const rounded = 5;

/** The wet film that a coat of a step leaves, and the dry film that comes of it [µm]. */
function filmOf(step: WrittenStep) {
  const wetUm = (step.millilitresPerM2 ?? 0) * methodDefaults[step.method ?? "pad"].transfer;
  const solids = volumeSolids(cutFromPoundsPerUsGallon(step.cutLbPerGal ?? 0));
  return { wetUm, dryUm: wetUm * solids };
}

/**
 * The coats of a schedule as they would dry in this air. A coat melts some of what it goes on and waits the longer for it, so
 * of several in a row the last counts; sanding is left out.
 */
export function coatsInAir(
  steps: readonly StepDraft[],
  solvent: SolventInput,
  air: ShopAir,
): readonly CoatInAir[] {
  let beneathUm = 0;
  const coats: CoatInAir[] = [];
  steps.forEach((draft, i) => {
    const step = writtenFrom(draft);
    if (step?.what !== "coat") return;
    const { wetUm, dryUm } = filmOf(step);
    const times = step.times ?? 1;
    const given = dryingInput.safeParse({
      film: { wetUm, cutLbPerGal: step.cutLbPerGal, solvent, beneathUm: beneathUm + (times - 1) * dryUm },
      air: {
        temperatureC: celsiusFromKelvin(air.temperature as Kelvin),
        relativeHumidity: air.relativeHumidity,
      },
      wood: { temperatureC: celsiusFromKelvin(air.wood as Kelvin) },
      hours: longestHours,
    });
    beneathUm += times * dryUm;
    if (given.success) coats.push({ step: i, setup: setupFromInput(given.data) });
  });
  return coats;
}

/** The steps with these waits after their coats; a coat that is not firm in three days keeps the wait that it has. */
export function withWaits(
  steps: readonly StepDraft[],
  coats: readonly CoatInAir[],
  minutes: readonly (number | null)[],
): readonly StepDraft[] {
  return steps.map((step, i) => {
    const at = coats.findIndex((coat) => coat.step === i);
    const wait = minutes[at];
    return wait == null ? step : { ...step, least: waitTyped(Math.ceil(wait / rounded) * rounded) };
  });
}
