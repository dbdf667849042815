import { createSignal, Show } from "solid-js";
import { happenings } from "../../core/notebook/kinds/book.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { UndoStrip } from "../controls/undo-strip.tsx";
import * as words from "../words/words.ts";
import type { Thing } from "./lines.ts";

const sorts = ["note", "decision", ...happenings] as const;
type Sort = (typeof sorts)[number];

/** A note in the margin, a decision, or something that happened: a spill, dust, a power cut. */
export function NoteForm(props: { readonly about: string | undefined; readonly things: readonly Thing[] }) {
  const book = useBook();
  const [sort, setSort] = createSignal<Sort>("note");
  const [text, setText] = createSignal("");
  const [thing, setThing] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const [wrote, setWrote] = createSignal<string>();
  const needsWords = () => sort() === "note" || sort() === "decision";
  const missing = () => needsWords() && text().trim() === "";

  function write(): string {
    const id = thing() ?? props.about;
    const about = id === undefined || id === "" ? [] : [id];
    const said = text().trim();
    const kind = sort();
    if (kind === "note" || kind === "decision") return book.write({ kind, about, body: { text: said } });
    return book.write({
      kind: "happening",
      about,
      body: { what: kind, ...(said === "" ? {} : { note: said }) },
    });
  }
  const act = () => {
    setTold(missing());
    if (missing()) return;
    setWrote(write());
    setText("");
  };
  const undo = () => {
    const id = wrote();
    if (id !== undefined) book.strike([id]);
    setWrote(undefined);
  };

  return (
    <details class="note not-on-paper">
      <summary>{words.book.note}</summary>
      <div class="stack">
        <Select
          label={words.book.sort}
          value={sort()}
          options={sorts.map((value) => ({ value, label: words.book.sorting[value] }))}
          onChange={setSort}
        />
        <TextField
          label={words.book.noteText}
          lines
          value={text()}
          onInput={setText}
          hint={words.book.noteHint}
          wrong={told() && missing() ? words.book.noteMissing : undefined}
        />
        <Select
          label={words.book.aboutThing}
          empty={words.book.nothingInParticular}
          value={thing() === "" ? undefined : (thing() ?? props.about)}
          options={props.things.map((one) => ({
            value: one.id,
            label: words.book.thingOption(one.name, words.book.sorts[one.sort]),
          }))}
          onChange={setThing}
          onEmpty={() => setThing("")}
        />
        <button type="button" onClick={act}>
          {words.book.noteAct}
        </button>
        <Show when={wrote()}>
          <UndoStrip says={words.book.justWritten} onUndo={undo} />
        </Show>
      </div>
    </details>
  );
}
