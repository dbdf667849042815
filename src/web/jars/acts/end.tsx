import { createSignal } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";

/** The jar is empty, or what was in it is gone. */
export function EmptyAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.empty;
  const [why, setWhy] = createSignal("");
  const write = () => {
    const id = book.write({
      kind: "batch-emptied",
      about: [props.jarId],
      body: why().trim() === "" ? {} : { why: why().trim() },
    });
    props.onWrote(t.wrote, [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <TextField label={t.why} value={why()} onInput={setWhy} hint={t.whyHint} />
      <Cautions act="disposing" liquid={lookAtJar(book, props.jarId)?.cautioned ?? {}} />
    </ActForm>
  );
}

/** Something got into it: from here on it is for scrap. */
export function SpoiltAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.spoilt;
  const [what, setWhat] = createSignal("");
  const [told, setTold] = createSignal(false);
  const write = () => {
    setTold(true);
    if (what().trim() === "") return;
    const id = book.write({
      kind: "batch-contaminated",
      about: [props.jarId],
      body: { with: what().trim() },
    });
    props.onWrote(t.wrote, [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <p class="soft">{t.says}</p>
      <TextField
        label={t.what}
        value={what()}
        onInput={setWhat}
        hint={t.whatHint}
        wrong={told() && what().trim() === "" ? t.missing : undefined}
      />
    </ActForm>
  );
}
