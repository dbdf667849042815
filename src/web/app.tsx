import { createEffect, createResource, createSignal, Match, Show, Switch } from "solid-js";
import type { NotebookInFile } from "../core/notebook/notebook-in-file.ts";
import { NotebookApi } from "./book-store/api.ts";
import {
  beginNotebook,
  type KnownNotebooks,
  keepNotebook,
  keepOpened,
  knownNotebooks,
  openBook,
  zoneHere,
} from "./book-store/house.ts";
import type { OpenBook } from "./book-store/open-book.ts";
import { openKeep } from "./book-store/open-keep.ts";
import { BookProvider } from "./book-store/use-book.tsx";
import { hasHouse } from "./has-house.ts";
import { lazy } from "./lazy.tsx";
import { address, navigate, siteAddress } from "./router.ts";
import { Shell } from "./shell/shell.tsx";
import { lastOpen, rememberOpen } from "./start/chosen.ts";
import { StartPage } from "./start/start-page.tsx";
import * as words from "./words/words.ts";

const api = hasHouse ? new NotebookApi((path, init) => fetch(path, init)) : undefined;
const keeping = openKeep();

/** The notebook to open without asking: the last one, or the only one. */
function chosen(known: KnownNotebooks): string | undefined {
  const last = lastOpen();
  const found = known.list.find((one) => one.id === last);
  return found?.id ?? (known.list.length === 1 ? known.list[0]?.id : undefined);
}

/** A phone that comes in has no notebook yet, so this page stands outside of any. */
const LetInPage = lazy(async () => ({ default: (await import("./pairing/let-in.tsx")).LetInPage }));
const letInPath = "/let-in";

/** With nothing kept here and no answer, the house is asked again. */
const askAgainMs = 3_000;

export function App() {
  const [book, setBook] = createSignal<OpenBook>();
  const [known, { refetch }] = createResource(async () => knownNotebooks(await keeping, api));
  let asked = false;
  let opening: Promise<OpenBook> | undefined;

  async function open(id: string): Promise<void> {
    rememberOpen(id);
    // One notebook at a time: another one gets a page of its own, with nothing left over from this one.
    if (book() !== undefined && book()?.id !== id) return location.assign(siteAddress("/bench"));
    if (book() === undefined) {
      opening ??= openBook(await keeping, api, id);
      setBook(await opening);
    }
    if (address().path === "/") navigate("/bench", { replace: true });
  }
  /** The month is made in this browser, so it is there with no house in reach, and sent like anything written. */
  async function openDemo(): Promise<void> {
    const { demoEntries } = await import("../core/demo/demo.ts");
    const entries = demoEntries({ seed: "1", now: new Date().toISOString(), zone: zoneHere() });
    const [begun] = entries;
    if (begun === undefined) return;
    const id = begun.entry.notebook;
    const { name } = begun.entry.body as { name: string }; // its first entry begins it
    const texts = entries.map((kept) => ({ id: kept.entry.id, text: kept.text }));
    await keepNotebook(await keeping, { id, name, invented: true }, texts);
    await open(id);
  }
  async function openFile(file: NotebookInFile): Promise<void> {
    await keepOpened(await keeping, file);
    // One that is open already is opened anew, with what the file brought.
    if (book()?.id === file.id) location.assign(siteAddress("/bench"));
    else await open(file.id);
  }
  const begin = async (name: string) => open(await beginNotebook(await keeping, name));

  /** What was open last opens from what is kept here, without a word from the house: its silence may last minutes. */
  async function openLast(): Promise<void> {
    const last = lastOpen();
    if (last === null || address().path === letInPath) return;
    if ((await (await keeping).cards()).some(({ id }) => id === last)) await open(last);
  }
  void openLast();

  createEffect(() => {
    const list = known();
    if (list === undefined || asked || address().path === letInPath) return;
    const id = chosen(list);
    if (id === undefined && !list.reachable) setTimeout(() => void refetch(), askAgainMs);
    else asked = true;
    if (id !== undefined) void open(id);
  });
  createEffect(() => {
    if (address().path === "/" && book() !== undefined) void refetch();
  });
  const atStart = () => address().path === "/" || book() === undefined;

  return (
    <Switch fallback={<p class="opening">{words.shell.opening}</p>}>
      <Match when={address().path === letInPath}>
        <LetInPage />
      </Match>
      <Match when={!atStart() && book()} keyed>
        {(opened) => (
          <BookProvider book={opened}>
            <Shell />
          </BookProvider>
        )}
      </Match>
      <Match when={known.latest}>
        {(list) => (
          <Show
            when={book() !== undefined || chosen(list()) === undefined}
            fallback={<p class="opening">{words.shell.opening}</p>}
          >
            <StartPage known={list()} onOpen={open} onBegin={begin} onDemo={openDemo} onFile={openFile} />
          </Show>
        )}
      </Match>
    </Switch>
  );
}
