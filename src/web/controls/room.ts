import { type Accessor, createSignal, onCleanup, onMount } from "solid-js";

/** The width that a drawing has, in CSS pixels, followed as the window changes; `least` until it is known. */
export function createRoom(frame: () => HTMLElement | SVGElement, least: number): Accessor<number> {
  const [room, setRoom] = createSignal(least);
  onMount(() => {
    const element = frame();
    const measure = () => setRoom(Math.max(least, element.clientWidth));
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    measure();
    onCleanup(() => watch.disconnect());
  });
  return room;
}
