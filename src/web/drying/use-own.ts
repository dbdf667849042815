import { createMemo } from "solid-js";
import { logQuestions } from "../../core/views/wait-question.ts";
import { useBook } from "../book-store/use-book.tsx";
import type { Tasks } from "./task.ts";
import { useReckoned } from "./use-reckoned.ts";

type Own = Tasks["waits"]["gives"]["own"];

/** What the person's own log says of waits and of turning white; nothing before anything is logged. */
export function useOwn(): () => Own | undefined {
  const book = useBook();
  const log = book.view("log-questions", logQuestions);
  const asked = createMemo(() => {
    const { waits, whitenings } = log();
    return waits.length + whitenings.length === 0 ? undefined : { questions: [], log: log() };
  });
  const reckoning = useReckoned("waits", asked);
  return () => reckoning.last()?.answer.own;
}
