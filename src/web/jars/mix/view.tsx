import { batch, For, Show } from "solid-js";
import { useBook } from "../../book-store/use-book.tsx";
import { Cautions } from "../../controls/cautions.tsx";
import { Choice } from "../../controls/choice.tsx";
import { QuantityField } from "../../controls/quantity-field.tsx";
import { finishOfRecipe } from "../../pieces/finish-of-recipe.ts";
import { navigate } from "../../router.ts";
import { finishLook } from "../../shell/finish-look.ts";
import { Page } from "../../shell/page.tsx";
import { words } from "../../words/words.ts";
import { InstrumentSelect } from "../acts/instruments.tsx";
import { VesselFields } from "../acts/vessel.tsx";
import "../jars.css";
import { ResinSelect, SolventSelect } from "../solvents.tsx";
import { worksOutGrams } from "./mix-plan.ts";
import { HowSure, MixPicture, WorkedOut } from "./mix-result.tsx";
import { type MixDraft, mixFields, useMix } from "./use-mix.ts";

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
    <Page title={t.title} finish={finish()}>
      <h1>{what()}</h1>
      <form
        class="mix-desk"
        onSubmit={(event) => {
          event.preventDefault();
          start();
        }}
      >
        <MixForm mix={mix} />
        <section class="hung stack">
          <div aria-live="polite" class="stack">
            <Show
              when={mix.mixed()}
              fallback={
                <p class={mix.refused() === undefined ? "soft" : "wrong"}>
                  {mix.refused()?.code === "contradiction"
                    ? t.oneTooMany(mix.refused()?.message ?? "")
                    : (mix.refused()?.message ?? t.notYet)}
                </p>
              }
            >
              {(mixed) => (
                <>
                  <div class="mix-drawn">
                    <WorkedOut mix={mix} mixed={mixed()} />
                    <MixPicture mix={mix} mixed={mixed()} />
                  </div>
                  <HowSure mix={mix} mixed={mixed()} />
                </>
              )}
            </Show>
          </div>
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

const hints = (field: (typeof mixFields)[number]) =>
  ({
    flakes: words.jars.mix.flakesHint,
    cut: words.jars.mix.cutHint,
    alcohol: words.jars.mix.alcoholHint,
    makes: words.jars.mix.makesHint,
  })[field];

function MixForm(props: { readonly mix: MixDraft }) {
  const { mix } = props;
  const t = words.jars.mix;
  return (
    <section class="hung stack">
      <ResinSelect resin={mix.resin} told={mix.told()} />
      <SolventSelect solvent={mix.solvent} told={mix.told()} />
      <p>{t.two}</p>
      <div class="mix-amounts">
        <For each={mixFields}>
          {(field) => (
            <QuantityField
              label={t[field]}
              typed={mix.typed()[field]}
              reading={mix.readings()[field]}
              hint={hints(field)}
              told={mix.told() && mix.typed()[field].trim() !== ""}
              onInput={(text) => mix.put(field, text)}
            />
          )}
        </For>
      </div>
      <Show when={mix.given().alcohol === undefined}>
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
      <InstrumentSelect instrument={mix.scale} label={words.jars.acts.onScale} />
      <InstrumentSelect instrument={mix.jug} label={t.onWhichJug} />
      <VesselFields vessel={mix.vessel} />
    </section>
  );
}
