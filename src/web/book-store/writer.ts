import { createSignal } from "solid-js";

const key = "lacbench-writer";

function kept(): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null; // a browser that keeps nothing knows nobody until told again
  }
}

const [name, setName] = createSignal(kept());

/** Who writes on this device; null until somebody says. It stands on every entry from then on. */
export const writer = name;

export function setWriter(typed: string): void {
  const told = typed.trim() === "" ? null : typed.trim();
  setName(told);
  try {
    if (told === null) localStorage.removeItem(key);
    else localStorage.setItem(key, told);
  } catch {
    // As above.
  }
}
