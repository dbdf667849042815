import { createResource, onCleanup, Show } from "solid-js";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { useBook } from "../book-store/use-book.tsx";
import * as words from "../words/words.ts";
import { pictureOf } from "./picture-of.ts";

/** One photograph; where its bytes are on another device, words. It is looked for again when the house is in reach again. */
export function Picture(props: { readonly told: Body<"photograph">; readonly alt: string }) {
  const book = useBook();
  let address: string | undefined;
  const [found] = createResource(
    () => (book.status().reachable ? "in reach" : "out of reach"),
    async (): Promise<string | undefined> => {
      if (address !== undefined) return address;
      const picture = await pictureOf(book.id, props.told);
      if (picture !== undefined)
        address = URL.createObjectURL(new Blob([new Uint8Array(picture.bytes)], { type: picture.type }));
      return address;
    },
  );
  onCleanup(() => address !== undefined && URL.revokeObjectURL(address));
  return (
    <Show
      when={found.latest}
      fallback={<span class="not-here">{found.loading ? "" : words.photographs.notHere}</span>}
    >
      {(src) => <img src={src()} alt={props.alt} />}
    </Show>
  );
}
