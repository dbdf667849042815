import { createMemo, For, Show } from "solid-js";
import { JarGroup } from "../drawings/jar.tsx";
import * as words from "../words/words.ts";
import { drawnJar } from "./jar-look.ts";
import { cutOnShelf, readOut, stateOnShelf } from "./jar-text.ts";
import { columnWidth, type PlacedJar, type Pour, type ShelfSet } from "./shelf-plan.ts";

const middleOf = (placed: PlacedJar): number => placed.x + 44 * placed.scale;

/** From under the parent's shelf into the child's neck. */
function pourPath({ from, to }: Pour, shelfY: number): string {
  const [a, b] = [middleOf(from), middleOf(to)];
  const into = to.y + 3;
  if (Math.abs(a - b) < 2) return `M${a} ${shelfY}V${into}`;
  const turn = into - 26;
  return `M${a} ${shelfY}V${turn - 12}Q${a} ${turn} ${(a + b) / 2} ${turn + 2}T${b} ${turn + 12}V${into}`;
}

const shortened = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;

function Words(props: { readonly placed: PlacedJar; readonly shelfY: number; readonly chosen: boolean }) {
  const jars = words.jars;
  const x = () =>
    props.placed.words === "beside" ? props.placed.x + 88 * props.placed.scale + 10 : middleOf(props.placed);
  const cls = () => (props.placed.words === "beside" ? "" : "m");
  const top = () => (props.placed.words === "beside" ? props.shelfY - 49 : props.shelfY + 23);
  const state = () => stateOnShelf(props.placed.jar, props.placed.fitness);
  return (
    <g classList={{ chosen: props.chosen }}>
      <Show when={props.chosen}>
        <rect
          class="plate"
          x={props.placed.words === "beside" ? x() - 7 : x() - 36}
          y={top() - 19}
          width={props.placed.words === "beside" ? 70 : 72}
          height="42"
        />
      </Show>
      <text
        x={x()}
        y={top()}
        class={`b code ${cls()}`}
        font-size={props.placed.words === "beside" ? "20" : "18"}
      >
        {props.placed.jar.code === "" ? jars.noCode : props.placed.jar.code}
      </text>
      <text x={x()} y={top() + 19} class={cls()}>
        {cutOnShelf(props.placed.jar)}
      </text>
      <Show when={props.placed.words === "beside"}>
        <text x={x()} y={top() + 39} class="soft">
          {shortened(state(), 11)}
        </text>
      </Show>
      <Show when={props.placed.words === "below" && props.placed.fitness.state !== "use"}>
        <text x={x()} y={top() + 38} class="m soft">
          {shortened(state(), 10)}
        </text>
      </Show>
    </g>
  );
}

/** Over the drawn jar lies a link that is as large as the glass and its words. */
function placeOf(placed: PlacedJar, shelfY: number) {
  const below = placed.words === "below";
  const width = below ? 88 * placed.scale : 168;
  return {
    left: `${placed.x}px`,
    top: `${placed.y}px`,
    width: `${width}px`,
    height: `${shelfY - placed.y + (below ? 48 : 0)}px`,
  };
}

/** One set of shelves: stages as boards, jars on them, lines for what was poured from which. */
export function Shelves(props: {
  readonly set: ShelfSet;
  readonly chosen: string | undefined;
  /** Stage names at the left; without room for that they stand under the board. */
  readonly namesBeside: boolean;
}) {
  const shelfY = (placed: PlacedJar): number =>
    props.set.shelves.find((shelf) => shelf.stage === placed.jar.stage)?.y ?? 0;
  const drawn = createMemo(() =>
    props.set.columns.flatMap((column) =>
      column.jars.map((placed) => ({ placed, as: drawnJar(placed.jar) })),
    ),
  );
  const fillOf = (placed: PlacedJar) =>
    drawn().find((jar) => jar.placed === placed)?.as.fill ?? "var(--sheet)";
  return (
    <div class="shelves" style={{ width: `${props.set.width}px`, height: `${props.set.height}px` }}>
      <svg
        width={props.set.width}
        height={props.set.height}
        viewBox={`0 0 ${props.set.width} ${props.set.height}`}
        font-size="15.5"
        aria-hidden="true"
      >
        <For each={props.set.shelves}>
          {(shelf) => (
            <g>
              <path class="board" d={`M0 ${shelf.y}H${props.set.width}`} />
              <Show when={props.namesBeside}>
                <text y={shelf.y - 17} class="b" font-size="17">
                  {words.jars.stage[shelf.stage]}
                </text>
              </Show>
            </g>
          )}
        </For>
        <For each={props.set.pours}>
          {(pour) => (
            <g>
              <path class="pour outer" d={pourPath(pour, shelfY(pour.from))} />
              <path class="pour" stroke={fillOf(pour.from)} d={pourPath(pour, shelfY(pour.from) + 1)} />
            </g>
          )}
        </For>
        <For each={props.set.columns}>
          {(column) => (
            <text x={column.x} y="14" class="b" font-size="17">
              {shortened(column.heading, Math.floor(columnWidth / 8.6))}
            </text>
          )}
        </For>
        <For each={drawn()}>
          {({ placed, as }) => (
            <g>
              <g transform={`translate(${placed.x} ${placed.y}) scale(${placed.scale})`}>
                <JarGroup jar={as} />
              </g>
              <Words placed={placed} shelfY={shelfY(placed)} chosen={props.chosen === placed.jar.id} />
            </g>
          )}
        </For>
      </svg>
      <ul class="plain" aria-label={words.jars.shelvesLabel}>
        <For each={drawn()}>
          {({ placed }) => (
            <li>
              <a
                class="over-jar"
                style={placeOf(placed, shelfY(placed))}
                href={`/jars/${placed.jar.id}`}
                aria-current={props.chosen === placed.jar.id ? "true" : undefined}
              >
                <span class="unseen">{readOut(placed.jar, placed.fitness)}</span>
              </a>
            </li>
          )}
        </For>
      </ul>
    </div>
  );
}
