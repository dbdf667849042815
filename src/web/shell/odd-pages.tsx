import { Show } from "solid-js";
import { isUnfetched } from "../lazy.tsx";
import * as words from "../words/words.ts";
import { Page } from "./page.tsx";

export function Nowhere() {
  return (
    <Page title={words.shell.nowhere}>
      <section class="stack">
        <h1>{words.shell.nowhere}</h1>
        <p>{words.shell.nowhereSays}</p>
        <a class="press" href="/bench">
          {words.shell.toBench}
        </a>
      </section>
    </Page>
  );
}

/** A fault of ours: said plainly, with what to do, and kept in words that can be passed on. Or a page that is out of reach. */
export function Broken(props: { readonly error: unknown; readonly onAgain: () => void }) {
  const far = () => isUnfetched(props.error);
  const said = () =>
    props.error instanceof Error ? `${props.error.name}: ${props.error.message}` : String(props.error);
  const heading = () => (far() ? words.shell.farHeading : words.shell.brokeHeading);
  if (!far()) console.error(props.error);
  return (
    <Page title={heading()}>
      <section class="does-not-fit">
        <h1>{heading()}</h1>
        <p>{far() ? words.shell.farSays : words.shell.brokeSays}</p>
        <Show when={!far()}>
          <p class="small">
            <code>{said()}</code>
          </p>
        </Show>
        <button type="button" onClick={() => props.onAgain()}>
          {words.shell.again}
        </button>
      </section>
    </Page>
  );
}
