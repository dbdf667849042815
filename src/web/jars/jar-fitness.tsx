import { Show } from "solid-js";
import { type Fitness, fitnessDefaults } from "../../core/jar/fitness.ts";
import * as words from "../words/words.ts";
import { thresholdInWords } from "./thresholds.tsx";

type Threshold = (typeof fitnessDefaults)[keyof typeof fitnessDefaults];

/** Which threshold decided, by reason. */
const decidedBy: Partial<Record<Fitness["because"], Threshold>> = {
  old: fitnessDefaults.testAfterDays,
  fresh: fitnessDefaults.testAfterDays,
  "hard-in-the-drop-test": fitnessDefaults.testHoldsDays,
  "slow-in-the-drop-test": fitnessDefaults.hardWithinMinutes,
};

/** Use it, test it first, or past using: why, and the thresholds behind it to be set to one's own. */
export function JarFitness(props: { readonly fitness: Fitness }) {
  const t = words.jars;
  const threshold = () => {
    const [of, value] = [decidedBy[props.fitness.because], props.fitness.threshold];
    return of === undefined || value === null ? undefined : thresholdInWords(of, value);
  };
  return (
    <div class="fitness">
      <p>
        <b>{t.fitness[props.fitness.state]}:</b> {t.because[props.fitness.because]}
        <Show when={threshold()} keyed>
          {(says) => <span class="soft"> ({says})</span>}
        </Show>
        .
      </p>
    </div>
  );
}
