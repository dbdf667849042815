import { createSignal, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { useBook } from "../book-store/use-book.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { words } from "../words/words.ts";

interface Typed {
  readonly temperature: string;
  readonly humidity: string;
  readonly wood: string;
}

/** Reading the air in two taps: the fields open with what was read last, so that only what changed is typed. */
export function AirForm() {
  const book = useBook();
  const [typed, setTyped] = createSignal<Typed>();
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<string>();
  const last = () =>
    book.look("last-air", (read) => read.ofKind("air-read").at(-1)?.body as Body<"air-read"> | undefined);
  const set = (change: Partial<Typed>) =>
    setTyped((was) => (was === undefined ? was : { ...was, ...change }));
  const readings = (t: Typed) => ({
    temperature: readQuantity(t.temperature, fields.airTemperature),
    humidity: readQuantity(t.humidity, fields.relativeHumidity),
    wood: readQuantity(t.wood, fields.airTemperature),
  });
  function open(): void {
    setWrote(undefined);
    setTold(false);
    const before = last();
    setTyped({
      temperature: before?.temperature.typed ?? "",
      humidity: before?.relativeHumidity.typed ?? "",
      wood: before?.wood?.typed ?? "",
    });
  }
  function write(): void {
    const t = typed();
    if (t === undefined) return;
    const { temperature, humidity, wood } = readings(t);
    setTold(true);
    if (!temperature.ok || !humidity.ok || (!wood.ok && t.wood.trim() !== "")) return;
    const body = {
      temperature: temperature.value,
      relativeHumidity: humidity.value,
      ...(wood.ok ? { wood: wood.value } : {}),
    };
    setWrote(book.write({ kind: "air-read", body }));
    setTyped(undefined);
  }
  function undo(): void {
    const id = wrote();
    if (id !== undefined) book.strike([id]);
    setWrote(undefined);
  }
  return (
    <div class="not-on-paper">
      <Show
        when={typed()}
        fallback={
          <button type="button" class="wide" onClick={open}>
            {last() === undefined ? words.bench.airRead : words.bench.airAgain}
          </button>
        }
      >
        {(t) => (
          <div class="stack air-form">
            <QuantityField
              label={words.bench.temperature}
              typed={t().temperature}
              reading={readings(t()).temperature}
              onInput={(temperature) => set({ temperature })}
              hint={words.bench.airHints.temperature}
              told={told()}
              onEnter={write}
            />
            <QuantityField
              label={words.bench.humidity}
              typed={t().humidity}
              reading={readings(t()).humidity}
              onInput={(humidity) => set({ humidity })}
              hint={words.bench.airHints.humidity}
              told={told()}
              onEnter={write}
            />
            <QuantityField
              label={words.bench.woodTemperature}
              typed={t().wood}
              reading={readings(t()).wood}
              onInput={(wood) => set({ wood })}
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
