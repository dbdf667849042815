import { type Accessor, createSignal, onMount } from "solid-js";

/** Turns true once the page has been drawn: what a person does not look at first waits for it. */
export function afterPaint(): Accessor<boolean> {
  const [drawn, setDrawn] = createSignal(false);
  onMount(() => requestAnimationFrame(() => setTimeout(() => setDrawn(true))));
  return drawn;
}
