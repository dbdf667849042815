import { createMemo, createSignal, For, onMount, Show } from "solid-js";
import { defaultValue } from "../../../core/views/default-value.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { DoesNotFit } from "../../controls/does-not-fit.tsx";
import { addressForPhones, addressHere } from "../../pairing/pairing-api.ts";
import { address, navigate } from "../../router.ts";
import { Page } from "../../shell/page.tsx";
import * as words from "../../words/words.ts";
import { cutOnShelf } from "../jar-text.ts";
import { jarsOnShelves } from "../use-jar.ts";
import { FormatFields } from "./format-fields.tsx";
import { perSheet } from "./formats.ts";
import { labelLayout } from "./label-layout.ts";
import { labelText, testAfterDefault } from "./label-text.ts";
import { LabelSheet, type SheetLabel } from "./sheet.tsx";
import { useFormat } from "./use-format.ts";
import "./labels.css";

/** A sheet's worth, to begin with. */
const atFirst = 6;

/** Labels for the jars that were chosen, on the sheet that is in the printer: on the page as they come out of it. */
export function LabelsView() {
  const book = useBook();
  const t = words.jars.labelText;
  const choice = useFormat();
  const [phonesAt, setPhonesAt] = createSignal(addressHere);
  onMount(async () => setPhonesAt(await addressForPhones()));
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
            .slice(0, atFirst)
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
  const labels = createMemo(() => {
    const format = choice.format();
    if (format === undefined) return [];
    return jars()
      .filter((jar) => chosen().has(jar.id))
      .reverse()
      .map((jar) => ({
        jar,
        layout: labelLayout(
          labelText(jar, book.zone, testAfter()),
          [t.opened, t.dropTest],
          format.width,
          format.height,
        ),
        address: `${phonesAt()}/jars/${jar.id}`,
      }));
  });
  const drawn = () => labels().filter((one): one is SheetLabel => one.layout !== undefined);
  /** Jars whose words do not fit a label of this size. */
  const tooSmall = () => labels().filter((one) => one.layout === undefined);
  const sheets = createMemo(() => {
    const format = choice.format();
    if (format === undefined) return [];
    const each = perSheet(format);
    return Array.from({ length: Math.ceil(drawn().length / each) }, (_, i) =>
      drawn().slice(i * each, (i + 1) * each),
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
        <FormatFields of={choice} />
        <Show when={tooSmall().length > 0}>
          <DoesNotFit
            heading={t.tooSmall}
            says={t.tooSmallSays(
              tooSmall()
                .map((one) => one.jar.code)
                .join(", "),
            )}
          />
        </Show>
        <Show when={sheets().length > 0} fallback={<p>{chosen().size === 0 ? t.none : t.noSheet}</p>}>
          <button type="button" class="main" onClick={() => print()}>
            {t.print(sheets().length)}
          </button>
          <p class="small soft">{t.actualSize}</p>
        </Show>
      </div>
      <div class="label-sheets">
        <Show when={choice.format()} keyed>
          {(format) => (
            <For each={sheets()}>
              {(sheet) => (
                <LabelSheet
                  format={format}
                  labels={sheet}
                  invented={book.invented()}
                  moved={choice.moved()}
                />
              )}
            </For>
          )}
        </Show>
      </div>
    </Page>
  );
}
