import { type Accessor, createEffect, createMemo, createSignal } from "solid-js";
import { logQuestions, ownFrom } from "../../core/views/wait-question.ts";
import { useBook } from "../book-store/use-book.tsx";
import { afterPaint } from "../controls/after-paint.ts";
import { reckon } from "./reckoner.ts";
import type { Tasks } from "./task.ts";

type Own = Tasks["own"]["gives"];

/** Before anything is logged the answer needs no film to be followed. */
const nothingLogged = ownFrom({ waits: [], whitenings: [] });

/** It follows every logged coat, so what a log came to is remembered from page to page. */
const [latest, setLatest] = createSignal<{ readonly log: string; readonly own: Own }>();
let underWay = "";
/** Counts up while the reckoner could not be started, so that it is tried again. */
const [tries, setTries] = createSignal(0);
const againAfterMs = 3000;

/** What the person's own log says; the last answer while a new one is worked out, nothing before the first. */
export function useOwn(): Accessor<Own | undefined> {
  const book = useBook();
  const drawn = afterPaint();
  const log = book.view("log-questions", logQuestions);
  const empty = createMemo(() => log().waits.length + log().whitenings.length === 0);
  createEffect(() => {
    tries();
    if (!drawn() || empty()) return;
    const key = JSON.stringify(log());
    if (key === latest()?.log || key === underWay) return;
    underWay = key;
    reckon("own", log()).then(
      (own) => setLatest({ log: key, own }),
      () =>
        setTimeout(() => {
          underWay = "";
          setTries((n) => n + 1);
        }, againAfterMs),
    );
  });
  return () => (empty() ? nothingLogged : latest()?.own);
}

/** The person's own whitening margin once the log is enough, K; nought before. */
export const whitensBelow = (own: Own | undefined): number =>
  own?.whitening.enough === true ? own.whitening.estimate : 0;
