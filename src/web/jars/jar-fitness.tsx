import { createSignal, Show } from "solid-js";
import { type Fitness, fitnessDefaults } from "../../core/jar/fitness.ts";
import { useBook } from "../book-store/use-book.tsx";
import { TextField } from "../controls/text-field.tsx";
import { words } from "../words/words.ts";

/** Which threshold decided, by reason. */
const decidedBy = {
  old: fitnessDefaults.testAfterDays,
  fresh: fitnessDefaults.testAfterDays,
  "hard-in-the-drop-test": fitnessDefaults.testHoldsDays,
  "slow-in-the-drop-test": fitnessDefaults.hardWithinMinutes,
} as const;

const wholeNumber = (text: string): number | undefined => {
  const value = /^\d{1,5}$/.test(text.trim()) ? Number(text.trim()) : Number.NaN;
  return value >= 1 && value <= 10_000 ? value : undefined;
};

/** Use it, test it first, or past using: why, and the threshold behind it to be set to one's own. */
export function JarFitness(props: { readonly fitness: Fitness }) {
  const book = useBook();
  const t = words.jars;
  const [typed, setTyped] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const rule = () =>
    (
      decidedBy as Partial<
        Record<
          Fitness["because"],
          (typeof decidedBy)["old" | "hard-in-the-drop-test" | "slow-in-the-drop-test"]
        >
      >
    )[props.fitness.because];
  const threshold = () => {
    const [of, value] = [rule(), props.fitness.threshold];
    if (of === undefined || value === null) return "";
    return of.unit === "days" ? t.thresholdDays(value) : t.thresholdMinutes(value);
  };
  const keep = () => {
    setTold(true);
    const [of, value] = [rule(), wholeNumber(typed() ?? "")];
    if (of === undefined || value === undefined) return;
    book.write({ kind: "default-changed", body: { name: of.name, value, was: props.fitness.threshold } });
    setTyped(undefined);
  };
  return (
    <div class="fitness">
      <p>
        <b>{t.fitness[props.fitness.state]}:</b> {t.because[props.fitness.because]}
        <Show when={threshold() !== ""}>
          <span class="soft"> ({threshold()})</span>
        </Show>
        .
      </p>
      <Show when={rule()} keyed>
        {(of) => (
          <Show
            when={typed() !== undefined}
            fallback={
              <button
                type="button"
                class="words not-on-paper"
                onClick={() => setTyped(String(props.fitness.threshold ?? of.value))}
              >
                {t.changeThreshold}
              </button>
            }
          >
            <TextField
              label={t.thresholdField(of.unit)}
              value={typed() ?? ""}
              inputMode="numeric"
              onInput={setTyped}
              wrong={told() && wholeNumber(typed() ?? "") === undefined ? t.thresholdWrong : undefined}
              onEnter={keep}
            />
            <button type="button" onClick={keep}>
              {t.keepThreshold}
            </button>
          </Show>
        )}
      </Show>
    </div>
  );
}
