import { batch, createSignal } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { TextField } from "../../controls/text-field.tsx";
import * as words from "../../words/words.ts";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { useVessel, VesselFields } from "./vessel.tsx";

/** Strained into a jar of its own: the dirt stays behind, and the wax with it where it has settled. */
export function StrainAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.strain;
  const jar = () => lookAtJar(book, props.jarId);
  const vessel = useVessel(book, () => nextCode(letterOf(jar()?.code ?? ""), codesTaken(book)));
  const [kept, setKept] = createSignal("");
  const [through, setThrough] = createSignal("");
  const [told, setTold] = createSignal(false);
  const keptRead = () => readQuantity(kept(), fields.massOrVolume);
  const write = () => {
    setTold(true);
    const read = keptRead();
    if (!vessel.check() || !read.ok) return;
    const code = vessel.code();
    batch(() => {
      const glass = vessel.write();
      const id = book.write({
        kind: "batch-filtered",
        about: [props.jarId, ...(glass === undefined ? [] : [glass])],
        body: {
          code,
          kept: read.value,
          ...(glass === undefined ? {} : { vessel: glass }),
          ...(through().trim() === "" ? {} : { through: through().trim() }),
        },
      });
      props.onWrote(t.wrote(code), glass === undefined ? [id] : [id, glass]);
    });
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <QuantityField
        label={t.kept}
        typed={kept()}
        reading={keptRead()}
        onInput={setKept}
        hint={t.keptHint}
        told={told()}
      />
      <TextField label={t.through} value={through()} onInput={setThrough} hint={t.throughHint} />
      <VesselFields vessel={vessel} />
    </ActForm>
  );
}
