import { bytesToHex } from "@noble/hashes/utils.js";
import { batch } from "solid-js";
import { type SealedKey, sealKey } from "../../../core/notebook/blind-key.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import { randomBytes } from "../../book-store/open-keep.ts";
import { keepDeviceKey } from "../key-store.ts";
import { sealWithPassphrase } from "../reckoner.ts";
import type { Asked } from "./draft.ts";
import { blindingOf, type Keeping } from "./keeping.ts";
import { type Layout, layDown } from "./plan.ts";

/** 128 bits: nobody finds a lot or a salt by trying. */
export const newSecret = (): string => bytesToHex(randomBytes(16));

/** Seals the key as the person wants it kept; for this device its half is kept before anything else is written. */
async function seal(text: string, keeping: Keeping): Promise<SealedKey> {
  if (keeping.holding === "passphrase" || keeping.holding === "helper")
    return sealWithPassphrase(text, keeping.passphrase);
  const deviceKey = randomBytes(32);
  const sealed = sealKey(text, { deviceKey }, randomBytes);
  await keepDeviceKey(sealed.keySha256, deviceKey);
  return sealed;
}

/** Writes a trial down: the question, the layout in clear, the sealed key. Returns the trial's id. */
export async function keepTrial(
  book: OpenBook,
  question: string,
  asked: Asked,
  layout: Layout,
  seed: string,
  keeping: Keeping,
): Promise<string> {
  const laid = layDown(
    asked,
    layout,
    { seed, salt: newSecret() },
    { blinding: blindingOf[keeping.holding], batches: keeping.batches },
  );
  const sealed = keeping.holding === "none" ? null : await seal(laid.keyText, keeping);
  return batch(() => {
    const trial = book.write({ kind: "trial-asked", body: { ...asked.body, question } });
    const batches = [...new Set(Object.values(keeping.batches))];
    book.write({ kind: "trial-laid-out", about: [trial, ...batches], body: laid.body });
    if (sealed === null) book.write({ kind: "key-opened", about: [trial], body: { key: laid.keyText } });
    else book.write({ kind: "trial-key", about: [trial], body: sealed });
    return trial;
  });
}
