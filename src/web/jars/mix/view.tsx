import { batch, Show } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { Choice } from "../../controls/choice.tsx";
import { finishOfRecipe } from "../../look/finish-of-recipe.ts";
import { navigate } from "../../router.ts";
import { finishLook } from "../../shell/finish-look.ts";
import { Page } from "../../shell/page.tsx";
import { words } from "../../words/words.ts";
import { InstrumentSelect } from "../acts/instruments.tsx";
import { VesselFields } from "../acts/vessel.tsx";
import { ResinSelect, SolventSelect } from "../solvents.tsx";
import { MixAmounts } from "./amounts.tsx";
import { worksOutGrams } from "./mix-plan.ts";
import { HowSure, NotMixed } from "./mix-result.tsx";
import { type MixDraft, useMix } from "./use-mix.ts";
import { WhichOunce } from "./which-ounce.tsx";
import "../jars.css";
import "./mix.css";

/** A jar mixed from what is on the shelf: any two amounts give the rest, with how sure the cut is. */
export function NewJarView() {
  const book = useBook();
  const mix = useMix(book);
  const t = words.jars.mix;
  const finish = () => {
    const found = finishOfRecipe(mix.resin.material()?.resin?.grade, mix.mixed()?.cutLbPerGal);
    return found === undefined ? undefined : finishLook(found);
  };
  const what = () => {
    const [resin, solvent] = [mix.resin.material()?.name, mix.solvent.material()?.name];
    return resin === undefined || solvent === undefined ? t.title : t.what(resin, solvent);
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
          <Show when={mix.solvent.material()?.composition} keyed>
            {(liquid) => <Cautions act="mixing" liquid={liquid} />}
          </Show>
          <button type="submit" class="main">
            {mix.mixed() === undefined
              ? t.startPlain
              : t.start(mix.given().flakes?.typed ?? worksOutGrams(mix.mixed()?.resinG ?? 0).typed)}
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
        <ResinSelect resin={mix.resin} told={mix.told()} />
        <SolventSelect solvent={mix.solvent} told={mix.told()} />
      </div>
      <MixAmounts mix={mix} />
      <div aria-live="polite" class="stack">
        <Show
          when={mix.mixed()}
          fallback={
            <Show when={mix.ounce() === undefined}>
              <NotMixed mix={mix} />
            </Show>
          }
        >
          {(mixed) => <HowSure mix={mix} mixed={mixed()} />}
        </Show>
        <Show when={mix.ounce()} keyed>
          {(asked) => <WhichOunce mix={mix} typed={asked.typed} meant={asked.meant} />}
        </Show>
      </div>
      <Show when={mix.given().alcohol === undefined && mix.ounce() === undefined}>
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
