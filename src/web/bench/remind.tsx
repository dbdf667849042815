import { createEffect, createSignal, Show } from "solid-js";
import { type Asked, askToRemind, reminding, remindOf, stopReminding } from "../reminders/reminders.ts";
import * as words from "../words/words.ts";
import { toRemind } from "./to-remind.ts";
import type { Bench } from "./use-bench.ts";

const t = words.bench;

/** Reminders of what comes next, asked for by a press and told plainly where the browser will not. */
export function Remind(props: { readonly bench: Bench }) {
  const [asked, setAsked] = createSignal<Asked>();
  const ask = async () => setAsked(await askToRemind());
  const why = () => {
    const said = asked();
    return said === undefined || said === "on" ? undefined : said;
  };
  createEffect(() => {
    if (!reminding()) return;
    const { now, later } = props.bench.coats();
    remindOf(toRemind([...now, ...later], props.bench.next().later, props.bench.nowMs()));
  });
  return (
    <div class="stack remind not-on-paper">
      <Show
        when={reminding()}
        fallback={
          <button type="button" class="wide" onClick={() => void ask()}>
            {t.remind}
          </button>
        }
      >
        <p role="status">{t.reminding}</p>
        <button type="button" class="wide" onClick={stopReminding}>
          {t.remindNot}
        </button>
      </Show>
      <Show when={why()}>
        {(reason) => (
          <div role="status">
            <p>{t.remindWhy[reason()]}</p>
            <Show when={reason() === "not-secure"}>
              <a class="press" href="/let-in">
                {t.remindSecure}
              </a>
            </Show>
          </div>
        )}
      </Show>
    </div>
  );
}
