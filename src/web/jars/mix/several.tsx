import { createMemo, createSignal, Index, Show } from "solid-js";
import type { MaterialView } from "../../../core/views/material.ts";
import type { OpenBook } from "../../book-store/open-book.ts";
import { fields } from "../../controls/read-quantity.ts";
import { Select } from "../../controls/select.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { onShelf } from "../solvents.tsx";
import { readShares } from "./shares.ts";

export interface Row {
  readonly id: string | undefined;
  /** Its amount or its parts, where there are several. */
  readonly share: string;
}

/** One or several things off the shelf that go into a jar together: flakes, or bottles. */
export function useSeveral(book: OpenBook, form: "resin" | "solvent") {
  const [rows, setRows] = createSignal<readonly Row[]>([{ id: undefined, share: "" }]);
  const list = () => onShelf(book, form);
  const idOf = (at: number) => {
    const known = list().find((material) => material.id === rows()[at]?.id);
    return known?.id ?? (rows().length === 1 && list().length === 1 ? list()[0]?.id : undefined);
  };
  const chosen = createMemo<readonly (MaterialView | undefined)[]>(() =>
    rows().map((_, i) => list().find((material) => material.id === idOf(i))),
  );
  const put = (at: number, change: Partial<Row>) =>
    setRows(rows().map((row, i) => (i === at ? { ...row, ...change } : row)));
  return {
    form,
    list,
    rows,
    idOf,
    put,
    add: () => setRows([...rows(), { id: undefined, share: "" }]),
    remove: (at: number) => setRows(rows().filter((_, i) => i !== at)),
    /** All that were chosen; undefined while one is not. */
    materials: (): readonly MaterialView[] | undefined => {
      const all = chosen().filter((one) => one !== undefined);
      return all.length === rows().length ? all : undefined;
    },
    first: () => chosen()[0],
    names: () => chosen().flatMap((one) => (one === undefined ? [] : [one.name])),
    shares: createMemo(() =>
      readShares(
        rows().map((row) => row.share),
        form === "resin" ? fields.mass : fields.massOrVolume,
      ),
    ),
  };
}
export type Several = ReturnType<typeof useSeveral>;

/** The bottles or bags, each with its share once there are two. */
export function SeveralFields(props: { readonly of: Several; readonly told: boolean }) {
  const t = words.jars.mix.several;
  const form = () => props.of.form;
  const many = () => props.of.rows().length > 1;
  const wrongAt = (at: number) => {
    const shares = props.of.shares();
    if (!props.told || shares.kind !== "open" || shares.at !== at) return undefined;
    return t.wrong[shares.why];
  };
  const label = (at: number) => (at === 0 ? t.label[form()] : t.another[form()](at + 1));
  return (
    <div class="stack-small several">
      <Show
        when={props.of.list().length > 0}
        fallback={
          <p>
            {t.none[form()]} <a href={`/shelf/new?what=${form()}`}>{words.jars.toShelf}</a>
          </p>
        }
      >
        <Index each={props.of.rows()}>
          {(row, i) => (
            <div class="several-row" classList={{ many: many() }}>
              <Select
                label={label(i)}
                empty={words.jars.choose}
                value={props.of.idOf(i)}
                options={props.of.list().map((one) => ({ value: one.id, label: one.name }))}
                onChange={(id) => props.of.put(i, { id })}
                wrong={props.told && props.of.idOf(i) === undefined ? t.missing[form()] : undefined}
              />
              <Show when={many()}>
                <TextField
                  label={t.share}
                  value={row().share}
                  hint={i === 0 ? t.shareHint[form()] : undefined}
                  onInput={(share) => props.of.put(i, { share })}
                  wrong={wrongAt(i)}
                />
                <button type="button" class="words" onClick={() => props.of.remove(i)}>
                  {t.leaveOut}
                  <span class="unseen"> ({label(i)})</span>
                </button>
              </Show>
            </div>
          )}
        </Index>
        <button type="button" class="words" onClick={() => props.of.add()}>
          {t.add[form()]}
        </button>
      </Show>
    </div>
  );
}
