import { createMemo, createSignal, For, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { BoardInDashes, Empty } from "../controls/empty.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import { address, navigate } from "../router.ts";
import { now } from "../shell/now.ts";
import { Page } from "../shell/page.tsx";
import { dayInWords } from "../words/time.ts";
import { words } from "../words/words.ts";
import { Files } from "./files.tsx";
import { Line } from "./line.tsx";
import { type BookLine, bookLines, thingsOf } from "./lines.ts";
import { NoteForm } from "./note-form.tsx";
import { RefusedEntries, Reports } from "./odd-entries.tsx";
import { byDay, filtered } from "./state.ts";
import "./book.css";

const linesAtOnce = 150;

export function BookView() {
  const book = useBook();
  const [text, setText] = createSignal("");
  const [shown, setShown] = createSignal(linesAtOnce);
  const [done, setDone] = createSignal<{ readonly says: string; readonly undo: string }>();
  const about = () => address().query.get("about") ?? undefined;
  const lines = createMemo(() => bookLines(book.whole()));
  const found = createMemo(() => filtered(lines(), { text: text(), about: about() }));
  const days = createMemo(() => byDay(found().slice(0, shown()), book.zone));
  const things = createMemo(() => thingsOf(book.whole()));

  const strike = (line: BookLine) =>
    setDone({ says: words.book.justStruck(line.says), undo: book.strike([line.id]) });
  const restore = (line: BookLine) =>
    setDone({ says: words.book.justRestored(line.says), undo: book.strike(line.struckBy) });
  const undo = () => {
    const last = done();
    if (last !== undefined) book.strike([last.undo]);
    setDone(undefined);
  };

  return (
    <Page title={words.book.title}>
      <div class="book">
        <div class="entries">
          <h1>{words.book.title}</h1>
          <p class="soft">{words.book.says}</p>
          <RefusedEntries />
          <NoteForm about={about()} things={things()} />
          <div class="finding">
            <TextField label={words.book.search} type="search" value={text()} onInput={setText} />
            <Select
              label={words.book.thing}
              empty={words.book.everything}
              value={about()}
              options={things().map((thing) => ({
                value: thing.id,
                label: words.book.thingOption(thing.name, words.book.sorts[thing.sort]),
              }))}
              onChange={(id) => navigate(`/book?about=${id}`, { replace: true })}
              onEmpty={() => navigate("/book", { replace: true })}
            />
          </div>
          <p class="small soft" role="status">
            {words.book.found(found().length, lines().length)}
          </p>
          <Show when={done()} keyed>
            {(last) => <UndoStrip says={last.says} onUndo={undo} />}
          </Show>
          <Show when={lines().length === 0}>
            <Empty heading={words.book.empty} says={words.book.emptySays} drawing={<BoardInDashes />} />
          </Show>
          <Show when={lines().length > 0 && found().length === 0}>
            <p class="hung">{words.book.noneFound}</p>
          </Show>
          <For each={days()}>
            {(day) => (
              <section class="hung">
                <h2>{dayInWords(day.lines[0]?.happened ?? "", book.zone, now())}</h2>
                <ol class="plain">
                  <For each={day.lines}>
                    {(line) => (
                      <Line line={line} onStrike={() => strike(line)} onRestore={() => restore(line)} />
                    )}
                  </For>
                </ol>
              </section>
            )}
          </For>
          <Show when={found().length > shown()}>
            <button type="button" onClick={() => setShown((n) => n + linesAtOnce)}>
              {words.book.earlier(Math.min(linesAtOnce, found().length - shown()))}
            </button>
          </Show>
        </div>
        <aside>
          <Files />
          <Reports />
        </aside>
      </div>
    </Page>
  );
}
