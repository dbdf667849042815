import { createEffect, createSignal, Index, Show } from "solid-js";
import { Wrong } from "../controls/choice.tsx";
import { Select } from "../controls/select.tsx";
import { TextField } from "../controls/text-field.tsx";
import { upToDigits } from "../words/number.ts";
import * as words from "../words/words.ts";
import type { Planning } from "./planning.ts";
import { alike, allAtOnce, type SurfaceDraft, twoFaces, twoSides } from "./surface-draft.ts";
import { SurfaceLine } from "./surface-line.tsx";

const t = words.surfaces;
const most = 12;

interface FieldsProps {
  readonly planning: Planning;
}

/** The sides and parts of a piece that is not worked all at once: one press for the usual ones, closed until it is needed. */
export function SurfaceFields(props: FieldsProps) {
  let section!: HTMLDetailsElement;
  const { draft, put, problem } = props.planning;
  const surfaces = () => draft().surfaces;
  // Opened where something of it is wrong or in use, and never closed under the hand.
  createEffect(() => {
    if (surfaces().length > 0) section.open = true;
  });
  const sumWrong = () => {
    const found = problem();
    return found?.field === "surfaces" ? t.sharesWrong(upToDigits(Number(found.value) * 100, 3)) : undefined;
  };
  const change = (at: number, to: Partial<SurfaceDraft>) =>
    put({ surfaces: surfaces().map((one, i) => (i === at ? { ...one, ...to } : one)) });
  const another = () =>
    put({
      surfaces: [...surfaces(), { name: t.part(surfaces().length + 1), share: "", turned: false }],
    });
  return (
    <details ref={section}>
      <summary>{t.heading}</summary>
      <div class="stack step-fields">
        <p class="soft small">{t.says}</p>
        <Usual planning={props.planning} />
        <Show when={surfaces().length > 0}>
          <ol class="plain step-list">
            <Index each={surfaces()}>
              {(surface, i) => (
                <SurfaceLine
                  number={i + 1}
                  surface={surface()}
                  refused={problem()?.field}
                  onChange={(to) => change(i, to)}
                  onRemove={() => put({ surfaces: surfaces().filter((_, at) => at !== i) })}
                />
              )}
            </Index>
          </ol>
          <Wrong id="surfaces-wrong" says={sumWrong()} />
          <Show when={surfaces().length < most}>
            <button type="button" onClick={another}>
              {t.another}
            </button>
          </Show>
          <ShopFields planning={props.planning} />
        </Show>
      </div>
    </details>
  );
}

/** One press for how pieces are usually divided. */
function Usual(props: FieldsProps) {
  const { draft, put } = props.planning;
  const [count, setCount] = createSignal("");
  const [told, setTold] = createSignal(false);
  const divide = () => {
    setTold(true);
    const parts = alike(count());
    if (parts.length > 0) put({ surfaces: parts });
  };
  return (
    <>
      <div class="side-by-side">
        <button type="button" onClick={() => put({ surfaces: twoSides })}>
          {t.turned}
        </button>
        <button type="button" onClick={() => put({ surfaces: twoFaces })}>
          {t.faces}
        </button>
        <Show when={draft().surfaces.length > 0}>
          <button type="button" onClick={() => put(allAtOnce)}>
            {t.atOnce}
          </button>
        </Show>
      </div>
      <div class="side-by-side">
        <TextField
          label={t.count}
          value={count()}
          inputMode="numeric"
          wrong={told() && alike(count()).length === 0 ? t.countWrong : undefined}
          onInput={setCount}
        />
        <button type="button" onClick={divide}>
          {t.alikeAct}
        </button>
      </div>
    </>
  );
}

/** How long until it is turned, who helps, and where it dries. */
function ShopFields(props: FieldsProps) {
  const { draft, put, refused } = props.planning;
  const wrongIn = (field: string, says: string) => (refused() === field ? says : undefined);
  return (
    <>
      <Show when={draft().surfaces.some(({ turned }) => turned)}>
        <TextField
          label={t.turn}
          value={draft().turn}
          hint={t.turnHint}
          wrong={wrongIn("turnMinutes", t.turnWrong)}
          onInput={(turn) => put({ turn })}
        />
      </Show>
      <Select
        label={t.hands}
        value={draft().hands}
        options={["1", "2", "3", "4", "5", "6"].map((value) => ({ value, label: value }))}
        onChange={(hands) => put({ hands })}
      />
      <p class="soft small">{t.handsHint}</p>
      <TextField
        label={t.places}
        value={draft().places}
        inputMode="numeric"
        hint={t.placesHint}
        wrong={wrongIn("dryingPlaces", t.placesWrong)}
        onInput={(places) => put({ places })}
      />
    </>
  );
}
