import { Show } from "solid-js";
import { useBook } from "../book-store/use-book.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { now } from "../shell/now.ts";
import { whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { whysOut } from "./evening.ts";
import type { SheetLine } from "./sheet.ts";
import type { RememberedEvening } from "./use-evening.ts";

const t = words.remembered;

/** Enter goes on to the time of the line below, as the pencil did. */
function goDown(from: EventTarget | null): void {
  const all = [...document.querySelectorAll<HTMLInputElement>(".sheet-lines .time input")];
  all[all.indexOf(from as HTMLInputElement) + 1]?.focus();
}

/** One line as it stands on the paper: its number, its patch, and what is filled in. */
export function Line(props: {
  readonly evening: RememberedEvening;
  readonly line: SheetLine;
  readonly jars: readonly { readonly value: string; readonly label: string }[];
}) {
  const waits = () => props.line.state === "waits";
  const draft = () => props.evening.draftOf(props.line.key);
  const named = () => t.line(props.line.number, props.line.code);
  return (
    <li classList={{ out: !waits() || !draft().on }}>
      <b class="number">{props.line.number}</b>
      <span class="patch">
        <b>{props.line.code}</b> <span class="soft small">{t.where(props.line.board, props.line.place)}</span>
      </span>
      <Show
        when={waits()}
        fallback={<span class="soft">{props.line.state === "written" ? t.written : t.outOfTrial}</span>}
      >
        <button
          type="button"
          aria-label={`${draft().on ? t.on : t.leftOut}, ${named()}`}
          onClick={() => props.evening.fill(props.line.key, { on: !draft().on })}
        >
          {draft().on ? t.on : t.leftOut}
        </button>
        <div class="blanks">
          <Show
            when={draft().on}
            fallback={<WhyOut evening={props.evening} line={props.line} named={named()} />}
          >
            <Went evening={props.evening} line={props.line} named={named()} jars={props.jars} />
          </Show>
        </div>
        <Faulty evening={props.evening} line={props.line} />
      </Show>
    </li>
  );
}

interface Blanks {
  readonly evening: RememberedEvening;
  readonly line: SheetLine;
  readonly named: string;
}

const labelled = (says: string, named: string) => (
  <>
    {says}
    <span class="unseen">, {named}</span>
  </>
);

/** When, out of which jar, and what the paper remarks. */
function Went(
  props: Blanks & { readonly jars: readonly { readonly value: string; readonly label: string }[] },
) {
  const draft = () => props.evening.draftOf(props.line.key);
  return (
    <>
      <Show when={props.evening.source() !== "day"}>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: only hears Enter pressed in the field within */}
        <div class="time" onKeyDown={(event) => event.key === "Enter" && goDown(event.target)}>
          <TextField
            label={labelled(t.time, props.named)}
            inputMode="numeric"
            value={draft().time}
            onInput={(time) => props.evening.fill(props.line.key, { time })}
          />
        </div>
      </Show>
      <Show when={props.evening.keyOpen()}>
        <Select
          label={labelled(t.jar, props.named)}
          {...(props.line.batch === null ? { empty: t.jarByKey } : {})}
          value={draft().batch ?? props.line.batch ?? undefined}
          options={props.jars}
          onChange={(batch) => props.evening.fill(props.line.key, { batch })}
          onEmpty={() => props.evening.fill(props.line.key, { batch: undefined })}
        />
      </Show>
      <Show when={props.evening.source() === "sheet"}>
        <TextField
          label={labelled(t.remark, props.named)}
          value={draft().note}
          onInput={(note) => props.evening.fill(props.line.key, { note })}
        />
      </Show>
    </>
  );
}

function WhyOut(props: Blanks) {
  const draft = () => props.evening.draftOf(props.line.key);
  return (
    <>
      <Select
        label={labelled(t.why, props.named)}
        value={draft().why}
        options={whysOut.map((value) => ({ value, label: t.whys[value] }))}
        onChange={(why) => props.evening.fill(props.line.key, { why })}
      />
      <TextField
        label={labelled(t.note, props.named)}
        value={draft().note}
        onInput={(note) => props.evening.fill(props.line.key, { note })}
      />
    </>
  );
}

/** A time that cannot be read is said at once; what is still missing once the act was pressed. */
function Faulty(props: { readonly evening: RememberedEvening; readonly line: SheetLine }) {
  const book = useBook();
  const fault = () => {
    const found = props.evening.read()?.faults.get(props.line.key);
    const typed = props.evening.draftOf(props.line.key).time.trim() !== "";
    return props.evening.told() || typed ? found : undefined;
  };
  return (
    <Show when={fault()} keyed>
      {(found) => (
        <p class="wrong" role="alert">
          {t.fault(found, (at) => whenInWords(at, book.zone, now()))}
        </p>
      )}
    </Show>
  );
}
