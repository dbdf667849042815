import { createMemo, createSignal, For, Show } from "solid-js";
import { defaultValue } from "../../../core/views/default-value.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Choice } from "../../controls/choice.tsx";
import { address, navigate } from "../../router.ts";
import { Page } from "../../shell/page.tsx";
import { words } from "../../words/words.ts";
import { cutOnShelf } from "../jar-text.ts";
import { jarsOnShelves } from "../use-jar.ts";
import { labelText, testAfterDefault } from "./label-text.ts";
import { LabelSheet, type Paper, perSheet } from "./sheet.tsx";
import "./labels.css";

/** Labels for the jars that were chosen, six to a sheet: on the page as they come out of the printer. */
export function LabelsView() {
  const book = useBook();
  const t = words.jars.labelText;
  const [paper, setPaper] = createSignal<Paper>("a4");
  const jars = createMemo(() =>
    jarsOnShelves(book, false)
      .filter(({ fitness }) => fitness.state !== "discard")
      .map(({ jar }) => jar)
      .sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1)),
  );
  /** Those that the address names; without a name the newest sheet's worth. */
  const chosen = createMemo(() => {
    const named = address().query.get("jars");
    return new Set(
      named === null
        ? jars()
            .slice(0, perSheet)
            .map((jar) => jar.id)
        : named.split(","),
    );
  });
  const toggle = (id: string) => {
    const next = new Set(chosen());
    if (!next.delete(id)) next.add(id);
    navigate(`/jars/labels?jars=${[...next].join(",")}`, { replace: true });
  };
  const testAfter = book.view("test-after", (read) => defaultValue(read, testAfterDefault));
  const sheets = createMemo(() => {
    const labels = jars()
      .filter((jar) => chosen().has(jar.id))
      .reverse()
      .map((jar) => ({
        jar,
        text: labelText(jar, book.zone, testAfter()),
        address: `${location.origin}/jars/${jar.id}`,
      }));
    return Array.from({ length: Math.ceil(labels.length / perSheet) }, (_, i) =>
      labels.slice(i * perSheet, (i + 1) * perSheet),
    );
  });
  return (
    <Page title={t.title}>
      <div class="not-on-paper stack">
        <h1>{t.title}</h1>
        <fieldset class="choice label-choice">
          <legend>{t.which}</legend>
          <div class="options">
            <For each={jars()}>
              {(jar) => (
                <label>
                  <input type="checkbox" checked={chosen().has(jar.id)} onChange={() => toggle(jar.id)} />
                  <span>
                    {jar.code} {cutOnShelf(jar)}
                    <span class="says">{jar.solvents.map((named) => named.name).join(", ")}</span>
                  </span>
                </label>
              )}
            </For>
          </div>
        </fieldset>
        <Choice
          inline
          label={t.paper}
          value={paper()}
          options={[
            { value: "a4", label: t.papers.a4 },
            { value: "letter", label: t.papers.letter },
          ]}
          onChange={setPaper}
        />
        <Show when={sheets().length > 0} fallback={<p>{t.none}</p>}>
          <button type="button" class="main" onClick={() => print()}>
            {t.print(sheets().length)}
          </button>
          <p class="small soft">{t.actualSize}</p>
        </Show>
      </div>
      <div class="label-sheets">
        <For each={sheets()}>
          {(labels) => <LabelSheet paper={paper()} labels={labels} invented={book.invented()} />}
        </For>
      </div>
    </Page>
  );
}
