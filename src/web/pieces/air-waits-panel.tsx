import { createMemo, createSignal, For, Show } from "solid-js";
import type { PiecePlanInput } from "../../core/registry/piece-schedule.ts";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { NotReckoned } from "../drying/not-reckoned.tsx";
import { useReckoned } from "../drying/use-reckoned.ts";
import { lengthInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { coatsInAir, withWaits } from "./air-waits.ts";
import { type StepDraft, stepInWords } from "./step-draft.ts";

const t = words.airWaits;

/** The waits of a schedule from the air that is expected: how each coat would dry in it, taken over at a press. */
export function AirWaits(props: {
  readonly steps: readonly StepDraft[];
  readonly solvent: PiecePlanInput["solvent"] | undefined;
  readonly onSteps: (steps: readonly StepDraft[]) => void;
}) {
  const [typed, setTyped] = createSignal({ temperature: "", humidity: "" });
  const [before, setBefore] = createSignal<readonly StepDraft[]>();
  const temperature = createMemo(() => readQuantity(typed().temperature, fields.airTemperature));
  const humidity = createMemo(() => readQuantity(typed().humidity, fields.relativeHumidity));
  const coats = createMemo(() => {
    const [celsius, moist] = [temperature(), humidity()];
    if (!celsius.ok || !moist.ok || props.solvent === undefined) return [];
    return coatsInAir(props.steps, props.solvent, {
      temperature: celsius.value.si,
      wood: celsius.value.si,
      relativeHumidity: moist.value.si,
    });
  });
  const asked = createMemo(() =>
    coats().length === 0
      ? undefined
      : { setups: coats().map((coat) => coat.setup), help: false, threshold: 0 },
  );
  const reckoning = useReckoned("drying", asked);
  const dried = () => {
    const last = reckoning.last();
    return last !== undefined && last.answer.length === coats().length ? last.answer : undefined;
  };
  const waits = () => dried()?.map((one) => one.recoatMin) ?? [];
  const take = () => {
    setBefore(props.steps);
    props.onSteps(withWaits(props.steps, coats(), waits()));
  };
  const undo = () => {
    props.onSteps(before() ?? props.steps);
    setBefore(undefined);
  };
  const saysOf = (at: number) => {
    const step = props.steps[coats()[at]?.step ?? 0];
    const [wait, white] = [waits()[at], dried()?.[at]?.blush];
    const dry = wait == null ? t.never : t.after(lengthInWords(Math.round(wait)));
    const said = `${step === undefined ? "" : stepInWords(step)}: ${dry}`;
    return white === "likely" || white === "possible" ? `${said} ${t.white[white]}` : said;
  };
  return (
    <details>
      <summary>{t.heading}</summary>
      <div class="stack step-fields">
        <div class="side-by-side">
          <QuantityField
            label={t.temperature}
            typed={typed().temperature}
            reading={temperature()}
            onInput={(text) => setTyped((was) => ({ ...was, temperature: text }))}
          />
          <QuantityField
            label={t.humidity}
            typed={typed().humidity}
            reading={humidity()}
            onInput={(text) => setTyped((was) => ({ ...was, humidity: text }))}
          />
        </div>
        <Show when={props.solvent === undefined}>
          <p>{words.pieces.noSolventChosen}</p>
        </Show>
        <NotReckoned reckoning={reckoning}>
          <Show when={dried()}>
            <ul>
              <For each={coats()}>{(_, i) => <li>{saysOf(i())}</li>}</For>
            </ul>
            <button type="button" onClick={take}>
              {t.take}
            </button>
          </Show>
        </NotReckoned>
        <Show when={before()}>
          <UndoStrip says={t.taken} onUndo={undo} />
        </Show>
        <p class="soft small">{t.says}</p>
      </div>
    </details>
  );
}
