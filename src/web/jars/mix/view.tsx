import { batch, Show } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { Choice } from "../../controls/choice.tsx";
import { finishOfBags } from "../../look/finish-of-recipe.ts";
import { navigate } from "../../router.ts";
import { finishLook } from "../../shell/finish-look.ts";
import { Page } from "../../shell/page.tsx";
import * as words from "../../words/words.ts";
import { InstrumentSelect } from "../acts/instruments.tsx";
import { VesselFields } from "../acts/vessel.tsx";
import { asGrams } from "../as-typed.ts";
import { MixAmounts } from "./amounts.tsx";
import { HowSure, NotMixed, Pours } from "./mix-result.tsx";
import { SeveralFields } from "./several.tsx";
import { TwoMeanings } from "./two-meanings.tsx";
import { type MixDraft, useMix } from "./use-mix.ts";
import "../jars.css";
import "./mix.css";

/** A jar mixed from what is on the shelf: any two amounts give the rest, with how sure the cut is. */
export function NewJarView() {
  const book = useBook();
  const mix = useMix(book);
  const t = words.jars.mix;
  const finish = () => {
    const found = finishOfBags(mix.bags(), mix.mixed()?.cutLbPerGal);
    return found === undefined ? undefined : finishLook(found);
  };
  const what = () => {
    const [resins, solvents] = [mix.resins.names(), mix.solvents.names()];
    return resins.length === 0 || solvents.length === 0 ? t.title : t.what(t.and(resins), t.and(solvents));
  };
  const start = () => {
    const jar = batch(() => mix.write());
    if (jar !== undefined) navigate(`/jars/${jar}`);
  };
  return (
    <Page title={t.title} finish={finish()} note={t.note(mix.vessel.code())}>
      <h1>{what()}</h1>
      <form
        class="mix-desk"
        onSubmit={(event) => {
          event.preventDefault();
          start();
        }}
      >
        <WhatAndHowMuch mix={mix} />
        <section class="hung stack">
          <h2>{t.glass}</h2>
          <VesselFields vessel={mix.vessel} />
          <InstrumentSelect instrument={mix.scale} label={words.jars.acts.onScale} />
          <InstrumentSelect instrument={mix.jug} label={t.onWhichJug} />
          <Show when={mix.ingredients()?.alcohol.composition} keyed>
            {(liquid) => <Cautions act="mixing" liquid={liquid} />}
          </Show>
          <button type="submit" class="main">
            {mix.mixed() === undefined
              ? t.startPlain
              : t.start(mix.given().flakes?.typed ?? asGrams(mix.mixed()?.resinG ?? 0).typed)}
          </button>
        </section>
      </form>
    </Page>
  );
}

function WhatAndHowMuch(props: { readonly mix: MixDraft }) {
  const { mix } = props;
  const t = words.jars.mix;
  return (
    <section class="hung stack">
      <div class="side-by-side shelf-choice">
        <SeveralFields of={mix.resins} told={mix.told()} />
        <SeveralFields of={mix.solvents} told={mix.told()} />
      </div>
      <MixAmounts mix={mix} />
      <div aria-live="polite" class="stack">
        <Show
          when={mix.mixed()}
          fallback={
            <Show when={mix.trap() === undefined}>
              <NotMixed mix={mix} />
            </Show>
          }
        >
          {(mixed) => (
            <>
              <Pours mix={mix} mixed={mixed()} />
              <HowSure mix={mix} mixed={mixed()} />
            </>
          )}
        </Show>
        <Show when={mix.trap()} keyed>
          {(trap) => <TwoMeanings mix={mix} trap={trap} />}
        </Show>
      </div>
      <Show when={mix.given().alcohol === undefined && mix.trap() === undefined}>
        <Choice
          inline
          label={t.by}
          value={mix.by()}
          options={[
            { value: "jug", label: t.byJug },
            { value: "scale", label: t.byScale },
          ]}
          onChange={mix.setBy}
        />
      </Show>
    </section>
  );
}
