import type { Body } from "../../../core/notebook/kinds/all.ts";

export const keyHoldings = ["device", "passphrase", "helper", "none"] as const;
export type KeyHolding = (typeof keyHoldings)[number];

/** What is told before a plan is laid down. */
export interface Keeping {
  /** Null until the person names it. */
  readonly called: string | null;
  readonly batches: Readonly<Record<string, string>>;
  readonly holding: KeyHolding;
  readonly passphrase: string;
  readonly again: string;
}

export const firstKeeping: Keeping = {
  called: null,
  batches: {},
  holding: "device",
  passphrase: "",
  again: "",
};

export const blindingOf: Readonly<Record<KeyHolding, Body<"trial-laid-out">["blinding"]>> = {
  device: "codes only",
  passphrase: "codes only",
  helper: "helper holds the key",
  none: "none",
};

const shortest = 8;

/** What is wrong with the passphrase, or null. */
export function passphraseFault(k: Keeping): "short" | "differs" | null {
  if (k.holding !== "passphrase" && k.holding !== "helper") return null;
  if ([...k.passphrase].length < shortest) return "short";
  return k.passphrase === k.again ? null : "differs";
}
