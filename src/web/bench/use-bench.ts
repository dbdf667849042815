import { type Accessor, createMemo, createSignal } from "solid-js";
import { strikesToCorrect } from "../../core/notebook/write-entry.ts";
import {
  coatsOfTrial,
  coatsOnBoard,
  type DueCoat,
  soonestFirst,
  trialsAtBench,
} from "../../core/views/bench.ts";
import { pieceCoats } from "../../core/views/bench-pieces.ts";
import { type JarView, jarView } from "../../core/views/jar.ts";
import { jarsToLookAt } from "../../core/views/look-again.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import { hands, inTheHandsOf } from "../book-store/hands.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { afterPaint } from "../controls/after-paint.ts";
import { finishOfJar } from "../look/jar-finish.ts";
import { type FinishLook, finishLook } from "../shell/finish-look.ts";
import { now } from "../shell/now.ts";
import { zoneOffset } from "../words/zone-offset.ts";
import { useHeldKeys } from "./held-keys.ts";
import {
  chosenPatches,
  coatKey,
  comingUp,
  inQuestion,
  instantMeant,
  instantOfDay,
  type JustWritten,
  layerOf,
  sortedByTime,
  type When,
} from "./state.ts";
import { useWaits } from "./use-waits.ts";

export type Bench = ReturnType<typeof useBench>;

/** One board of a trial, where the bench is opened at it. */
export interface BoardInHand {
  readonly trial: string;
  readonly board: string;
}

/** What stands on the bench just now, or on one board of it, and what can be done with it. */
export function useBench(book: OpenBook, inHand?: Accessor<BoardInHand>) {
  const allTrials = book.view("bench-trials", trialsAtBench);
  const trials = () =>
    inHand === undefined ? allTrials() : allTrials().filter(({ id }) => id === inHand().trial);
  const held = useHeldKeys(trials);
  const [picked, setPicked] = createSignal<string>();
  const [tapped, setTapped] = createSignal<ReadonlySet<string>>(new Set());
  const [when, setWhen] = createSignal<When>({ ago: 0 });
  const [method, setMethod] = createSignal<CoatMethod>();
  const [written, setWritten] = createSignal<JustWritten>();
  const nowMs = () => Date.parse(now());

  const waits = useWaits(book, trials);
  const coats = createMemo(() => {
    const known = waits.known();
    const by = JSON.stringify([...known]);
    const all = trials().flatMap((trial) =>
      book.look(`bench:${trial.id}:${held(trial.id) === null}:${by}`, (read) =>
        coatsOfTrial(read, trial.id, held(trial.id), known),
      ),
    );
    const here = inHand === undefined ? all : coatsOnBoard(all, inHand().board);
    return sortedByTime(soonestFirst(here), nowMs());
  });
  const open = createMemo(() => inQuestion(coats(), picked()));
  /** What the page is about: what was just written, until the next act, else the coat in question. */
  const shown = createMemo((): DueCoat | undefined => written()?.coat ?? open());
  const chosen = createMemo(() => {
    const coat = open();
    return coat === undefined ? [] : chosenPatches(coat, tapped(), nowMs());
  });
  const jarOf = (coat: DueCoat | undefined): JarView | null => {
    const batch = coat?.jar?.batch ?? null;
    return batch === null ? null : book.look(`jar:${batch}`, (read) => jarView(read, batch));
  };
  const jar = createMemo(() => jarOf(shown()));
  const look = createMemo((): FinishLook | undefined => {
    const seen = jar();
    const finish = seen === null ? undefined : finishOfJar(seen);
    return finish === undefined ? undefined : finishLook(finish);
  });
  const drawn = afterPaint();
  const next = createMemo(() => {
    const others = coats().now.filter((coat) => written() !== undefined || coat !== open());
    if (inHand !== undefined) return { now: others, later: comingUp(coats().later, [], [], nowMs()) };
    const jars = drawn() ? book.look("jars-to-look-at", jarsToLookAt) : [];
    const pieces = book.look("bench-pieces", pieceCoats).flatMap((piece) => {
      if (piece.day === null) return [];
      return [{ ...piece, dueMs: instantOfDay(piece.day, piece.at, (at) => zoneOffset(at, book.zone)) }];
    });
    return { now: others, later: comingUp(coats().later, jars, pieces, nowMs()) };
  });
  const methodNow = (): CoatMethod => method() ?? shown()?.method ?? "pad";
  const instant = () => instantMeant(when(), now(), (at) => zoneOffset(at, book.zone));

  function startAfresh(): void {
    setTapped(new Set<string>());
    setWhen({ ago: 0 });
    setMethod(undefined);
    setWritten(undefined);
  }
  function pick(coat: DueCoat): void {
    startAfresh();
    setPicked(coatKey(coat));
  }
  function tap(patch: string): void {
    setTapped((was) => {
      const next = new Set(was);
      if (!next.delete(patch)) next.add(patch);
      return next;
    });
  }
  /** Writes the coat down; false when nothing is chosen or the time cannot be read. */
  function write(): boolean {
    const coat = open();
    const ago = when();
    const at = "ago" in ago && ago.ago === 0 ? new Date().toISOString() : instant();
    const patches = chosen();
    if (coat === undefined || patches.length === 0 || at === undefined) return false;
    const { about, body } = layerOf(coat, patches, methodNow());
    const entry = book.write({ kind: "layer-applied", about, body, happened: at, ...inTheHandsOf() });
    navigator.vibrate?.(20);
    startAfresh();
    setWritten({ entry, at, coat: { ...coat, patches }, codes: patches.map((p) => p.code), hands: hands() });
    return true;
  }
  function undo(): void {
    const last = written();
    if (last === undefined) return;
    const current = book.whole().making(last.entry);
    book.strike(current === undefined ? [last.entry] : strikesToCorrect(current));
    pick(last.coat);
  }
  return {
    ...{ trials, held, waits, coats, open, shown, chosen, jar, jarOf, look, next, written, when, instant },
    ...{ drawn, methodNow, nowMs, setWhen, setMethod, pick, tap, write, undo },
  };
}
