import { Show } from "solid-js";
import { Choice } from "../../controls/choice.tsx";
import { known, withDigits } from "../../words/number.ts";
import * as words from "../../words/words.ts";
import { asGrams } from "../as-typed.ts";
import type { Way } from "../correct-plan.ts";
import { giveOrTake } from "../jar-text.ts";

export type NamedWay = Way & { readonly id: string };

const t = words.jars.acts.correct;
const whole = (ml: number): string => (ml < 20 ? withDigits(ml, 2) : String(Math.round(ml)));
const grams = (g: number): string => asGrams(g).typed;

const howMuch = (way: Way): string =>
  way.addMl === null ? grams(way.addG) : t.byJug(whole(way.addMl), grams(way.addG));

function shortly(way: Way): string {
  const parts = [t.makes(whole(way.result.solutionMl))];
  if (way.suffices === false) parts.push(t.missing(grams(way.missingG)));
  if (way.fits === false) parts.push(t.tooFull);
  return parts.join(" ");
}

/** What is at hand that helps, and of the one that is chosen how sure it is and what the simple ratio would have done. */
export function WaysToCorrect(props: {
  readonly ways: readonly NamedWay[];
  readonly chosen: string | undefined;
  readonly onChoose: (id: string) => void;
}) {
  const way = () => props.ways.find((one) => one.id === props.chosen);
  return (
    <>
      <Choice
        label={t.with}
        value={props.chosen}
        options={props.ways.slice(0, 8).map((one) => ({
          value: one.id,
          label: t.way(howMuch(one), one.name),
          says: shortly(one),
        }))}
        onChange={props.onChoose}
      />
      <Show when={way()} keyed>
        {(one) => <Chosen way={one} />}
      </Show>
    </>
  );
}

function Chosen(props: { readonly way: NamedWay }) {
  const sure = () => known(props.way.result.cutLbPerGal, giveOrTake(props.way.cutStandardUncertainty));
  const simple = () => props.way.simpleRatioWouldGive;
  return (
    <div class="reckoned stack" aria-live="polite">
      <p class="say sum">{t.sum(howMuch(props.way), props.way.name)}</p>
      <p>
        {words.jars.acts.thin.makes(whole(props.way.result.solutionMl), sure().value, sure().by)}{" "}
        <Show when={props.way.contributions[0]?.source} keyed>
          {(source) => <span class="soft">{words.jars.mostOfIt(words.jars.source[source] ?? source)}</span>}
        </Show>
      </p>
      <p class="soft">
        {t.simple(
          simple().addMl === null ? grams(simple().addG) : `${whole(simple().addMl ?? 0)} mL`,
          withDigits(simple().cutLbPerGal, 3),
        )}
      </p>
      <Show when={props.way.pourOffFirst} keyed>
        {(first) => <p class="wrong">{t.pourOffFirst(whole(first.ml), grams(first.thenAddG))}</p>}
      </Show>
      <Show when={props.way.suffices === false}>
        <p class="wrong">{t.notEnough(grams(props.way.missingG))}</p>
      </Show>
    </div>
  );
}
