import { createMemo, createSignal, For, Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { BoardInDashes, Empty } from "../controls/empty.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { address, navigate } from "../router.ts";
import { now } from "../shell/now.ts";
import { Page } from "../shell/page.tsx";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { Files } from "./files.tsx";
import { Line } from "./line.tsx";
import { bookLines, thingsOf } from "./lines.ts";
import { NoteForm } from "./note-form.tsx";
import { RefusedEntries, Reports } from "./odd-entries.tsx";
import { byDay, filtered } from "./state.ts";
import "./book.css";

const linesAtOnce = 150;

export function BookView() {
  const book = useBook();
  const [text, setText] = createSignal("");
  const [shown, setShown] = createSignal(linesAtOnce);
  const about = () => address().query.get("about") ?? undefined;
  const lines = createMemo(() => bookLines(book.whole()));
  const found = createMemo(() => filtered(lines(), { text: text(), about: about() }));
  const days = createMemo(() => byDay(found().slice(0, shown()), book.zone));
  // Rows are kept by what they are, so that an unfolded one stays open when entries come in.
  const byId = createMemo(() => new Map(lines().map((line) => [line.id, line])));
  const byKey = createMemo(() => new Map(days().map((day) => [day.key, day])));
  const things = createMemo(() => thingsOf(book.whole()));

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
          <Show when={lines().length === 0}>
            <Empty heading={words.book.empty} says={words.book.emptySays} drawing={<BoardInDashes />} />
          </Show>
          <Show when={lines().length > 0 && found().length === 0}>
            <p class="hung">{words.book.noneFound}</p>
          </Show>
          <For each={days().map((day) => day.key)}>
            {(key) => (
              <section class="hung">
                <h2>{dayInWords(byKey().get(key)?.lines[0]?.happened ?? now(), book.zone, now())}</h2>
                <ol class="plain">
                  <For
                    each={byKey()
                      .get(key)
                      ?.lines.map((line) => line.id)}
                  >
                    {(id) => <Show when={byId().get(id)}>{(line) => <Line line={line()} />}</Show>}
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
