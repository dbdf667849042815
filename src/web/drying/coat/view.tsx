import { createMemo, For, Show } from "solid-js";
import type { Body } from "../../../core/notebook/kinds/all.ts";
import { whoDid } from "../../../core/notebook/who-did.ts";
import type { FilmCoat } from "../../../core/views/film.ts";
import { jarView } from "../../../core/views/jar.ts";
import { placeOfTarget } from "../../../core/views/place.ts";
import { jarInWords } from "../../bench/jar-words.ts";
import { thingName } from "../../book/naming.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Empty } from "../../controls/empty.tsx";
import { Quantity } from "../../controls/quantity.tsx";
import { filmPath } from "../../film/board-path.ts";
import { finishOfJar } from "../../look/jar-finish.ts";
import type { ScreenProps } from "../../place.ts";
import { address } from "../../router.ts";
import { finishLook } from "../../shell/finish-look.ts";
import { now } from "../../shell/now.ts";
import { Page } from "../../shell/page.tsx";
import { upToDigits, withDigits, withPlaces } from "../../words/number.ts";
import { happenedInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { NotReckoned } from "../not-reckoned.tsx";
import { coatPath, placeFrom } from "../place-path.ts";
import type { Dried } from "../task.ts";
import { useOwn, whitensBelow } from "../use-own.ts";
import { useReckoned } from "../use-reckoned.ts";
import { WasReady } from "../was-ready.tsx";
import { Curves } from "./curves.tsx";
import { Reckoned } from "./reckoned.tsx";
import { type CoatPage, coatPage, curveOf, resinGM2, slowest } from "./state.ts";
import { Waits } from "./waits.tsx";
import "../drying.css";

const t = words.drying.coat;

/** One coat: how it dried, when the next may go on, and whether it was ready. */
export function CoatScreen(props: ScreenProps) {
  const book = useBook();
  const id = () => props.params.layer ?? "";
  const place = () => {
    const asked = placeFrom(address().query.get("at"));
    const layer = book.look(`making:${id()}`, (read) => read.making(id()) ?? null);
    const [target] = layer?.kind === "layer-applied" ? (layer.body as Body<"layer-applied">).targets : [];
    return asked ?? (target === undefined ? undefined : (placeOfTarget(target) ?? undefined));
  };
  const page = createMemo(() => {
    const at = place();
    return at === undefined ? null : coatPage(book.whole(), id(), at);
  });
  return (
    <Show when={page()} fallback={<NoCoat />}>
      {(coat) => <Coat coat={coat()} />}
    </Show>
  );
}

const NoCoat = () => (
  <Page title={t.notFound}>
    <h1 class="unseen">{t.notFound}</h1>
    <Empty heading={t.notFound} says={t.notFoundSays}>
      <a class="press" href="/bench">
        {words.bench.title}
      </a>
    </Empty>
  </Page>
);

/** What it went on: a patch by its code, a board or a piece by its name. */
function useWhere(coat: () => CoatPage) {
  const book = useBook();
  return () => {
    const { place } = coat();
    const thing =
      "trial" in place ? `${place.trial}/${place.patch}` : "board" in place ? place.board : place.piece;
    const name = book.look(`name:${thing}`, (read) => thingName(read, thing));
    return "piece" in place && place.part !== undefined ? `${name}, ${place.part}` : name;
  };
}

function Coat(props: { readonly coat: CoatPage }) {
  const book = useBook();
  const where = useWhere(() => props.coat);
  const jar = createMemo(() => {
    const [only] = props.coat.film?.jars ?? [];
    if (only === undefined || props.coat.film?.openWhich) return undefined;
    return book.look(`jar:${only}`, (read) => jarView(read, only)) ?? undefined;
  });
  const look = () => {
    const made = jar();
    const finish = made === undefined ? undefined : finishOfJar(made);
    return finish === undefined ? undefined : finishLook(finish);
  };
  const title = () => t.title(props.coat.number, where());
  const own = useOwn();
  const drying = useReckoned("drying", () => {
    const { setups } = props.coat.setups;
    return setups === null ? undefined : { setups, help: false, threshold: whitensBelow(own()) };
  });
  const waits = useReckoned("waits", () => {
    const log = own();
    return log === undefined ? undefined : { questions: [props.coat.question], own: log.wait };
  });
  const run = createMemo(() => slowest(drying.last()?.answer ?? []));
  return (
    <Page title={title()} finish={look()} note={t.place}>
      <h1>{title()}</h1>
      <p>
        {t.when(happenedInWords(props.coat.layer, book.zone, now()), jarText(jar()))}{" "}
        {words.bench.methodDone[props.coat.body.method]}
        {whoDid(props.coat.layer) === null ? "" : words.bench.by(whoDid(props.coat.layer) ?? "")}.{" "}
        <Wet coat={props.coat} />
      </p>
      <div class="coat-page">
        <section class="hung stack">
          <Show when={run()} fallback={<NoRun coat={props.coat} reckoning={drying} />}>
            {(found) => <Drawn coat={props.coat} run={found()} />}
          </Show>
        </section>
        <div>
          <Waits answer={waits.last()?.answer[0]} own={own()?.wait} reckoning={waits} />
          <section class="hung stack not-on-paper">
            <WasReady coat={props.coat} />
          </section>
          <Neighbours coat={props.coat} />
        </div>
      </div>
    </Page>
  );
}

const jarText = (jar: Parameters<typeof jarInWords>[0] | undefined): string =>
  jar === undefined ? t.jarNotKnown : words.drying.blush.jar(jar.code, jarInWords(jar));

function Wet(props: { readonly coat: CoatPage }) {
  return (
    <Show when={props.coat.film?.wet}>
      {(wet) => (
        <span class="soft">
          {t.wet(withDigits(wet() * 1e6, 2), t.wetFrom[props.coat.film?.wetFrom ?? "method's usual"])}
        </span>
      )}
    </Show>
  );
}

function NoRun(props: {
  readonly coat: CoatPage;
  readonly reckoning: ReturnType<typeof useReckoned<"drying">>;
}) {
  return (
    <>
      <h2>{t.heading}</h2>
      <NotReckoned reckoning={props.reckoning}>
        <Show when={props.coat.setups.why} keyed>
          {(why) => (
            <p>
              {words.drying.blush.why[why]} {t.noCurve}
            </p>
          )}
        </Show>
      </NotReckoned>
    </>
  );
}

function Drawn(props: { readonly coat: CoatPage; readonly run: Dried }) {
  const points = createMemo(() => curveOf(props.run));
  const setups = () => props.coat.setups.setups ?? [];
  const first = () => setups()[0];
  return (
    <>
      <h2>
        <Show when={props.run.touchDryMin !== null} fallback={t.neverDry}>
          {t.touchDry}{" "}
          <Quantity
            value={props.run.touchDryMin ?? 0}
            giveOrTake={(props.run.touchDryMin ?? 0) * t.touchDryOff}
            unit="min"
            strong={false}
          />
        </Show>
      </h2>
      <p>
        <BlushSays run={props.run} />{" "}
        <Show when={setups().length > 1}>
          <span class="soft">{t.slowestOf(setups().length)}</span>
        </Show>
      </p>
      <Show when={first()}>
        {(setup) => (
          <Curves
            run={props.run}
            points={points()}
            resin={resinGM2(setup())}
            woodC={(setup().wood?.temperature ?? setup().air.temperature) - 273.15}
          />
        )}
      </Show>
      <Reckoned run={props.run} points={points()} />
    </>
  );
}

function BlushSays(props: { readonly run: Dried }) {
  const margin = () => props.run.blushMarginC;
  return (
    <>
      <Show when={props.run.blush} keyed>
        {(word) => (
          <b>
            {t.blush[word]}
            {margin() === null ? "" : t.blushBy(withPlaces(Math.abs(margin() ?? 0), 1), (margin() ?? 0) >= 0)}
          </b>
        )}
      </Show>{" "}
      <Show when={props.run.waterShareAtSet !== null}>
        {t.water(upToDigits((props.run.waterShareAtSet ?? 0) * 100, 2))}
      </Show>
    </>
  );
}

/** The coats beneath and above, and the film they make, to go on to. */
function Neighbours(props: { readonly coat: CoatPage }) {
  const book = useBook();
  const pathOf = (coat: FilmCoat | null) =>
    coat === null ? undefined : coatPath(coat.entry, props.coat.place);
  const links = () => [
    { to: pathOf(props.coat.before), says: t.beneath },
    { to: pathOf(props.coat.after), says: t.above },
    { to: filmPath(book.whole(), props.coat.place), says: words.film.seeFilm },
  ];
  return (
    <p class="side-by-side not-on-paper">
      <For each={links()}>
        {({ to, says }) => (
          <Show when={to}>
            <a class="press" href={to}>
              {says}
            </a>
          </Show>
        )}
      </For>
    </p>
  );
}
