import { batch, createMemo, createSignal, Show } from "solid-js";
import { planImport } from "../../../core/jar-import/plan-import.ts";
import { writeImport } from "../../../core/jar-import/write-import.ts";
import type { WriteDraft } from "../../../core/notebook/write-entry.ts";
import { calendarDay } from "../../../core/pieces/calendar-day.ts";
import type { GallonSystem } from "../../../core/quantity/unit-table.ts";
import { materialIds, materialView } from "../../../core/views/material.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Choice } from "../../controls/choice.tsx";
import { TableInput } from "../../controls/table-input.tsx";
import { typedTable } from "../../controls/typed-table.ts";
import { UndoStrip } from "../../controls/undo-strip.tsx";
import { now } from "../../shell/now.ts";
import { Page } from "../../shell/page.tsx";
import { dayOf } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { codesTaken } from "../codes.ts";
import { ColumnFields } from "./column-fields.tsx";
import { type Choices, matchesOf } from "./columns.ts";
import { DryRun } from "./dry-run.tsx";
import "../jars.css";
import "../../controls/import.css";

const t = words.jars.importing;

const shelfOf = (book: OpenBook) =>
  book
    .look("materials", materialIds)
    .flatMap((id) => book.look(`material:${id}`, (read) => materialView(read, id)) ?? []);

/** Jars kept so far in a list: its columns matched, a dry run, and nothing written while a row does not fit. */
export function ImportJars() {
  const book = useBook();
  const [gallon, setGallon] = createSignal<GallonSystem>("us");
  const [choices, setChoices] = createSignal<Choices>({});
  const [leftOut, setLeftOut] = createSignal<readonly number[]>([]);
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<{ readonly jars: number; readonly entries: readonly string[] }>();
  const { text, setText, table, wrong } = typedTable(t.noTable, told);
  const matches = createMemo(() => {
    const found = table();
    return found === undefined ? [] : matchesOf(found, choices());
  });
  const plan = createMemo(() => {
    const found = table();
    if (found === undefined) return undefined;
    const context = {
      today: calendarDay(dayOf(now(), book.zone)),
      gallon: gallon(),
      shelf: shelfOf(book),
      codes: [...codesTaken(book)],
    };
    return planImport(found, matches(), context, leftOut());
  });
  const take = (next: string) => {
    setText(next);
    setChoices({});
    setLeftOut([]);
    setWrote(undefined);
  };
  const write = () => {
    setTold(true);
    const found = plan();
    if (found === undefined || found.problems.length > 0 || found.jars.length === 0) return;
    const entries: string[] = [];
    const keep: WriteDraft = (draft) => {
      const id = book.write(draft);
      entries.push(id);
      return id;
    };
    const jars = batch(() => writeImport(found, keep));
    take("");
    setTold(false);
    setWrote({ jars: jars.length, entries });
  };
  return (
    <Page title={t.title}>
      <h1>{t.title}</h1>
      <Show when={wrote()} keyed>
        {(done) => (
          <>
            <UndoStrip
              says={t.wrote(done.jars)}
              onUndo={() => {
                book.strike([...done.entries].reverse());
                setWrote(undefined);
              }}
            />
            <p>
              <a href="/jars">{words.jars.allJars}</a>
            </p>
          </>
        )}
      </Show>
      <form
        class="import-desk stack"
        onSubmit={(event) => {
          event.preventDefault();
          write();
        }}
      >
        <section class="hung stack">
          <h2>{t.list}</h2>
          <p class="soft">{t.listSays}</p>
          <TableInput
            text={text()}
            onText={take}
            file={t.file}
            paste={t.paste}
            pasteHint={t.pasteHint}
            wrong={wrong()}
          />
        </section>
        <Show when={table()}>
          <section class="hung stack">
            <h2>{t.columns}</h2>
            <p class="soft">{t.columnsSay}</p>
            <ColumnFields matches={matches()} choices={choices()} onChoose={setChoices} />
            <Choice
              inline
              label={t.gallon}
              value={gallon()}
              options={[
                { value: "us", label: t.gallons.us },
                { value: "imperial", label: t.gallons.imperial },
              ]}
              onChange={setGallon}
            />
          </section>
        </Show>
        <Show when={plan()}>
          {(found) => (
            <DryRun
              plan={found()}
              leftOut={leftOut()}
              onLeaveOut={(row) => setLeftOut([...leftOut(), row])}
              onBringBack={() => setLeftOut([])}
              told={told()}
            />
          )}
        </Show>
        <button type="submit" class="main">
          {t.act(plan()?.jars.length ?? 0, (plan()?.problems.length ?? 0) === 0)}
        </button>
      </form>
    </Page>
  );
}
