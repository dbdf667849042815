import { batch, createMemo, createSignal, Show } from "solid-js";
import { cut as cutOf, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import * as words from "../../words/words.ts";
import { asGrams, asMillilitres } from "../as-typed.ts";
import { codesTaken, letterOf, nextCode } from "../codes.ts";
import { correctPlan, type Way } from "../correct-plan.ts";
import { isSomething } from "../jar-look.ts";
import { poundsText } from "../jar-text.ts";
import { onShelf } from "../solvents.tsx";
import { jarsOnShelves, lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { type NamedWay, WaysToCorrect } from "./correct-ways.tsx";
import { useVessel, VesselFields } from "./vessel.tsx";

/** A jar that came out too strong or too weak, brought to its cut with what stands on the shelf. */
export function CorrectAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.correct;
  const jar = () => lookAtJar(book, props.jarId);
  const label = jar()?.labelCut;
  const [target, setTarget] = createSignal(label == null ? "" : `${poundsText(label)} lb`);
  const [chosen, setChosen] = createSignal<string>();
  const [typed, setTyped] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const vessel = useVessel(book, () => nextCode(letterOf(jar()?.code ?? ""), codesTaken(book)));
  const cutRead = () => readQuantity(target(), fields.cut);
  const atHand = createMemo(() => ({
    solvents: onShelf(book, "solvent").filter((one) => one.composition !== null),
    resins: onShelf(book, "resin"),
    jars: jarsOnShelves(book, false)
      .filter(({ fitness }) => fitness.state !== "discard")
      .map((shelved) => shelved.jar)
      .filter((one) => one.id !== props.jarId && one.cut !== null && isSomething(one)),
  }));
  const plan = createMemo(() => {
    const [from, cut] = [jar(), cutRead()];
    if (from?.cut == null || !cut.ok) return undefined;
    return correctPlan(from, poundsPerUsGallonFromCut(cutOf(cut.value.si)), atHand());
  });
  const named = createMemo<readonly NamedWay[]>(() => {
    const found = plan();
    if (!found?.ok) return [];
    const { solvents, resins, jars } = atHand();
    const nameOf = (id: string) =>
      [...solvents, ...resins].find((one) => one.id === id)?.name ??
      jars.find((one) => one.id === id)?.code ??
      "";
    return found.value.ways.map((way) => ({ ...way, id: way.name, name: nameOf(way.name) }));
  });
  const way = () => named().find((one) => one.id === chosen()) ?? named()[0];
  const refused = () => {
    const found = plan();
    if (found === undefined || (found.ok && found.value.ways.length > 0)) return undefined;
    return found.ok
      ? t.nothingHelps
      : found.error.code === "contradiction"
        ? t.thereAlready
        : found.error.message;
  };
  const suggested = (one: Way) =>
    (one.what === "flakes" ? asGrams(one.addG) : asMillilitres(one.addMl ?? 0)).typed;
  const amount = () => typed() ?? (way() === undefined ? "" : suggested(way() as Way));
  const amountRead = () =>
    readQuantity(amount(), way()?.what === "flakes" ? fields.mass : fields.massOrVolume);
  const liquid = () => {
    const one = way();
    return one?.what === "jar"
      ? atHand().jars.find((other) => other.id === one.id)?.cautioned
      : atHand().solvents.find((other) => other.id === one?.id)?.composition;
  };
  const write = () => {
    setTold(true);
    const [one, read, from] = [way(), amountRead(), jar()];
    if (one === undefined || from === null || !read.ok) return;
    if (one.what !== "jar") {
      const what = { material: one.id, amount: read.value };
      const body = one.what === "flakes" ? { added: [], resins: [what] } : { added: [what] };
      const id = book.write({ kind: "batch-topped-up", about: [props.jarId, one.id], body });
      props.onWrote(t.wrote(read.value.typed, one.name), [id]);
      return;
    }
    if (!vessel.check()) return;
    const code = vessel.code();
    batch(() => {
      const glass = vessel.write();
      const parts = [
        { batch: props.jarId, amount: asMillilitres(from.volume.value * 1e6) },
        { batch: one.id, amount: read.value },
      ];
      const id = book.write({
        kind: "batch-blended",
        about: [props.jarId, one.id, ...(glass === undefined ? [] : [glass])],
        body: { code, parts, ...(glass === undefined ? {} : { vessel: glass }) },
      });
      props.onWrote(words.jars.acts.blend.wrote(code), glass === undefined ? [id] : [id, glass]);
    });
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <QuantityField
        label={words.jars.acts.thin.target}
        typed={target()}
        reading={cutRead()}
        onInput={setTarget}
        hint={words.jars.acts.thin.targetHint}
        told={told()}
      />
      <Show when={refused()} keyed>
        {(says) => <p class="wrong">{says}</p>}
      </Show>
      <Show when={named().length > 0}>
        <WaysToCorrect
          ways={named()}
          chosen={way()?.id}
          onChoose={(id) => {
            setChosen(id);
            setTyped(undefined);
          }}
        />
        <QuantityField
          label={t.added}
          typed={amount()}
          reading={amountRead()}
          onInput={setTyped}
          told={told()}
        />
      </Show>
      <Show when={way()?.what === "jar"}>
        <p class="soft">{t.becomesNew}</p>
        <VesselFields vessel={vessel} />
      </Show>
      <Show when={liquid()} keyed>
        {(composition) => <Cautions act="mixing" liquid={composition} />}
      </Show>
    </ActForm>
  );
}
