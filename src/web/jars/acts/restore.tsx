import { batch, createMemo, createSignal, Show } from "solid-js";
import { grossDue } from "../../../core/views/gross-due.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { fields, readQuantity } from "../../controls/read-quantity.ts";
import { now } from "../../shell/now.ts";
import { known, withDigits } from "../../words/number.ts";
import { dayInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { asMillilitres } from "../as-typed.ts";
import { giveOrTake, grams } from "../jar-text.ts";
import { type RestorePlan, restorePlan } from "../restore-plan.ts";
import { SolventSelect, useSolvent } from "../solvents.tsx";
import { lookAtJar } from "../use-jar.ts";
import { ActForm, type ActProps } from "./act-form.tsx";
import { InstrumentSelect, useInstrument } from "./instruments.tsx";
import { LidChoice, useLid } from "./lid.tsx";

/** A jar weighed against what it should weigh; what has left it is alcohol, and is put back. */
export function RestoreAct(props: ActProps) {
  const book = useBook();
  const t = words.jars.acts.restore;
  const jar = () => lookAtJar(book, props.jarId);
  const [gross, setGross] = createSignal("");
  const [added, setAdded] = createSignal<string>();
  const [told, setTold] = createSignal(false);
  const lid = useLid();
  const scale = useInstrument(book, "scale");
  const solvent = useSolvent(book, () => jar()?.solvents[0]?.material ?? undefined);
  const reading = () => readQuantity(gross(), fields.mass);
  const due = () =>
    book.look(`gross-due:${props.jarId}:${lid.with()}`, (read) => grossDue(read, props.jarId, lid.with()));
  const lostKg = () => {
    const [read, should] = [reading(), due()];
    return read.ok && should !== null ? should.kg - read.value.si : undefined;
  };
  const plan = createMemo(() => {
    const [of, lost, composition] = [jar(), lostKg(), solvent.material()?.composition];
    if (of === null || lost === undefined || composition == null || lost + (of.lost?.kg ?? 0) <= 0)
      return undefined;
    return restorePlan(of, lost, composition);
  });
  const good = () => {
    const found = plan();
    return found?.ok ? found.value : undefined;
  };
  const amount = () => added() ?? (good() === undefined ? "" : asMillilitres(good()?.back.addMl ?? 0).typed);
  const amountRead = () => readQuantity(amount(), fields.massOrVolume);
  const write = () => {
    setTold(true);
    const [read, back, material] = [reading(), amountRead(), solvent.id()];
    if (!read.ok || !back.ok || material === undefined) return;
    batch(() => {
      const weighed = book.write({
        kind: "batch-weighed",
        about: [props.jarId],
        body: { gross: scale.on(read.value), withLid: lid.with() },
      });
      const topped = book.write({
        kind: "batch-topped-up",
        about: [props.jarId, material],
        body: { added: [{ material, amount: back.value }] },
      });
      props.onWrote(t.wrote(back.value.typed), [topped, weighed]);
    });
  };
  return (
    <ActForm heading={t.heading} act={t.act} onAct={write} onLeave={props.onLeave}>
      <Show when={due()} keyed fallback={<p class="wrong">{t.nothingToCompare}</p>}>
        {(should) => (
          <p>
            {should.since === null
              ? t.dueFromGlass(grams(should.kg))
              : t.dueSince(grams(should.kg), dayInWords(should.since, book.zone, now()))}
          </p>
        )}
      </Show>
      <QuantityField
        label={words.jars.acts.weigh.gross}
        typed={gross()}
        reading={reading()}
        onInput={setGross}
        hint={words.jars.acts.weigh.hint}
        told={told()}
      />
      <LidChoice lid={lid} />
      <InstrumentSelect instrument={scale} label={words.jars.acts.onScale} />
      <SolventSelect solvent={solvent} told={told()} />
      <Show when={lostKg() !== undefined && good() === undefined}>
        <p>{t.notLighter(grams(Math.abs(lostKg() ?? 0)))}</p>
      </Show>
      <Show when={good()} keyed>
        {(found) => <Restored plan={found} />}
      </Show>
      <QuantityField
        label={t.added}
        typed={amount()}
        reading={amountRead()}
        onInput={setAdded}
        hint={words.jars.acts.topUp.hint}
        told={told()}
      />
    </ActForm>
  );
}

function Restored(props: { readonly plan: RestorePlan }) {
  const t = words.jars.acts.restore;
  const back = () => props.plan.back;
  const sure = () => known(back().cutLbPerGal, giveOrTake(back().cutStandardUncertainty));
  return (
    <div class="reckoned stack" aria-live="polite">
      <p class="say sum">{t.add(withDigits(back().addMl, 2), withDigits(back().addG, 2))}</p>
      <p>
        {t.lost(
          withDigits(props.plan.lostG, 2),
          withDigits(props.plan.wasLbPerGal, 3),
          withDigits(props.plan.nowLbPerGal, 3),
        )}{" "}
        {t.brings(sure().value, sure().by)}
      </p>
      <p class="soft">
        {t.simple(
          withDigits(back().simpleRatioWouldGive.addMl, 2),
          withDigits(back().simpleRatioWouldGive.cutLbPerGal, 3),
        )}
      </p>
    </div>
  );
}
