import { batch, createMemo, createSignal, Show } from "solid-js";
import { cut as cutOf, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { Choice } from "../../controls/choice.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import * as words from "../../words/words.ts";
import { asMillilitres } from "../as-typed.ts";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { SolventSelect, useSolvent } from "../solvents.tsx";
import { thinPlan } from "../thin-plan.ts";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { ThinResult } from "./thin-result.tsx";
import { useVessel, VesselFields } from "./vessel.tsx";

/** A working cut let down from this jar: how much to take, how much to add, and what the simple ratio would have done. */
export function ThinAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.thin;
  const jar = () => lookAtJar(book, props.jarId);
  const [target, setTarget] = createSignal("");
  const [by, setBy] = createSignal<"made" | "taken">("made");
  const [amount, setAmount] = createSignal("");
  const [told, setTold] = createSignal(false);
  const solvent = useSolvent(book, () => jar()?.solvents[0]?.material ?? undefined);
  const vessel = useVessel(book, () => nextCode(letterOf(jar()?.code ?? ""), codesTaken(book)));
  const readings = createMemo(() => ({
    cut: readQuantity(target(), fields.cut),
    amount: readQuantity(amount(), fields.volume),
  }));
  const plan = createMemo(() => {
    const [from, added] = [jar(), solvent.material()?.composition];
    const { cut, amount: wanted } = readings();
    if (from?.cut == null || added == null || !cut.ok || !wanted.ok || wanted.value.si === 0)
      return undefined;
    const ml = wanted.value.si * 1e6;
    const pounds = poundsPerUsGallonFromCut(cutOf(cut.value.si));
    return thinPlan(from, pounds, added, by() === "made" ? { madeMl: ml } : { takenMl: ml });
  });
  const good = () => {
    const found = plan();
    return found?.ok ? found.value : undefined;
  };
  const refused = () => {
    const found = plan();
    return found === undefined || found.ok ? undefined : found.error;
  };
  /** Another alcohol than is in the jar brings cautions of its own; the jar's stand above already. */
  const another = () =>
    jar()?.solvents.some((named) => named.material === solvent.id())
      ? undefined
      : solvent.material()?.composition;
  const write = () => {
    setTold(true);
    const [found, material] = [good(), solvent.id()];
    const { cut } = readings();
    if (found === undefined || material === undefined || !cut.ok || !vessel.check()) return;
    const code = vessel.code();
    batch(() => {
      const glass = vessel.write();
      const id = book.write({
        kind: "batch-thinned",
        about: [props.jarId, material, ...(glass === undefined ? [] : [glass])],
        body: {
          code,
          taken: asMillilitres(found.takenMl),
          added: [{ material, amount: asMillilitres(found.thinned.addMl) }],
          aimedCutLbPerGal: poundsPerUsGallonFromCut(cutOf(cut.value.si)),
          ...(glass === undefined ? {} : { vessel: glass }),
        },
      });
      props.onWrote(t.wrote(code), glass === undefined ? [id] : [id, glass]);
    });
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <QuantityField
        label={t.target}
        typed={target()}
        reading={readings().cut}
        onInput={setTarget}
        hint={t.targetHint}
        told={told()}
      />
      <Choice
        inline
        label={t.by}
        value={by()}
        options={[
          { value: "made", label: t.byMade },
          { value: "taken", label: t.byTaken },
        ]}
        onChange={setBy}
      />
      <QuantityField
        label={by() === "made" ? t.made : t.taken}
        typed={amount()}
        reading={readings().amount}
        onInput={setAmount}
        hint={t.amountHint}
        told={told()}
      />
      <SolventSelect solvent={solvent} told={told()} />
      <Show when={refused()} keyed>
        {(problem) => (
          <p class="wrong">{problem.field === "toCutLbPerGal" ? t.onlyWeaker : problem.message}</p>
        )}
      </Show>
      <Show when={good()} keyed>
        {(found) => <ThinResult plan={found} from={jar()?.code ?? ""} capacity={vessel.capacity()} />}
      </Show>
      <VesselFields vessel={vessel} />
      <Show when={another()} keyed>
        {(composition) => <Cautions act="mixing" liquid={composition} />}
      </Show>
    </ActForm>
  );
}
