import { createSignal, Match, Show, Switch, untrack } from "solid-js";
import type { NotebookEntry } from "../../core/notebook/entry.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { materialView } from "../../core/views/material.ts";
import { useBook } from "../book-store/use-book.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import type { ScreenProps } from "../place.ts";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { NewInstrument } from "./new-instrument.tsx";
import { NewOther } from "./new-other.tsx";
import { NewResin } from "./new-resin.tsx";
import { NewSolvent } from "./new-solvent.tsx";
import { PriceForm } from "./price-form.tsx";
import "./shelf.css";

const t = words.shelf;
type Wrote = { readonly says: string; readonly entry: string };

/** What is written of one thing on the shelf, put right; and what it costs by now. */
export function CorrectOnShelf(props: ScreenProps) {
  const book = useBook();
  const maker = () => book.whole().making(props.params.thing ?? "");
  const isOurs = () => ["material-bought", "instrument-described"].includes(maker()?.kind ?? "");
  return (
    <Show when={isOurs()} fallback={<NotHere />}>
      <Correcting thing={props.params.thing ?? ""} maker={maker} />
    </Show>
  );
}

/** The button that was pressed is gone with its form; the hand finds the undo. */
const holdFocus = (strip: HTMLElement): void => queueMicrotask(() => strip.querySelector("button")?.focus());

function Correcting(props: { readonly thing: string; readonly maker: () => NotebookEntry | undefined }) {
  const book = useBook();
  const [wrote, setWrote] = createSignal<Wrote | null>(null);
  const name = () => (props.maker()?.body as { readonly name?: string } | undefined)?.name ?? "";
  const undo = (entry: string) => {
    book.strike([entry]);
    setWrote(null);
  };
  return (
    <Page title={t.correctTitle(name())}>
      <h1>{t.correctTitle(name())}</h1>
      <div class="on-shelf-desk stack">
        <Show
          when={wrote()}
          keyed
          fallback={
            <Forms
              thing={props.thing}
              old={untrack(props.maker)}
              onCorrected={(called, entry) => setWrote({ says: t.corrected(called), entry })}
              onPriced={(entry) => setWrote({ says: t.priced(name()), entry })}
            />
          }
        >
          {(last) => (
            <div ref={holdFocus}>
              <UndoStrip says={last.says} onUndo={() => undo(last.entry)} />
            </div>
          )}
        </Show>
        <p>
          <a href="/shelf">{t.back}</a>
        </p>
      </div>
    </Page>
  );
}

function Forms(props: {
  readonly thing: string;
  readonly old: NotebookEntry | undefined;
  readonly onCorrected: (name: string, entry: string) => void;
  readonly onPriced: (entry: string) => void;
}) {
  const book = useBook();
  const { old, onCorrected } = props;
  if (old === undefined) return null;
  const form =
    old.kind === "instrument-described" ? "instrument" : (old.body as Body<"material-bought">).form;
  const material = untrack(() => materialView(book.whole(), props.thing));
  return (
    <>
      <Switch fallback={<NewOther old={old} onWrote={onCorrected} />}>
        <Match when={form === "resin"}>
          <NewResin old={old} onWrote={onCorrected} />
        </Match>
        <Match when={form === "solvent"}>
          <NewSolvent old={old} onWrote={onCorrected} />
        </Match>
        <Match when={form === "instrument"}>
          <NewInstrument old={old} onWrote={onCorrected} />
        </Match>
      </Switch>
      <Show when={material} keyed>
        {(known) => <PriceForm material={known} onWrote={props.onPriced} />}
      </Show>
    </>
  );
}

const NotHere = () => (
  <Page title={t.notHere}>
    <h1>{t.notHere}</h1>
    <p>{t.notHereSays}</p>
    <p>
      <a href="/shelf">{t.back}</a>
    </p>
  </Page>
);
