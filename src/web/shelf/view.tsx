import { createSignal, For, type JSX, Show } from "solid-js";
import type { InstrumentView, MaterialView } from "../../core/views/material.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Empty, JarInDashes } from "../controls/empty.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { Page } from "../shell/page.tsx";
import { words } from "../words/words.ts";
import { isBare, onTheShelf } from "./list.ts";
import { MaterialLine } from "./material-line.tsx";
import "./shelf.css";

const t = words.shelf;
type Wrote = { readonly says: string; readonly entry: string };

/** What there is to mix from and to measure with. */
export function ShelfView() {
  const book = useBook();
  const shelf = book.view("shelf", onTheShelf);
  const [wrote, setWrote] = createSignal<Wrote | null>(null);
  const useUp = (material: MaterialView) =>
    setWrote({
      says: t.wroteUsedUp(material.name),
      entry: book.write({ kind: "material-used-up", about: [material.id], body: {} }),
    });
  const strike = (name: string, maker: string) =>
    setWrote({ says: t.struck(name), entry: book.strike([maker]) });
  const undo = (entry: string) => {
    book.strike([entry]);
    setWrote(null);
  };
  const lines = (group: "resin" | "solvent" | "other") => (
    <Group heading={t.groups[group]} shown={shelf()[group].length > 0}>
      <For each={shelf()[group]}>
        {(material) => (
          <MaterialLine material={material}>
            <Show when={!material.usedUp}>
              <button type="button" class="words" onClick={() => useUp(material)}>
                {t.markUsedUp}
              </button>
            </Show>
            <button type="button" class="words" onClick={() => strike(material.name, material.maker)}>
              {t.strike}
            </button>
          </MaterialLine>
        )}
      </For>
    </Group>
  );
  return (
    <Page title={t.title}>
      <h1>{t.title}</h1>
      <Show when={wrote()} keyed>
        {(last) => <UndoStrip says={last.says} onUndo={() => undo(last.entry)} />}
      </Show>
      <Show
        when={!isBare(shelf())}
        fallback={
          <Empty heading={t.none} says={t.noneSays} drawing={<JarInDashes />}>
            <AddLinks />
          </Empty>
        }
      >
        <AddLinks />
        <div class="shelf-groups">
          {lines("resin")}
          {lines("solvent")}
          {lines("other")}
          <Group heading={t.groups.instrument} shown={shelf().instrument.length > 0}>
            <For each={shelf().instrument}>
              {(instrument) => (
                <InstrumentLine
                  instrument={instrument}
                  onStrike={() =>
                    strike(instrument.name, book.whole().making(instrument.id)?.id ?? instrument.id)
                  }
                />
              )}
            </For>
          </Group>
        </div>
      </Show>
    </Page>
  );
}

const AddLinks = () => (
  <p class="side-by-side shelf-add">
    <For each={["resin", "solvent", "instrument"] as const}>
      {(form) => (
        <a class="press" href={`/shelf/new?what=${form}`}>
          {t.add[form]}
        </a>
      )}
    </For>
  </p>
);

function Group(props: { readonly heading: string; readonly shown: boolean; readonly children: JSX.Element }) {
  return (
    <Show when={props.shown}>
      <section class="hung">
        <h2>{props.heading}</h2>
        <ul class="plain">{props.children}</ul>
      </section>
    </Show>
  );
}

function InstrumentLine(props: { readonly instrument: InstrumentView; readonly onStrike: () => void }) {
  return (
    <li class="shelf-line plainer">
      <div class="stack-small">
        <h3>{props.instrument.name}</h3>
        <Show when={props.instrument.standardUncertainty} keyed>
          {(good) => <p class="soft">{t.goodTo(good.typed)}</p>}
        </Show>
        <div class="shelf-acts">
          <button type="button" class="words" onClick={() => props.onStrike()}>
            {t.strike}
          </button>
        </div>
      </div>
    </li>
  );
}
