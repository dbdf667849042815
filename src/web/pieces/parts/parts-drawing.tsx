import { For, Show } from "solid-js";
import { formatQuantity } from "../../../core/quantity/format-quantity.ts";
import { createRoom } from "../../controls/room.ts";
import * as words from "../../words/words.ts";
import type { Point } from "./flat-shapes.ts";
import { barLength, layOutParts, type PlacedShape } from "./layout.ts";
import { countedOf } from "./part-draft.ts";
import { shapesOf } from "./part-shapes.ts";
import { partHeading, surfaceName, surfacesSaid } from "./part-words.ts";
import { areaText, type PartFigures } from "./parts-total.ts";
import type { BareUnit } from "./read-part.ts";
import "./parts.css";

const leastWidth = 300;
const barRoom = 44;

/** Every part that is counted, flat and to one scale: what is finished wears the finish, what is not is an outline. */
export function PartsDrawing(props: { readonly parts: readonly PartFigures[]; readonly unit: BareUnit }) {
  let frame!: HTMLDivElement;
  const width = createRoom(() => frame, leastWidth);
  const drawn = () => props.parts.flatMap((part) => asDrawn(part));
  const layout = () =>
    layOutParts(
      drawn().map((part) => part.blocks),
      width() - 4,
    );
  const bar = () => barLength(layout().scale, props.unit, 180);
  const barText = () => formatQuantity(bar() / 1000, props.unit, { significantDigits: 2 });
  const barWidth = () => bar() * layout().scale;
  const said = () =>
    words.parts.drawingSays(
      drawn()
        .map((part) => inWords(part, props.unit))
        .join(" "),
    );
  return (
    <div ref={frame}>
      <svg
        class="parts-drawing"
        width={width()}
        height={layout().height + barRoom}
        role="img"
        aria-label={said()}
      >
        <g transform="translate(2 0)">
          <For each={layout().parts}>
            {(placed, i) => (
              <Show when={drawn()[i()]} keyed>
                {(part) => (
                  <>
                    <text class="b" x="0" y={placed.top + 18} font-size="16">
                      {words.parts.partArea(partHeading(part.draft), areaText(part.areaM2, props.unit))}
                    </text>
                    <For each={placed.shapes}>
                      {(shape) => (
                        <Surface
                          shape={shape}
                          counted={part.counted.includes(shape.surface)}
                          name={surfaceName(part.draft.part, shape.surface)}
                        />
                      )}
                    </For>
                  </>
                )}
              </Show>
            )}
          </For>
          <g transform={`translate(0 ${layout().height})`}>
            <path class="pen" d={`M0 4V12H${barWidth()}V4`} />
            <text x="0" y="32" font-size="16">
              {barText()}
            </text>
          </g>
        </g>
      </svg>
    </div>
  );
}

function asDrawn(part: PartFigures) {
  const { draft, reading, found } = part;
  const [worked] = found?.ok ? found.value.parts : [];
  if (worked === undefined || reading.input === undefined) return [];
  const blocks = shapesOf(reading.input, worked.surfaces[0]?.areaM2 ?? 0);
  const all = worked.surfaces.filter((s) => s.areaM2 > 0).map((s) => s.surface);
  return [{ draft, blocks, all, areaM2: worked.areaM2, counted: countedOf(draft) }];
}

type Drawn = ReturnType<typeof asDrawn>[number];

const inWords = ({ draft, all, counted, areaM2 }: Drawn, unit: BareUnit): string =>
  words.parts.partSays(
    partHeading(draft),
    areaText(areaM2, unit),
    surfacesSaid(
      draft,
      all.filter((surface) => counted.includes(surface)),
    ),
    surfacesSaid(
      draft,
      all.filter((surface) => !counted.includes(surface)),
    ),
  );

const path = (outline: readonly Point[]): string =>
  `M${outline.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L")}Z`;

/** Roughly what a letter takes at 15 px. */
const letter = 8.4;

function Surface(props: { readonly shape: PlacedShape; readonly counted: boolean; readonly name: string }) {
  const fits = () => props.shape.height >= 22 && props.shape.width >= props.name.length * letter + 8;
  return (
    <>
      <path class={props.counted ? "counted" : "not-counted"} d={path(props.shape.outline)} />
      <Show when={fits()}>
        <text
          class="m"
          classList={{ on: props.counted, soft: !props.counted }}
          x={props.shape.middle[0]}
          y={props.shape.middle[1] + 5}
          font-size="15"
        >
          {props.name}
        </text>
      </Show>
    </>
  );
}
