import { For, Show } from "solid-js";
import { Choice } from "../../controls/choice.tsx";
import { Select } from "../../controls/select.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import type { ShelfJar } from "../shelf-jars.ts";
import { type Keeping, type KeyHolding, keyHoldings } from "./keeping.ts";

/** Name, jars and key: what is told before a plan is laid down. */
export function Settings(props: {
  readonly keeping: Keeping;
  readonly set: (change: Partial<Keeping>) => void;
  readonly jars: readonly { readonly jar: string }[];
  readonly shelf: readonly ShelfJar[];
  readonly calledByItself: string;
  readonly wrong: string | undefined;
}) {
  const chosen = (jar: string) => props.keeping.batches[jar];
  return (
    <div class="settings">
      <section class="hung">
        <TextField
          label={words.trials.called}
          value={props.keeping.called ?? props.calledByItself}
          onInput={(called) => props.set({ called })}
        />
      </section>
      <Show when={props.shelf.length > 0}>
        <section class="hung">
          <h2>{words.trials.jarsHeading}</h2>
          <p>{words.trials.jarsSays}</p>
          <div class="fields">
            <For each={props.jars}>
              {({ jar }) => (
                <Select
                  label={words.trials.jarName(jar)}
                  empty={words.trials.notChosen}
                  value={chosen(jar)}
                  options={props.shelf.map((j) => ({ value: j.id, label: j.label }))}
                  onChange={(batch) => props.set({ batches: { ...props.keeping.batches, [jar]: batch } })}
                />
              )}
            </For>
          </div>
        </section>
      </Show>
      <section class="hung">
        <h2>{words.trials.keyHeading}</h2>
        <p>{words.trials.keySays}</p>
        <Choice
          label={words.trials.keyHow}
          options={keyHoldings.map((value) => ({ value, ...words.trials.keyHoldings[value] }))}
          value={props.keeping.holding}
          onChange={(holding: KeyHolding) => props.set({ holding })}
        />
        <Show when={props.keeping.holding === "passphrase" || props.keeping.holding === "helper"}>
          <div class="fields">
            <TextField
              label={words.trials.passphrase}
              type="password"
              hint={words.trials.passphraseLost}
              value={props.keeping.passphrase}
              onInput={(passphrase) => props.set({ passphrase })}
              wrong={props.wrong}
            />
            <TextField
              label={words.trials.passphraseAgain}
              type="password"
              value={props.keeping.again}
              onInput={(again) => props.set({ again })}
            />
          </div>
        </Show>
        <Show when={props.keeping.holding !== "helper" && props.keeping.holding !== "none"}>
          <p class="small soft">{words.trials.alone}</p>
        </Show>
      </section>
    </div>
  );
}
