import { createMemo, For, Show } from "solid-js";
import type { Blush } from "../../core/evaporation/blush.ts";
import type { DewMargin } from "../../core/views/air.ts";
import type { ShopAir } from "../../core/views/coat-setup.ts";
import { useBook } from "../book-store/use-book.tsx";
import { NotReckoned } from "../drying/not-reckoned.tsx";
import { useReckoned } from "../drying/use-reckoned.ts";
import { now } from "../shell/now.ts";
import { known, withPlaces } from "../words/number.ts";
import { clock } from "../words/time.ts";
import * as words from "../words/words.ts";
import "../drying/drying.css";
import { BlushScale } from "./blush-scale.tsx";
import { adviceOf, dayPart, type Help, inDanger, isColdBoard } from "./blush-state.ts";
import { jarInWords } from "./jar-words.ts";
import type { Bench } from "./use-bench.ts";
import type { Margins } from "./use-margins.ts";

const degrees = (k: number): string => `${withPlaces(Math.abs(k), 1)} °C`;
const t = words.drying.blush;

export const heading = ({ margin }: Blush): string =>
  margin === null ? t.dry : margin >= 0 ? t.spare(degrees(margin)) : t.short(degrees(margin));

/** How near the coat in question comes to turning white in this air, said plainly, and what would help. */
export function BlushCard(props: {
  readonly bench: Bench;
  readonly margins: Margins;
  readonly air: ShopAir;
  readonly dew: DewMargin | null;
}) {
  const blush = () => props.margins.shown()?.blush ?? null;
  const jar = () => {
    const shown = props.margins.jarShown();
    return shown === undefined ? "" : t.jar(shown.code, jarInWords(shown));
  };
  return (
    <>
      <Show
        when={blush()}
        fallback={
          <>
            <h2>{words.bench.air}</h2>
            <NotReckoned reckoning={props.margins.reckoning}>
              <p class="soft">
                <Show when={props.bench.drawn()}>
                  {props.margins.all().length === 0
                    ? t.noJars
                    : t.why[props.margins.why() ?? "jar-not-known"]}
                </Show>
              </p>
            </NotReckoned>
          </>
        }
      >
        {(found) => (
          <>
            <h2 class="margin" aria-live="polite">
              {heading(found())}
            </h2>
            <Show when={props.dew}>
              {(dew) => (
                <BlushScale
                  dew={dew().dewPoint - 273.15}
                  film={dew().dewPoint - 273.15 + (found().dewMargin ?? 0)}
                  giveOrTake={dew().giveOrTake}
                  wood={props.air.wood - 273.15}
                />
              )}
            </Show>
            <Show
              when={found().word !== "unlikely"}
              fallback={
                <p>
                  <b>{t.clear(jar(), words.bench.methodDone[props.bench.methodNow()])}</b>
                </p>
              }
            >
              <Danger {...props} blush={found()} jar={jar()} />
            </Show>
            <Show when={!props.margins.ofTheCoat() && props.margins.ordered().length > 1}>
              <p class="soft small">
                {t.worstOf(props.margins.ordered().length, props.margins.shown()?.code ?? "")}
              </p>
            </Show>
            <Show when={props.dew}>
              {(dew) => (
                <p class="soft small less">
                  {t.rule(`${known(found().margin ?? 0, dew().giveOrTake).by} °C`)}
                </p>
              )}
            </Show>
          </>
        )}
      </Show>
      <All margins={props.margins} />
    </>
  );
}

/** What to do about it: the first thing in the sentence, all that would help below, each with what comes of it. */
function Danger(props: {
  readonly bench: Bench;
  readonly margins: Margins;
  readonly air: ShopAir;
  readonly blush: Blush;
  readonly jar: string;
}) {
  const book = useBook();
  const input = createMemo(() => {
    const setup = props.margins.setupShown();
    return setup === undefined
      ? undefined
      : { setups: [{ ...setup, seconds: 3600 }], help: true, threshold: props.margins.threshold() };
  });
  const reckoning = useReckoned("drying", input);
  const helps = (): readonly Help[] | undefined => {
    const first = reckoning.last()?.answer[0];
    return first === undefined ? undefined : (first.wouldHelp ?? []);
  };
  const says = () => {
    const advice = adviceOf(helps() ?? []);
    const cold = isColdBoard(props.air);
    const word = props.blush.word === "likely" ? "likely" : "possible";
    const when = dayPart(clock(now(), book.zone));
    return t.advice(word, cold, when, adviceText(advice, cold));
  };
  return (
    <>
      <p aria-live="polite">
        <Show when={helps()} fallback={words.drying.working}>
          <b>{says()}</b>
        </Show>{" "}
        <span class="soft small less">{props.jar}</span>
      </p>
      <NotReckoned reckoning={reckoning} />
      <Show when={helps()}>
        {(list) => (
          <details>
            <summary>{t.helps}</summary>
            <Show when={list().length > 0} fallback={<p>{t.noHelp}</p>}>
              <ul class="plain helps">
                <For each={list()}>{(help) => <HelpLine help={help} now={props.blush} />}</For>
              </ul>
            </Show>
          </details>
        )}
      </Show>
    </>
  );
}

function adviceText({ what, to }: ReturnType<typeof adviceOf>, cold: boolean): string {
  if (what === "warm") return cold ? t.what.warm(to ?? 0) : t.what.warmWood(to ?? 0);
  return what === "dry" ? t.what.dry(to ?? 0) : t.what[what];
}

function HelpLine(props: { readonly help: Help; readonly now: Blush }) {
  const better = () => (props.help.blushMarginC ?? 0) - (props.now.margin ?? 0);
  const alone = () => (better() < 0.1 ? t.helpNone : t.helpNot(degrees(better())));
  return (
    <li>
      <b>{t.help[props.help.change](props.help)}</b>
      <span>{props.help.blush === "unlikely" ? t.helpEnough : alone()}</span>
    </li>
  );
}

/** Every jar in this air, the worst first. */
function All(props: { readonly margins: Margins }) {
  const says = (blush: Blush | null): string => {
    if (blush === null) return t.why["jar-not-known"];
    const { margin } = blush;
    if (margin === null) return t.words[blush.word];
    return `${t.words[blush.word]}, ${margin >= 0 ? t.spareShort(degrees(margin)) : t.shortShort(degrees(margin))}`;
  };
  return (
    <Show when={props.margins.ordered().length > 0}>
      <details class="jars-in-air">
        <summary>{t.all(props.margins.ordered().length, inDanger(props.margins.ordered()))}</summary>
        <ul class="plain helps">
          <For each={props.margins.ordered()}>
            {(jar) => (
              <li>
                <b>{jar.code}</b>
                <span>{says(jar.blush)}</span>
              </li>
            )}
          </For>
        </ul>
      </details>
    </Show>
  );
}
