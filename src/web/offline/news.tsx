import { onCleanup, onMount, Show } from "solid-js";
import type { Status } from "../book-store/open-book.ts";
import { useBook } from "../book-store/use-book.tsx";
import { hasHouse } from "../has-house.ts";
import { photographsWaiting } from "../photographs/picture-keep.ts";
import * as words from "../words/words.ts";
import { keepingWords } from "./keeping-words.ts";
import { newVersion } from "./pages-kept.ts";
import { askToPersist, isNearlyFull, room, watchRoom } from "./room.ts";

const t = keepingWords;

/** In a few words: where what was written lies. */
export function sayStatus({ toSend, keeps, noRoom, unkept, pageAlone, barred }: Status): string {
  if (noRoom) return t.noRoom(pageAlone);
  if (!keeps) return toSend > 0 ? t.toSendAndNotKept(toSend) : t.notKept;
  if (unkept > 0) return t.beingKept(unkept);
  if (barred) return toSend > 0 ? t.barredToSend(toSend) : t.barred;
  if (toSend > 0) return t.toSend(toSend);
  const photographs = photographsWaiting();
  if (photographs === 0) return t.allSent;
  return hasHouse ? words.photographs.toSend(photographs) : words.photographs.notInFile(photographs);
}

/** What the header says besides: room that runs out, a version that lies ready. Watches over both, and over leaving. */
export function KeepingNews() {
  const book = useBook();
  onMount(watchRoom);
  let asked = false;
  // Asked once there is something to lose, so that nobody is asked on a first look.
  const whenWritten = () => {
    if (asked || book.status().toSend === 0 || room().persisted !== false) return;
    asked = true;
    void askToPersist();
  };
  const beforeLeaving = (event: BeforeUnloadEvent) => {
    if (book.status().pageAlone > 0) event.preventDefault();
  };
  addEventListener("pointerup", whenWritten);
  addEventListener("beforeunload", beforeLeaving);
  onCleanup(() => {
    removeEventListener("pointerup", whenWritten);
    removeEventListener("beforeunload", beforeLeaving);
  });
  return (
    <>
      <Show when={newVersion() !== undefined}>
        <a href="/book/keeping">{t.newVersion}</a>
      </Show>
      <Show when={isNearlyFull(room())}>
        <a href="/book/keeping">{t.nearlyFull}</a>
      </Show>
    </>
  );
}
