import { words } from "../words/words.ts";
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

/** A fault of ours: said plainly, with what to do, and kept in words that can be passed on. */
export function Broken(props: { readonly error: unknown }) {
  const said = () =>
    props.error instanceof Error ? `${props.error.name}: ${props.error.message}` : String(props.error);
  console.error(props.error);
  return (
    <Page title={words.shell.brokeHeading}>
      <section class="does-not-fit">
        <h1>{words.shell.brokeHeading}</h1>
        <p>{words.shell.brokeSays}</p>
        <p class="small">
          <code>{said()}</code>
        </p>
        <button type="button" onClick={() => location.reload()}>
          {words.shell.again}
        </button>
      </section>
    </Page>
  );
}
