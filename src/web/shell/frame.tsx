import { For, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { KeepingNews, sayStatus } from "../offline/news.tsx";
import { type PlaceId, placeIds, placePath } from "../place.ts";
import * as words from "../words/words.ts";
import { light, lights, setLight } from "./light.ts";
import { pageNote, Spine } from "./page.tsx";

/** Name, the page's words, what is still to send, and whether all of this is made up. */
export function Head() {
  const book = useBook();
  return (
    <header class="head">
      <Spine />
      <a class="mark say" href="/bench">
        {words.shell.lacbench}
      </a>
      <span class="note">{pageNote()}</span>
      <span class="news">
        <Show when={book.invented()}>
          <span class="demo">{words.shell.demo}</span>
        </Show>
        <span role="status">
          <a href="/book/keeping">{sayStatus(book.status())}</a>
        </span>
        <KeepingNews />
        <Show when={book.status().refused > 0}>
          <a href="/book?show=refused">{words.shell.refused(book.status().refused)}</a>
        </Show>
      </span>
    </header>
  );
}

/** The places, in words; the one that is open stands on a bar of the finish. */
export function Places(props: { readonly current: PlaceId | undefined }) {
  return (
    <nav class="places" aria-label={words.shell.places}>
      <For each={placeIds}>
        {(place) => (
          <a href={placePath(place)} aria-current={props.current === place ? "page" : undefined}>
            {words.shell.place[place]}
          </a>
        )}
      </For>
    </nav>
  );
}

/** The light of this device, and which notebook is open. */
export function Foot() {
  const book = useBook();
  return (
    <footer class="foot">
      <Choice
        label={words.shell.light}
        name="light"
        inline
        options={lights.map((value) => ({ value, label: words.shell.lights[value] }))}
        value={light()}
        onChange={setLight}
      />
      <span>
        {words.shell.notebook}: {book.name()}
      </span>
      <a href="/">{words.shell.another}</a>
    </footer>
  );
}
