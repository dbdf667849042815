import { createMemo, ErrorBoundary, onMount, Show, Suspense } from "solid-js";
import { Dynamic } from "solid-js/web";
import { matchPath } from "../match-path.ts";
import { canKeepPages } from "../offline/pages-kept.ts";
import { address } from "../router.ts";
import { fetchScreens, screens } from "../screens.ts";
import * as words from "../words/words.ts";
import { finishStyle } from "./finish-look.ts";
import { Foot, Head, Places } from "./frame.tsx";
import { light } from "./light.ts";
import { Broken, Nowhere } from "./odd-pages.tsx";
import { worn } from "./page.tsx";
import "./shell.css";

/** The first page is drawn before the others are fetched. */
const fetchAfterMs = 1_500;

function screenAt(path: string) {
  for (const screen of screens) {
    const params = matchPath(screen.path, path);
    if (params !== null) return { screen, params };
  }
  return undefined;
}

/** Everything around a page: spine, places, what is still to send, light. */
export function Shell() {
  const path = createMemo(() => address().path);
  const open = createMemo(() => screenAt(path()));
  // Where the browser keeps the pages itself, they are all there soon; elsewhere they are fetched while the house answers.
  onMount(() => !canKeepPages() && setTimeout(() => void fetchScreens(), fetchAfterMs));
  return (
    <div style={finishStyle(worn().finish, light())}>
      <a class="skip" href="#page">
        {words.shell.skip}
      </a>
      <div class="body">
        <Head />
        <Places current={open()?.screen.place} />
        <main id="page">
          <Show when={open()} keyed fallback={<Nowhere />}>
            {(here) => (
              <ErrorBoundary fallback={(error, again) => <Broken error={error} onAgain={again} />}>
                <Suspense>
                  <Dynamic component={here.screen.view} params={here.params} />
                </Suspense>
              </ErrorBoundary>
            )}
          </Show>
        </main>
        <Foot />
      </div>
    </div>
  );
}
