import { createMemo, createSignal, For, Show } from "solid-js";
import { methods } from "../../../core/notebook/kinds/bench.ts";
import { jarSetups } from "../../../core/views/coat-setup.ts";
import { type JarView, jarIds, jarView } from "../../../core/views/jar.ts";
import { type CoatMethod, commonWait } from "../../../core/views/waits.ts";
import { AirForm } from "../../bench/air-form.tsx";
import { jarInWords } from "../../bench/jar-words.ts";
import { useBook } from "../../book-store/use-book.tsx";
import { Choice } from "../../controls/choice.tsx";
import { Empty, JarInDashes } from "../../controls/empty.tsx";
import { cutOnShelf } from "../../jars/jar-text.ts";
import { address } from "../../router.ts";
import { Page } from "../../shell/page.tsx";
import { withPlaces } from "../../words/number.ts";
import { lengthInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import { NotReckoned } from "../not-reckoned.tsx";
import { createAirDraft } from "../shop-air.ts";
import { useOwn, whitensBelow } from "../use-own.ts";
import { useReckoned } from "../use-reckoned.ts";
import { Beside } from "./beside.tsx";
import { type Compared, firstAndLast, freshAirPerM2, mostCompared, turned } from "./state.ts";
import "../drying.css";

const t = words.drying.compare;

/** Jars side by side in today's air: when each is dry, when it may be coated again, whether it turns white. */
export function CompareJars() {
  const book = useBook();
  const draft = createAirDraft(book);
  const [method, setMethod] = createSignal<CoatMethod>("pad");
  const jars = createMemo((): readonly JarView[] =>
    book
      .look("jars", jarIds)
      .flatMap((id) => {
        const jar = book.look(`jar:${id}`, (read) => jarView(read, id));
        return jar === null || jar.emptied !== null || jar.cut === null ? [] : [jar];
      })
      .sort((a, b) => Number(b.stage === "thinned") - Number(a.stage === "thinned")),
  );
  const [picked, setPicked] = createSignal<readonly string[]>();
  const chosen = () => picked() ?? atFirst(jars());
  const coats = createMemo(() => {
    const air = draft.air();
    if (air === null) return [];
    return jars()
      .filter(({ id }) => chosen().includes(id))
      .map((jar) => ({ jar, coat: jarSetups(book.whole(), jar.id, method(), air) }));
  });
  const reckonable = createMemo(() =>
    coats().flatMap(({ jar, coat }) => (coat.setups === null ? [] : [{ jar, coat, setups: coat.setups }])),
  );
  const own = useOwn();
  const drying = useReckoned("drying", () => {
    const setups = reckonable().flatMap(({ setups }) => setups);
    return setups.length === 0 ? undefined : { setups, help: false, threshold: whitensBelow(own()) };
  });
  const waits = useReckoned("waits", () => {
    const common = commonWait(book.whole(), method());
    const questions = reckonable().map(({ jar, coat }) => ({ layer: jar.id, common, coat }));
    const log = own();
    return questions.length === 0 || log === undefined ? undefined : { questions, own: log.wait };
  });
  const compared = createMemo((): readonly Compared[] =>
    reckonable().flatMap(({ jar, setups }, i) => {
      const run = drying.last()?.answer[i];
      const wait = waits.last()?.answer.find(({ layer }) => layer === jar.id);
      const [setup] = setups;
      if (run === undefined || wait === undefined || setup === undefined) return [];
      const says = jarInWords(jar);
      return [{ id: jar.id, code: jar.code, says, run, wait, freshAirM3: freshAirPerM2(setup) }];
    }),
  );
  const whys = () =>
    coats().flatMap(({ jar, coat }) => (coat.why === null ? [] : [{ code: jar.code, why: coat.why }]));
  return (
    <Page title={t.title} note={t.title}>
      <h1>{t.title}</h1>
      <Show
        when={jars().length > 0}
        fallback={
          <Empty heading={t.none} says={t.noneSays} drawing={<JarInDashes />}>
            <a class="press" href="/jars/new">
              {words.jars.start}
            </a>
          </Empty>
        }
      >
        <div class="compare-page">
          <section class="hung stack">
            <Show when={draft.air()} fallback={<p>{t.noAir}</p>}>
              <Sentence jars={compared()} />
              <NotReckoned reckoning={drying} />
              <Show when={chosen().length === 0}>
                <p>{t.choose}</p>
              </Show>
              <Beside jars={compared()} />
              <For each={whys()}>
                {({ code, why }) => (
                  <p>
                    <b>{code}</b>: {words.drying.blush.why[why]}
                  </p>
                )}
              </For>
              <Show when={compared().length > 0}>
                <p class="soft small">
                  {t.rule} {words.drying.estimate}
                </p>
              </Show>
            </Show>
            <Show when={draft.air()}>
              {(air) => (
                <p class="soft">
                  {t.air(
                    withPlaces(air().temperature - 273.15, 1),
                    withPlaces(air().relativeHumidity * 100, 0),
                    withPlaces(air().wood - 273.15, 1),
                  )}
                </p>
              )}
            </Show>
            <AirForm draft={draft} />
          </section>
          <section class="hung stack not-on-paper">
            <Which jars={jars()} chosen={chosen()} onTurn={(id) => setPicked(turned(chosen(), id))} />
            <Choice
              label={words.drying.compare.how}
              options={methods.map((value) => ({ value, label: words.bench.methods[value] }))}
              value={method()}
              onChange={setMethod}
            />
          </section>
        </div>
      </Show>
    </Page>
  );
}

/** The jars of the address, else the first two that are let down to work with. */
function atFirst(jars: readonly JarView[]): readonly string[] {
  const asked = address().query.get("jars")?.split(",") ?? [];
  const there = asked.filter((id) => jars.some((jar) => jar.id === id));
  if (there.length > 0) return there;
  const working = jars.filter((jar) => jar.stage === "thinned");
  return (working.length > 1 ? working : jars).slice(0, 2).map(({ id }) => id);
}

function Sentence(props: { readonly jars: readonly Compared[] }) {
  const ends = () => firstAndLast(props.jars);
  const long = (jar: Compared) =>
    jar.run.touchDryMin === null ? words.drying.coat.never : lengthInWords(jar.run.touchDryMin);
  return (
    <Show when={props.jars.length > 1}>
      <h2 aria-live="polite">
        <Show when={ends()} keyed fallback={t.alike}>
          {([first, last]) => t.firstAndLast(first.code, long(first), last.code, long(last))}
        </Show>
      </h2>
    </Show>
  );
}

const jarShort = (jar: JarView): string =>
  [cutOnShelf(jar), jar.solvents[0]?.name ?? ""].filter((part) => part !== "").join(", ");

/** Which jars stand side by side. */
function Which(props: {
  readonly jars: readonly JarView[];
  readonly chosen: readonly string[];
  readonly onTurn: (id: string) => void;
}) {
  return (
    <fieldset class="choice which-jars">
      <legend>{t.which(mostCompared)}</legend>
      <div class="options">
        <For each={props.jars}>
          {(jar) => (
            <label>
              <input
                type="checkbox"
                checked={props.chosen.includes(jar.id)}
                onChange={() => props.onTurn(jar.id)}
              />
              <span>
                {jar.code}
                <span class="says">{jarShort(jar)}</span>
              </span>
            </label>
          )}
        </For>
      </div>
    </fieldset>
  );
}
