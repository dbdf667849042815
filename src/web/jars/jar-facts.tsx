import { For, type JSX, Show } from "solid-js";
import { daysBetween } from "../../core/jar/fitness.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import { type Dissolving, dissolvingView, eyeDeviation, littleLeft } from "../../core/views/dissolving.ts";
import type { JarView } from "../../core/views/jar.ts";
import { cutBySimpleRatio } from "../../core/views/simple-ratio.ts";
import { thingName } from "../book/naming.ts";
import { useBook } from "../book-store/use-book.tsx";
import { now } from "../shell/now.ts";
import { upToDigits, withDigits } from "../words/number.ts";
import { dayInWords, whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { grams, millilitres } from "./jar-text.ts";
import { filledInOunces, massText, volumeText } from "./shop-units.ts";

const percent = (share: number): string => `${upToDigits(share * 100, 2)} %`;

function Fact(props: { readonly name: string; readonly children: JSX.Element }) {
  return (
    <>
      <dt>{props.name}</dt>
      <dd>{props.children}</dd>
    </>
  );
}

/** How many layers, and the places that had as many from this jar. */
function usedOn(
  jar: JarView,
  nameOf: (id: string | undefined) => string,
): readonly (readonly [number, readonly string[]])[] {
  const counts = new Map<string, number>();
  for (const use of jar.uses)
    for (const target of use.targets) {
      const whole = target.board ?? target.piece;
      const place =
        target.trial !== undefined && target.patch !== undefined
          ? nameOf(`${target.trial}/${target.patch}`)
          : [nameOf(whole), target.part ?? ""].filter((part) => part !== "").join(", ");
      if (place !== "") counts.set(place, (counts.get(place) ?? 0) + 1);
    }
  const byCount = new Map<number, string[]>();
  for (const [place, n] of counts) byCount.set(n, [...(byCount.get(n) ?? []), place]);
  return [...byCount];
}

/** Everything else that is known of a jar, in pairs. */
export function JarFacts(props: { readonly jar: JarView }) {
  const book = useBook();
  const t = words.jars.facts;
  const day = (at: string) => dayInWords(at, book.zone, now());
  const simple = () =>
    book.look(`simple-ratio:${props.jar.id}`, (read) => cutBySimpleRatio(read, props.jar.id));
  const nameOf = (id: string | undefined) => book.look(`name:${id ?? ""}`, (read) => thingName(read, id));
  const ounces = () => book.look(`ounces:${props.jar.id}`, (read) => filledInOunces(read, props.jar));
  const uses = () => usedOn(props.jar, nameOf);
  const liquid = () =>
    (Object.entries(props.jar.composition) as [string, number][])
      .sort((a, b) => b[1] - a[1])
      .map(([component, share]) => words.jars.share(component, withDigits(share * 100, share < 0.1 ? 2 : 3)))
      .join(", ");
  const look = () => props.jar.looks.looks.at(-1);
  const dissolving = () =>
    book.look(`dissolving:${props.jar.id}`, (read) => dissolvingView(read, props.jar.id));
  const sayDissolving = ({ share, seen, done }: Dissolving): string => {
    const left = percent(share);
    if (done === null) return t.dissolvingSays(left, seen);
    const when = (at: string | null) => (at === null ? "" : whenInWords(at, book.zone, now()));
    return t.dissolvedBy(
      left,
      percent(littleLeft),
      when(done.at),
      when(done.from),
      when(done.to),
      percent(eyeDeviation),
    );
  };
  return (
    <dl class="facts">
      <Show when={props.jar.known && props.jar.emptied === null}>
        <Fact name={t.holds}>
          {props.jar.vessel?.capacity == null
            ? volumeText(props.jar.volume.value, ounces())
            : t.holdsOf(volumeText(props.jar.volume.value, ounces()), millilitres(props.jar.vessel.capacity))}
          {`, ${massText(props.jar.mass.value, ounces())}`}
        </Fact>
      </Show>
      <Fact name={t.cameFrom}>
        {props.jar.lineage.length === 0 ? t.flakes : t.cameFromLine(props.jar.lineage.map((jar) => jar.code))}
      </Fact>
      <Fact name={t.asOldAs}>
        {props.jar.resinSince === null
          ? t.ageUnknown
          : t.ageOfStock(t.days(daysBetween(props.jar.resinSince, now())))}
      </Fact>
      <Fact name={t.waxState}>{t.wax[props.jar.wax]}</Fact>
      <Show when={liquid() !== ""}>
        <Fact name={t.composition}>{liquid()}</Fact>
      </Show>
      <Show when={simple()} keyed>
        {(cut) => <Fact name={t.simple}>{t.simpleSays(withDigits(poundsPerUsGallonFromCut(cut), 3))}</Fact>}
      </Show>
      <Show when={look()} keyed>
        {(seen) => (
          <Fact name={t.looked}>
            {words.jars.lookSays(
              words.jars.undissolved[seen.undissolved],
              seen.clarity == null ? "" : words.jars.clarity[seen.clarity],
              whenInWords(seen.at, book.zone, now()),
            )}
          </Fact>
        )}
      </Show>
      <Show when={dissolving()} keyed>
        {(found) => <Fact name={t.dissolving}>{sayDissolving(found)}</Fact>}
      </Show>
      <Show when={props.jar.weighedLast} keyed>
        {(weighed) => (
          <Fact name={t.weighed}>
            {t.weighedSays(grams(weighed.grossKg), weighed.withLid, day(weighed.at))}
          </Fact>
        )}
      </Show>
      <Show when={uses().length > 0}>
        <Fact name={t.usedOn}>
          <For each={uses()}>
            {([n, places], i) => <>{`${i() > 0 ? "; " : ""}${t.usedSays(places.join(" "), n)}`}</>}
          </For>
        </Fact>
      </Show>
    </dl>
  );
}
