import { createSignal, Show } from "solid-js";
import type { Trial } from "../../core/views/trial.ts";
import { TextField } from "../controls/text-field.tsx";
import * as words from "../words/words.ts";
import { keyText, type Opener } from "./open-key.ts";

/** The button that opens a key, with its passphrase where it has one. */
export function KeyOpener(props: {
  readonly trial: Trial;
  readonly opener: Opener | undefined;
  readonly label: string;
  /** Asked at each press: false holds it back, to be pressed once more. */
  readonly mayOpen: () => boolean;
  readonly onOpened: (text: string) => void;
}) {
  const [passphrase, setPassphrase] = createSignal("");
  const [wrong, setWrong] = createSignal<string>();
  const [busy, setBusy] = createSignal(false);

  async function open(): Promise<void> {
    if (busy() || !props.mayOpen()) return;
    setBusy(true);
    setWrong(undefined);
    const text = await keyText(props.trial, passphrase());
    setBusy(false);
    if (text === null) setWrong(words.trials.doesNotOpen);
    else props.onOpened(text);
  }

  return (
    <>
      <Show when={props.opener === "passphrase"}>
        <TextField
          label={words.trials.passphrase}
          type="password"
          value={passphrase()}
          onInput={setPassphrase}
          onEnter={() => void open()}
          wrong={wrong()}
        />
      </Show>
      <Show when={props.opener !== "passphrase" && wrong()}>{(says) => <p role="alert">{says()}</p>}</Show>
      <button type="button" onClick={() => void open()}>
        {busy() ? words.trials.opening : props.label}
      </button>
    </>
  );
}
