import { createEffect, createSignal, For, type JSX, onCleanup, onMount, Show } from "solid-js";
import * as words from "../words/words.ts";
import type { FinishLook } from "./finish-look.ts";

/** One coat on the spine, counted from the wood: its finish, or open while it is being given. */
export interface SpineBand {
  readonly label: string;
  readonly fill?: string | undefined;
}

interface Worn {
  readonly finish: FinishLook | undefined;
  readonly bands: readonly SpineBand[];
  readonly note: string | undefined;
}

const nothing: Worn = { finish: undefined, bands: [], note: undefined };
const [worn, setWorn] = createSignal<Worn>(nothing);

/** What the page that is open is bound in; the shell draws it. */
export { worn };

const [pageNote, setPageNote] = createSignal<JSX.Element>(undefined);

/** What the header says at its left on a phone. */
export { pageNote };

let firstPage = true;

/**
 * What every screen stands in. Sets the title, the finish that the page wears, the spine's coats and the header's
 * words, and moves the focus to the page's heading when it is not the first.
 */
export function Page(props: {
  readonly title: string;
  readonly finish?: FinishLook | undefined;
  readonly bands?: readonly SpineBand[] | undefined;
  readonly bandsSay?: string | undefined;
  /** On a phone, at the left of the header: the title unless told. */
  readonly note?: JSX.Element;
  /** For a page whose drawing is its heading: the title is read out and not shown. */
  readonly headingUnseen?: boolean;
  readonly children: JSX.Element;
}) {
  let root!: HTMLDivElement;
  createEffect(() => {
    document.title = words.shell.title(props.title);
    setPageNote(props.note ?? props.title);
  });
  createEffect(() => setWorn({ finish: props.finish, bands: props.bands ?? [], note: props.bandsSay }));
  onMount(() => {
    const heading = root.querySelector("h1");
    if (heading === null) return;
    heading.tabIndex = -1;
    if (!firstPage) heading.focus({ preventScroll: true });
    firstPage = false;
  });
  onCleanup(() => setWorn(nothing));
  return (
    <div ref={root} class="page">
      <Show when={props.headingUnseen}>
        <h1 class="unseen">{props.title}</h1>
      </Show>
      {props.children}
    </div>
  );
}

export function Spine() {
  const say = () =>
    worn().note ?? (worn().finish === undefined ? words.shell.noFinish : words.shell.finishOf);
  return (
    <div class="spine" role="img" aria-label={say()} title={say()}>
      <For each={[...worn().bands].reverse()}>
        {(band) => (
          <div class="band" classList={{ open: band.fill === undefined }} style={{ background: band.fill }}>
            <span>{band.label}</span>
          </div>
        )}
      </For>
    </div>
  );
}
