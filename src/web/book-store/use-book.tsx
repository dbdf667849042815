import { createContext, type JSX, useContext } from "solid-js";
import type { OpenBook } from "./open-book.ts";

const BookContext = createContext<OpenBook>();

export function BookProvider(props: { readonly book: OpenBook; readonly children: JSX.Element }) {
  return <BookContext.Provider value={props.book}>{props.children}</BookContext.Provider>;
}

/** The notebook that is open. Every page stands inside one. */
export function useBook(): OpenBook {
  const book = useContext(BookContext);
  if (book === undefined) throw new Error("A page was drawn outside a notebook.");
  return book;
}
