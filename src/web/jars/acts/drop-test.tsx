import { createSignal } from "solid-js";
import { type dropTestResults, dropTestResults as results } from "../../../core/notebook/kinds/jars.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Choice } from "../../controls/choice.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { ActForm, type ActProps } from "./act-form.tsx";

const minutesIn = (text: string): number | undefined =>
  /^\d{1,5}$/.test(text.trim()) ? Number(text.trim()) : undefined;

/** A drop on glass: hard within hours, or not. */
export function DropTestAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.dropTest;
  const [result, setResult] = createSignal<(typeof dropTestResults)[number]>();
  const [minutes, setMinutes] = createSignal("");
  const [told, setTold] = createSignal(false);
  const minutesWrong = () =>
    minutes().trim() !== "" && minutesIn(minutes()) === undefined ? t.minutesWrong : undefined;
  const write = () => {
    setTold(true);
    const seen = result();
    if (seen === undefined || minutesWrong() !== undefined) return;
    const hardAfterMinutes = minutesIn(minutes());
    const id = book.write({
      kind: "batch-drop-tested",
      about: [props.jarId],
      body: { result: seen, ...(hardAfterMinutes === undefined ? {} : { hardAfterMinutes }) },
    });
    props.onWrote(t.wrote(t.results[seen]), [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <p class="soft">{t.says}</p>
      <Choice
        label={t.result}
        value={result()}
        options={results.map((value) => ({ value, label: t.results[value] }))}
        onChange={setResult}
        wrong={told() && result() === undefined ? t.missing : undefined}
      />
      <TextField
        label={t.minutes}
        value={minutes()}
        inputMode="numeric"
        onInput={setMinutes}
        wrong={minutesWrong()}
      />
    </ActForm>
  );
}
