import { createSignal, Show } from "solid-js";
import { openSitting } from "../../core/views/bench.ts";
import { hands } from "../book-store/hands.ts";
import { useBook } from "../book-store/use-book.tsx";
import { writer } from "../book-store/writer.ts";
import { Cautions } from "../controls/cautions.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { now } from "../shell/now.ts";
import { lengthInWords, whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { Helpers } from "./helpers.tsx";
import { OutsidePlan } from "./outside-plan.tsx";
import { SurfaceWork } from "./surface-work.tsx";
import type { Bench } from "./use-bench.ts";
import { Waits } from "./waits.tsx";

/** What happens at a bench besides the coat that is due. */
export function OtherActs(props: { readonly bench: Bench }) {
  return (
    <section class="hung others not-on-paper">
      <h2>{words.bench.more}</h2>
      <Show when={props.bench.open()}>
        {(coat) => (
          <>
            <SurfaceWork coat={coat()} patches={props.bench.chosen()} />
            <OutsidePlan coat={coat()} patches={props.bench.chosen()} />
          </>
        )}
      </Show>
      <Show when={props.bench.trials().length > 0}>
        <Waits bench={props.bench} />
        <a class="press" href="/bench/remembered">
          {words.bench.remembered}
        </a>
      </Show>
      <Helpers />
      <Sitting />
    </section>
  );
}

function Sitting() {
  const book = useBook();
  const open = book.view("sitting", openSitting);
  const [wrote, setWrote] = createSignal<{ readonly id: string; readonly says: string }>();
  const minutes = () => (Date.parse(now()) - (open()?.beganMs ?? 0)) / 60_000;
  const begin = () => {
    const who = [writer() ?? "", hands()].filter((name) => name !== "");
    const body = who.length === 0 ? {} : { who };
    setWrote({ id: book.write({ kind: "sitting-begun", body }), says: words.bench.sittingBegan });
  };
  function end(id: string): void {
    const lasted = Math.max(0, Math.round((Date.now() - (open()?.beganMs ?? 0)) / 60_000));
    const ended = book.write({ kind: "sitting-ended", about: [id], body: { minutes: lasted } });
    setWrote({ id: ended, says: words.bench.sittingEnded(lengthInWords(lasted)) });
  }
  function undo(): void {
    const last = wrote();
    if (last !== undefined) book.strike([last.id]);
    setWrote(undefined);
  }
  return (
    <div class="sitting">
      <Show
        when={open()}
        fallback={
          <>
            <p class="small soft">{words.bench.sittingSays}</p>
            <button type="button" class="wide" onClick={begin}>
              {words.bench.sittingBegin}
            </button>
          </>
        }
      >
        {(sitting) => (
          <>
            <p>
              {words.bench.sittingOpen(
                whenInWords(new Date(sitting().beganMs).toISOString(), book.zone, now()),
                lengthInWords(minutes()),
              )}
            </p>
            <button type="button" class="wide" onClick={() => end(sitting().id)}>
              {words.bench.sittingEnd}
            </button>
          </>
        )}
      </Show>
      <Show when={wrote()}>
        {(last) => (
          <>
            <UndoStrip says={last().says} onUndo={undo} />
            <Show when={open() === null}>
              <Cautions act="rags" liquid={{}} />
            </Show>
          </>
        )}
      </Show>
    </div>
  );
}
