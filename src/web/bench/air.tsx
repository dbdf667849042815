import { createMemo, Show } from "solid-js";
import { type AirView, dewWhereKnown } from "../../core/views/air.ts";
import type { ShopAir } from "../../core/views/coat-setup.ts";
import { useBook } from "../book-store/use-book.tsx";
import { createAirDraft } from "../drying/shop-air.ts";
import { now } from "../shell/now.ts";
import { withDigits } from "../words/number.ts";
import { whenInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { AirForm } from "./air-form.tsx";
import { BlushCard } from "./blush-card.tsx";
import type { Bench } from "./use-bench.ts";
import { useMargins } from "./use-margins.ts";

const celsius = (kelvin: number): string => `${withDigits(kelvin - 273.15, 3)} °C`;

/** The shop's air, and how near a coat comes to turning white in it. An old reading is told, and not reckoned with. */
export function Air(props: { readonly bench: Bench }) {
  const book = useBook();
  const draft = createAirDraft(book);
  const margins = useMargins(props.bench, draft.air);
  const dewIn = ({ temperature, relativeHumidity, wood }: ShopAir) =>
    book.look(`dew:${temperature}:${relativeHumidity}:${wood}`, (read) =>
      dewWhereKnown(read, temperature, relativeHumidity, wood),
    );
  const dew = createMemo(() => {
    const air = draft.air();
    return air === null ? null : dewIn(air);
  });
  return (
    <section class="hung air">
      <Show when={draft.air()} fallback={<NotRead last={draft.logged()} />}>
        {(air) => <BlushCard bench={props.bench} margins={margins} air={air()} dew={dew()} />}
      </Show>
      <Show
        when={draft.typed() === undefined ? draft.fresh() : null}
        fallback={<AsTyped air={draft.asTyped()} />}
      >
        {(read) => (
          <p class="soft small">
            {words.bench.airSays(
              celsius(read().temperature),
              `${withDigits(read().relativeHumidity * 100, 2)} %`,
              whenInWords(read().at, book.zone, now()),
            )}{" "}
            {read().woodRead ? "" : words.bench.woodAsAir} {read().dew === null ? words.bench.airOutside : ""}
          </p>
        )}
      </Show>
      <AirForm draft={draft} />
      <p class="side-by-side not-on-paper">
        <a class="press" href="/jars/air">
          {words.drying.blush.compare}
        </a>
        <a class="press" href="/bench/wood">
          {words.drying.blush.wood}
        </a>
      </p>
    </section>
  );
}

const AsTyped = (props: { readonly air: ShopAir | null }) => (
  <Show when={props.air}>
    <p class="soft small">{words.drying.blush.asTyped}</p>
  </Show>
);

function NotRead(props: { readonly last: AirView | null }) {
  const book = useBook();
  return (
    <>
      <h2>{words.bench.air}</h2>
      <p class="soft">
        {words.bench.airNoneSays}{" "}
        {props.last === null ? "" : words.bench.airOld(whenInWords(props.last.at, book.zone, now()))}
      </p>
    </>
  );
}
