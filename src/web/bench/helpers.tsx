import { createSignal, For, Show } from "solid-js";
import { addHelper, hands, helpers, removeHelper, setHands } from "../book-store/hands.ts";
import { writer } from "../book-store/writer.ts";
import { Choice } from "../controls/choice.tsx";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";

const t = words.bench;

/** Whose hands it is, in one tap and kept for the next coat; nothing to choose where nobody helps. */
export function Hands() {
  const options = () => [
    { value: "", label: writer() ?? t.myself },
    ...helpers().map((name) => ({ value: name, label: name })),
  ];
  return (
    <Show when={helpers().length > 0}>
      <div class="not-on-paper">
        <Choice label={t.whose} value={hands()} options={options()} onChange={setHands} inline />
      </div>
    </Show>
  );
}

/** Naming who helps at this bench, and taking them off again. */
export function Helpers() {
  const [typed, setTyped] = createSignal("");
  const [told, setTold] = createSignal(false);
  const missing = () => typed().trim() === "";
  const add = () => {
    setTold(!addHelper(typed()));
    if (!told()) setTyped("");
  };
  return (
    <details>
      <summary>{t.helpers}</summary>
      <div class="stack">
        <p class="small">{t.helpersSay}</p>
        <For each={helpers()}>
          {(name) => (
            <p class="side-by-side">
              <b>{name}</b>
              <button type="button" class="words" onClick={() => removeHelper(name)}>
                {t.helperOff(name)}
              </button>
            </p>
          )}
        </For>
        <TextField
          label={t.helperName}
          value={typed()}
          onInput={setTyped}
          wrong={told() && missing() ? t.helperMissing : undefined}
          onEnter={add}
        />
        <button type="button" class="wide" onClick={add}>
          {t.helperAdd}
        </button>
      </div>
    </details>
  );
}
