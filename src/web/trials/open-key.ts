import { openKey } from "../../core/notebook/blind-key.ts";
import { readTrialKey } from "../../core/notebook/trial-key.ts";
import type { Trial } from "../../core/views/trial.ts";
import { deviceKey } from "./key-store.ts";
import { openWithPassphrase } from "./reckoner.ts";

/** How a trial's key can be opened on this device. */
export type Opener = "this device" | "passphrase" | "elsewhere";

export async function openerOf(trial: Trial): Promise<Opener> {
  const { sealed } = trial.key;
  if (sealed === null) return "elsewhere";
  if (sealed.derivation.name === "scrypt") return "passphrase";
  return (await deviceKey(sealed.keySha256)) === null ? "elsewhere" : "this device";
}

/** The exact text of the key, once it opens and hashes to what was laid down; null when it does not. */
export async function keyText(trial: Trial, passphrase: string): Promise<string | null> {
  const { sealed } = trial.key;
  const expected = trial.laidOut?.body.keySha256;
  if (sealed === null || expected === undefined) return null;
  const bytes = await deviceKey(sealed.keySha256);
  const opened =
    sealed.derivation.name === "scrypt"
      ? await openWithPassphrase(sealed, passphrase)
      : bytes === null
        ? null
        : openKey(sealed, { deviceKey: bytes });
  if (opened === null || !opened.ok) return null;
  return readTrialKey(opened.value, expected).ok ? opened.value : null;
}
