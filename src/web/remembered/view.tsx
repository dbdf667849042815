import { For, Show } from "solid-js";
import { jarIds, jarView } from "../../core/views/jar.ts";
import { Hands } from "../bench/helpers.tsx";
import { useBook } from "../book-store/use-book.tsx";
import { BoardInDashes, Empty } from "../controls/empty.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { Page } from "../shell/page.tsx";
import * as words from "../words/words.ts";
import { Known, Which } from "./choices.tsx";
import { Line } from "./line.tsx";
import { SheetHead } from "./sheet-head.tsx";
import { type RememberedEvening, useEvening } from "./use-evening.ts";
import "./remembered.css";

const t = words.remembered;

/** Writes an evening down afterwards, down the lines of the printed sheet. */
export function RememberedView() {
  const book = useBook();
  const evening = useEvening(book);
  return (
    <Page title={t.title}>
      <div class="remembered stack">
        <h1>{t.title}</h1>
        <Show when={evening.trial()} fallback={<NoTrial />}>
          <p>{t.says}</p>
          <Which evening={evening} />
          <Known evening={evening} />
          <Hands />
          <Show when={!evening.keyOpen()}>
            <p>{t.keyShut}</p>
          </Show>
          <Sheets evening={evening} />
          <Act evening={evening} />
        </Show>
      </div>
    </Page>
  );
}

const NoTrial = () => (
  <Empty heading={t.none} says={t.noneSays} drawing={<BoardInDashes />}>
    <a class="press" href="/bench">
      {t.toBench}
    </a>
  </Empty>
);

function Sheets(props: { readonly evening: RememberedEvening }) {
  const book = useBook();
  const jars = book.view("all-jar-codes", (read) =>
    jarIds(read).flatMap((id) => {
      const jar = jarView(read, id);
      return jar === null ? [] : [{ value: id, label: jar.code }];
    }),
  );
  return (
    <For each={props.evening.sheets().map(({ coat }) => coat)}>
      {(coat) => (
        <section class="hung">
          <h2>{t.lines(coat)}</h2>
          <Show when={props.evening.source() !== "day"}>
            <p class="soft small">{t.nightSays}</p>
          </Show>
          <Show when={props.evening.readHeads().get(coat)}>
            {(head) => <SheetHead evening={props.evening} coat={coat} head={head()} />}
          </Show>
          <ol class="plain sheet-lines">
            <For
              each={props.evening
                .sheets()
                .find((sheet) => sheet.coat === coat)
                ?.lines.map(({ key }) => key)}
            >
              {(key) => (
                <Show
                  when={props.evening
                    .sheets()
                    .flatMap((sheet) => sheet.lines)
                    .find((line) => line.key === key)}
                >
                  {(line) => <Line evening={props.evening} line={line()} jars={jars()} />}
                </Show>
              )}
            </For>
          </ol>
        </section>
      )}
    </For>
  );
}

function Act(props: { readonly evening: RememberedEvening }) {
  const e = props.evening;
  const n = () => e.read()?.on.length ?? 0;
  const out = () => e.read()?.out.length ?? 0;
  const faults = () => e.read()?.faults.size ?? 0;
  return (
    <Show
      when={e.wrote()}
      fallback={
        <>
          <Show when={e.told() && faults() > 0}>
            <p role="alert">{t.faults(faults())}</p>
          </Show>
          <Show when={e.told() && !e.headsFit()}>
            <p role="alert">{t.headFault}</p>
          </Show>
          <Show when={n() + out() + faults() > 0} fallback={<p>{t.nothing}</p>}>
            <button type="button" class="main" onClick={e.write}>
              {t.act(n() + faults(), out())}
            </button>
          </Show>
        </>
      }
    >
      {(last) => <UndoStrip says={last().says} onUndo={e.undo} />}
    </Show>
  );
}
