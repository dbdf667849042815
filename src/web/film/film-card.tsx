import { createMemo, createSignal, For, Show } from "solid-js";
import { methods } from "../../core/notebook/kinds/bench.ts";
import { whoDid } from "../../core/notebook/who-did.ts";
import { cut as cutOf } from "../../core/units.ts";
import { filmView } from "../../core/views/film.ts";
import { jarView } from "../../core/views/jar.ts";
import type { Place } from "../../core/views/place.ts";
import type { CoatMethod } from "../../core/views/waits.ts";
import { useBook } from "../book-store/use-book.tsx";
import { Caution } from "../controls/caution.tsx";
import { QuantityField } from "../controls/quantity-field.tsx";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import { createRoom } from "../controls/room.ts";
import { Select } from "../controls/select.tsx";
import { coatPath } from "../drying/place-path.ts";
import { finishOfJar } from "../look/jar-finish.ts";
import { finishLook } from "../shell/finish-look.ts";
import { now } from "../shell/now.ts";
import { woodFill } from "../trials/wood-fill.ts";
import { known, upToDigits, withDigits } from "../words/number.ts";
import { happenedInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { FilmSection } from "./section.tsx";
import { type CoatLook, coatsInstead, sectionOf, unknownCoats } from "./state.ts";
import "./film.css";

const t = words.film;
const micro = 1e6;
const plain: CoatLook = { fill: "var(--sheet)", on: "var(--ink)" };

/** The film of one place in section, how far it is from rubbing out, and what it would be in another cut. */
export function FilmCard(props: { readonly place: Place; readonly wood: string | null }) {
  const book = useBook();
  let frame!: HTMLDivElement;
  const room = createRoom(() => frame, 300);
  const film = createMemo(() => filmView(book.whole(), props.place));
  const lookOf = (jar: string | undefined): CoatLook => {
    const seen = jar === undefined ? null : book.look(`jar:${jar}`, (read) => jarView(read, jar));
    const finish = seen === null ? undefined : finishOfJar(seen);
    return finish === undefined ? plain : finishLook(finish);
  };
  const section = createMemo(() => sectionOf(film(), lookOf));
  const said = () => known(film().thickness * micro, 2 * film().standardUncertainty * micro);
  const heading = () => headingOf(film(), said());
  return (
    <div ref={frame} class="film-card stack">
      <Show when={film().coats.length > 0} fallback={<p class="soft">{t.bare}</p>}>
        <h2>{heading()}</h2>
        <Rubbing film={film()} />
        <Show when={reckoned(film()) > 0}>
          <FilmSection
            section={section()}
            wood={woodFill(props.wood ?? "")}
            width={room()}
            says={t.says(
              heading(),
              section().layers.map((layer) =>
                t.coatSays(
                  layer.number,
                  um(layer.toUm - layer.fromUm),
                  layer.offUm > 0 ? um(layer.offUm) : null,
                ),
              ),
              um(section().sunkUm),
            )}
          />
          <p class="soft small">{t.scale}</p>
        </Show>
        <Unsure film={film()} drawn={reckoned(film()) > 0} />
        <CoatLinks place={props.place} film={film()} />
        <Show when={reckoned(film()) > 0}>
          <Instead film={film()} />
        </Show>
      </Show>
    </div>
  );
}

const um = (value: number): string => upToDigits(value, 2);
type Film = ReturnType<typeof filmView>;

/** Coats whose thickness can be reckoned: where there are none, there is nothing to draw or to rub out. */
const reckoned = ({ coats }: Film): number => coats.filter((coat) => coat.laid !== null).length;

/** How thick it is as far as that is known. */
function headingOf(film: Film, said: ReturnType<typeof known>): string {
  const [coats, counted] = [film.coats.length, reckoned(film)];
  if (counted === 0) return t.headingUnknown(coats);
  return counted < coats
    ? t.headingPartly(coats, counted, said.value, said.by)
    : t.heading(coats, said.value, said.by);
}

function Rubbing(props: { readonly film: Film }) {
  const rub = () => props.film.rubbing;
  const drawn = () => reckoned(props.film) > 0;
  return (
    <>
      <Show when={drawn()}>
        <p>
          <b>
            {props.film.unknown.length > 0 && t.withoutUnknown}
            {rub().toGo > 0
              ? t.toGo(um(rub().toGo * micro), um(rub().needed * micro), rub().coatsToGo)
              : t.enough(um(rub().leaves * micro))}
          </b>
        </p>
      </Show>
      <Show when={props.film.cutThrough || (drawn() && rub().risk !== "holds")}>
        <Caution says={props.film.cutThrough ? t.cutThrough : t.risk[rub().risk]}>{t.edges}</Caution>
      </Show>
    </>
  );
}

/** What nobody can know and why, and what the give or take comes from most. */
function Unsure(props: { readonly film: Film; readonly drawn: boolean }) {
  const most = () => props.film.contributions[0]?.source;
  return (
    <>
      <For each={unknownCoats(props.film)}>
        {({ why, coats }) => (
          <p>
            {t.unknown(coats, why)} {props.drawn && t.notDrawn(coats.length)}
          </p>
        )}
      </For>
      <Show when={props.film.tooMuch.length > 0}>
        <p>{t.tooMuch}</p>
      </Show>
      <Show when={most()} keyed>
        {(source) => <p class="soft small">{t.mostly(t.source(source))}</p>}
      </Show>
    </>
  );
}

function CoatLinks(props: { readonly place: Place; readonly film: Film }) {
  const book = useBook();
  const when = (id: string) => {
    const entry = book.look(`entry:${id}`, (read) => read.entry(id));
    if (entry === undefined) return "";
    const who = whoDid(entry);
    return `${happenedInWords(entry, book.zone, now())}${who === null ? "" : words.bench.by(who)}`;
  };
  return (
    <details>
      <summary>{t.coats}</summary>
      <ul class="plain coat-links">
        <For each={props.film.coats}>
          {(coat, i) => (
            <li>
              <a href={coatPath(coat.entry, props.place)}>{t.coatLink(i() + 1, when(coat.entry))}</a>
              <span>{coat.laid === null ? t.notKnown : t.dry(um(coat.laid * micro))}</span>
            </li>
          )}
        </For>
      </ul>
    </details>
  );
}

/** The same film in another cut, by another way. */
function Instead(props: { readonly film: Film }) {
  const book = useBook();
  const [cut, setCut] = createSignal("1 lb");
  const [method, setMethod] = createSignal<CoatMethod>("pad");
  const reading = () => readQuantity(cut(), fields.cut);
  const coats = createMemo(() => {
    const read = reading();
    if (!read.ok) return undefined;
    return coatsInstead(book.whole(), props.film, cutOf(read.value.si), method());
  });
  return (
    <details>
      <summary>{t.instead}</summary>
      <div class="stack">
        <QuantityField label={t.insteadCut} typed={cut()} reading={reading()} onInput={setCut} />
        <Select
          label={t.insteadHow}
          value={method()}
          options={methods.map((value) => ({ value, label: words.bench.methods[value] }))}
          onChange={setMethod}
        />
        <p aria-live="polite">
          <Show when={coats()} fallback={t.insteadNot}>
            {(n) => (
              <>
                <b>
                  {t.insteadSays(
                    reckoned(props.film),
                    withDigits(n(), 2),
                    cut(),
                    words.bench.methodDone[method()],
                  )}
                </b>{" "}
                <span class="soft">{t.insteadUsual}</span>
              </>
            )}
          </Show>
        </p>
      </div>
    </details>
  );
}
