import { DomainError, inRange } from "../domain-error.ts";
import type { VolumeFraction } from "../units.ts";
import { mostCoats } from "./coats-for-film.ts";
import type { FinishingStep, PieceWork } from "./finishing-step.ts";
import { type MethodDefaults, methodDefaults, type PieceMethod, workDefaults } from "./method-defaults.ts";

/** So many coats of one recipe, put on in one way. */
export interface PlainSchedule {
  readonly method: PieceMethod;
  /** 1 to 40. */
  readonly coats: number;
  /** Share of the liquid that is resin, by volume. */
  readonly volumeSolids: VolumeFraction;
  readonly cureDays?: number;
  /** The person's own numbers in place of the starting ones. */
  readonly own?: Partial<MethodDefaults>;
}

const work = (what: PieceWork, minutesPerM2: number): FinishingStep => ({
  what,
  minutesPerM2,
  leastWaitMinutes: 0,
});

/** What is done to the surface between a coat and the next: rubbed smooth after the first, flat after every few. */
function between(coat: number): readonly FinishingStep[] {
  if (coat === 1) return [work("de-nib", workDefaults.deNibMinutesPerM2)];
  return coat % workDefaults.levelEvery === 0 ? [work("level", workDefaults.levelMinutesPerM2)] : [];
}

/**
 * The usual order of work for so many coats of one recipe: sanded, the coats with what is done between them, cured,
 * rubbed out. A night is waited after every few coats.
 *
 * @throws DomainError for a number of coats or days to cure that is out of range
 */
export function plainSteps(schedule: PlainSchedule): readonly FinishingStep[] {
  const { coats, volumeSolids } = schedule;
  inRange("coats", coats, { min: 1, max: mostCoats });
  if (!Number.isInteger(coats))
    throw new DomainError({
      code: "wrong-type",
      field: "coats",
      value: coats,
      because: "Coats are counted in whole numbers.",
    });
  const cureDays = inRange("cureDays", schedule.cureDays ?? workDefaults.cureDays, { min: 0, max: 365 });
  const method = { ...methodDefaults[schedule.method], ...schedule.own };
  const layers = Array.from({ length: coats }, (_, i) => i + 1).flatMap((coat) => {
    const last = coat === coats;
    const dries = method.waits[Math.min(coat, 3) - 1] as number;
    const layer: FinishingStep = {
      what: "coat",
      minutesPerM2: method.minutesPerM2,
      leastWaitMinutes: last ? 0 : dries,
      driesMinutes: dries,
      overnight: coat % method.coatsANight === 0 && !last,
      liquid: {
        litresPerM2: method.litresPerM2 * (coat === 1 ? method.firstCoatTimes : 1),
        volumeSolids,
        transfer: method.transfer,
      },
    };
    return last ? [layer] : [layer, ...between(coat)];
  });
  return [
    work("sand", workDefaults.sandMinutesPerM2),
    ...layers,
    { what: "cure", minutesPerM2: 0, leastWaitMinutes: Math.round(cureDays) * 1440 },
    work("rub out", workDefaults.rubOutMinutesPerM2),
  ];
}
