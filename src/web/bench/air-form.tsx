import { createSignal, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import type { AirDraft } from "../drying/shop-air.ts";
import * as words from "../words/words.ts";

/** Reading the air in two taps: the fields open with what was read last, so that only what changed is typed. */
export function AirForm(props: { readonly draft: AirDraft }) {
  const book = useBook();
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<string>();
  const open = () => {
    setWrote(undefined);
    setTold(false);
    props.draft.open();
  };
  function write(): void {
    const read = props.draft.readings();
    setTold(true);
    if (read === undefined || props.draft.asTyped() === null) return;
    if (!read.temperature.ok || !read.humidity.ok) return;
    const body = {
      temperature: read.temperature.value,
      relativeHumidity: read.humidity.value,
      ...(read.wood.ok ? { wood: read.wood.value } : {}),
    };
    setWrote(book.write({ kind: "air-read", body }));
    props.draft.close();
  }
  function undo(): void {
    const id = wrote();
    if (id !== undefined) book.strike([id]);
    setWrote(undefined);
  }
  return (
    <div class="not-on-paper">
      <Show
        when={props.draft.readings()}
        fallback={
          <button type="button" class="wide" onClick={open}>
            {props.draft.logged() === null ? words.bench.airRead : words.bench.airAgain}
          </button>
        }
      >
        {(read) => (
          <div class="stack air-form">
            <QuantityField
              label={words.bench.temperature}
              typed={props.draft.typed()?.temperature ?? ""}
              reading={read().temperature}
              onInput={(temperature) => props.draft.set({ temperature })}
              hint={words.bench.airHints.temperature}
              told={told()}
              onEnter={write}
            />
            <QuantityField
              label={words.bench.humidity}
              typed={props.draft.typed()?.humidity ?? ""}
              reading={read().humidity}
              onInput={(humidity) => props.draft.set({ humidity })}
              hint={words.bench.airHints.humidity}
              told={told()}
              onEnter={write}
            />
            <QuantityField
              label={words.bench.woodTemperature}
              typed={props.draft.typed()?.wood ?? ""}
              reading={read().wood}
              onInput={(wood) => props.draft.set({ wood })}
              hint={words.bench.airHints.wood}
              told={told()}
              optional
              onEnter={write}
            />
            <button type="button" class="wide" onClick={write}>
              {words.bench.airAct}
            </button>
          </div>
        )}
      </Show>
      <Show when={wrote()}>
        <UndoStrip says={words.bench.airWrote} onUndo={undo} />
      </Show>
    </div>
  );
}
