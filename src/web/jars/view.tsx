import { createMemo, createSignal, For, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { Empty, JarInDashes } from "../controls/empty.tsx";
import type { ScreenProps } from "../place.ts";
import { finishLook } from "../shell/finish-look.ts";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { finishOfJar } from "./jar-look.ts";
import { JarPanel } from "./jar-panel.tsx";
import { ReadySection } from "./ready-section.tsx";
import { shelvesOf } from "./shelf-plan.ts";
import { Shelves } from "./shelves.tsx";
import { jarsOnShelves, lastTouched, lookAtJar, useWide } from "./use-jar.ts";
import "./jars.css";

/** The shelves, and beside them the jar in question; on a phone the one or the other. */
export function JarsView(props: ScreenProps) {
  const book = useBook();
  const wide = useWide();
  const [emptied, setEmptied] = createSignal(false);
  const jars = createMemo(() => jarsOnShelves(book, emptied()));
  const all = createMemo(() => jarsOnShelves(book, true));
  const asked = () => props.params.jar;
  const chosenId = () => asked() ?? (wide() ? lastTouched(jars()) : undefined);
  const chosen = createMemo(() => {
    const id = chosenId();
    return id === undefined ? undefined : (lookAtJar(book, id) ?? undefined);
  });
  const finish = createMemo(() => {
    const jar = chosen();
    const found = jar === undefined ? undefined : finishOfJar(jar);
    return found === undefined ? undefined : finishLook(found);
  });
  const sets = createMemo(() => shelvesOf(jars(), wide() ? 4 : 2, wide() ? 104 : 0));
  const gone = () => asked() !== undefined && chosen() === undefined;
  const alone = () => asked() !== undefined && !wide();
  const shown = () => all().length - jars().length;
  return (
    <Page
      title={
        chosen() === undefined ? words.jars.title : words.jars.heading(chosen()?.code ?? "", words.jars.title)
      }
      finish={finish()}
      note={words.jars.title}
    >
      <Show when={all().length > 0} fallback={<NoJars />}>
        <div class="jars" classList={{ alone: alone() }}>
          <Show when={!alone()}>
            <div class="all">
              <Show when={chosen() === undefined || !wide()}>
                <h1 class={wide() ? "unseen" : ""}>{words.jars.title}</h1>
              </Show>
              <div class="side-by-side to-do not-on-paper">
                <a class="press" href="/jars/new">
                  {words.jars.start}
                </a>
                <a class="press" href="/jars/labels">
                  {words.jars.labels}
                </a>
                <a class="press" href="/jars/import">
                  {words.jars.importing.link}
                </a>
              </div>
              <Show when={!wide()}>
                <p class="small soft">{words.jars.fromTheTop}</p>
              </Show>
              <For each={sets()}>
                {(set) => <Shelves set={set} chosen={chosenId()} namesBeside={wide()} />}
              </For>
              <p class="small soft">{words.jars.cardBehind}</p>
              <Show when={shown() > 0 || emptied()}>
                <button type="button" class="words" onClick={() => setEmptied(!emptied())}>
                  {emptied() ? words.jars.hideEmptied : words.jars.showEmptied(shown())}
                </button>
              </Show>
              <ReadySection wide={wide()} />
            </div>
          </Show>
          <Show when={alone()}>
            <a class="back" href="/jars">
              {words.jars.allJars}
            </a>
          </Show>
          <Show when={chosen()}>{(jar) => <JarPanel jar={jar()} />}</Show>
          <Show when={gone()}>
            <section>
              <h1>{words.jars.gone}</h1>
              <p>{words.jars.goneSays}</p>
            </section>
          </Show>
        </div>
      </Show>
    </Page>
  );
}

function NoJars() {
  return (
    <section>
      <h1 class="unseen">{words.jars.title}</h1>
      <Empty heading={words.jars.none} says={words.jars.noneSays} drawing={<JarInDashes />}>
        <a class="press" href="/jars/new">
          {words.jars.start}
        </a>{" "}
        <a class="press" href="/jars/import">
          {words.jars.importing.link}
        </a>
      </Empty>
    </section>
  );
}
