import { type Accessor, createMemo } from "solid-js";
import type { KnownWaits } from "../../core/views/bench.ts";
import type { Trial } from "../../core/views/trial.ts";
import { type WaitAnswer, type WaitQuestion, waitQuestion } from "../../core/views/wait-question.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { afterPaint } from "../controls/after-paint.ts";
import { useOwn } from "../drying/use-own.ts";
import { useReckoned } from "../drying/use-reckoned.ts";

/** Of layers that lie on many patches only so many are followed: the others had the same coat. */
const mostPatches = 4;

/** The last layers of every trial at the bench, each at some of the patches that it lies on. */
function questionsOf(book: OpenBook, trials: readonly Trial[]): readonly WaitQuestion[] {
  const asked = new Map<string, number>();
  return trials.flatMap((trial) =>
    trial.patches.flatMap((patch) => {
      const last = patch.layers.at(-1)?.entry;
      const layer = last === undefined ? undefined : book.whole().entry(last);
      if (layer === undefined || patch.leftOut !== null || patch.coats >= trial.asked.coats) return [];
      const before = asked.get(layer.id) ?? 0;
      asked.set(layer.id, before + 1);
      const place = { trial: trial.id, patch: patch.patch };
      return before < mostPatches ? [waitQuestion(book.whole(), layer, place)] : [];
    }),
  );
}

/** Of several answers for one layer, the one that asks for most. */
function longest(answers: readonly WaitAnswer[]): ReadonlyMap<string, WaitAnswer> {
  const found = new Map<string, WaitAnswer>();
  for (const answer of answers)
    if (answer.seconds > (found.get(answer.layer)?.seconds ?? -1)) found.set(answer.layer, answer);
  return found;
}

/** When the last coats at the bench may be followed, by the model or the person's own log where they can say; off the page's thread. */
export function useWaits(book: OpenBook, trials: Accessor<readonly Trial[]>) {
  const own = useOwn();
  const drawn = afterPaint();
  const asked = createMemo(() => {
    if (!drawn()) return undefined;
    const [questions, log] = [questionsOf(book, trials()), own()];
    return questions.length === 0 || log === undefined ? undefined : { questions, own: log.wait };
  });
  const reckoning = useReckoned("waits", asked);
  const answers = createMemo(() => longest(reckoning.last()?.answer ?? []));
  const known = createMemo(
    (): KnownWaits => new Map([...answers()].map(([layer, { seconds }]) => [layer, seconds])),
  );
  return { known, answerFor: (layer: string): WaitAnswer | undefined => answers().get(layer) };
}
