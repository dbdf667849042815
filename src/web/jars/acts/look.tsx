import { createSignal, Show } from "solid-js";
import type { Body } from "../../../core/notebook/kinds/all.ts";
import { clarities, undissolvedShares } from "../../../core/notebook/kinds/jars.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { Choice } from "../../controls/choice.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import * as words from "../../words/words.ts";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";

type LookBody = Body<"batch-looked-at">;

/** A look at the jar: what is undissolved, how clear it is, whether its wax has settled. */
export function LookAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.look;
  const [undissolved, setUndissolved] = createSignal<LookBody["undissolved"]>();
  const [share, setShare] = createSignal("");
  const [clarity, setClarity] = createSignal<NonNullable<LookBody["clarity"]>>();
  const [wax, setWax] = createSignal<"yes" | "no">();
  const [told, setTold] = createSignal(false);
  const isSomeLeft = () => undissolved() !== undefined && undissolved() !== "none";
  const shareRead = () => readQuantity(share(), fields.share);
  /** Nothing typed, or nothing left to tell a share of, is fine. */
  const shareTold = () => (isSomeLeft() && share().trim() !== "" ? shareRead() : undefined);
  const write = () => {
    setTold(true);
    const [seen, left] = [undissolved(), shareTold()];
    if (seen === undefined || left?.ok === false) return;
    const how = clarity();
    const id = book.write({
      kind: "batch-looked-at",
      about: [props.jarId],
      body: {
        undissolved: seen,
        ...(left === undefined ? {} : { undissolvedShare: left.value }),
        ...(how === undefined ? {} : { clarity: how }),
        ...(wax() === undefined ? {} : { waxSettled: wax() === "yes" }),
      },
    });
    props.onWrote(t.wrote(words.jars.undissolved[seen]), [id]);
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <Choice
        label={t.undissolved}
        value={undissolved()}
        options={undissolvedShares.map((value) => ({ value, label: words.jars.undissolved[value] }))}
        onChange={setUndissolved}
        wrong={told() && undissolved() === undefined ? t.missing : undefined}
      />
      <Show when={isSomeLeft()}>
        <QuantityField
          label={t.share}
          hint={t.shareHint}
          typed={share()}
          reading={shareRead()}
          onInput={setShare}
          told={told()}
          optional
        />
        <details>
          <summary>{words.jars.acts.look.warming}</summary>
          <Cautions act="warming" liquid={lookAtJar(book, props.jarId)?.composition ?? {}} />
        </details>
      </Show>
      <Choice
        label={t.clarity}
        value={clarity()}
        options={clarities.map((value) => ({
          value,
          label: words.jars.clarity[value],
          says: t.claritySays[value],
        }))}
        onChange={setClarity}
      />
      <Choice
        inline
        label={t.wax}
        value={wax()}
        options={[
          { value: "yes", label: t.yes },
          { value: "no", label: t.no },
        ]}
        onChange={setWax}
      />
    </ActForm>
  );
}
