import { createMemo, createSignal, Show } from "solid-js";
import { validWoodTemperature } from "../../core/wood/equilibrium-moisture.ts";
import { grains } from "../../core/wood/movement.ts";
import { AirForm } from "../bench/air-form.tsx";
import { useBook } from "../book-store/use-book.tsx";
import { Choice } from "../controls/choice.tsx";
import { DoesNotFit } from "../controls/does-not-fit.tsx";
import { Quantity } from "../controls/quantity.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { Select } from "../controls/select.tsx";
import { createAirDraft } from "../drying/shop-air.ts";
import { Page } from "../shell/page.tsx";
import { withDigits, withPlaces } from "../words/number.ts";
import * as words from "../words/words.ts";
import { PanelPicture } from "./panel.tsx";
import {
  airOf,
  firstDraft,
  type Moisture,
  type PanelDraft,
  panelMoves,
  seasonReadings,
  settlesAt,
  speciesOptions,
  widthReading,
} from "./state.ts";
import "./wood.css";

/** Where wood settles in the shop's air now, and how a panel moves between two seasons. */
export function WoodView() {
  return (
    <Page title={words.wood.title} note={words.wood.title}>
      <h1>{words.wood.title}</h1>
      <div class="wood-page">
        <Now />
        <Seasons />
      </div>
    </Page>
  );
}

const Outside = () => (
  <DoesNotFit
    heading={words.wood.outside(
      withPlaces(validWoodTemperature.min, 0),
      withPlaces(validWoodTemperature.max, 0),
    )}
  />
);

function Now() {
  const draft = createAirDraft(useBook());
  const settled = createMemo(() => {
    const air = draft.air();
    return air === null ? undefined : { air, found: settlesAt(airOf(air)) };
  });
  return (
    <section class="hung stack">
      <Show when={settled()} fallback={<p>{words.wood.noAir}</p>}>
        {(now) => (
          <Show when={now().found} keyed>
            {(found) =>
              found.ok ? (
                <>
                  <h2 aria-live="polite">{words.wood.settles(withDigits(found.value.moisturePercent, 2))}</h2>
                  <p class="soft">
                    {words.wood.settlesSays(
                      `${withPlaces(now().air.temperature - 273.15, 1)} °C`,
                      `${withDigits(now().air.relativeHumidity * 100, 2)} %`,
                    )}{" "}
                    {found.value.flags.length > 0 ? words.wood.nearWet : ""}
                  </p>
                </>
              ) : (
                <Outside />
              )
            }
          </Show>
        )}
      </Show>
      <AirForm draft={draft} />
    </section>
  );
}

function Seasons() {
  const [draft, setDraft] = createSignal<PanelDraft>(firstDraft);
  const set = (change: Partial<PanelDraft>) => setDraft((was) => ({ ...was, ...change }));
  const moves = createMemo(() => panelMoves(draft()));
  return (
    <section class="hung stack">
      <h2>{words.wood.panel}</h2>
      <Show when={moves()} keyed fallback={<p class="soft">{words.wood.notYet}</p>}>
        {(found) => (found.ok ? <Movement found={found.value} draft={draft()} /> : <Outside />)}
      </Show>
      <div class="wood-fields">
        <Select
          label={words.wood.species}
          options={speciesOptions}
          value={draft().species}
          onChange={(species) => set({ species })}
        />
        <QuantityField
          label={words.wood.width}
          typed={draft().width}
          reading={widthReading(draft().width)}
          onInput={(width) => set({ width })}
          hint={words.wood.widthHint}
        />
      </div>
      <Choice
        label={words.wood.grain}
        options={[...grains].reverse().map((value) => ({
          value,
          label: words.wood.grains[value],
          says: words.wood.grainSays[value],
        }))}
        value={draft().grain}
        onChange={(grain) => set({ grain })}
      />
      <div class="wood-fields">
        <Season name="dry" draft={draft()} onChange={set} />
        <Season name="damp" draft={draft()} onChange={set} />
      </div>
      <p class="soft small">{words.wood.usual}</p>
    </section>
  );
}

function Season(props: {
  readonly name: "dry" | "damp";
  readonly draft: PanelDraft;
  readonly onChange: (change: Partial<PanelDraft>) => void;
}) {
  const typed = () => props.draft[props.name];
  const read = () => seasonReadings(typed());
  const set = (change: Partial<PanelDraft["dry"]>) =>
    props.onChange({ [props.name]: { ...typed(), ...change } });
  return (
    <fieldset class="season stack">
      <legend>{words.wood[props.name]}</legend>
      <QuantityField
        label={words.wood.temperature}
        typed={typed().temperature}
        reading={read().temperature}
        onInput={(temperature) => set({ temperature })}
      />
      <QuantityField
        label={words.wood.humidity}
        typed={typed().humidity}
        reading={read().humidity}
        onInput={(humidity) => set({ humidity })}
      />
    </fieldset>
  );
}

/** The sentence, the picture, and by which of the two equations. */
function Movement(props: { readonly found: Moisture; readonly draft: PanelDraft }) {
  const panel = () => props.found.panel;
  const percent = (value: number | null) => withDigits(value ?? 0, 2);
  return (
    <Show when={panel()}>
      {(moved) => (
        <>
          <p class="lead" aria-live="polite">
            <Show when={moved().changeMm !== 0} fallback={words.wood.still}>
              {words.wood.moves(moved().changeMm > 0)}{" "}
              <Quantity
                value={Math.abs(moved().changeMm)}
                giveOrTake={2 * moved().giveOrTakeMm}
                unit="mm"
                strong={false}
              />
            </Show>
            .
          </p>
          <PanelPicture
            widthMm={moved().widthMm - moved().changeMm}
            changeMm={moved().changeMm}
            species={props.draft.species}
            grain={props.draft.grain}
          />
          <p class="soft small">
            {words.wood.from(percent(props.found.moisturePercent), percent(props.found.otherMoisturePercent))}{" "}
            {moved().method === "coefficient" ? words.wood.byCoefficient : words.wood.byShrinkage}{" "}
            {words.wood.giveOrTake} {props.found.flags.length > 0 ? words.wood.nearWet : ""}
          </p>
        </>
      )}
    </Show>
  );
}
