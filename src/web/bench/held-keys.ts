import { type Accessor, createEffect, createSignal, on } from "solid-js";
import { openKey } from "../../core/notebook/blind-key.ts";
import { readTrialKey, type TrialKey } from "../../core/notebook/trial-key.ts";
import type { Trial } from "../../core/views/trial.ts";
import { deviceKey } from "../trials/key-store.ts";

/** Keys opened on this device, by trial, for as long as the page is open; they go nowhere else. */
const [held, setHeld] = createSignal<ReadonlyMap<string, TrialKey>>(new Map());

function hold(trial: Trial, text: string): boolean {
  const expected = trial.laidOut?.body.keySha256;
  if (expected === undefined) return false;
  const read = readTrialKey(text, expected);
  if (read.ok) setHeld((was) => new Map(was).set(trial.id, read.value));
  return read.ok;
}

/** Opens the key with the holder's words, for this page alone. */
export function openWithWords(trial: Trial, passphrase: string): boolean {
  const { sealed } = trial.key;
  if (sealed === null) return false;
  const opened = openKey(sealed, { passphrase });
  return opened.ok && hold(trial, opened.value);
}

async function lookFor(trial: Trial): Promise<void> {
  const { sealed } = trial.key;
  if (sealed === null || trial.key.opened !== null || held().has(trial.id)) return;
  const bytes = await deviceKey(sealed.keySha256);
  if (bytes === null) return;
  const opened = openKey(sealed, { deviceKey: bytes });
  if (opened.ok) hold(trial, opened.value);
}

/** The keys that this device holds of these trials; it looks for each once. */
export function useHeldKeys(trials: Accessor<readonly Trial[]>): (trial: string) => TrialKey | null {
  const sealed = () =>
    trials().flatMap((t) => (t.key.sealed === null ? [] : [`${t.id} ${t.key.sealed.keySha256}`]));
  createEffect(
    on(
      () => sealed().join(),
      () => {
        for (const trial of trials()) void lookFor(trial);
      },
    ),
  );
  return (trial) => held().get(trial) ?? null;
}
