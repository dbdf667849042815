import { createSignal, For, type JSX, Show } from "solid-js";
import { strikesToCorrect } from "../../core/notebook/write-entry.ts";
import type { InstrumentView, MaterialView } from "../../core/views/material.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Empty, JarInDashes } from "../controls/empty.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { goodToWords } from "./good-to.ts";
import { isBare, type OnShelf, onTheShelf } from "./list.ts";
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
  const bringBack = (material: MaterialView) => {
    const ends = book
      .whole()
      .touching(material.id)
      .filter(({ kind }) => kind === "material-used-up");
    setWrote({ says: t.wroteLeft(material.name), entry: book.strike(ends.map(({ id }) => id)) });
  };
  /** With all that corrections had struck, or the last but one would come back. */
  const strike = ({ id, name }: { readonly id: string; readonly name: string }, uses = 0) => {
    const maker = book.whole().making(id);
    if (maker !== undefined)
      setWrote({ says: t.struck(name, uses), entry: book.strike(strikesToCorrect(maker)) });
  };
  const undo = (entry: string) => {
    book.strike([entry]);
    setWrote(null);
  };
  const lines = (group: "resin" | "solvent" | "other") => (
    <Group heading={t.groups[group]} kind={group} shown={shelf()[group].length > 0}>
      <For each={shelf()[group]}>
        {(material) => (
          <MaterialLine material={material}>
            <Show
              when={!material.usedUp}
              fallback={<Quiet says={t.notUsedUp} of={material.name} onPress={() => bringBack(material)} />}
            >
              <Quiet says={t.markUsedUp} of={material.name} onPress={() => useUp(material)} />
            </Show>
            <CorrectLink of={material} />
            <Quiet
              says={t.strike}
              of={material.name}
              onPress={() => strike(material, material.uses.length)}
            />
          </MaterialLine>
        )}
      </For>
    </Group>
  );
  return (
    <Page title={t.title}>
      <h1>{t.title}</h1>
      <Show when={wrote()} keyed>
        {(last) => (
          <div class="shelf-wrote">
            <UndoStrip says={last.says} onUndo={() => undo(last.entry)} />
          </div>
        )}
      </Show>
      <Show
        when={!isBare(shelf())}
        fallback={
          <Empty heading={t.none} says={t.noneSays} drawing={<JarInDashes />}>
            <a class="press" href="/shelf/new?what=resin">
              {t.add.resin}
            </a>
          </Empty>
        }
      >
        <AddLinks />
        <div class="shelf-groups">
          {lines("resin")}
          {lines("solvent")}
          {lines("other")}
          <Group heading={t.groups.instrument} kind="instrument" shown={shelf().instrument.length > 0}>
            <For each={shelf().instrument}>
              {(instrument) => <InstrumentLine instrument={instrument} onStrike={() => strike(instrument)} />}
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

/** A quiet act of one line; read aloud it says of what. */
const Quiet = (props: { readonly says: string; readonly of: string; readonly onPress: () => void }) => (
  <button type="button" class="words" onClick={() => props.onPress()}>
    {props.says}
    <span class="unseen"> ({props.of})</span>
  </button>
);

const CorrectLink = (props: { readonly of: { readonly id: string; readonly name: string } }) => (
  <a class="press words" href={`/shelf/${props.of.id}`}>
    {t.correct}
    <span class="unseen"> ({props.of.name})</span>
  </a>
);

function Group(props: {
  readonly heading: string;
  readonly kind: keyof OnShelf;
  readonly shown: boolean;
  readonly children: JSX.Element;
}) {
  return (
    <Show when={props.shown}>
      <section class={`hung shelf-${props.kind}`}>
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
          {(good) => <p class="soft">{t.goodTo(goodToWords(good))}</p>}
        </Show>
      </div>
      <div class="shelf-acts">
        <CorrectLink of={props.instrument} />
        <Quiet says={t.strike} of={props.instrument.name} onPress={() => props.onStrike()} />
      </div>
    </li>
  );
}
