import { For } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { Page } from "../shell/page.tsx";
import { words } from "../words/words.ts";

export function BookView() {
  const book = useBook();
  return (
    <Page title={words.book.title}>
      <h1>{words.book.title}</h1>
      <For each={book.whole().ordered()}>{(entry) => <p>{entry.kind}</p>}</For>
    </Page>
  );
}
