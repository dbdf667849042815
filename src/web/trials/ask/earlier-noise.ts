import type { Noise } from "../../../core/design/foresight/smallest-difference.ts";
import type { Trial } from "../../../core/views/trial.ts";
import {
  factorsCompared,
  lastCoatRead,
  looksRead,
  questionOf,
  type VerdictAnswer,
} from "../../verdict/questions.ts";
import { reckon } from "../reckoner.ts";
import type { MeasuredLook } from "./plan.ts";

/** How far like things lay apart in an earlier trial of the person's own; what it could not tell is not there. */
export interface EarlierNoise extends Partial<Noise> {
  readonly trial: string;
}

/** The last trial whose key is open and in which the same was read, in the same unit. */
const lastWith = (trials: readonly Trial[], look: MeasuredLook): Trial | undefined =>
  trials
    .filter((trial) => trial.key.state === "open")
    .sort((a, b) => (a.askedAt < b.askedAt ? 1 : -1))
    .find((trial) => looksRead(trial).some((one) => isSame(one, look)));

const isSame = (
  one: { readonly name: string; readonly scale: string; readonly unit?: string | undefined },
  look: MeasuredLook,
): boolean => one.scale === "measured" && one.name === look.name && (one.unit ?? "") === look.unit;

/** What the verdicts on that trial held its differences against. */
export async function earlierNoise(
  trials: readonly Trial[],
  look: MeasuredLook,
): Promise<EarlierNoise | undefined> {
  const trial = lastWith(trials, look);
  const read = trial && looksRead(trial).find((one) => isSame(one, look));
  if (trial === undefined || read === undefined) return undefined;
  let found: EarlierNoise = { trial: trial.asked.question };
  for (const factor of factorsCompared(trial)) {
    const asked = questionOf(trial, read, factor, lastCoatRead(trial, read), "as laid out");
    const answer = await reckon<VerdictAnswer>("verdict", asked);
    if (answer.ok && answer.value.noise !== null) found = { ...found, ...partsOf(answer.value.noise) };
  }
  return found.patch === undefined ? undefined : found;
}

function partsOf({ patch, unit }: NonNullable<VerdictAnswer["noise"]>): Partial<Noise> {
  const of = unit?.of === "jar" || unit?.of === "plank" ? { [unit.of]: unit.deviation } : {};
  return patch > 0 ? { patch, ...of } : of;
}
