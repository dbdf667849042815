/** What a trial asks of the person, from what the plan says. */
export interface Takes {
  readonly millilitres: number;
  readonly jars: number;
  readonly millilitresPerJar: number;
  readonly hours: number;
  /** Half the width of what the hours may be. */
  readonly hoursGiveOrTake: number;
}

/** From memory, for a brush or a small pad: a finisher's own times replace them. */
const minutesPerPatchCoat = 2;
const minutesPerSitting = 20;
const minutesPerReading = 1;
/** What stays in brush, pad and cup over what goes on the wood. Common practice. */
const poured = 1.25;

/**
 * Liquid and hours of a trial.
 *
 *     V = 1.25 · patches · coats · v        t = patches · coats · 2 min + coats · 20 min + patches · responses · 1 min
 *
 * @param plan  patches, coats, responses and jars: counts; millilitres on one patch in one coat
 * @returns     mL in all and for each jar, hours with a give or take of a fifth
 *
 * Valid:    patches of one size, coats by brush or small pad
 * Accuracy: the hours are a rule of thumb, from memory; a fifth either way
 * Source:   common practice
 */
export function trialTakes(plan: {
  readonly patches: number;
  readonly coats: number;
  readonly responses: number;
  readonly jars: number;
  readonly millilitresPerPatchCoat: number;
}): Takes {
  const millilitres = poured * plan.patches * plan.coats * plan.millilitresPerPatchCoat;
  const minutes =
    plan.patches * plan.coats * minutesPerPatchCoat +
    plan.coats * minutesPerSitting +
    plan.patches * plan.responses * minutesPerReading;
  return {
    millilitres,
    jars: plan.jars,
    millilitresPerJar: millilitres / plan.jars,
    hours: minutes / 60,
    hoursGiveOrTake: minutes / 300,
  };
}
