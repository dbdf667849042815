import { batch, createMemo, createSignal } from "solid-js";
import type { WriteDraft } from "../../core/notebook/write-entry.ts";
import { methodOf, trialsAtBench } from "../../core/views/bench.ts";
import type { Trial } from "../../core/views/trial.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import { inTheHandsOf } from "../book-store/hands.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import { address } from "../router.ts";
import { now } from "../shell/now.ts";
import { dayOf } from "../words/time.ts";
import * as words from "../words/words.ts";
import { zoneOffset } from "../words/zone-offset.ts";
import { writeEvening } from "./entries.ts";
import { blankLine, type LineDraft, readEvening, type Source, sources } from "./evening.ts";
import { dayChosen, type Shop } from "./evening-time.ts";
import { blankHead, type HeadDraft, type HeadRead, headFits, readHead, writeHead } from "./head.ts";
import { coatsWaiting, sheetOf } from "./sheet.ts";

export type RememberedEvening = ReturnType<typeof useEvening>;
export const dayChoices = ["today", "yesterday", "other"] as const;

const sourceAsked = (): Source => {
  const asked = address().query.get("source");
  return sources.find((one) => one === asked) ?? "exact";
};

/** An evening as it is being written down: what is chosen, the sheets with what is filled in, and writing it. */
export function useEvening(book: OpenBook) {
  const trials = book.view("bench-trials", trialsAtBench);
  const [asked, setTrial] = createSignal(address().query.get("trial"));
  const [choice, setChoice] = createSignal<(typeof dayChoices)[number]>("today");
  const [typedDay, setTypedDay] = createSignal("");
  const [source, setSource] = createSignal<Source>(sourceAsked());
  const [method, setMethod] = createSignal<CoatMethod>();
  const [coats, setCoats] = createSignal<readonly number[]>();
  const [drafts, setDrafts] = createSignal<ReadonlyMap<string, LineDraft>>(new Map());
  const [heads, setHeads] = createSignal<ReadonlyMap<number, HeadDraft>>(new Map());
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<{ readonly ids: readonly string[]; readonly says: string }>();

  const trial = createMemo((): Trial | undefined => trials().find(({ id }) => id === asked()) ?? trials()[0]);
  const waiting = createMemo(() => {
    const of = trial();
    return of === undefined ? [] : coatsWaiting(of);
  });
  /** Those that were ticked; to begin with the first that is waited for. */
  const ticked = createMemo(() => coats() ?? waiting().slice(0, 1));
  const methodNow = (): CoatMethod => {
    const of = trial();
    return method() ?? (of === undefined ? "pad" : methodOf(book.whole(), of));
  };
  const day = () => dayChosen(choice(), typedDay(), dayOf(now(), book.zone));
  const draftOf = (key: string): LineDraft => drafts().get(key) ?? blankLine;
  const sheets = createMemo(() => {
    const of = trial();
    return of === undefined ? [] : ticked().map((coat) => ({ coat, lines: sheetOf(of, coat) }));
  });
  const shop = (): Shop | undefined => {
    const laidOutAt = trial()?.laidOut?.at;
    const offset = (instant: string) => zoneOffset(instant, book.zone);
    return laidOutAt === undefined ? undefined : { now: now(), offset, laidOutAt };
  };
  /** What stands at the head of a coat's sheet; only paper has one. */
  const headOf = (coat: number): HeadDraft => heads().get(coat) ?? blankHead;
  const readHeads = createMemo(() => {
    const [at, on] = [shop(), day()];
    if (at === undefined || on === undefined || source() !== "sheet") return new Map<number, HeadRead>();
    return new Map(ticked().map((coat) => [coat, readHead(headOf(coat), on, at)]));
  });
  const read = createMemo(() => {
    const [at, on] = [shop(), day()];
    if (at === undefined || on === undefined) return undefined;
    const filled = sheets().map(({ coat, lines }) => ({
      began: readHeads().get(coat)?.began,
      lines: lines.map((line) => ({ line, draft: draftOf(line.key) })),
    }));
    return readEvening({ day: on, source: source(), method: methodNow(), sheets: filled }, at);
  });
  const headsFit = () => [...readHeads().values()].every(headFits);
  const keyOpen = () => trial()?.key.opened != null;

  function fill(key: string, change: Partial<LineDraft>): void {
    setWrote(undefined);
    setDrafts((was) => new Map(was).set(key, { ...(was.get(key) ?? blankLine), ...change }));
  }
  function fillHead(coat: number, change: Partial<HeadDraft>): void {
    setWrote(undefined);
    setHeads((was) => new Map(was).set(coat, { ...(was.get(coat) ?? blankHead), ...change }));
  }
  function choose(id: string): void {
    setTrial(id);
    setCoats(undefined);
    setDrafts(new Map());
    setHeads(new Map());
    setWrote(undefined);
  }
  function tick(coat: number): void {
    const was = ticked();
    setWrote(undefined);
    setCoats(was.includes(coat) ? was.filter((one) => one !== coat) : [...was, coat].sort((a, b) => a - b));
  }
  function write(): void {
    const [of, all] = [trial(), read()];
    setTold(true);
    if (of === undefined || all === undefined || all.faults.size > 0 || !headsFit()) return;
    if (all.on.length + all.out.length === 0) return;
    const sayLeftOut = ({ line, draft }: (typeof all.out)[number]) =>
      words.remembered.leftOutNote(line.coat, line.code, draft.note.trim());
    const sayRemark = ({ line, draft }: (typeof all.on)[number]) =>
      words.remembered.remarkNote(line.coat, line.code, draft.note.trim());
    const said = { sayLeftOut, sayRemark };
    const how = { trial: of.id, keyOpen: keyOpen(), source: source(), method: methodNow(), ...said };
    setCoats(ticked()); // what was just written stays in sight
    const put: WriteDraft = (draft) => book.write({ ...draft, ...inTheHandsOf() });
    const firstOf = (coat: number) => all.on.find(({ line }) => line.coat === coat);
    const papers = [...readHeads()];
    const ids = batch(() => [
      ...papers.flatMap(([coat, head]) => writeHead(head, firstOf(coat), put)),
      ...writeEvening(all, how, put),
    ]);
    setWrote({ ids, says: words.remembered.wrote(all.on.length, all.out.length) });
    setTold(false);
  }
  function undo(): void {
    const last = wrote();
    if (last !== undefined) book.strike(last.ids);
    setWrote(undefined);
  }
  return {
    ...{ trials, trial, choice, setChoice, typedDay, setTypedDay, day, source, setSource, methodNow },
    ...{ setMethod, waiting, ticked, tick, sheets, draftOf, fill, read, told, keyOpen, choose },
    ...{ headOf, fillHead, readHeads, headsFit, wrote, write, undo },
  };
}
