import { For, Show } from "solid-js";
import { withDigits, withPlaces } from "../../words/number.ts";
import { lengthInWords } from "../../words/time.ts";
import * as words from "../../words/words.ts";
import type { Compared } from "./state.ts";

const t = words.drying.compare;
const celsius = (c: number): string => `${withPlaces(c, 1)} °C`;

interface Row {
  readonly name: string;
  readonly of: (jar: Compared) => string;
}

const blush = ({ run }: Compared): string => {
  if (run.blush === null) return "";
  const margin = run.blushMarginC;
  const by =
    margin === null
      ? ""
      : margin >= 0
        ? words.drying.blush.spareShort(celsius(margin))
        : words.drying.blush.shortShort(celsius(-margin));
  return [words.drying.blush.words[run.blush], by].filter((part) => part !== "").join(", ");
};

const rows: readonly Row[] = [
  {
    name: t.touchDry,
    of: ({ run }) => (run.touchDryMin === null ? words.drying.coat.never : lengthInWords(run.touchDryMin)),
  },
  {
    name: t.recoat,
    of: ({ wait }) => `${lengthInWords(wait.seconds / 60)} ${t.by[wait.shown]}`,
  },
  { name: t.blush, of: blush },
  { name: t.coldest, of: ({ run }) => celsius(run.lowestSurfaceC) },
  {
    name: t.freshAir,
    of: ({ freshAirM3 }) => (freshAirM3 === null ? t.unknown : `${withDigits(freshAirM3, 2)} m³`),
  },
];

/** One column a jar, one row a figure. */
export function Beside(props: { readonly jars: readonly Compared[] }) {
  return (
    <Show when={props.jars.length > 0}>
      <section class="beside-one-another" tabindex={0} aria-label={t.title}>
        <table>
          <thead>
            <tr>
              <td />
              <For each={props.jars}>
                {(jar) => (
                  <th scope="col">
                    <a class="press" href={`/jars/${jar.id}`}>
                      {jar.code}
                    </a>
                    <span class="says">{jar.says}</span>
                  </th>
                )}
              </For>
            </tr>
          </thead>
          <tbody>
            <For each={rows}>
              {(row) => (
                <tr>
                  <th scope="row">{row.name}</th>
                  <For each={props.jars}>{(jar) => <td>{row.of(jar)}</td>}</For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
}
