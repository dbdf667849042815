import { createMemo, createSignal, For, Show } from "solid-js";
import { saying } from "../book/lines.ts";
import { SaveFile } from "../book/save-file.tsx";
import { useBook } from "../book-store/use-book.tsx";
import { setWriter, writer } from "../book-store/writer.ts";
import { TextField } from "../controls/text-field.tsx";
import { hasHouse } from "../has-house.ts";
import { photographsWaiting } from "../photographs/picture-keep.ts";
import { Page } from "../shell/page.tsx";
import { upToDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import { keepingWords } from "./keeping-words.ts";
import { newVersion, pagesKept, takeNewVersion } from "./pages-kept.ts";
import { askToPersist, isNearlyFull, room } from "./room.ts";
import "./keeping.css";

const t = keepingWords;
const shownWaiting = 12;
const longest = 140;

const shortened = (says: string): string => (says.length > longest ? `${says.slice(0, longest)}…` : says);

/** Where everything that was written lies: in the house, in this browser, on its way. */
export function KeepingView() {
  const book = useBook();
  return (
    <Page title={t.title}>
      <div class="keeping">
        <h1>{t.title}</h1>
        <NewVersion />
        <Show when={book.status().noRoom}>
          <NoRoom />
        </Show>
        <Show when={book.status().barred}>
          <section class="does-not-fit" role="alert">
            <h2>{t.barredHeading}</h2>
            <p>{t.barredSays}</p>
          </section>
        </Show>
        <Counts />
        <Waiting />
        <Writer />
        <ThisBrowser />
        <Pages />
        <Show when={hasHouse}>
          <section class="hung">
            <h2>{t.phonesHeading}</h2>
            <p>{t.phonesSay}</p>
            <a class="press" href="/book/phones">
              {t.phonesAct}
            </a>
          </section>
        </Show>
        <section class="hung">
          <h2>{t.fileHeading}</h2>
          <p>{t.fileSays}</p>
          <a class="press" href="/book">
            {t.fileAct}
          </a>
        </section>
      </div>
    </Page>
  );
}

function Counts() {
  const book = useBook();
  const all = () => book.whole().ordered().length;
  const waits = () => book.status().toSend + book.status().refused;
  return (
    <dl class="counts">
      <div>
        <dt>{t.counts.house}</dt>
        <dd>{all() - waits()}</dd>
      </div>
      <div>
        <dt>{t.counts.here}</dt>
        <dd>{all() - book.status().pageAlone}</dd>
      </div>
      <div>
        <dt>{t.counts.waits}</dt>
        <dd>{book.status().toSend}</dd>
      </div>
    </dl>
  );
}

function Waiting() {
  const book = useBook();
  const n = () => book.status().toSend;
  const says = createMemo(() => {
    const notebook = book.whole();
    n();
    return book.toSend.slice(-shownWaiting).flatMap(({ id }) => {
      const kept = notebook.kept(id);
      return kept === undefined ? [] : [shortened(saying(notebook, kept))];
    });
  });
  return (
    <section class="hung">
      <Show
        when={n() > 0}
        fallback={
          <Show when={photographsWaiting() === 0}>
            <p>{t.nothingWaits}</p>
          </Show>
        }
      >
        <h2>{t.waitsHeading(n())}</h2>
        <ul>
          <For each={says()}>{(one) => <li>{one}</li>}</For>
        </ul>
        <Show when={n() > shownWaiting}>
          <p class="soft">{t.more(n() - shownWaiting)}</p>
        </Show>
      </Show>
      <Show when={photographsWaiting() > 0}>
        <p>{(hasHouse ? words.photographs.waits : words.photographs.waitsForFile)(photographsWaiting())}</p>
      </Show>
      <Show when={!hasHouse}>
        <SaveFile />
      </Show>
      <Show when={hasHouse && !book.status().barred && !book.status().noRoom}>
        <p class="soft">{book.status().reachable ? t.reached : t.outOfReach}</p>
      </Show>
    </section>
  );
}

/** Who writes on this device: with two phones on one evening, who did what stands in the book. */
function Writer() {
  const [typed, setTyped] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const keep = () => {
    const name = typed();
    if (name === undefined) return;
    setWriter(name);
    setTyped(undefined);
    setTold(true);
  };
  return (
    <section class="hung stack">
      <h2>{t.writerHeading}</h2>
      <p>{t.writerSays}</p>
      <TextField
        label={t.writerName}
        value={typed() ?? writer() ?? ""}
        onInput={(name) => {
          setTyped(name);
          setTold(false);
        }}
        onEnter={keep}
      />
      <button type="button" onClick={keep}>
        {t.writerAct}
      </button>
      <Show when={told()}>
        <p role="status">{writer() === null ? t.writerGone : t.writerKept(writer() ?? "")}</p>
      </Show>
    </section>
  );
}

function NoRoom() {
  const book = useBook();
  const [tried, setTried] = createSignal(false);
  const again = async () => {
    await book.keepAgain();
    setTried(true);
  };
  return (
    <section class="does-not-fit" role="alert">
      <h2>{t.noRoomHeading}</h2>
      <p>{t.noRoomSays(book.status().pageAlone)}</p>
      <button type="button" onClick={() => void again()}>
        {t.tryAgain}
      </button>
      <Show when={tried()}>
        <p role="status">{t.stillNoRoom}</p>
      </Show>
    </section>
  );
}

const size = (bytes: number): string =>
  bytes < 1e9
    ? `${upToDigits(Math.max(bytes / 1e6, 0.1), bytes < 1e7 ? 2 : 3)} MB`
    : `${upToDigits(bytes / 1e9, 3)} GB`;

function ThisBrowser() {
  const book = useBook();
  const [asked, setAsked] = createSignal(false);
  const ask = async () => setAsked(!(await askToPersist()));
  const promise = () => {
    const { persisted } = room();
    if (persisted === undefined) return t.noWord;
    return persisted ? t.promised : t.evictable;
  };
  return (
    <section class="hung">
      <h2>{t.deviceHeading}</h2>
      <p>
        {promise()}{" "}
        <Show when={room().persisted === false && book.status().toSend > 0}>
          <b>{t.evictableUnsent(book.status().toSend)}</b>
        </Show>
      </p>
      <Show when={room().persisted === false}>
        <button type="button" onClick={() => void ask()}>
          {t.ask}
        </button>
        <Show when={asked()}>
          <p role="status">{t.notPromised}</p>
        </Show>
      </Show>
      <Show when={room().ofBytes}>
        {(of) => <p class="soft small">{t.room(size(room().usedBytes ?? 0), size(of()))}</p>}
      </Show>
      <Show when={isNearlyFull(room())}>
        <p>
          <b>{t.nearlyFullSays}</b>
        </p>
      </Show>
    </section>
  );
}

function Pages() {
  return (
    <section class="hung">
      <h2>{t.pagesHeading}</h2>
      <p>{t.pages[pagesKept()]}</p>
      <Show when={pagesKept() === "not-secure"}>
        <p>{t.insecureSays}</p>
        <a class="press" href="/let-in">
          {t.insecureAct}
        </a>
      </Show>
    </section>
  );
}

function NewVersion() {
  const book = useBook();
  return (
    <Show when={newVersion() !== undefined}>
      <section class="does-not-fit">
        <h2>{t.newVersionHeading}</h2>
        <p>{t.newVersionSays}</p>
        <button type="button" onClick={() => void takeNewVersion(() => book.settledHere())}>
          {t.newVersionAct}
        </button>
      </section>
    </Show>
  );
}
