import { Show } from "solid-js";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Caliper } from "../controls/caliper.tsx";
import { now } from "../shell/now.ts";
import { dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { isSomething } from "./jar-look.ts";
import { cutKnown, giveOrTake, grams, millilitres, poundsText } from "./jar-text.ts";
import { ThreeCuts } from "./three-cuts.tsx";

/** A scale that holds the value, its jaws and the label, with air on both sides. */
function scaleAbout(value: number, by: number, label: number | undefined): readonly [number, number] {
  const low = Math.min(value - by, label ?? value);
  const high = Math.max(value + by, label ?? value);
  const air = Math.max((high - low) * 0.45, value * 0.04);
  return [Math.max(0, low - air), high + air];
}

/** The true cut now, how sure it is and what it rests on; and what has left the jar by itself. */
export function JarCut(props: { readonly jar: JarView }) {
  const book = useBook();
  const day = (at: string) => dayInWords(at, book.zone, now());
  const t = words.jars;
  return (
    <Show
      when={isSomething(props.jar) && props.jar.cut}
      keyed
      fallback={<p>{props.jar.known ? t.nothingLeft : t.cutUnknown}</p>}
    >
      {(cut) => {
        const value = poundsPerUsGallonFromCut(cut.value);
        const by = giveOrTake((value * cut.standardUncertainty) / cut.value);
        const label = () =>
          props.jar.labelCut === null ? undefined : poundsPerUsGallonFromCut(props.jar.labelCut);
        const [from, to] = scaleAbout(value, by, label());
        const largest = cut.contributions[0];
        return (
          <section class="hung stack-small">
            <h2>{t.trueCut(cutKnown(cut).value)}</h2>
            <Caliper
              value={value}
              giveOrTake={by}
              unit="lb"
              from={from}
              to={to}
              label={t.trueCutLabel}
              mark={
                props.jar.labelCut === null
                  ? undefined
                  : { at: label() ?? value, says: t.label(poundsText(props.jar.labelCut)) }
              }
            />
            <p class="small">
              {props.jar.driedDown === null
                ? t.shownReckoned
                : t.shownDriedDown[props.jar.driedDown.stands](day(props.jar.driedDown.at))}{" "}
              <Show when={largest} keyed>
                {(part) => <span class="soft">{t.mostOfIt(t.source[part.source] ?? part.source)}</span>}
              </Show>
            </p>
            <Show when={props.jar.driedDown} keyed>
              {(driedDown) => (
                <>
                  <ThreeCuts driedDown={driedDown} />
                  <Show when={driedDown.disagrees}>
                    <p class="wrong small">{t.disagrees}</p>
                  </Show>
                </>
              )}
            </Show>
            <Show when={props.jar.lost} keyed>
              {(lost) => (
                <p class="small">
                  {t.lost(grams(lost.kg), day(lost.since))} <b>{t.addBack(millilitres(lost.volume))}</b>
                </p>
              )}
            </Show>
          </section>
        );
      }}
    </Show>
  );
}
