import { createSignal, For, Show } from "solid-js";
import type { NotebookInFile } from "../../core/notebook/notebook-in-file.ts";
import type { KnownNotebooks } from "../book-store/house.ts";
import { JarInDashes } from "../controls/empty.tsx";
import { TextField } from "../controls/text-field.tsx";
import { hasHouse } from "../has-house.ts";
import { lazy } from "../lazy.tsx";
import * as words from "../words/words.ts";
import "./start.css";

const OpenFile = lazy(async () => ({ default: (await import("./open-file.tsx")).OpenFile }));

/** The page before any notebook is open: start one, open the demo, or choose among several. */
export function StartPage(props: {
  readonly known: KnownNotebooks;
  readonly onOpen: (id: string) => void;
  readonly onBegin: (name: string) => void;
  readonly onDemo: () => Promise<void>;
  readonly onFile: (file: NotebookInFile) => void;
}) {
  document.title = words.shell.lacbench;
  const [name, setName] = createSignal(words.start.calledDefault);
  const [working, setWorking] = createSignal(false);
  const hasDemo = () => props.known.list.some((one) => one.invented);
  const demo = async () => {
    setWorking(true);
    await props.onDemo();
  };
  const begin = () => props.onBegin(name().trim() === "" ? words.start.calledDefault : name().trim());
  return (
    <main class="start">
      <h1>
        <span class="mark">{words.shell.lacbench}</span> {words.start.heading}
      </h1>
      <p>{words.start.says}</p>
      <Show when={!hasHouse}>
        <p>{words.start.onThisDevice}</p>
      </Show>
      <Show when={!props.known.reachable}>
        <p class="soft">{props.known.barred ? words.start.barred : words.start.outOfReach}</p>
      </Show>
      <Show when={props.known.list.length > 0}>
        <section class="hung">
          <h2>{words.start.which}</h2>
          <For each={props.known.list}>
            {(one) => (
              <button type="button" class="notebook" onClick={() => props.onOpen(one.id)}>
                <span>{words.start.open(one.name === "" ? words.start.unnamed : one.name)}</span>
                <Show when={one.invented}>
                  <span class="soft">{words.start.invented}</span>
                </Show>
              </button>
            )}
          </For>
        </section>
      </Show>
      <section class="hung begin">
        <div class="stack">
          <h2>{props.known.list.length > 0 ? words.start.startAnother : words.start.none}</h2>
          <TextField label={words.start.called} value={name()} onInput={setName} onEnter={begin} />
          <button type="button" class="main" onClick={begin}>
            {words.start.empty}
          </button>
        </div>
        <JarInDashes />
      </section>
      <OpenFile onOpen={props.onFile} />
      <Show when={!hasDemo()}>
        <section class="hung">
          <p>{words.start.demoSays}</p>
          <button type="button" class="wide" aria-busy={working()} onClick={() => !working() && void demo()}>
            {working() ? words.start.demoOpening : words.start.demo}
          </button>
        </section>
      </Show>
    </main>
  );
}
