import { createSignal, For, Show } from "solid-js";
import { fitnessDefaults } from "../../core/jar/fitness.ts";
import { defaultValue, type TradeDefault } from "../../core/views/default-value.ts";
import { useBook } from "../book-store/use-book.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";

type Name = keyof typeof fitnessDefaults;
const names = Object.keys(fitnessDefaults) as Name[];

const wholeNumber = (text: string): number | undefined => {
  const value = /^\d{1,5}$/.test(text.trim()) ? Number(text.trim()) : Number.NaN;
  return value >= 1 && value <= 10_000 ? value : undefined;
};

/** `180 days, common practice`, or one's own with common practice beside it. */
export const thresholdInWords = (of: TradeDefault, value: number): string =>
  words.jars.thresholds.says(value, of.unit, value === of.value ? undefined : of.value);

/** When a jar is to be tested, all of it common practice until it is set to one's own. */
export function Thresholds() {
  const book = useBook();
  const t = words.jars.thresholds;
  const [typed, setTyped] = createSignal<Partial<Record<Name, string>>>({});
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<readonly string[]>([]);
  const currentOf = (name: Name) =>
    book.look(`threshold:${name}`, (read) => defaultValue(read, fitnessDefaults[name]));
  const textOf = (name: Name) => typed()[name] ?? String(currentOf(name));
  const keep = () => {
    setTold(true);
    const values = names.map((name) => [name, wholeNumber(textOf(name))] as const);
    if (values.some(([, value]) => value === undefined)) return;
    const changed = values.filter(([name, value]) => value !== currentOf(name));
    const entries = changed.map(([name, value]) =>
      book.write({
        kind: "default-changed",
        body: { name: fitnessDefaults[name].name, value, was: currentOf(name) },
      }),
    );
    setTyped({});
    setWrote(entries);
  };
  return (
    <details class="thresholds not-on-paper">
      <summary>{t.heading}</summary>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <For each={names}>
          {(name) => (
            <TextField
              label={t.fields[name]}
              value={textOf(name)}
              inputMode="numeric"
              hint={thresholdInWords(fitnessDefaults[name], currentOf(name))}
              onInput={(text) => {
                setWrote([]);
                setTyped({ ...typed(), [name]: text });
              }}
              wrong={told() && wholeNumber(textOf(name)) === undefined ? t.wrong : undefined}
            />
          )}
        </For>
        <Show
          when={wrote().length > 0}
          fallback={
            <button type="submit" class="wide">
              {t.keep}
            </button>
          }
        >
          <UndoStrip
            says={t.kept}
            onUndo={() => {
              book.strike([...wrote()]);
              setWrote([]);
            }}
          />
        </Show>
      </form>
    </details>
  );
}
