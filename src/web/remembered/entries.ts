import type { Kind } from "../../core/notebook/kinds/all.ts";
import type { EntryDraft, WriteDraft } from "../../core/notebook/write-entry.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import { plannedLayer } from "../bench/state.ts";
import type { EveningRead, Source, TimedLine } from "./evening.ts";

export interface WrittenBy {
  readonly trial: string;
  readonly keyOpen: boolean;
  readonly source: Source;
  readonly method: CoatMethod;
  /** What is said of a line that was left out of one coat alone. */
  readonly sayLeftOut: (line: TimedLine) => string;
  /** A remark beside a line, as a note says it. */
  readonly sayRemark: (line: TimedLine) => string;
}

/** Lines below one another that went on alike are one coat. */
function runsOf(lines: readonly TimedLine[]): readonly (readonly [TimedLine, ...TimedLine[]])[] {
  const runs: [TimedLine, ...TimedLine[]][] = [];
  const like = (line: TimedLine) => [line.line.coat, line.at, line.known, batchOf(line)].join();
  for (const line of lines) {
    const run = runs.at(-1);
    if (run !== undefined && like(run[0]) === like(line)) run.push(line);
    else runs.push([line]);
  }
  return runs;
}

const batchOf = ({ line, draft }: TimedLine): string | null => draft.batch ?? line.batch;

/** Writes an evening down, line by line, and gives the ids of all that was written. */
export function writeEvening(read: EveningRead, how: WrittenBy, write: WriteDraft): readonly string[] {
  const when = ({ at, known }: TimedLine) => ({
    happened: at,
    happenedKnownTo: known,
    ...(how.source === "sheet" ? {} : { remembered: true }),
  });
  const coats = runsOf(read.on).map((run) => {
    const [first] = run;
    const batch = how.keyOpen ? batchOf(first) : null;
    const layer = plannedLayer(
      { trial: how.trial, coat: first.line.coat, method: how.method, batch },
      run.map(({ line }) => line),
    );
    return write({ kind: "layer-applied", ...layer, ...when(first) });
  });
  const out = read.out.map((line) => leftOut(line, how, when(line), write));
  const remarks = read.on
    .filter(({ draft }) => how.source === "sheet" && draft.note.trim() !== "")
    .map((line) =>
      write({ ...when(line), kind: "note", about: [how.trial], body: { text: how.sayRemark(line) } }),
    );
  return [...coats, ...out, ...remarks];
}

function leftOut(
  timed: TimedLine,
  how: WrittenBy,
  when: Pick<EntryDraft<Kind>, "happened" | "happenedKnownTo" | "remembered">,
  write: WriteDraft,
): string {
  const { draft, line } = timed;
  if (draft.why === "this time")
    return write({ ...when, kind: "note", about: [how.trial], body: { text: how.sayLeftOut(timed) } });
  const note = draft.note.trim();
  return write({
    ...when,
    kind: "patch-left-out",
    about: [how.trial],
    body: { patch: line.patch, why: draft.why, ...(note === "" ? {} : { note }), keyOpen: how.keyOpen },
  });
}
