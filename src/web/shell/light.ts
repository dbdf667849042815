import { createSignal } from "solid-js";

export const lights = ["day", "dark", "dim"] as const;
export type Light = (typeof lights)[number];

const key = "lacbench-light";
const isLight = (text: string | null): text is Light => lights.some((light) => light === text);

/** What this device was told; else what it prefers. A browser that keeps nothing just prefers. */
function first(): Light {
  try {
    const kept = localStorage.getItem(key);
    if (isLight(kept)) return kept;
  } catch {
    // Storage is refused in some private windows: then the light lasts as long as the page.
  }
  return matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "day";
}

const [light, set] = createSignal<Light>(first());

export { light };

export function setLight(to: Light): void {
  set(to);
  document.documentElement.dataset.light = to;
  try {
    localStorage.setItem(key, to);
  } catch {
    // As above.
  }
}

export function startLight(): void {
  document.documentElement.dataset.light = light();
}
