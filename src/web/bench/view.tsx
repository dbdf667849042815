import { Show } from "solid-js";
import { jarIds } from "../../core/views/jar.ts";
import { materialIds } from "../../core/views/material.ts";
import { trialIds } from "../../core/views/trial.ts";
import { useBook } from "../book-store/use-book.tsx";
import { BoardInDashes, Empty } from "../controls/empty.tsx";
import { placePath } from "../place.ts";
import { now } from "../shell/now.ts";
import { Page, type SpineBand } from "../shell/page.tsx";
import { clock, dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { Air } from "./air.tsx";
import { AtHand } from "./at-hand.tsx";
import { BenchCaution } from "./bench-caution.tsx";
import { BenchVapour } from "./bench-vapour.tsx";
import { Next } from "./next.tsx";
import { OtherActs } from "./other-acts.tsx";
import { Remind } from "./remind.tsx";
import { firstStep } from "./state.ts";
import { type Bench, useBench } from "./use-bench.ts";
import "./bench.css";

/** The film so far on the patches in question, and the coat being given, open until it is written. */
function bandsOf(bench: Bench): readonly SpineBand[] {
  const coat = bench.shown();
  const fill = bench.look()?.fill;
  if (coat === undefined || fill === undefined) return [];
  const has = bench.written() === undefined ? coat.coat - 1 : coat.coat;
  return Array.from({ length: coat.coat }, (_, i) => ({
    label: String(i + 1),
    fill: i < has ? fill : undefined,
  }));
}

export function BenchView() {
  const book = useBook();
  const bench = useBench(book);
  const has = () =>
    bench.written() === undefined ? (bench.shown()?.coat ?? 1) - 1 : (bench.shown()?.coat ?? 0);
  return (
    <Page
      title={words.bench.title}
      note={`${dayInWords(now(), book.zone, now())} ${clock(now(), book.zone)}`}
      finish={bench.look()}
      bands={bandsOf(bench)}
      bandsSay={bench.look() === undefined ? undefined : words.bench.spine(has())}
    >
      <div class="bench" classList={{ colourless: bench.look() === undefined }}>
        <div class="at-hand">
          <AtHand bench={bench} nothingDue={<NothingDue bench={bench} />} />
        </div>
        <div class="beside">
          <Air bench={bench} />
          <BenchCaution bench={bench} />
          <BenchVapour bench={bench} />
        </div>
        <div class="after">
          <Next bench={bench} />
          <Show when={bench.trials().length > 0 || bench.next().later.length > 0}>
            <Remind bench={bench} />
          </Show>
          <OtherActs bench={bench} />
        </div>
      </div>
    </Page>
  );
}

/** Nothing waits for a coat: either all is done, or this bench is new and something comes before it. */
function NothingDue(props: { readonly bench: Bench }) {
  const book = useBook();
  const has = book.view("bench-begun", (read) => ({
    materials: materialIds(read).length,
    jars: jarIds(read).length,
    trials: trialIds(read).length,
  }));
  const step = () => firstStep(has());
  const state = () => {
    if (has().trials === 0)
      return { heading: words.bench.first[step()].heading, says: words.bench.first[step()].says };
    if (props.bench.next().later.length > 0)
      return { heading: words.bench.nothingDue, says: words.bench.nothingDueSays };
    return { heading: words.bench.allCoated, says: words.bench.allCoatedSays };
  };
  return (
    <section>
      <h1 class="unseen">{words.bench.title}</h1>
      <Empty heading={state().heading} says={state().says} drawing={<BoardInDashes />}>
        <Show when={has().trials === 0}>
          <a class="press" href={placePath(step())}>
            {words.bench.first[step()].act}
          </a>
        </Show>
      </Empty>
    </section>
  );
}
