import { createMemo, For, Show } from "solid-js";
import type { JarView } from "../../core/views/jar.ts";
import { useBook } from "../book-store/use-book.tsx";
import { JarGroup } from "../drawings/jar.tsx";
import * as words from "../words/words.ts";
import { drawnJar } from "./jar-look.ts";
import { cutOnShelf, readOut } from "./jar-text.ts";
import { type Kin, kinSize, lineagePlan, linkOver } from "./lineage-plan.ts";
import { lookAtFitness, lookAtJar } from "./use-jar.ts";

const width = 338;
const scale = kinSize.glass / 122;

const pour = (from: Kin, to: Kin): string => {
  const start = from.y + kinSize.glass + kinSize.words;
  const turn = to.y - kinSize.air / 2;
  const softly = Math.abs(from.x - to.x) < 1 ? "" : `V${turn}H${to.x}`;
  return `M${from.x} ${start}${softly}V${to.y}`;
};

/** Where a jar came from and what came from it, each a jar that leads to its own page. */
export function Lineage(props: { readonly jar: JarView }) {
  const book = useBook();
  const t = words.jars.lineage;
  const plan = createMemo(() => lineagePlan(props.jar, (id) => lookAtJar(book, id), width));
  const left = (kin: Kin) => kin.x - kinSize.width / 2;
  return (
    <Show when={plan().kin.length > 1}>
      <section class="hung stack-small">
        <h2>{t.heading}</h2>
        <div class="lineage" style={{ width: `${plan().width}px`, height: `${plan().height}px` }}>
          <svg
            width={width}
            height={plan().height}
            viewBox={`0 0 ${width} ${plan().height}`}
            font-size="15"
            aria-hidden="true"
          >
            <For each={plan().pours}>{({ from, to }) => <path class="kin-pour" d={pour(from, to)} />}</For>
            <For each={plan().kin}>
              {(kin) => (
                <g>
                  <Show when={kin.jar.id === props.jar.id}>
                    <rect
                      class="plate"
                      x={left(kin)}
                      y={kin.y + kinSize.glass + 4}
                      width={kinSize.width}
                      height="38"
                    />
                  </Show>
                  <g transform={`translate(${kin.x - 44 * scale} ${kin.y}) scale(${scale})`}>
                    <JarGroup jar={drawnJar(kin.jar)} />
                  </g>
                  <g classList={{ chosen: kin.jar.id === props.jar.id }}>
                    <text x={kin.x} y={kin.y + kinSize.glass + 19} class="m b">
                      {kin.jar.code === "" ? words.jars.noCode : kin.jar.code}
                    </text>
                    <text x={kin.x} y={kin.y + kinSize.glass + 36} class="m">
                      {kin.jar.emptied === null ? cutOnShelf(kin.jar) : words.jars.emptied}
                    </text>
                  </g>
                </g>
              )}
            </For>
          </svg>
          <ul class="plain" aria-label={t.heading}>
            <For each={plan().kin}>
              {(kin) => (
                <li>
                  <a
                    class="over-jar"
                    href={`/jars/${kin.jar.id}`}
                    aria-current={kin.jar.id === props.jar.id ? "true" : undefined}
                    style={linkOver(kin)}
                  >
                    <span class="unseen">
                      {t.made[kin.jar.made]} {readOut(kin.jar, lookAtFitness(book, kin.jar.id))}
                    </span>
                  </a>
                </li>
              )}
            </For>
          </ul>
        </div>
      </section>
    </Show>
  );
}
