import { batch, createMemo, createSignal, Show } from "solid-js";
import type { JarView } from "../../../core/views/jar.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { Select } from "../../controls/select.tsx";
import * as words from "../../words/words.ts";
import { asMillilitres } from "../as-typed.ts";
import { blendPlan, type PouredIn } from "../blend-plan.ts";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { isSomething } from "../jar-look.ts";
import { cutOnShelf, inWords } from "../jar-text.ts";
import { jarsOnShelves, lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { BlendResult } from "./blend-result.tsx";
import { useVessel, VesselFields } from "./vessel.tsx";

const allOf = (jar: JarView | null | undefined): string =>
  jar == null ? "" : asMillilitres(jar.volume.value * 1e6).typed;

/** This jar and another poured together into a third. */
export function BlendAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.blend;
  const jar = () => lookAtJar(book, props.jarId);
  const others = createMemo(() =>
    jarsOnShelves(book, false)
      .map((shelved) => shelved.jar)
      .filter((one) => one.id !== props.jarId && one.known && one.cut !== null && isSomething(one)),
  );
  const [otherId, setOtherId] = createSignal<string>();
  const [own, setOwn] = createSignal(allOf(jar()));
  const [its, setIts] = createSignal("");
  const [told, setTold] = createSignal(false);
  const other = () => others().find((one) => one.id === otherId());
  const vessel = useVessel(book, () => nextCode(letterOf(jar()?.code ?? ""), codesTaken(book)));
  const readings = createMemo(() => ({
    own: readQuantity(own(), fields.massOrVolume),
    its: readQuantity(its(), fields.massOrVolume),
  }));
  const poured = createMemo<readonly PouredIn[] | undefined>(() => {
    const [a, b] = [jar(), other()];
    const read = readings();
    if (a?.cut == null || b === undefined || !read.own.ok || !read.its.ok) return undefined;
    if (read.own.value.si === 0 || read.its.value.si === 0) return undefined;
    return [
      { jar: a, amount: read.own.value },
      { jar: b, amount: read.its.value },
    ];
  });
  const plan = createMemo(() => {
    const from = poured();
    return from === undefined ? undefined : blendPlan(from);
  });
  const good = () => {
    const found = plan();
    return found?.ok ? found.value : undefined;
  };
  const write = () => {
    setTold(true);
    const [from, found] = [poured(), good()];
    if (from === undefined || found === undefined || !vessel.check()) return;
    const code = vessel.code();
    batch(() => {
      const glass = vessel.write();
      const id = book.write({
        kind: "batch-blended",
        about: [...from.map((one) => one.jar.id), ...(glass === undefined ? [] : [glass])],
        body: {
          code,
          parts: from.map((one) => ({ batch: one.jar.id, amount: one.amount })),
          ...(glass === undefined ? {} : { vessel: glass }),
        },
      });
      props.onWrote(t.wrote(code), glass === undefined ? [id] : [id, glass]);
    });
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <Show when={others().length > 0} fallback={<p>{t.noOther}</p>}>
        <Select
          label={t.other}
          empty={words.jars.choose}
          value={otherId()}
          options={others().map((one) => ({
            value: one.id,
            label: t.option(one.code, cutOnShelf(one), inWords(one)),
          }))}
          onChange={(id) => {
            setOtherId(id);
            setIts(allOf(others().find((one) => one.id === id)));
          }}
          wrong={told() && other() === undefined ? t.otherMissing : undefined}
        />
      </Show>
      <div class="side-by-side halves">
        <QuantityField
          label={t.howMuch(jar()?.code ?? "")}
          typed={own()}
          reading={readings().own}
          onInput={setOwn}
          told={told()}
        />
        <QuantityField
          label={t.howMuch(other()?.code ?? t.theOther)}
          typed={its()}
          reading={readings().its}
          onInput={setIts}
          told={told()}
        />
      </div>
      <Show when={good()} keyed>
        {(found) => (
          <BlendResult
            plan={found}
            codes={poured()?.map((one) => one.jar.code) ?? []}
            capacity={vessel.capacity()}
          />
        )}
      </Show>
      <VesselFields vessel={vessel} />
      <Show when={other()?.cautioned} keyed>
        {(liquid) => <Cautions act="mixing" liquid={liquid} />}
      </Show>
    </ActForm>
  );
}
