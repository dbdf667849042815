import { Show } from "solid-js";
import { DoesNotFit } from "./does-not-fit.tsx";
import { TextField } from "./text-field.tsx";

/** A table out of a file, or pasted; and why it is none. */
export function TableInput(props: {
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly file: string;
  readonly paste: string;
  readonly pasteHint: string;
  readonly wrong: { readonly heading: string; readonly says: string } | undefined;
}) {
  return (
    <>
      <label class="press file">
        {props.file}
        <input
          type="file"
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file !== undefined) void file.text().then(props.onText);
            event.currentTarget.value = "";
          }}
        />
      </label>
      <TextField lines label={props.paste} value={props.text} hint={props.pasteHint} onInput={props.onText} />
      <Show when={props.wrong} keyed>
        {(why) => <DoesNotFit heading={why.heading} says={why.says} />}
      </Show>
    </>
  );
}
