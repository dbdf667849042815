import { createMemo, createSignal, Show } from "solid-js";
import { type ReadyGroup, type ReadyModel, readyModels, readyView } from "../../core/views/ready.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import * as words from "../words/words.ts";
import { ReadyCurves } from "./ready-curves.tsx";
import { ReadyStrip } from "./ready-strip.tsx";
import { mostCommon } from "./shelf-plan.ts";

/** When jars are ready: the looks, what they come to, and a tap below how that was fitted. */
export function ReadySection(props: { readonly wide: boolean }) {
  const book = useBook();
  const t = words.jars.ready;
  const [model, setModel] = createSignal<ReadyModel>("weibull");
  const ready = createMemo(() => book.look(`ready:${model()}`, (read) => readyView(read, model())));
  const usual = () => mostCommon(ready().groups.map((group) => group.resins));
  const nameOf = (group: ReadyGroup) =>
    t.group(
      group.resins === usual() ? group.solvents : group.resins,
      group.jars.length,
      group.jars[0]?.code ?? "",
    );
  return (
    <Show when={ready().groups.length > 0}>
      <section class="hung stack">
        <h2>{t.heading}</h2>
        <ReadyStrip ready={ready()} wide={props.wide} nameOf={nameOf} />
        <details>
          <summary>{t.method}</summary>
          <div class="stack">
            <Choice
              inline
              label={t.model}
              value={model()}
              options={readyModels.map((value) => ({ value, label: t.models[value] }))}
              onChange={setModel}
            />
            <ReadyCurves ready={ready()} nameOf={nameOf} />
          </div>
        </details>
      </section>
    </Show>
  );
}
