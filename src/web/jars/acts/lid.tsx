import { createSignal } from "solid-js";
import { Choice } from "../../controls/choice.tsx";
import * as words from "../../words/words.ts";

/** A jar is weighed with its lid on or off; the two are not compared. */
export function useLid() {
  const [lid, setLid] = createSignal<"with" | "without">("with");
  return { lid, setLid, with: () => lid() === "with" };
}

export function LidChoice(props: { readonly lid: ReturnType<typeof useLid> }) {
  const t = words.jars.acts.weigh;
  return (
    <Choice
      inline
      label={t.lid}
      value={props.lid.lid()}
      options={[
        { value: "with", label: t.withLid },
        { value: "without", label: t.withoutLid },
      ]}
      onChange={props.lid.setLid}
    />
  );
}
